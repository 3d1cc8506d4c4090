package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;

/**
 * A loop laid out from the feed post of the battery through the load to the grounded post: pieces
 * with a node before the first, between any two and after the last.
 *
 * @param title what runs in it, for instance "Beacon" or "coil of relay K1"
 * @param pieces the pieces in order
 * @param stairs the nodes in order; one more than pieces. This is the voltage staircase
 * @param branches loops that act on this one (the coil of a relay whose contact lies in it)
 */
public record LoopView(
    String title, List<PieceView> pieces, List<Stair> stairs, List<LoopView> branches) {

  /** How a piece stands. */
  public enum Standing {
    HELD,
    CLEARED,
    CONDEMNED
  }

  /**
   * One part on the loop.
   *
   * @param part its id
   * @param title name with id
   * @param label what is written on it; may be empty
   * @param kind its kind
   * @param in the terminal where the loop enters; empty for a wire
   * @param out the terminal where it leaves; empty for a wire
   * @param detail size or rating in words, for instance "18 AWG, 1.5 m red" or "10 A"
   * @param standing held, cleared or condemned
   * @param belief chance that the failure lies here, 0 to 1
   * @param clearedBy readings that cleared it
   */
  public record PieceView(
      String part,
      String title,
      String label,
      PartKind kind,
      Optional<TerminalRef> in,
      Optional<TerminalRef> out,
      String detail,
      Standing standing,
      double belief,
      List<Integer> clearedBy) {
    /** Copies the list. */
    public PieceView {
      clearedBy = List.copyOf(clearedBy);
    }
  }

  /**
   * One node of the staircase. Volts are against the battery's grounded post.
   *
   * @param point the probe point that names the node
   * @param others other terminals of the same node
   * @param healthy what a healthy circuit shows in the circuit's own setting, or {@link
   *     #NOT_WORKED_OUT}
   * @param measured readings taken here against the grounded post in that setting
   * @param reachable whether a lead can touch it
   */
  public record Stair(
      TerminalRef point,
      List<TerminalRef> others,
      Band healthy,
      List<Measured> measured,
      boolean reachable) {
    /** Stands for a healthy band where nothing was solved. */
    public static final Band NOT_WORKED_OUT =
        new Band(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Band.Unit.VOLT);

    /** Copies the lists. */
    public Stair {
      others = List.copyOf(others);
      measured = List.copyOf(measured);
    }
  }

  /**
   * A measured point of the staircase.
   *
   * @param reading its number
   * @param volts the value in volts
   */
  public record Measured(int reading, double volts) {}

  /** Whether it has a staircase: healthy bands were worked out, or something was measured. */
  public boolean hasStaircase() {
    return stairs.stream()
        .anyMatch(s -> !s.healthy().equals(Stair.NOT_WORKED_OUT) || !s.measured().isEmpty());
  }

  /** Copies the lists. */
  public LoopView {
    pieces = List.copyOf(pieces);
    stairs = List.copyOf(stairs);
    branches = List.copyOf(branches);
  }
}
