package loopwright.casework;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;

/**
 * The parts that a kept case names. A case keeps no vehicle of its own, so one whose parts were
 * renamed or removed since can't take the case up again.
 */
final class NamedParts {
  private NamedParts() {}

  /** Ids of parts and circuits that the events name and the vehicle hasn't got. */
  static SortedSet<String> missing(List<CaseEvent> events, Vehicle vehicle) {
    SortedSet<String> parts = new TreeSet<>();
    SortedSet<String> missing = new TreeSet<>();
    for (CaseEvent event : events) {
      if (event instanceof CaseEvent.Opened o) {
        o.load().map(LoadRef::parse).map(LoadRef::part).ifPresent(parts::add);
        if (vehicle.circuit(o.circuit()).isEmpty()) {
          missing.add(o.circuit());
        }
      } else if (event instanceof CaseEvent.Taken t) {
        add(t.check(), parts);
      } else if (event instanceof CaseEvent.Refused r) {
        add(r.check(), parts);
      } else if (event instanceof CaseEvent.Settled s) {
        add(s.learners(), parts);
        add(s.programs(), parts);
      } else if (event instanceof CaseEvent.Swapped s) {
        parts.add(s.part());
      } else if (event instanceof CaseEvent.Repaired r) {
        parts.add(r.part());
      }
    }
    parts.removeIf(id -> vehicle.part(id).isPresent());
    missing.addAll(parts);
    return missing;
  }

  private static void add(OwnCheck check, SortedSet<String> parts) {
    parts.addAll(check.subjects());
    parts.addAll(check.setting().positions().keySet());
    parts.addAll(check.setting().apart());
  }
}
