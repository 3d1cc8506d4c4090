package loopwright.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/** What the battery gives at rest over a month, and whether its charging keeps up. */
final class SupplyFigures {

  /** Parking that a battery should outlast, in hours: a month. Common practice. */
  private static final double PARKED = 30 * 24.0;

  /** Share of what it holds that a starter battery may lose. Common practice. */
  private static final double MAY_LOSE = 0.5;

  /**
   * Share of what the charging gives that may be in use, so that the battery is charged too. Common
   * practice.
   */
  private static final double MAY_USE = 0.8;

  /** Volts while charging over volts at rest: 14.2 over 12.6. Common practice. */
  private static final double CHARGING_VOLTS = 14.2 / 12.6;

  /** Share of the whole from which a consumer is named, and how many are. */
  private static final double NAMED_SHARE = 0.05;

  private static final double NAMED_AMPS = 1e-3;

  private static final int MOST_NAMED = 5;

  private final Plan plan;
  private final PartSpec.Battery battery;
  private final String id;

  SupplyFigures(Plan plan) {
    this.plan = plan;
    this.id = plan.vehicle().battery().id();
    this.battery = (PartSpec.Battery) plan.part(id).spec();
  }

  void add() {
    drain();
    if (value("chargeAmps", PartSpec.Battery::chargeAmps) > 0) {
      charging();
    }
  }

  private double value(String quantity, Function<PartSpec.Battery, Optional<Double>> stated) {
    return stated
        .apply(battery)
        .orElseGet(
            () ->
                plan.typicals()
                    .usual(PartKind.BATTERY, quantity, plan.vehicle().systemVolts())
                    .typical());
  }

  private double ampHours() {
    return value("ampHours", PartSpec.Battery::ampHours);
  }

  private static String known(Optional<Double> stated) {
    return stated.isPresent() ? "stated" : "usual";
  }

  private void drain() {
    OperatingPoint rest = plan.point(Setting.REST);
    double amps = plan.batteryAmps(rest);
    double may = MAY_LOSE * ampHours();
    plan.add(
        new Figure(
            id,
            Figure.Kind.REST_AMP_HOURS,
            amps * PARKED,
            may,
            Setting.REST,
            biggest(rest),
            List.of(1e3 * amps, amps > 0 ? may / amps / 24 : 0, known(battery.ampHours()))));
  }

  private void charging() {
    Setting likely = plan.likely();
    Variant healthy = Variant.healthy(plan.network());
    Values values = Values.typical(healthy);
    for (int e = 0; e < plan.network().elements().size(); e++) {
      if (plan.network().elements().get(e) instanceof Element.Cell) {
        values.set(e, 0, CHARGING_VOLTS * values.get(e, 0));
      }
    }
    OperatingPoint point = plan.states().with(values, "charging", likely);
    double load = plan.batteryAmps(point);
    double working = value("chargeAmps", PartSpec.Battery::chargeAmps);
    double idle = value("chargeIdleAmps", PartSpec.Battery::chargeIdleAmps);
    double hours = load > idle ? MAY_LOSE * ampHours() / (load - idle) : 0;
    plan.add(
        new Figure(
            id,
            Figure.Kind.CHARGE_AMPS,
            load,
            MAY_USE * working,
            likely,
            biggest(point),
            List.of(working, idle, hours, known(battery.chargeAmps()))));
  }

  /** The loads and coils that take most in a state, the greatest first. */
  private List<String> biggest(OperatingPoint point) {
    double whole = plan.batteryAmps(point);
    Map<String, Double> takes = new HashMap<>();
    for (int e = 0; e < plan.network().elements().size(); e++) {
      Element element = plan.network().elements().get(e);
      boolean consumes = plan.works(element) || element instanceof Element.Coil;
      double amps = Math.abs(point.amps(e));
      if (consumes && amps > Math.max(NAMED_AMPS, NAMED_SHARE * whole)) {
        takes.merge(Noticed.name(element), amps, Double::sum);
      }
    }
    List<String> names = new ArrayList<>(takes.keySet());
    names.sort((a, b) -> Double.compare(Plan.about(takes.get(b)), Plan.about(takes.get(a))));
    return names.subList(0, Math.min(MOST_NAMED, names.size()));
  }
}
