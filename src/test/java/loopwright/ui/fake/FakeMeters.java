package loopwright.ui.fake;

import java.util.List;
import loopwright.meter.MeterSpec;
import loopwright.model.Spread;

/** Two meters to choose from. */
public final class FakeMeters {
  private FakeMeters() {}

  public static List<MeterSpec> both() {
    return List.of(meter("basic", "Cheap 3½ digit meter"), meter("good", "Better 4½ digit meter"));
  }

  private static MeterSpec meter(String id, String name) {
    return new MeterSpec(
        id,
        name,
        List.of(new MeterSpec.Range(20, 0.01, 0.5, 2)),
        List.of(new MeterSpec.Range(200, 0.1, 0.8, 3)),
        new Spread(0.1, 0.2, 0.5),
        1e6,
        2.8,
        1000,
        "invented for tests");
  }
}
