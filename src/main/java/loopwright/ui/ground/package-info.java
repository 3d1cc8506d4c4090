/** Checking grounds: all of them in a list, one thing to do now, a reading in, a verdict out. */
package loopwright.ui.ground;
