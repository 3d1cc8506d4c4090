package loopwright.io;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Brings the values of an older file up to the version this program knows, one version at a time.
 * The file itself is not touched; it gets the new version when it is next saved. Lines stay those
 * of the file, so that defects are told where they are.
 */
final class VersionSteps {

  /** Turns the values of a file of one version into those of the next. */
  interface Step {
    /** Returns the values of the next version; its field {@code version} need not be set. */
    Map<String, JsonValue> next(Map<String, JsonValue> older);
  }

  private final String format;
  private final int current;
  private final Map<Integer, Step> steps;

  /**
   * Steps of a format.
   *
   * @param current the version this program knows
   * @param steps the step that leads on from a version, by that version
   */
  VersionSteps(String format, int current, Map<Integer, Step> steps) {
    this.format = format;
    this.current = current;
    this.steps = Map.copyOf(steps);
  }

  /**
   * The values in the current version. What is no file of this format, or of an older version that
   * no step leads on from, is handed through for the reader to tell.
   *
   * @return empty if the file is newer than this program; that is then its only defect
   */
  Optional<JsonValue> upToDate(JsonValue root, DefectList defects) {
    if (!(root instanceof JsonValue.Fields file)
        || !(file.values().get("format") instanceof JsonValue.Text name)
        || !name.value().equals(format)
        || !(file.values().get("version") instanceof JsonValue.Num written)
        || written.value() != Math.rint(written.value())) {
      return Optional.of(root);
    }
    if (written.value() > current) {
      defects.add(
          "version",
          FileWords.say("file"),
          written.shown(),
          FileWords.say("version", Integer.toString(current)),
          FileWords.say("version.bad", written.shown(), Integer.toString(current)));
      return Optional.empty();
    }
    Map<String, JsonValue> values = file.values();
    for (int version = (int) written.value(); version < current; version++) {
      Step step = steps.get(version);
      if (step == null) {
        return Optional.of(root);
      }
      values = new LinkedHashMap<>(step.next(values));
      int next = version + 1;
      values.put("version", new JsonValue.Num(next, Integer.toString(next), written.line()));
    }
    return Optional.of(new JsonValue.Fields(values, file.line()));
  }
}
