/**
 * Vehicles made up from a seed: whole small ones of many shapes, and large ones of any number of
 * parts. All names and values are invented within what the trade usually fits.
 */
package loopwright.evidence.generated;
