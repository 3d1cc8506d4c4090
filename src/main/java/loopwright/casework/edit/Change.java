package loopwright.casework.edit;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * What is no longer as it was, so that only that need be drawn and checked anew.
 *
 * @param title what was done
 * @param parts ids of parts that came, went or changed, or whose terminals are wired otherwise
 * @param circuits ids of circuits that came, went or changed
 * @param told what the person should know of, in words
 */
public record Change(
    String title, SortedSet<String> parts, SortedSet<String> circuits, List<String> told) {

  /** Copies the collections. */
  public Change {
    parts = Collections.unmodifiableSortedSet(new TreeSet<>(parts));
    circuits = Collections.unmodifiableSortedSet(new TreeSet<>(circuits));
    told = List.copyOf(told);
  }

  /** What differs between two versions of a vehicle. */
  public static Change between(String title, Vehicle before, Vehicle after, List<String> told) {
    SortedSet<String> parts = new TreeSet<>();
    for (Part part : different(before.parts(), after.parts())) {
      parts.add(part.id());
      if (part.spec() instanceof PartSpec.Wire wire) {
        parts.add(wire.from().part());
        parts.add(wire.to().part());
      }
    }
    for (List<TerminalRef> join : different(before.joins(), after.joins())) {
      join.forEach(t -> parts.add(t.part()));
    }
    SortedSet<String> circuits = new TreeSet<>();
    different(before.circuits(), after.circuits()).stream().map(Circuit::id).forEach(circuits::add);
    return new Change(title, parts, circuits, told);
  }

  /** What only one of the lists holds, or holds more often. */
  private static <T> Set<T> different(List<T> before, List<T> after) {
    Map<T, Integer> counts = new HashMap<>();
    before.forEach(e -> counts.merge(e, 1, Integer::sum));
    after.forEach(e -> counts.merge(e, -1, Integer::sum));
    Set<T> different = new HashSet<>();
    counts.forEach(
        (e, n) -> {
          if (n != 0) {
            different.add(e);
          }
        });
    return different;
  }
}
