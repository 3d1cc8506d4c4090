package loopwright.casework.pattern;

import loopwright.model.Part;
import loopwright.model.PartSpec;

/** A part's kind and main value in words. */
final class PartValues {
  private PartValues() {}

  static String of(Part part) {
    PartSpec spec = part.spec();
    String kind = part.kind().word();
    if (spec instanceof PartSpec.Wire w) {
      return w.size()
          + ", about "
          + Answers.number(w.metres().about())
          + " m, "
          + w.colour()
          + ", "
          + w.from()
          + " to "
          + w.to();
    }
    if (spec instanceof PartSpec.Fuse f) {
      return kind + ", " + Answers.number(f.amps()) + " A";
    }
    if (spec instanceof PartSpec.Switch s) {
      return kind
          + ", "
          + String.join(" or ", s.positions())
          + s.amps().map(a -> ", " + Answers.number(a) + " A").orElse("");
    }
    if (spec instanceof PartSpec.Relay r) {
      return kind + r.amps().map(a -> ", " + Answers.number(a) + " A").orElse("");
    }
    if (spec instanceof PartSpec.Lamp l) {
      return kind + ", " + Answers.number(l.watts().about()) + " W";
    }
    if (spec instanceof PartSpec.DualLamp d) {
      return "lamp, "
          + d.first()
          + " "
          + Answers.number(d.firstWatts().about())
          + " W, "
          + d.second()
          + " "
          + Answers.number(d.secondWatts().about())
          + " W";
    }
    if (spec instanceof PartSpec.Motor m) {
      return kind + ", " + Answers.number(m.amps().about()) + " A";
    }
    if (spec instanceof PartSpec.PlainLoad p) {
      return kind + ", " + Answers.number(p.amps().about()) + " A";
    }
    return kind;
  }
}
