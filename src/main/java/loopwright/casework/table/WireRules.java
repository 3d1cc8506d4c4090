package loopwright.casework.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.table.SpecRule.Entry;
import loopwright.casework.table.SpecRule.Need;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.Units;
import loopwright.model.WireSize;

/** The values of wires and straps. */
final class WireRules {

  private WireRules() {}

  private static Rule rule(
      Column column,
      Need need,
      SpecRule.Getter<PartSpec.Wire> get,
      SpecRule.Setter<PartSpec.Wire> set) {
    return new SpecRule(column, List.of(new Entry<>(PartSpec.Wire.class, need, get, set)));
  }

  static Rule from() {
    return rule(
        Column.FROM,
        Need.REQUIRED,
        w -> w.from().toString(),
        (d, w, t) -> w.withEnds(PartRules.end(d, Column.FROM, t), w.to()));
  }

  static Rule to() {
    return rule(
        Column.TO,
        Need.REQUIRED,
        w -> w.to().toString(),
        (d, w, t) -> w.withEnds(w.from(), PartRules.end(d, Column.TO, t)));
  }

  static Rule size() {
    return rule(
        Column.SIZE, Need.REQUIRED, w -> w.size().shown(), (d, w, t) -> w.withSize(size(d, w, t)));
  }

  /**
   * A bare number is taken in the unit preferred, else in the one that all other wires of the
   * vehicle have, where they agree.
   */
  private static WireSize size(Draft draft, PartSpec own, String text) throws Problem {
    Optional<WireSize> plain = Said.size(text, Optional.empty());
    if (plain.isPresent()) {
      return plain.get();
    }
    Set<WireSize.Unit> units = new HashSet<>();
    for (Part part : draft.parts()) {
      if (part.spec() instanceof PartSpec.Wire w && w != own) {
        units.add(w.size().unit());
      }
    }
    Optional<WireSize.Unit> usual =
        Units.inUse().size().or(() -> units.stream().findFirst().filter(u -> units.size() == 1));
    boolean bare = text.strip().matches("\\d{1,2}");
    return Said.size(text, usual)
        .orElseThrow(
            () ->
                Words.bad(
                    Column.SIZE,
                    text,
                    Words.say("size") + (bare ? Words.say("size.either", text.strip()) : "")));
  }

  static Rule metres() {
    return rule(
        Column.METRES,
        Need.REQUIRED,
        w -> length(w.metres()),
        // What stands there is rounded; unchanged it must not shorten the wire.
        (d, w, t) -> t.strip().equals(length(w.metres())) ? w : w.withMetres(typed(t)));
  }

  /** A length in the unit in use, without it, as {@link #typed} reads it. */
  private static String length(Estimate metres) {
    return Said.spoken(Units.inUse().feet() ? inFeet(metres) : metres, Quantity.LENGTH);
  }

  private static Estimate inFeet(Estimate metres) {
    return metres
        .limits()
        .map(s -> Estimate.between(inFeet(s.low()), inFeet(metres.about()), inFeet(s.high())))
        .orElseGet(() -> Estimate.of(inFeet(metres.about())));
  }

  /** Hundredths of a foot are 3 mm. */
  private static double inFeet(double metres) {
    return BigDecimal.valueOf(metres)
        .divide(Units.inUse().metres(), 2, RoundingMode.HALF_UP)
        .doubleValue();
  }

  private static Estimate typed(String text) throws Problem {
    return Said.amount(text, Quantity.LENGTH, Units.inUse().metres())
        .orElseThrow(() -> Words.refused(Column.METRES, text, Quantity.LENGTH));
  }

  static Rule endOhms() {
    return rule(
        Column.OHMS,
        Need.OPTIONAL,
        w -> Words.spoken(w.endOhms(), Quantity.OHMS),
        (d, w, t) -> w.withEndOhms(Words.maybe(Column.OHMS, t, Quantity.OHMS)));
  }

  static Rule colour() {
    return rule(Column.COLOUR, Need.OPTIONAL, PartSpec.Wire::colour, (d, w, t) -> w.withColour(t));
  }

  static Rule loom() {
    return rule(Column.LOOM, Need.OPTIONAL, PartSpec.Wire::loom, (d, w, t) -> w.withLoom(t));
  }
}
