package loopwright.casework.edit;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import loopwright.model.Part;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Keeps what parts say of their free terminals in step with the wiring. */
public final class Terminals {
  private Terminals() {}

  /**
   * The parts, with terminals that nothing lies on any more marked as meant to stay free, and those
   * that something lies on now no longer.
   *
   * @param before the terminals that something lay on before
   */
  public static List<Part> settled(
      List<Part> parts, List<List<TerminalRef>> joins, Predicate<TerminalRef> before) {
    Set<TerminalRef> used = Vehicle.usedTerminals(parts, joins);
    return parts.stream()
        .map(
            p -> {
              Set<String> spare = new HashSet<>(p.spare());
              for (String terminal : p.spec().terminals()) {
                TerminalRef at = new TerminalRef(p.id(), terminal);
                if (used.contains(at)) {
                  spare.remove(terminal);
                } else if (before.test(at)) {
                  spare.add(terminal);
                }
              }
              return spare.equals(p.spare()) ? p : p.withSpare(spare);
            })
        .toList();
  }
}
