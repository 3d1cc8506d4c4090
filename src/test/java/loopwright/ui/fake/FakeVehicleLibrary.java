package loopwright.ui.fake;

import java.util.List;
import loopwright.ui.VehicleLibrary;

/** One good vehicle and one with defects. */
public final class FakeVehicleLibrary implements VehicleLibrary {
  @Override
  public List<Entry> entries() {
    return List.of(
        new Entry("pumper.json", "Light pumper", "12 V, negative ground, 5 circuits", Shelf.DEMO),
        new Entry("tractor.json", "Tractor", "6 V, positive ground, 3 circuits", Shelf.DEMO),
        new Entry("broken.json", "Half-drawn buggy", "opened yesterday", Shelf.RECENT));
  }

  @Override
  public Loaded load(String name) {
    if (name.equals("broken.json")) {
      return new Loaded.Faulty(
          List.of(
              "wire W7: its end 'F9.load' is on no part [broken.json, wires[6].to]",
              "fuse F2: rating is 0 A, must be above 0 [broken.json, parts[3].amps]"));
    }
    return new Loaded.Ready(name, FakeVehicles.pumper());
  }
}
