/**
 * Which check next: hypotheses as numbers with chances, the outcomes that each check may have under
 * each of them, and minutes of work. Nothing electrical and no other room: it plans any search by
 * checks.
 *
 * <p>{@link loopwright.diagnosis.plan.PlanProblem} states the search, {@link
 * loopwright.diagnosis.plan.PlanState} where it stands. A {@link loopwright.diagnosis.plan.Policy}
 * says what is done next; {@link loopwright.diagnosis.plan.Evaluation} says what following it
 * costs. {@link loopwright.diagnosis.plan.Exact} finds the least possible cost of small searches,
 * {@link loopwright.diagnosis.plan.Rollout} is made for live use on large ones, and {@link
 * loopwright.diagnosis.plan.Planning} takes whichever fits.
 */
package loopwright.diagnosis.plan;
