package loopwright.diagnosis.plan;

/**
 * How the work place stands between two checks, as far as it bears on the minutes of the next one:
 * what is switched on, what is open, where the leads are. Made by {@link Costs} alone. Two setups
 * that are equal must cost the same from then on, so implementations are values, records at best.
 */
public interface Setup {}
