package loopwright.casework.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;

/**
 * Which terminal a list means that names only the part, by the direction in which lists are kept
 * (common practice): from the feed to the load, and from the load to ground.
 */
final class Sides {
  /** Other words for terminals, by kind. */
  private static final Map<PartKind, Map<String, String>> WORDS =
      Map.of(
          PartKind.BATTERY,
          Map.of(
              "+",
              "pos",
              "plus",
              "pos",
              "positive",
              "pos",
              "-",
              "neg",
              "minus",
              "neg",
              "negative",
              "neg"),
          PartKind.FUSE,
          Map.of("in", "feed", "line", "feed", "supply", "feed", "out", "load"),
          PartKind.GROUND,
          Map.of("stud", "lug", "ring", "lug"));

  /** Which end of the wire lies there. */
  enum End {
    FROM,
    TO
  }

  private Sides() {}

  /** The terminal of a part on which an end lies; empty where the direction doesn't tell. */
  static Optional<String> of(PartSpec spec, End end) {
    List<String> terminals = spec.terminals();
    if (terminals.size() == 1) {
      return Optional.of(terminals.get(0));
    }
    return switch (spec.kind()) {
      case FUSE, SWITCH, LAMP, LED, DIODE, MOTOR, HEATER, SOLENOID, HORN, ELECTRONICS, SENDER ->
          terminals.size() == 2
              ? Optional.of(terminals.get(end == End.TO ? 0 : 1))
              : Optional.empty();
      case GROUND -> Optional.of("lug");
      default -> Optional.empty();
    };
  }

  /** The terminal that a person calls otherwise; the side of a connector's cavity among them. */
  static Optional<String> named(PartSpec spec, String said, End end) {
    if (spec instanceof PartSpec.Connector c && c.cavities().contains(said)) {
      return Optional.of(said + (end == End.TO ? "a" : "b"));
    }
    return Optional.ofNullable(
        WORDS.getOrDefault(spec.kind(), Map.of()).get(said.toLowerCase(Locale.ROOT)));
  }
}
