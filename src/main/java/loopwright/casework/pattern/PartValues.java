package loopwright.casework.pattern;

import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Units;

/** A part's kind and main value in words. */
final class PartValues {
  private PartValues() {}

  static String of(Part part) {
    PartSpec spec = part.spec();
    String kind = part.kind().said();
    if (spec instanceof PartSpec.Wire w) {
      return PatternWords.inUse()
          .say("value.wire", size(w), length(w), w.colour(), w.from(), w.to());
    }
    if (spec instanceof PartSpec.Fuse f) {
      return kind + ", " + Answers.number(f.amps()) + " A";
    }
    if (spec instanceof PartSpec.Switch s) {
      return kind
          + ", "
          + String.join(PatternWords.inUse().say("value.or"), s.positions())
          + s.amps().map(a -> ", " + Answers.number(a) + " A").orElse("");
    }
    if (spec instanceof PartSpec.Relay r) {
      return kind + r.amps().map(a -> ", " + Answers.number(a) + " A").orElse("");
    }
    if (spec instanceof PartSpec.Lamp l) {
      return kind + ", " + Answers.number(l.watts().about()) + " W";
    }
    if (spec instanceof PartSpec.DualLamp d) {
      return PartKind.LAMP.said()
          + ", "
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

  private static String size(PartSpec.Wire wire) {
    return Units.inUse().size(wire.size());
  }

  private static String length(PartSpec.Wire wire) {
    double metres = wire.metres().about();
    return Units.inUse().feet() ? Units.inUse().length(metres, 1) : Answers.number(metres) + " m";
  }
}
