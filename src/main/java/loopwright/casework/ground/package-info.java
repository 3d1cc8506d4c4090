/** Checking grounds: each in words, a reading in, a verdict out, kept among the proofs. */
package loopwright.casework.ground;
