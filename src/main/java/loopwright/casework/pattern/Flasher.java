package loopwright.casework.pattern;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.model.PartSpec;

/** A flasher unit, drawn as a contact that its own heat moves. */
final class Flasher {
  private Flasher() {}

  /** Adds it: 49 is fed, 49a goes to the stalk; at rest its contact is closed. */
  static String add(Harness h, double amps) {
    h.note("flasher.note");
    return h.add(
        "FU",
        h.basis().words().say("part.flasher"),
        new PartSpec.Switch(
            List.of("49", "49a"),
            List.of("lit", "dark"),
            List.of(new PartSpec.SwitchContact("49", "49a", Set.of("lit"))),
            PartSpec.Control.TEMPERATURE,
            false,
            Harness.contactOhms(h.contact(amps)),
            Optional.of(h.contact(amps))),
        "dash",
        h.words("why.flasher", amps));
  }
}
