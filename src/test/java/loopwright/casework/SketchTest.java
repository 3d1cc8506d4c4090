package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.solver.Rig;
import org.junit.jupiter.api.Test;

/** Drawings from the wiring alone, followed by hand. */
class SketchTest {

  @Test
  void aBranchIsNamedAfterItsLoadEvenIfItsRelayFeedsTheCoilFromTheContact() {
    PartSpec.Relay relay =
        new PartSpec.Relay(
            false,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            PartSpec.Suppression.NONE,
            Optional.empty());
    Vehicle rig =
        Rig.of(12)
            .battery(12.6, 0.01, "feed")
            .part("K1", relay, "feed", "switched", "feed", "out")
            .onOff("S1", 0.01, "switched", "0")
            .lamp("L1", 21, 12, "out", "0")
            .lamp("L2", 21, 12, "out", "0")
            .vehicle();
    List<LoadRef> both = List.of(LoadRef.of("L1"), LoadRef.of("L2"));
    Circuit circuit = new Circuit("lamps", "lamps", both, Map.of("S1", "on"), "");
    Vehicle vehicle = rig.with(rig.parts(), rig.joins(), List.of(circuit));

    Sketch sketch = new Sketch(vehicle);

    assertThat(sketch.of("lamps").orElseThrow().branches())
        .extracting(LoopView::title)
        .containsExactly(title(vehicle, "K1"), title(vehicle, "L2"));
    assertThat(sketch.circuitOf("L2", List.of())).contains("lamps");
  }

  private static String title(Vehicle vehicle, String id) {
    return vehicle.part(id).map(Part::title).orElseThrow();
  }
}
