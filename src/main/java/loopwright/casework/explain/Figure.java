package loopwright.casework.explain;

/**
 * A figure on a page.
 *
 * @param id its name on the page
 * @param name what it is, in words
 * @param value in volts, amperes or ohms; NaN where it is a state; infinite for OL
 * @param text the value in words, with its unit
 */
public record Figure(String id, String name, double value, String text) {}
