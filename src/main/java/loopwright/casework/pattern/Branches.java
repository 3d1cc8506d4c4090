package loopwright.casework.pattern;

import java.util.List;
import java.util.function.UnaryOperator;
import loopwright.model.TerminalRef;

/** Wires several loads side by side: straight to the only one, or through a splice. */
final class Branches {
  private Branches() {}

  /**
   * Feeds loads.
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
    wire(h, run, from, loads, terminal, metres, branch, "wire.to-splice", h::feedOf);
  }

  /**
   * Returns loads.
   *
   * @param to where the current goes
   * @param metres the way from the load, or from the splice
   * @param branch from each load to the splice in metres
   */
  static void ground(
      Harness h, Run run, TerminalRef to, List<String> loads, double metres, double branch) {
    wire(h, run, to, loads, "out", metres, branch, "wire.ground-splice", h::groundOf);
  }

  private static void wire(
      Harness h,
      Run run,
      TerminalRef trunk,
      List<String> loads,
      String terminal,
      double metres,
      double branch,
      String trunkWords,
      UnaryOperator<String> words) {
    if (loads.size() == 1) {
      String load = loads.get(0);
      h.wire(run, trunk, Harness.at(load, terminal), metres, words.apply(load));
      return;
    }
    String splice = h.splice(h.words("part.splice"), loads.size() + 1);
    h.wire(run, trunk, Harness.at(splice, "a"), metres, h.words(trunkWords));
    Run branches = h.run(run.side(), run.fuse());
    for (int i = 0; i < loads.size(); i++) {
      String leg = String.valueOf((char) ('b' + i));
      h.wire(
          branches,
          Harness.at(splice, leg),
          Harness.at(loads.get(i), terminal),
          branch,
          words.apply(loads.get(i)));
    }
  }
}
