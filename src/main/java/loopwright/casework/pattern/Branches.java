package loopwright.casework.pattern;

import java.util.List;
import loopwright.model.TerminalRef;

/** Feeds several loads from one wire: straight to the first, or through a splice. */
final class Branches {
  private Branches() {}

  /**
   * Wires loads side by side.
   *
   * @param from where the wire begins
   * @param terminal the loads' terminal
   * @param metres the way to the load, or to the splice
   * @param branch from the splice to each load in metres
   */
  static void feed(
      Harness h,
      Run run,
      TerminalRef from,
      List<String> loads,
      String terminal,
      double metres,
      double branch) {
    if (loads.size() == 1) {
      h.wire(run, from, Harness.at(loads.get(0), terminal), metres, h.feedOf(loads.get(0)));
      return;
    }
    String splice = h.splice(h.words("part.splice"), loads.size() + 1);
    h.wire(run, from, Harness.at(splice, "a"), metres, h.words("wire.to-splice"));
    Run branches = h.run(run.side(), run.fuse());
    for (int i = 0; i < loads.size(); i++) {
      String leg = String.valueOf((char) ('b' + i));
      h.wire(
          branches,
          Harness.at(splice, leg),
          Harness.at(loads.get(i), terminal),
          branch,
          h.feedOf(loads.get(i)));
    }
  }
}
