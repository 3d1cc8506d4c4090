package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.List;

/**
 * Where two lists differ: between their common beginning and their common end. Kept in place of
 * whole lists, so that a step taken back costs no more than what it changed.
 *
 * @param at index of the first that differs
 * @param before what only the first list has there
 * @param after what only the second has there
 */
public record Stretch<T>(int at, List<T> before, List<T> after) {

  /** Copies the lists. */
  public Stretch {
    before = List.copyOf(before);
    after = List.copyOf(after);
  }

  /** Where two lists differ. */
  public static <T> Stretch<T> between(List<T> before, List<T> after) {
    int most = Math.min(before.size(), after.size());
    int at = 0;
    while (at < most && before.get(at).equals(after.get(at))) {
      at++;
    }
    int end = 0;
    while (end < most - at
        && before.get(before.size() - 1 - end).equals(after.get(after.size() - 1 - end))) {
      end++;
    }
    return new Stretch<>(
        at, before.subList(at, before.size() - end), after.subList(at, after.size() - end));
  }

  List<T> undo(List<T> list) {
    return replace(list, after.size(), before);
  }

  List<T> redo(List<T> list) {
    return replace(list, before.size(), after);
  }

  private List<T> replace(List<T> list, int size, List<T> by) {
    List<T> replaced = new ArrayList<>(list.subList(0, at));
    replaced.addAll(by);
    replaced.addAll(list.subList(at + size, list.size()));
    return replaced;
  }
}
