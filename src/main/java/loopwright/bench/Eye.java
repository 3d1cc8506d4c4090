package loopwright.bench;

import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Typicals;
import loopwright.model.Vehicle;
import loopwright.solver.TestLamp;

/** What a person with two hands, an eye and a test lamp sees on a vehicle with hidden failures. */
public final class Eye {
  private final Vehicle vehicle;
  private final HiddenTruth truth;
  private final TestLamp forFuse;
  private final TestLamp forDrain;

  /** An eye on one vehicle. */
  public Eye(Vehicle vehicle, Typicals typicals, HiddenTruth truth) {
    this.vehicle = vehicle;
    this.truth = truth;
    this.forFuse = TestLamp.forFuse(vehicle.systemVolts(), typicals);
    this.forDrain = TestLamp.forDrain(vehicle.systemVolts(), typicals);
  }

  /** How a load looks, or the lamp in the grounded lead if the battery is named. */
  public HiddenTruth.Sight load(LoadRef load, Setting setting) {
    return vehicle.requirePart(load.part()).kind() == PartKind.BATTERY
        ? truth.lampInLead(setting, forDrain)
        : truth.look(load, setting, vehicle.onSetting(load, setting));
  }

  /** How the lamp in a fuse's place burns. */
  public HiddenTruth.Sight lampForFuse(String fuse, Setting setting) {
    return truth.lampForFuse(fuse, setting, forFuse);
  }

  /** How a load looks with a good twin in a part's place. */
  public HiddenTruth.Sight swapped(String part, LoadRef load, Setting setting) {
    return truth.swapped(part, load, setting, vehicle.onSetting(load, setting));
  }

  /** Whether a load changes while a part is moved. */
  public boolean changes(String part, LoadRef load, Setting setting) {
    return truth.changes(part, load, setting, vehicle.onSetting(load, setting));
  }
}
