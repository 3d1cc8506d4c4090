package loopwright.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.OperatingPoint;

/**
 * What a wire may carry at its temperature, and whether its loom stays within what that holds for.
 *
 * <p>The chart of wires and fuses (FAA AC 43.13-1B, Table 11-3) holds, by its notes (from memory),
 * for surroundings of 57 C (135 F) and for bundles of 15 wires and more that carry no more than a
 * fifth of what their wires could. Hotter places take off from it by the square root of what is
 * left up to the insulation's limit, since the rise goes with the square of the current. A loom
 * beyond that fifth is a finding of its own.
 */
final class LoomHeat {

  /** Surroundings for which the chart holds, in degrees C. */
  static final double CHART = 57;

  /**
   * Temperature that PVC insulation stands for long, in degrees C (SAE J1128 GPT, lower figure).
   */
  static final double INSULATION = 80;

  private static final int CHART_WIRES = 15;
  private static final double CHART_LOAD = 0.2;

  private final Plan plan;
  private final double surroundings;
  private final double temperature;

  /**
   * Takes the surroundings of the wires.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C; below 80
   */
  LoomHeat(Plan plan, double hottest) {
    this.plan = plan;
    if (!(hottest < INSULATION)) {
      throw new IllegalArgumentException(
          "surroundings must be below " + INSULATION + " C for PVC wire, not " + hottest);
    }
    this.surroundings = hottest;
    this.temperature = Math.min(1, Math.sqrt((INSULATION - hottest) / (INSULATION - CHART)));
  }

  /** Surroundings of the wires at their hottest, in degrees C. */
  double surroundings() {
    return surroundings;
  }

  /** What a wire may carry and be fused at in amperes; empty where no fuse protects its like. */
  OptionalDouble carries(PartSpec.Wire wire) {
    OptionalDouble greatest = plan.greatestFuse(wire);
    return greatest.isEmpty() ? greatest : OptionalDouble.of(greatest.getAsDouble() * temperature);
  }

  /** The thinnest wire, in the system of another, that may be fused at so much where it runs. */
  String sizeFor(PartSpec.Wire wire, double amps) {
    return plan.sizeFor(wire, amps / temperature);
  }

  /**
   * About what a wire's copper comes to at a current, in degrees C: the rise over its surroundings
   * goes with the square of the current and reaches the insulation's limit at what it may carry.
   */
  static double copper(double surroundings, double amps, double carries) {
    double share = amps / carries;
    return surroundings + (INSULATION - surroundings) * share * share;
  }

  /** A loom's wires, what they carry and what they could. */
  private record Loom(List<String> wires, double amps, double could, String most, double share) {
    Loom and(String wire, double carries, double may) {
      List<String> longer = new ArrayList<>(wires);
      longer.add(wire);
      boolean more = Plan.more(carries / may, share);
      return new Loom(
          longer, amps + carries, could + may, more ? wire : most, more ? carries / may : share);
    }
  }

  /** The load of each large loom with everything on that may be on for long. */
  void add() {
    Setting setting = plan.likely();
    OperatingPoint point = plan.point(setting);
    Map<String, Loom> looms = new LinkedHashMap<>();
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Wire w && !w.loom().isEmpty() && carries(w).isPresent()) {
        int e = plan.network().element(part.id(), "conductor").orElseThrow();
        Loom loom = looms.getOrDefault(w.loom(), new Loom(List.of(), 0, 0, part.id(), 0));
        looms.put(w.loom(), loom.and(part.id(), Math.abs(point.amps(e)), carries(w).getAsDouble()));
      }
    }
    looms.forEach(
        (name, loom) -> {
          if (loom.wires().size() >= CHART_WIRES) {
            plan.add(
                new Figure(
                    loom.most(),
                    Figure.Kind.LOOM_LOAD,
                    100 * loom.amps() / loom.could(),
                    100 * CHART_LOAD,
                    setting,
                    loom.wires(),
                    List.of(name, (double) loom.wires().size())));
          }
        });
  }
}
