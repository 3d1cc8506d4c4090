package loopwright.published;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.paper.Plan;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Rig;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Published values of batteries, read from {@code battery.csv} by their source. */
class PublishedBatteriesTest {
  private static final String COUNCIL = "Battery Council International";

  private static List<Map<String, String>> rows(String quantity, int system, String source) {
    return Csv.rows("/knowledge/reference/battery.csv").stream()
        .filter(r -> r.get("quantity").equals(quantity))
        .filter(r -> r.get("system_V").equals(Integer.toString(system)))
        .filter(r -> r.get("source").startsWith(source))
        .toList();
  }

  private static double charged(int system, int percent) {
    return rows("open-circuit voltage", system, COUNCIL).stream()
        .filter(r -> r.get("condition").startsWith(percent + " percent"))
        .mapToDouble(r -> Double.parseDouble(r.get("typical")))
        .findFirst()
        .orElseThrow();
  }

  private static Spread usual(String quantity, int system) {
    return Bench.KNOWLEDGE.typicals().usual(PartKind.BATTERY, quantity, system);
  }

  /** BATT+ --S1--(R)-- BATT-, the battery as nobody measured it, between its posts. */
  private static Vehicle unmeasured(int system) {
    Vehicle vehicle =
        Rig.of(system)
            .battery(system, 0.01, "top")
            .onOff("S1", 0.01, "top", "on")
            .resistor("R", system, "on", "0")
            .circuit("c", "R", "S1=on")
            .vehicle();
    PartSpec.Battery bare =
        new PartSpec.Battery(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new Vehicle(
        vehicle.id(),
        vehicle.name(),
        vehicle.systemVolts(),
        vehicle.grounded(),
        vehicle.parts().stream()
            .map(p -> p.kind() == PartKind.BATTERY ? Part.of(p.id(), p.name(), bare) : p)
            .toList(),
        vehicle.joins(),
        vehicle.circuits(),
        "");
  }

  /**
   * Council's table of charge: a rested battery from half charged to full is healthy and reads so;
   * one at a quarter isn't healthy, but the meter's error may hide that; a flat one shows.
   */
  @ParameterizedTest
  @ValueSource(ints = {6, 12, 24})
  void aRestedBatteryReadsHealthyFromHalfChargedOn(int system) {
    Vehicle vehicle = unmeasured(system);
    Workbench bench =
        new Workbench(
            Bench.network(vehicle), Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("better").orElseThrow());
    double[] band =
        new HealthyBands(bench)
            .band(
                Check.measure(
                    CheckKind.VOLTS, vehicle.feedPost(), vehicle.groundedPost(), Setting.REST));
    for (int percent : new int[] {50, 75, 100}) {
      assertThat(charged(system, percent)).as("%d percent", percent).isBetween(band[0], band[1]);
      assertThat(usual("volts", system).holds(charged(system, percent))).isTrue();
    }
    assertThat(usual("volts", system).holds(charged(system, 25))).isFalse();
    assertThat(charged(system, 0)).isLessThan(band[0]);
  }

  /** The trade's usual values, and the half-CCA load test's limit for the smallest battery. */
  @ParameterizedTest
  @CsvSource({"6, 2", "12, 1", "24, 0.5"})
  void aBatteryNobodyMeasuredHasAnUsualResistance(int system, double batteries) {
    Map<String, String> healthy =
        rows("internal resistance, healthy", system, "trade rule of thumb").get(0);
    Spread ohms = usual("ohms", system);
    assertThat(1000 * ohms.typical())
        .isBetween(Double.parseDouble(healthy.get("low")), Double.parseDouble(healthy.get("high")));
    double most =
        rows("internal resistance, greatest that still passes half-CCA test", 12, "from the half")
            .stream()
            .mapToDouble(r -> Double.parseDouble(r.get("high")))
            .max()
            .orElseThrow();
    assertThat(1000 * ohms.high()).isLessThanOrEqualTo(most / batteries);
  }

  /**
   * US Army TM 10-3930-671-24 (12 V, after 15 s), TM 9-2320-211-20 (24 V), half of 9.6 V for 6 V
   * (common practice): a sound vehicle's battery stands above the least volts while cranking.
   */
  @ParameterizedTest
  @ValueSource(strings = {"pumper", "motorcycle", "truck", "tractor"})
  void aSoundStarterLeavesTheBatteryAboveTheLeastCrankingVolts(String name) {
    Vehicle vehicle = Bench.vehicle(name);
    double least =
        rows("cranking voltage, minimum", vehicle.systemVolts(), "").stream()
            .mapToDouble(r -> Double.parseDouble(r.get("low")))
            .max()
            .orElseThrow();
    Plan plan = new Plan(vehicle, Bench.KNOWLEDGE.typicals(), Bench.KNOWLEDGE.wireFuses());
    Setting cranking =
        vehicle.circuits().stream()
            .map(c -> c.onSetting())
            .filter(plan::cranks)
            .findFirst()
            .orElseThrow();
    OperatingPoint point = plan.point(cranking);
    double volts =
        Math.abs(
            point.volts(plan.network().requireNode(vehicle.feedPost()))
                - point.volts(plan.network().requireNode(vehicle.groundedPost())));
    assertThat(volts)
        .isBetween(least, charged(vehicle.systemVolts(), 100))
        .as("it does crank")
        .isLessThan(0.98 * charged(vehicle.systemVolts(), 75));
  }
}
