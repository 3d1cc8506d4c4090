/**
 * Explaining pages: each has a small circuit to play with, and every number on it is worked out by
 * the solver. No toolkit.
 */
package loopwright.casework.explain;
