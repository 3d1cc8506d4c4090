package loopwright.casework;

import java.util.List;

/**
 * A part none of whose failures is held any more.
 *
 * @param part id of the part
 * @param title name with id
 * @param readings the readings that ruled it out
 * @param why in one sentence, with numbers
 */
public record ClearedView(String part, String title, List<Integer> readings, String why) {
  /** Copies the list. */
  public ClearedView {
    readings = List.copyOf(readings);
  }
}
