/** What the trade knows as typed tables: failure modes with rates, usual values, limits, meters. */
package loopwright.knowledge;
