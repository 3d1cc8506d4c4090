package loopwright.paper;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.model.WireSize;

/** Sizes that wire is sold in. */
final class WireSizes {

  /** Square millimetres of IEC 60228, class 5, as far as vehicles use them. */
  private static final double[] METRIC = {
    0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120
  };

  private WireSizes() {}

  /** All sizes of a system, thinnest first: even AWG numbers down to 2, then 1, 1/0 to 4/0. */
  static Stream<WireSize> sold(WireSize.Unit unit) {
    return unit == WireSize.Unit.AWG
        ? Stream.iterate(24, n -> n >= -3, n -> n > 2 ? n - 2 : n - 1)
            .map(n -> new WireSize(WireSize.Unit.AWG, n))
        : Arrays.stream(METRIC).mapToObj(mm2 -> new WireSize(WireSize.Unit.MM2, mm2));
  }

  /**
   * The thinnest wire sold, in the same system, with at least so many times the copper of a size;
   * empty above 4/0 AWG and 120 mm2.
   */
  static Optional<WireSize> atLeast(WireSize size, double times) {
    double area = size.mm2() * times;
    return sold(size.unit()).filter(s -> s.mm2() >= area * 0.999).findFirst();
  }
}
