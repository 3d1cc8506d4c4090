package loopwright.evidence.generated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Workbench;
import loopwright.evidence.Bench;
import loopwright.io.VehicleFile;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;

/** The made-up vehicles are valid ones, differ from each other and work before anything fails. */
class MadeUpTest {

  @Test
  void everyMadeUpVehicleIsValidAndReadsBackAsWritten() {
    for (int n = 0; n < 300; n++) {
      Vehicle made = MadeUp.vehicle(n);
      String text = VehicleFile.text(made);
      Vehicle read = VehicleFile.read(text, made.id() + ".json").orThrow();
      assertThat(read).as(made.id()).isEqualTo(made);
    }
  }

  @Test
  void theSameNumberGivesTheSameVehicleAndOtherNumbersOthers() {
    Set<String> texts = new HashSet<>();
    Set<MadeUp.Shape> shapes = EnumSet.noneOf(MadeUp.Shape.class);
    Set<String> supplies = new HashSet<>();
    for (int n = 0; n < 60; n++) {
      Vehicle made = MadeUp.vehicle(n);
      assertThat(MadeUp.vehicle(n)).isEqualTo(made);
      texts.add(VehicleFile.text(made));
      shapes.add(MadeUp.shape(n));
      supplies.add(made.systemVolts() + " " + made.grounded());
    }
    assertThat(texts).hasSize(60);
    assertThat(shapes).hasSize(MadeUp.Shape.values().length);
    assertThat(supplies).contains("6 POSITIVE", "12 NEGATIVE", "12 POSITIVE", "24 NEGATIVE");
  }

  @Test
  void everyLoadOfASoundVehicleGetsMostOfTheBatterysVolts() {
    for (int n = 0; n < 300; n++) {
      Vehicle made = MadeUp.vehicle(n);
      Network network = Bench.network(made);
      Workbench bench =
          new Workbench(network, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("basic").orElseThrow());
      for (Circuit circuit : made.circuits()) {
        OperatingPoint point =
            Solver.full(network).solve(Variant.healthy(network), circuit.onSetting());
        assertThat(point.history().blown().cardinality()).as(made.id()).isZero();
        for (LoadRef load : circuit.loads()) {
          int e = bench.loadElement(load);
          double share = Math.abs(point.across(e)) / made.systemVolts();
          // A diode and an indicator's own resistor take their part.
          double least = MadeUp.shape(n) == MadeUp.Shape.LED_WITH_DIODE ? 0.05 : 0.7;
          assertThat(share).as(made.id() + " " + load).isGreaterThan(least);
          assertThat(Math.abs(point.amps(e))).as(made.id() + " " + load).isGreaterThan(1e-3);
        }
      }
    }
  }

  @Test
  void theLoopOfAComplaintHasSevenToTwentyPieces() {
    for (int n = 0; n < 100; n++) {
      Vehicle made = MadeUp.vehicle(n);
      Network network = Bench.network(made);
      Workbench bench =
          new Workbench(network, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meter("basic").orElseThrow());
      Circuit circuit = made.circuit("main").orElseThrow();
      Loop loop =
          Loop.trace(bench, circuit.onSetting(), bench.loadElement(circuit.loads().get(0)))
              .orElseThrow();
      assertThat(loop.pieces()).as(made.id()).hasSizeBetween(7, 20);
    }
  }

  @Test
  void largeVehiclesAreValidAndOfAboutTheSizeAskedFor() {
    for (int parts : new int[] {50, 200, 1000}) {
      assertThat(Fleet.vehicle(parts).parts()).hasSizeBetween(parts - 12, parts + 20);
    }
  }
}
