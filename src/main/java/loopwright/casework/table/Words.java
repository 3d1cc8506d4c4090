package loopwright.casework.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.edit.Shown;
import loopwright.model.Estimate;
import loopwright.model.Language;
import loopwright.model.Quantity;
import loopwright.model.Said;
import loopwright.model.ShortName;

/** Reads texts of cells; a text that is none of what is asked for becomes a {@link Problem}. */
final class Words {
  private Words() {}

  /** What the tables say, in the language in use. */
  static String say(String key, Object... args) {
    return Phrases.inUse().say("table." + key, args);
  }

  /** What messages call a column. */
  static String of(Column column) {
    return say("column." + column);
  }

  /** A list of names as sentences hold it. */
  static String all(Collection<String> names) {
    return String.join(", ", names);
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
        quantity.accepted() + (Said.twoWays(text) ? say("two-ways", say(mark())) : ""));
  }

  private static String mark() {
    return Language.inUse().mark() == ',' ? "point" : "comma";
  }

  static Optional<Estimate> maybe(Column column, String text, Quantity quantity) throws Problem {
    return text.isEmpty() ? Optional.empty() : Optional.of(amount(column, text, quantity));
  }

  /** A number that is printed on the part, so that it has no spread. */
  static double exactly(Column column, String text, Quantity quantity) throws Problem {
    return Said.exactly(text, quantity)
        .orElseThrow(() -> bad(column, text, say("printed", quantity.symbol())));
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
          throw bad(column, name, say("names", ShortName.limit()));
        }
        names.add(name);
      }
    }
    return names;
  }

  /** What stands in a cell for a word of the vehicle's file, in the language in use. */
  static String shown(String word) {
    return say("word." + word);
  }

  /**
   * One of some words, as cells show it or as the vehicle's file has it; the beginning of a word is
   * enough where only one begins so.
   */
  static <T> T word(Column column, String text, List<T> all, Function<T, String> word)
      throws Problem {
    return word(column, text, all, word.andThen(Words::shown), word);
  }

  /** The same of what has words of its own to be shown by. */
  static <T> T word(
      Column column,
      String text,
      List<T> all,
      Function<T, String> shown,
      Function<T, String> written)
      throws Problem {
    return one(text, all, shown)
        .or(() -> one(text, all, written))
        .orElseThrow(() -> bad(column, text, say("one-of", all(all.stream().map(shown).toList()))));
  }

  private static <T> Optional<T> one(String text, List<T> all, Function<T, String> word) {
    String sought = plain(text);
    List<T> alike = new ArrayList<>();
    for (T one : all) {
      String known = plain(word.apply(one));
      if (known.equals(sought)) {
        return Optional.of(one);
      }
      if (!sought.isEmpty() && known.startsWith(sought)) {
        alike.add(one);
      }
    }
    return alike.size() == 1 ? Optional.of(alike.get(0)) : Optional.empty();
  }

  private static String plain(String text) {
    return text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
  }
}
