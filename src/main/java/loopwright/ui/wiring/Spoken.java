package loopwright.ui.wiring;

import java.util.Optional;
import loopwright.casework.table.Column;
import loopwright.model.Language;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.Spread;
import loopwright.ui.Texts;

/** Says how far a number was widened, and whose judgement that is. */
final class Spoken {
  private Spoken() {}

  /** In words, for a text of a cell that says "about"; empty for every other. */
  static Optional<String> widened(Column column, String text) {
    return quantity(column)
        .filter(q -> text.startsWith("about ") || text.startsWith(Language.about("")))
        .flatMap(
            q -> Said.amount(text, q).flatMap(e -> e.limits()).map(limits -> words(q, limits)));
  }

  private static String words(Quantity quantity, Spread limits) {
    return Texts.of(
        "wiring.about",
        Said.shown(limits.low()),
        Said.shown(limits.high()),
        quantity.symbol(),
        Math.round(100 * quantity.rough()));
  }

  private static Optional<Quantity> quantity(Column column) {
    return switch (column) {
      case METRES -> Optional.of(Quantity.LENGTH);
      case WATTS -> Optional.of(Quantity.WATTS);
      case AMPS, STALL_AMPS -> Optional.of(Quantity.AMPS);
      case VOLTS, FORWARD_VOLTS, PULL_IN_VOLTS, DROP_OUT_VOLTS -> Optional.of(Quantity.VOLTS);
      case OHMS, COIL_OHMS, CONTACT_OHMS -> Optional.of(Quantity.OHMS);
      default -> Optional.empty();
    };
  }
}
