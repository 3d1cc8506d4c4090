package loopwright.casework.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import loopwright.casework.Problem;
import loopwright.casework.edit.Shown;
import loopwright.model.Estimate;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.ShortName;

/** Reads texts of cells; a text that is none of what is asked for becomes a {@link Problem}. */
final class Words {
  private Words() {}

  /** What messages call a column. */
  static String of(Column column) {
    return column.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  static Problem bad(Column column, String text, String accepted) {
    return new Problem(of(column), Shown.of(text), accepted);
  }

  static Estimate amount(Column column, String text, Quantity quantity) throws Problem {
    return Said.amount(text, quantity).orElseThrow(() -> refused(column, text, quantity));
  }

  /** What an amount must be, where a text is none. */
  static Problem refused(Column column, String text, Quantity quantity) {
    return bad(
        column,
        text,
        quantity.accepted()
            + (Said.twoWays(text) ? "; a comma before three digits can be read two ways" : ""));
  }

  static Optional<Estimate> maybe(Column column, String text, Quantity quantity) throws Problem {
    return text.isEmpty() ? Optional.empty() : Optional.of(amount(column, text, quantity));
  }

  /** A number that is printed on the part, so that it has no spread. */
  static double exactly(Column column, String text, Quantity quantity) throws Problem {
    return Said.exactly(text, quantity)
        .orElseThrow(
            () ->
                bad(
                    column,
                    text,
                    "the one number printed on it, in " + quantity.symbol() + ", for instance 10"));
  }

  static Optional<Double> maybeExactly(Column column, String text, Quantity quantity)
      throws Problem {
    return text.isEmpty() ? Optional.empty() : Optional.of(exactly(column, text, quantity));
  }

  static String spoken(Optional<Estimate> estimate, Quantity quantity) {
    return estimate.map(e -> Said.spoken(e, quantity)).orElse("");
  }

  static String number(Optional<Double> number) {
    return number.map(Said::number).orElse("");
  }

  /** Short names set apart by commas, semicolons or spaces. */
  static List<String> names(Column column, String text) throws Problem {
    List<String> names = new ArrayList<>();
    for (String name : text.strip().split("[\\s,;]+")) {
      if (!name.isEmpty()) {
        if (!ShortName.fits(name)) {
          throw bad(column, name, "short names, each " + ShortName.LIMIT);
        }
        names.add(name);
      }
    }
    return names;
  }

  /** One of some words; the beginning of a word is enough where only one begins so. */
  static <T> T word(Column column, String text, List<T> all, Function<T, String> word)
      throws Problem {
    String sought = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
    List<T> alike = new ArrayList<>();
    for (T one : all) {
      if (word.apply(one).equals(sought)) {
        return one;
      }
      if (!sought.isEmpty() && word.apply(one).startsWith(sought)) {
        alike.add(one);
      }
    }
    if (alike.size() == 1) {
      return alike.get(0);
    }
    throw bad(column, text, "one of " + String.join(", ", all.stream().map(word).toList()));
  }
}
