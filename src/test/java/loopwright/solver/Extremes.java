package loopwright.solver;

import java.util.ArrayList;
import java.util.List;
import loopwright.meter.MeterSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;

/**
 * Searches the box of spreads for the least or greatest volts a meter could show: the signs of a
 * reading's sensitivities name a corner, it is solved there, and so on until the signs stay (in a
 * linear network a node's volts are monotone in each resistance with the others held). Thresholds
 * of relays, motors and fuses have no slope; they are tried as they stand, all low and all high,
 * and with a weak and a strong supply.
 *
 * <p>The result is reached by some values inside the spreads, so it is an inner bound: what lies
 * within it can surely be explained, what lies beyond it may still be.
 */
public final class Extremes {

  /** Greatest number of corners visited from one choice of thresholds. */
  private static final int MOST_CORNERS = 8;

  /** Which end is looked for. */
  public enum End {
    LEAST,
    GREATEST
  }

  private Extremes() {}

  /**
   * The extreme volts from red to black.
   *
   * @param solver solves the corners
   * @param variant the network
   * @param setting how the vehicle stands
   * @param history fuses blown before
   * @param red node under the red lead
   * @param black node under the black lead
   * @param meter the meter, in place but without error
   * @param end which end
   * @return volts that some values inside the spreads give
   */
  public static double volts(
      Solver solver,
      Variant variant,
      Setting setting,
      History history,
      int red,
      int black,
      MeterSpec meter,
      End end) {
    double sign = end == End.GREATEST ? 1 : -1;
    double best = Double.NEGATIVE_INFINITY;
    for (Values start : starts(variant)) {
      Values values = start;
      for (int corner = 0; corner <= MOST_CORNERS; corner++) {
        OperatingPoint point = solver.solve(variant, setting, values, history);
        Meters.Shown shown = Meters.volts(solver, point, red, black, meter);
        best = Math.max(best, sign * shown.value());
        double[][] slopes = shown.point().sensitivities(red, black);
        Values next = values.copy();
        if (!move(variant, next, slopes, sign)) {
          break;
        }
        values = next;
      }
    }
    return sign * best;
  }

  /** Puts each value with a slope at the end that its sign names; false if all are there. */
  private static boolean move(Variant variant, Values values, double[][] slopes, double sign) {
    boolean moved = false;
    for (int e = 0; e < variant.size(); e++) {
      Spread[] spreads = variant.element(e).values();
      for (int k = 0; k < spreads.length; k++) {
        double slope = sign * slopes[e][k];
        double to = slope > 0 ? spreads[k].high() : slope < 0 ? spreads[k].low() : values.get(e, k);
        if (to != values.get(e, k)) {
          values.set(e, k, to);
          moved = true;
        }
      }
    }
    return moved;
  }

  /**
   * As usual; thresholds low and high; and a weak and a strong supply, since from one a motor
   * stands or a fuse holds that would not from the other.
   */
  private static List<Values> starts(Variant variant) {
    List<Values> starts = new ArrayList<>();
    starts.add(Values.typical(variant));
    for (Start start : Start.values()) {
      Values values = Values.typical(variant);
      for (int e = 0; e < variant.size(); e++) {
        Element element = variant.element(e);
        Spread[] spreads = element.values();
        for (int k = 0; k < spreads.length; k++) {
          boolean threshold = k >= thresholdsFrom(element);
          boolean load =
              element instanceof Element.Motor
                  || element instanceof Element.Filament
                  || (element instanceof Element.Cell && k == 0);
          values.set(
              e,
              k,
              switch (start) {
                case EASY -> threshold ? spreads[k].low() : spreads[k].typical();
                case HARD -> threshold ? spreads[k].high() : spreads[k].typical();
                // Low volts, high ohms in the way, low ohms in the load.
                case WEAK -> threshold || !load ? spreads[k].high() : spreads[k].low();
                case STRONG -> threshold || !load ? spreads[k].low() : spreads[k].high();
              });
        }
      }
      starts.add(values);
    }
    return starts;
  }

  private enum Start {
    EASY,
    HARD,
    WEAK,
    STRONG
  }

  /** The first values are the law's own; thresholds follow. */
  private static int thresholdsFrom(Element element) {
    if (element instanceof Element.Coil || element instanceof Element.Link) {
      return 1;
    }
    return element instanceof Element.Motor ? 2 : Integer.MAX_VALUE;
  }
}
