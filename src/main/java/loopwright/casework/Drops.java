package loopwright.casework;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.LoopView.Stair;
import loopwright.model.TerminalRef;

/**
 * Where the battery's volts go along a loop, share by share from the feed post to the grounded
 * post: the loop is cut wherever volts were measured in the circuit's own setting. A weak or slow
 * load has its volts lost in one of the shares.
 *
 * @param shares in the order of the loop; at least one
 */
public record Drops(List<Share> shares) {

  /**
   * Volts that a share may lose beyond a healthy one before it is called the worst: what one
   * connection may lose at most (SAE recommended maxima, as quoted in a passenger-car repair
   * manual, see voltage-drop-limits.csv).
   */
  static final double EXCESS_VOLTS = 0.1;

  /** On which side of the load a share lies. */
  public enum Side {
    FEED,
    /** The load itself, and what nobody has measured apart from it. */
    LOAD,
    RETURN
  }

  /**
   * What lies between two points of the loop.
   *
   * @param from where the current enters it
   * @param to where it leaves
   * @param parts titles of the parts between, in order
   * @param side feed, load or return
   * @param healthy usual volts lost in it in health; at least 0
   * @param measured volts lost in it as measured; where nobody measured at the feed post, as a
   *     battery in usual health would have it
   * @param unsure volts by which that may be wrong; 0 where both ends were measured
   */
  public record Share(
      TerminalRef from,
      TerminalRef to,
      List<String> parts,
      Side side,
      double healthy,
      double measured,
      double unsure) {
    /** Copies the list. */
    public Share {
      parts = List.copyOf(parts);
    }

    /** Whether the battery's volts were taken as usual for it. */
    public boolean about() {
      return unsure > 0;
    }

    private double excess() {
      return measured - healthy;
    }
  }

  /** Copies the list. */
  public Drops {
    shares = List.copyOf(shares);
  }

  /**
   * The shares of a loop.
   *
   * @return empty unless volts were measured at two places at least, the grounded post among them
   *     by itself
   */
  public static Optional<Drops> of(LoopView loop) {
    List<Stair> stairs = loop.stairs();
    int last = stairs.size() - 1;
    List<Integer> cuts = new ArrayList<>();
    int measured = 0;
    for (int i = 0; i <= last; i++) {
      boolean here = i < last && volts(stairs.get(i)).isPresent();
      measured += here ? 1 : 0;
      if (here || i == 0 || i == last) {
        cuts.add(i);
      }
    }
    boolean solved = stairs.stream().noneMatch(s -> s.healthy().equals(Stair.NOT_WORKED_OUT));
    if (measured < 2 || !solved || last < 1) {
      return Optional.empty();
    }
    int load = load(loop);
    double up = usual(stairs.get(0)) < 0 ? -1 : 1;
    List<Share> shares = new ArrayList<>();
    for (int c = 1; c < cuts.size(); c++) {
      int from = cuts.get(c - 1);
      int to = cuts.get(c);
      OptionalDouble before = volts(stairs.get(from));
      double after = to == last ? 0 : volts(stairs.get(to)).orElse(0);
      shares.add(
          new Share(
              stairs.get(from).point(),
              stairs.get(to).point(),
              loop.pieces().subList(from, to).stream().map(PieceView::title).toList(),
              to <= load ? Side.FEED : from > load ? Side.RETURN : Side.LOAD,
              Math.max(0, up * (usual(stairs.get(from)) - usual(stairs.get(to)))),
              up * (before.orElse(usual(stairs.get(from))) - after),
              before.isPresent()
                  ? 0
                  : (stairs.get(from).healthy().high() - stairs.get(from).healthy().low()) / 2));
    }
    return Optional.of(new Drops(shares));
  }

  /** The share that loses most beyond a healthy one; empty if none loses noticeably more. */
  public Optional<Share> worst() {
    return shares.stream()
        .filter(s -> s.excess() > EXCESS_VOLTS + s.unsure())
        .max(Comparator.comparingDouble(Share::excess));
  }

  /** The piece in which the volts do their work: of the loads the one that takes most of them. */
  private static int load(LoopView loop) {
    int found = -1;
    double most = -1;
    for (int i = 0; i < loop.pieces().size(); i++) {
      double drop =
          Math.abs(usual(loop.stairs().get(i))) - Math.abs(usual(loop.stairs().get(i + 1)));
      if (loop.pieces().get(i).kind().isLoad() && drop > most) {
        found = i;
        most = drop;
      }
    }
    return found;
  }

  private static double usual(Stair stair) {
    return (stair.healthy().low() + stair.healthy().high()) / 2;
  }

  /** What was measured at a node last. */
  private static OptionalDouble volts(Stair stair) {
    return stair.measured().stream()
        .max(Comparator.comparingInt(LoopView.Measured::reading))
        .map(m -> OptionalDouble.of(m.volts()))
        .orElseGet(OptionalDouble::empty);
  }
}
