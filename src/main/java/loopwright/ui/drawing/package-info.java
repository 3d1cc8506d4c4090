/** The drawing of a loop with its voltage staircase, laid out by program. */
package loopwright.ui.drawing;
