package loopwright.casework.list;

import java.util.List;
import loopwright.model.WireSize;

/**
 * The wire range a crimp terminal is sold for. Small terminals come in three ranges (common
 * practice of insulated terminals: 22 to 16, 16 to 14 and 12 to 10 AWG); heavy lugs are made for
 * one size.
 */
record Barrel(double order, String words) {
  private static final List<Barrel> SMALL =
      List.of(
          new Barrel(1.5, "0.25 to 1.5 mm2 (22 to 16 AWG)"),
          new Barrel(2.6, "1.5 to 2.5 mm2 (16 to 14 AWG)"),
          new Barrel(Fitting.MOST_BLADE, "3 to 6 mm2 (12 to 10 AWG)"));

  static Barrel of(WireSize size) {
    double mm2 = size.mm2();
    return SMALL.stream()
        .filter(b -> mm2 <= b.order() * 1.001)
        .findFirst()
        .orElseGet(() -> new Barrel(mm2, size.inBoth()));
  }
}
