/** Starting points in the window: a new vehicle from questions, a circuit added by pattern. */
package loopwright.ui.starting;
