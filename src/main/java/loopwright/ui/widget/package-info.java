/** Controls shared by the views. */
package loopwright.ui.widget;
