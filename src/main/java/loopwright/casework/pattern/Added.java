package loopwright.casework.pattern;

/**
 * One part that a pattern adds or changes, with why it is as it is.
 *
 * @param part its id
 * @param title name with id
 * @param value kind and value in words, for instance {@code fuse, 10 A}
 * @param source why this value, and where that comes from
 */
public record Added(String part, String title, String value, String source) {}
