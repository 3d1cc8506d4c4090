package loopwright.casework.explain;

import java.util.List;

/**
 * What can be moved on a page.
 *
 * @param id its name, for instance {@code joint}
 * @param stops where it can stand: a word, or a number of ohms
 * @param fault whether it makes something bad; its first stop is then that of a sound circuit
 * @param start where it stands when the page is opened
 */
public record Control(String id, List<String> stops, boolean fault, String start) {
  /** Copies the stops, and checks that it starts at one of them. */
  public Control {
    stops = List.copyOf(stops);
    if (!stops.contains(start)) {
      throw new IllegalArgumentException(id + " can't start at " + start);
    }
  }

  static Control of(String id, String start, String... stops) {
    return new Control(id, List.of(stops), false, start);
  }

  static Control fault(String id, String start, String... stops) {
    return new Control(id, List.of(stops), true, start);
  }
}
