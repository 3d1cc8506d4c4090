/** The explaining pages: a list to search, and a page with a circuit to play with. */
package loopwright.ui.explain;
