package loopwright.casework.pattern;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.model.PartSpec;

/** A flasher unit, drawn as a contact that its own heat moves, and the turn stalk behind it. */
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

  /** Adds the turn stalk; at rest it stands in the middle. */
  static String stalk(
      Harness h, List<String> terminals, List<PartSpec.SwitchContact> contacts, double amps) {
    double rating = h.contact(amps);
    return h.add(
        "S",
        h.basis().words().say("part.stalk"),
        new PartSpec.Switch(
            terminals,
            List.of("middle", "left", "right"),
            contacts,
            PartSpec.Control.MANUAL,
            false,
            Harness.contactOhms(rating),
            Optional.of(rating)),
        "column",
        h.whyContact(amps));
  }

  /** Feeds the flasher from a fuse, and the stalk's 49a from the flasher. */
  static void wire(Harness h, Answers a, Harness.Fused fuse, String flasher, String stalk)
      throws Problem {
    h.wire(fuse, Harness.at(flasher, "49"), 0.5, h.words("wire.to-flasher"));
    h.wire(
        h.run(Side.SWITCHED, fuse.amps()),
        Harness.at(flasher, "49a"),
        Harness.at(stalk, "49a"),
        a.number("to-stalk"),
        h.words("wire.to-stalk"));
  }
}
