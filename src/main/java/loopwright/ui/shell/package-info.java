/** The frame around every view: where am I, looks, text size, keys. */
package loopwright.ui.shell;
