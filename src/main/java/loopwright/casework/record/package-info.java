/**
 * What kept cases say: their records, what a part or a vehicle has had, what was read good. All of
 * it follows from the journals alone; nothing is solved again.
 */
package loopwright.casework.record;
