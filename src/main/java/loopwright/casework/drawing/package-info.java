/** Symbols of parts as lines and circles, for the window and for paper. No toolkit. */
package loopwright.casework.drawing;
