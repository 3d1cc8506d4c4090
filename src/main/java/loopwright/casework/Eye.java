package loopwright.casework;

import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.Typicals;
import loopwright.model.Vehicle;
import loopwright.solver.TestLamp;

/** What a person with two hands, an eye and a test lamp sees on a vehicle with hidden failures. */
public final class Eye {
  private final Vehicle vehicle;
  private final HiddenTruth truth;
  private final LoadRef watched;
  private final TestLamp forFuse;
  private final TestLamp forDrain;

  /**
   * An eye on one vehicle.
   *
   * @param watched the load that is watched while a part is swapped or moved
   */
  public Eye(Vehicle vehicle, Typicals typicals, HiddenTruth truth, LoadRef watched) {
    this.vehicle = vehicle;
    this.truth = truth;
    this.watched = watched;
    this.forFuse = TestLamp.forFuse(vehicle.systemVolts(), typicals);
    this.forDrain = TestLamp.forDrain(vehicle.systemVolts(), typicals);
  }

  /**
   * What a check without leads shows.
   *
   * @param kind a kind that isn't metered
   * @param subject what is looked at, swapped, moved or stood in for; the battery for the lamp in
   *     its grounded lead
   * @throws IllegalArgumentException if the vehicle has no such part
   */
  public Seen sees(CheckKind kind, LoadRef subject, Setting setting) {
    return switch (kind) {
      case LAMP_FOR_FUSE -> seen(truth.lampForFuse(subject.part(), setting, forFuse));
      case SWAP ->
          seen(
              truth.swapped(subject.part(), watched, setting, vehicle.onSetting(watched, setting)));
      case WIGGLE, WARM, LOAD ->
          truth.changes(
                  kind.provokes().orElseThrow(),
                  subject.part(),
                  watched,
                  setting,
                  vehicle.onSetting(watched, setting))
              ? Seen.CHANGES
              : Seen.STEADY;
      default -> looksAt(subject, setting);
    };
  }

  private Seen looksAt(LoadRef subject, Setting setting) {
    String part = subject.part();
    return switch (vehicle.requirePart(part).kind()) {
      case BATTERY -> seen(truth.lampInLead(setting, forDrain));
      case RELAY -> truth.clicks(part, setting) ? Seen.CLICKS : Seen.SILENT;
      case FUSE -> truth.fuseGone(part) ? Seen.BROKEN : Seen.WHOLE;
      default -> seen(truth.look(subject, setting, vehicle.onSetting(subject, setting)));
    };
  }

  private static Seen seen(HiddenTruth.Sight sight) {
    return switch (sight) {
      case ON -> Seen.ON;
      case DIM -> Seen.DIM;
      case OFF -> Seen.OFF;
    };
  }
}
