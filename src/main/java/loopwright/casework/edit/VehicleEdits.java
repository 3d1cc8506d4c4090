package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.model.GroundedPole;

/** Edits of a vehicle's own values. */
public final class VehicleEdits {
  private VehicleEdits() {}

  /** Says what people call the vehicle; may not be empty. */
  public static Edit name(String name) {
    return Edit.of(
        "name the vehicle " + name,
        before -> {
          if (name.isBlank()) {
            throw new Problem("name", name, "what people call the vehicle");
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
        volts + " V, " + grounded.word() + " post grounded",
        before -> {
          List<String> told = new ArrayList<>();
          if (volts != before.systemVolts()) {
            told.add(
                "Parts keep their values: look through amperes, coil ohms, rated volts and fuses"
                    + " for "
                    + volts
                    + " V");
          }
          if (grounded != before.grounded()) {
            told.add(
                "Wires stay on the posts they lie on: the "
                    + grounded.word()
                    + " post goes to the body now, the other one feeds");
          }
          return new Edit.Made(before.withSupply(volts, grounded), told);
        });
  }
}
