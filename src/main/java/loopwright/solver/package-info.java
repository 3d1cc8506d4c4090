/**
 * Operating points of a network of parts: nodal analysis on EJML with piecewise parts, relays with
 * hysteresis, fuses that blow, and failures as low-rank changes of one factorisation.
 */
package loopwright.solver;
