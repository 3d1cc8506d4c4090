package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.List;
import loopwright.model.GroundedPole;

/** Edits of a vehicle's own values. */
public final class VehicleEdits {
  private VehicleEdits() {}

  /** Says what people call the vehicle; may not be empty. */
  public static Edit name(String name) {
    return Edit.of(
        EditWords.say("vehicle", name),
        before -> {
          if (name.isBlank()) {
            throw EditWords.problem("name", name, "vehicle.name");
          }
          return new Edit.Made(before.withName(name), List.of());
        });
  }

  /**
   * Gives the vehicle another system voltage or grounded post. Its parts and wires stay as they
   * are; what has to be looked at is told.
   *
   * @param volts 6, 12 or 24
   */
  public static Edit supply(int volts, GroundedPole grounded) {
    return Edit.of(
        EditWords.say("supply." + grounded.word(), Integer.toString(volts)),
        before -> {
          List<String> told = new ArrayList<>();
          if (volts != before.systemVolts()) {
            told.add(EditWords.say("supply.volts", Integer.toString(volts)));
          }
          if (grounded != before.grounded()) {
            told.add(EditWords.say("supply.posts." + grounded.word()));
          }
          return new Edit.Made(before.withSupply(volts, grounded), told);
        });
  }
}
