package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import loopwright.casework.edit.VehicleEdits;
import loopwright.model.GroundedPole;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told.Tone;

/** What can be done with the vehicle's own values; the new ones are asked for. */
final class VehicleActions {
  private final WiringViewModel work;
  private final Consumer<Ask> ask;

  VehicleActions(WiringViewModel work, Consumer<Ask> ask) {
    this.work = work;
    this.ask = ask;
  }

  private void withVehicle(Consumer<Vehicle> action) {
    work.vehicleProperty()
        .get()
        .ifPresentOrElse(action, () -> work.tell(Tone.PROBLEM, Texts.of("wiring.openFirst")));
  }

  /** Another name. */
  void name() {
    withVehicle(
        v ->
            ask.accept(
                Ask.line(
                    Texts.of("wiring.ask.name"),
                    v.name(),
                    name -> work.tryTo(VehicleEdits.name(name)))));
  }

  /** Another system voltage or grounded post. */
  void supply() {
    withVehicle(
        v ->
            ask.accept(
                Ask.choice(
                    Texts.of("wiring.ask.supply", words(v.systemVolts(), v.grounded())),
                    VehicleActions::supplies,
                    this::supplied)));
  }

  private static List<Ask.Option> supplies(String sought) {
    List<Ask.Option> all = new ArrayList<>();
    for (int volts : new int[] {6, 12, 24}) {
      for (GroundedPole grounded : GroundedPole.values()) {
        String words = words(volts, grounded);
        if (words.toLowerCase(Locale.ROOT).contains(sought.toLowerCase(Locale.ROOT))) {
          all.add(new Ask.Option(volts + " " + grounded, words));
        }
      }
    }
    return all;
  }

  private static String words(int volts, GroundedPole grounded) {
    return Texts.of("wiring.supply", volts, grounded.word());
  }

  private void supplied(String key) {
    String[] chosen = key.split(" ");
    work.tryTo(VehicleEdits.supply(Integer.parseInt(chosen[0]), GroundedPole.valueOf(chosen[1])));
  }
}
