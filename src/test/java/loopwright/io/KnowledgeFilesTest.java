package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.solver.Failure;
import loopwright.solver.Network;
import org.junit.jupiter.api.Test;

class KnowledgeFilesTest {
  private static final Knowledge KNOWLEDGE = KnowledgeFiles.readBundled().orThrow();

  @Test
  void everyKindOfPartButTheBodyHasFailureModes() {
    for (PartKind kind : PartKind.values()) {
      assertThat(KNOWLEDGE.faults(kind).isEmpty()).as(kind.word()).isEqualTo(kind == PartKind.BODY);
    }
  }

  @Test
  void everyModeCanBePutIntoTheNetworkOfAVehicleThatHasEveryKindOfPart() {
    Vehicle vehicle = Vehicles.allKinds();
    Network network = Network.of(vehicle, KNOWLEDGE.typicals());
    List<String> applied = new java.util.ArrayList<>();
    for (Part part : vehicle.parts()) {
      for (Failure failure : Failure.of(network, part, KNOWLEDGE.faults())) {
        Spread added = failure.continuum().orElse(Spread.exactly(1));
        assertThat(failure.changes(network, added))
            .as(part.id() + " " + failure.name())
            .isNotEmpty();
        applied.add(part.kind().word() + "/" + failure.mode().mode());
      }
    }
    for (FaultMode mode : KNOWLEDGE.faults()) {
      boolean needsNeighbour = mode.mode().equals("short-to-neighbour");
      if (!needsNeighbour) {
        assertThat(applied).contains(mode.kind().word() + "/" + mode.mode());
      }
    }
  }

  @Test
  void everyRateIsKnownInEveryContextAndNamesItsSource() {
    for (FaultMode mode : KNOWLEDGE.faults()) {
      assertThat(mode.rates()).containsOnlyKeys(Context.values());
      assertThat(mode.source()).isNotBlank();
    }
  }

  @Test
  void aTenAmpereFuseHasTheTabledLinkPlusItsHolder() {
    // reference/fuse.csv: 7.69 mohm +-15 percent; holder 1, 3, 10 mohm.
    Spread ohms = KNOWLEDGE.typicals().fuseOhms(10);
    assertThat(ohms.low()).isCloseTo(0.00769 * 0.85 + 0.001, within(1e-9));
    assertThat(ohms.typical()).isCloseTo(0.01069, within(1e-9));
    assertThat(ohms.high()).isCloseTo(0.00769 * 1.15 + 0.01, within(1e-9));
  }

  @Test
  void usualValuesSufficeForEveryKindOfPartAtEverySystemVoltage() {
    for (int volts : VehicleCheck.SYSTEM_VOLTS) {
      String json =
          Vehicles.ALL_KINDS
              .replace("\"system_volts\": 12", "\"system_volts\": " + volts)
              .replaceAll("\"volts\": 12.6,", "")
              .replaceAll("\"(coil_|contact_|end_)?ohms\": [0-9.]+,? ?", "")
              .replaceAll("\"(pull_in|drop_out|forward)_volts\": [0-9.]+,", "")
              .replace("\"forward_volts\": 0.7", "\"label\": \"\"")
              .replace(", \"stall_amps\": 25", "")
              .replaceAll(",\\s*}", "}");
      Vehicle vehicle = VehicleFile.read(json, "mule.json").orThrow();
      Network network = Network.of(vehicle, KNOWLEDGE.typicals());
      assertThat(network.elements()).hasSizeGreaterThan(vehicle.parts().size());
    }
  }

  @Test
  void copperHasTheResistivityOfTheStandard() {
    // IEC 60028: 1.7241e-8 ohm m at 20 C, 0.00393 per C.
    assertThat(KNOWLEDGE.typicals().constant("copper-resistivity").typical()).isEqualTo(0.017241);
    assertThat(KNOWLEDGE.typicals().constant("copper-temperature-coefficient").typical())
        .isEqualTo(0.00393);
  }

  @Test
  void fuseResistanceBetweenAndBeyondTheTabledRatingsFollowsTheirPowerLaw() {
    // reference/fuse.csv: R = 7.69 mohm (10 A / I)^1.21; the table is rounded to 0.01 mohm.
    for (double amps : new double[] {0.5, 6, 12, 18, 60}) {
      double link = 0.00769 * Math.pow(10 / amps, 1.21);
      assertThat(KNOWLEDGE.typicals().fuseOhms(amps).typical())
          .as(amps + " A")
          .isCloseTo(link + 0.003, within(0.01 * link));
    }
  }

  @Test
  void aCircuitOfFifteenPiecesHasNearlyOneFaultExpected() {
    // Common practice: most complaints come from one listed failure, some from something else.
    Map<String, Double> counts =
        Map.ofEntries(
            Map.entry("battery/part", 1.0),
            Map.entry("wire/metre", 10.0),
            Map.entry("wire/contact", 14.0),
            Map.entry("fuse/part", 1.0),
            Map.entry("switch/contact", 1.0),
            Map.entry("relay/part", 1.0),
            Map.entry("relay/contact", 1.0),
            Map.entry("connector/contact", 2.0),
            Map.entry("splice/contact", 3.0),
            Map.entry("lamp/part", 1.0),
            Map.entry("ground/part", 1.0),
            Map.entry("strap/part", 1.0));
    for (Context context : Context.values()) {
      double sum = 0;
      for (FaultMode mode : KNOWLEDGE.faults()) {
        if (mode.condition() == FaultMode.Condition.ALWAYS) {
          String key = mode.kind().word() + "/" + mode.per().word();
          sum += counts.getOrDefault(key, 0.0) * mode.rates().get(context);
        }
      }
      assertThat(sum).as(context.word()).isBetween(0.7, 0.95);
    }
  }

  @Test
  void contextsDifferInWhatIsLikeliest() {
    assertThat(rate("fuse", "missing", Context.FRESH_BUILD))
        .isGreaterThan(10 * rate("fuse", "missing", Context.IN_SERVICE));
    assertThat(rate("lamp", "burnt-out", Context.IN_SERVICE))
        .isGreaterThan(5 * rate("lamp", "burnt-out", Context.FRESH_BUILD));
    assertThat(rate("wire", "short-to-ground", Context.AFTER_WORK))
        .isGreaterThan(rate("wire", "short-to-ground", Context.IN_SERVICE));
    assertThat(rate("diode", "diode-backwards", Context.FRESH_BUILD))
        .isGreaterThan(20 * rate("diode", "diode-backwards", Context.IN_SERVICE));
  }

  private static double rate(String kind, String mode, Context context) {
    return KNOWLEDGE.faults().stream()
        .filter(m -> m.kind().word().equals(kind) && m.mode().equals(mode))
        .findFirst()
        .orElseThrow()
        .rates()
        .get(context);
  }

  @Test
  void everyRequiredModeIsThere() {
    List<String> modes =
        KNOWLEDGE.faults().stream().map(m -> m.kind().word() + " " + m.mode()).toList();
    assertThat(modes)
        .contains(
            "wire open",
            "wire high-resistance",
            "wire short-to-ground",
            "wire short-to-feed",
            "wire short-to-neighbour",
            "wire unseated",
            "fuse blown",
            "fuse missing",
            "fuse wrong-rating",
            "switch stuck-open",
            "switch stuck-closed",
            "switch worn-contact",
            "relay stuck-open",
            "relay stuck-closed",
            "relay worn-contact",
            "relay coil-open",
            "relay coil-shorted",
            "relay diode-open",
            "relay diode-shorted",
            "relay diode-backwards",
            "relay swapped-30-87",
            "relay swapped-87-87a",
            "relay swapped-85-86",
            "diode diode-open",
            "diode diode-shorted",
            "diode diode-backwards",
            "connector unseated",
            "lamp burnt-out",
            "lamp wrong-lamp",
            "dual-lamp ground-lost",
            "ground on-paint",
            "ground loose",
            "battery flat",
            "battery weak",
            "battery clamp-loose",
            "strap clamp-loose",
            "motor seized")
        .doesNotHaveDuplicates();
    assertThat(KNOWLEDGE.testSlip()).isEqualTo(0.03);
  }

  @Test
  void theMetersErrIsWhatTheirSheetsSay() {
    // reference/meter.csv, worked bands: 12.6 V +-0.0830 V and +-0.0930 V, 0.5 ohm +-0.204 ohm.
    MeterSpec basic = KNOWLEDGE.meter("basic").orElseThrow();
    MeterSpec better = KNOWLEDGE.meter("better").orElseThrow();
    assertThat(basic.error(MeterFunction.VOLTS_DC, 12.6)).isCloseTo(0.0830, within(1e-9));
    assertThat(basic.error(MeterFunction.OHMS, 0.5)).isCloseTo(0.204, within(1e-9));
    assertThat(better.error(MeterFunction.VOLTS_DC, 12.6)).isCloseTo(0.0930, within(1e-9));
    assertThat(KNOWLEDGE.meter("old").orElseThrow().inputOhms()).isEqualTo(1e6);
  }
}
