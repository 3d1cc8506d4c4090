/**
 * Cases and proofs on disk: append-only journals of JSON lines, {@code schema/case-1.schema.json}
 * and {@code schema/proof-1.schema.json}. A line is forced to disk before it counts, and carries a
 * check sum so that a torn line is told from a whole one.
 */
package loopwright.io.journal;
