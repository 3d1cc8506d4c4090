/**
 * Starting points: whole circuits of the trade that ask for what they need and add parts, wires and
 * connectors with usual values, each with its source; and a new vehicle made of them. What is added
 * is one edit, taken back as a whole.
 */
package loopwright.casework.pattern;
