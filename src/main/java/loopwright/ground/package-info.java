/**
 * Grounds and their proof: what each should have by its own geometry and contacts, what ohms can
 * show of it, the volts it may lose under load, and what a reading then says.
 */
package loopwright.ground;
