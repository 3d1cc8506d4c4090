package loopwright.ui.vehicle;

import java.util.Locale;
import loopwright.model.Estimate;
import loopwright.model.Language;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Units;
import loopwright.ui.Texts;

/** What a part is, in a few words: its rating, size or positions. */
final class PartWords {
  private PartWords() {}

  static String of(Part part) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Wire w) {
      return Texts.of(
              "part.wire",
              Units.inUse().size(w.size()),
              Units.inUse().length(w.metres().about(), 2),
              w.from().toString(),
              w.to().toString())
          + (w.colour().isEmpty() ? "" : ", " + w.colour());
    }
    if (spec instanceof PartSpec.Fuse f) {
      return Texts.of("part.amps", number(f.amps()));
    }
    if (spec instanceof PartSpec.Switch s) {
      return String.join(" / ", s.positions());
    }
    if (spec instanceof PartSpec.Relay r) {
      return Texts.of(r.changeover() ? "part.relay5" : "part.relay4");
    }
    if (spec instanceof PartSpec.Lamp l) {
      return Texts.of("part.watts", number(l.watts()));
    }
    if (spec instanceof PartSpec.DualLamp d) {
      return Texts.of("part.dual", number(d.firstWatts()), number(d.secondWatts()));
    }
    if (spec instanceof PartSpec.Motor m) {
      return Texts.of("part.amps", number(m.amps()));
    }
    if (spec instanceof PartSpec.PlainLoad p) {
      return Texts.of("part.amps", number(p.amps()));
    }
    if (spec instanceof PartSpec.Led l) {
      return Texts.of("part.amps", number(l.amps()));
    }
    if (spec instanceof PartSpec.Connector c) {
      return Texts.of("part.cavities", c.cavities().size());
    }
    return "";
  }

  private static String number(Estimate estimate) {
    return number(estimate.about());
  }

  private static String number(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : Language.marked(String.format(Locale.ROOT, "%.2f", value).replaceAll("0$", ""));
  }
}
