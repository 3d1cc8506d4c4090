/**
 * What the engine tells the rules and what the rules may conclude. All records; a fact is stated
 * once and never changed. Conclusions hang on the facts they were drawn from: when a reading is
 * withdrawn, what followed from it goes too.
 */
package loopwright.diagnosis.rulebook;
