/**
 * Cases on disk: an append-only journal of JSON lines each, {@code schema/case-1.schema.json}. A
 * line is forced to disk before it counts, and carries a check sum so that a torn line is told from
 * a whole one.
 */
package loopwright.io.journal;
