/** The hand-held meter: its functions, ranges, error limits and what its display shows. */
package loopwright.meter;
