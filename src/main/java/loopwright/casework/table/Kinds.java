package loopwright.casework.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;

/** A part that turns out to be of another kind. */
final class Kinds {
  private Kinds() {}

  /**
   * Values of another kind, with those kept that both have. What a lamp takes in watts is turned
   * into amperes at the system voltage for a load that says them, and back.
   *
   * @throws Problem if a value that the other kind must have can't be told from this one
   */
  static PartSpec changed(PartSpec from, PartKind kind, int systemVolts) throws Problem {
    if (from instanceof PartSpec.Wire w && (kind == PartKind.WIRE || kind == PartKind.STRAP)) {
      return w.withKind(kind);
    }
    PartSpec blank = Blanks.of(kind);
    if (blank instanceof PartSpec.Connector && from instanceof PartSpec.Splice s) {
      return new PartSpec.Connector(s.legs(), s.ohms());
    }
    if (blank instanceof PartSpec.Splice && from instanceof PartSpec.Connector c) {
      return new PartSpec.Splice(c.cavities(), c.ohms());
    }
    if (kind.isLoad()) {
      return load(from, blank, systemVolts);
    }
    if (kind == PartKind.SENDER) {
      throw Words.bad(Column.KIND, kind.said(), Words.say("sender"));
    }
    return blank;
  }

  private static PartSpec load(PartSpec from, PartSpec blank, int systemVolts) {
    Optional<Estimate> watts = watts(from);
    Estimate amps =
        amps(from)
            .or(() -> watts.map(w -> scaled(w, 1.0 / systemVolts, Quantity.AMPS)))
            .orElseThrow();
    Estimate power = watts.orElseGet(() -> scaled(amps, systemVolts, Quantity.WATTS));
    if (blank instanceof PartSpec.PlainLoad p) {
      return new PartSpec.PlainLoad(p.kind(), amps);
    }
    if (blank instanceof PartSpec.Motor) {
      return new PartSpec.Motor(amps, Optional.empty());
    }
    if (blank instanceof PartSpec.Led) {
      return new PartSpec.Led(Optional.empty(), amps);
    }
    if (blank instanceof PartSpec.DualLamp d) {
      return new PartSpec.DualLamp(d.first(), power, d.second(), power, Optional.empty());
    }
    return new PartSpec.Lamp(Optional.empty(), power);
  }

  private static Optional<Estimate> amps(PartSpec spec) {
    if (spec instanceof PartSpec.PlainLoad p) {
      return Optional.of(p.amps());
    }
    if (spec instanceof PartSpec.Motor m) {
      return Optional.of(m.amps());
    }
    return spec instanceof PartSpec.Led l ? Optional.of(l.amps()) : Optional.empty();
  }

  private static Optional<Estimate> watts(PartSpec spec) {
    if (spec instanceof PartSpec.Lamp l) {
      return Optional.of(l.watts());
    }
    return spec instanceof PartSpec.DualLamp d ? Optional.of(d.firstWatts()) : Optional.empty();
  }

  private static Estimate scaled(Estimate value, double factor, Quantity quantity) {
    BigDecimal figure =
        new BigDecimal(value.about() * factor).round(new MathContext(2)).stripTrailingZeros();
    return Said.listed("about " + figure.toPlainString(), quantity, BigDecimal.ONE).orElseThrow();
  }
}
