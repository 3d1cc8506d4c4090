/**
 * The trade's rules: the only room that knows the rule engine. Facts go in, conclusions come out;
 * both are the records of {@code loopwright.diagnosis.rulebook}.
 */
package loopwright.rules;
