package loopwright.solver;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import loopwright.model.TerminalRef;

/**
 * Which node of an earlier network each node of a network was, by the names of terminals, and for
 * nodes within a part by its elements. Immutable.
 */
public final class Renumbering {

  /** In place of an earlier number, for a node that wasn't there. */
  private static final int NEW = -2;

  private final int[] earlier;
  private final boolean same;
  private final boolean alike;

  private Renumbering(int[] earlier, Network before, Network now) {
    this.earlier = earlier;
    int[] kept = IntStream.range(0, before.nodes()).toArray();
    this.same = Arrays.equals(earlier, kept);
    this.alike =
        same
            && before.elements().equals(now.elements())
            && before.vehicle().controls().equals(now.vehicle().controls());
  }

  /** From one network to another, perhaps of an edited vehicle. */
  public static Renumbering between(Network before, Network now) {
    int[] earlier = new int[now.nodes()];
    Arrays.fill(earlier, NEW);
    for (int node = 0; node < earlier.length; node++) {
      for (TerminalRef terminal : now.terminals(node)) {
        if (earlier[node] == NEW) {
          earlier[node] = before.node(terminal).orElse(NEW);
        }
      }
    }
    for (Element element : now.elements()) {
      before
          .element(element.part(), element.role())
          .map(before.elements()::get)
          .ifPresent(
              was -> {
                within(earlier, now, element.a(), was.a());
                within(earlier, now, element.b(), was.b());
              });
    }
    for (int n = 0; n < Network.SPARES; n++) {
      earlier[now.spare(n)] = before.spare(n);
    }
    return new Renumbering(earlier, before, now);
  }

  private static void within(int[] earlier, Network now, int node, int was) {
    if (node >= 0 && earlier[node] == NEW && now.terminals(node).isEmpty()) {
      earlier[node] = was;
    }
  }

  /** Whether both networks are the same but for words: every state of one is one of the other. */
  boolean alike() {
    return alike;
  }

  /** Volts by node, NaN where the node is new. The same array where nothing has another number. */
  double[] volts(double[] before) {
    if (same) {
      return before;
    }
    double[] now = new double[earlier.length];
    for (int i = 0; i < now.length; i++) {
      now[i] = earlier[i] == NEW ? Double.NaN : earlier[i] < 0 ? 0 : before[earlier[i]];
    }
    return now;
  }

  /** Several of them. */
  List<double[]> volts(List<double[]> before) {
    return before.stream().map(this::volts).toList();
  }
}
