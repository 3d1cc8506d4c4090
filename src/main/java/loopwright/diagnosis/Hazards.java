package loopwright.diagnosis;

import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;

/** What is dangerous about a part, as far as its kind, rating and name tell. */
public final class Hazards {

  /** A motor above this current is a starter. Common practice. */
  static final double STARTER_AMPS = 50;

  /** A filament above this power burns a hand. Common practice. */
  private static final double HOT_WATTS = 20;

  private Hazards() {}

  /** Whether a part is an alternator: a diode, standing for all of its own, that is named so. */
  public static boolean alternator(Part part) {
    return part.kind() == PartKind.DIODE && of(part).contains("charging");
  }

  /**
   * The dangers of a part, a word each: airbag, battery, charging, electronics, fuel, hot, moving,
   * starter.
   */
  public static Set<String> of(Part part) {
    Set<String> hazards = new TreeSet<>();
    String name = (part.name() + " " + part.where()).toLowerCase(Locale.ROOT);
    if (part.spec() instanceof PartSpec.Motor m) {
      hazards.add(m.amps().about() > STARTER_AMPS ? "starter" : "moving");
    }
    if (name.contains("starter")) {
      hazards.add("starter");
    }
    if (name.contains("fuel") || name.contains("petrol") || name.contains("tank")) {
      hazards.add("fuel");
    }
    if (name.contains("alternator") || name.contains("generator")) {
      hazards.add("charging");
    }
    if (name.contains("air bag") || name.contains("airbag")) {
      hazards.add("airbag");
    }
    if (name.contains("fan") && part.kind() == PartKind.MOTOR) {
      hazards.add("moving");
    }
    if (part.kind() == PartKind.BATTERY) {
      hazards.add("battery");
    }
    if (part.kind() == PartKind.ELECTRONICS) {
      hazards.add("electronics");
    }
    if (part.spec() instanceof PartSpec.Lamp l && l.watts().about() >= HOT_WATTS) {
      hazards.add("hot");
    }
    if (part.kind() == PartKind.HEATER) {
      hazards.add("hot");
    }
    return hazards;
  }
}
