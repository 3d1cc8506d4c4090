package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Knowledge;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Spread;
import loopwright.model.Vehicle;
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
}
