package loopwright.paper;

import java.util.Optional;
import loopwright.model.WireSize;

/** Which size is sold for more copper. */
final class WireSizes {

  private WireSizes() {}

  /**
   * The thinnest wire sold, in the same system, with at least so many times the copper of a size;
   * empty above 4/0 AWG and 120 mm2.
   */
  static Optional<WireSize> atLeast(WireSize size, double times) {
    double area = size.mm2() * times;
    return WireSize.sold(size.unit()).filter(s -> s.mm2() >= area * 0.999).findFirst();
  }
}
