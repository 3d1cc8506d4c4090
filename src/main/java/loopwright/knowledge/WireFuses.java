package loopwright.knowledge;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The greatest fuse that protects a wire, by its copper area.
 *
 * @param rows one for each size listed, smallest first
 */
public record WireFuses(List<Row> rows) {

  /**
   * One size.
   *
   * @param mm2 copper area in square millimetres
   * @param amps greatest fuse in amperes
   * @param source where it comes from
   */
  public record Row(double mm2, double amps, String source) {}

  /** Sorts the rows by area. */
  public WireFuses {
    rows = rows.stream().sorted(Comparator.comparingDouble(Row::mm2)).toList();
  }

  /**
   * The greatest fuse for a wire: that of the next smaller size listed, so that a wire between two
   * sizes is never trusted with more than the smaller one; empty below the smallest.
   */
  public OptionalDouble greatest(double mm2) {
    return row(mm2).stream().mapToDouble(Row::amps).findFirst();
  }

  /** The row that {@link #greatest} goes by. */
  public Optional<Row> row(double mm2) {
    // A metric area is nominal, an AWG one computed: a hundredth is no difference.
    return rows.stream()
        .filter(r -> r.mm2() <= mm2 * 1.01)
        .max(Comparator.comparingDouble(Row::amps));
  }
}
