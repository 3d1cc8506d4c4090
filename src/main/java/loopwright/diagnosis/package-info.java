/**
 * Suspects, what each of them predicts, what readings make of them, and which check is next. Runs
 * without files, windows, rule engine or hidden truth; the rules are reached through {@link
 * loopwright.diagnosis.rulebook.RuleBook}.
 */
package loopwright.diagnosis;
