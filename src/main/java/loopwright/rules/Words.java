package loopwright.rules;

import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Conclusion.Advice;
import loopwright.diagnosis.rulebook.Conclusion.Caution;
import loopwright.diagnosis.rulebook.Conclusion.ClearedBy;
import loopwright.diagnosis.rulebook.Conclusion.CondemnedBy;
import loopwright.diagnosis.rulebook.Conclusion.Doubt;
import loopwright.diagnosis.rulebook.Conclusion.Finding;
import loopwright.diagnosis.rulebook.Conclusion.ForbiddenBy;
import loopwright.diagnosis.rulebook.Conclusion.PreferredBy;
import loopwright.diagnosis.rulebook.Conclusion.Sense;
import loopwright.model.Bundle;
import loopwright.model.Language;
import loopwright.model.Units;

/** Turns arguments into words, and puts conclusions in order. */
final class Words {

  private static final Map<Class<?>, Integer> RANKS = ranks();

  /**
   * A conclusion with what it is sorted by: its kind first, then its rule, then what it speaks of.
   * The text is made once, not at every comparison.
   */
  private record Sortable(int rank, String text, Conclusion conclusion) {
    static final Comparator<Sortable> ORDER =
        Comparator.comparingInt(Sortable::rank)
            .thenComparing(s -> s.conclusion().rule())
            .thenComparing(Sortable::text);
  }

  private Words() {}

  /** Conclusions in plain words, in a fixed order. */
  static List<Conclusion> sorted(
      Collection<?> conclusions, Map<String, String> titles, Locale locale) {
    return conclusions.stream()
        .map(c -> of((Conclusion) c, titles, locale))
        .distinct()
        .map(c -> new Sortable(RANKS.get(c.getClass()), c.toString(), c))
        .sorted(Sortable.ORDER)
        .map(Sortable::conclusion)
        .toList();
  }

  /** The conclusion with plain words and numbers as arguments. */
  static Conclusion of(Conclusion conclusion, Map<String, String> titles, Locale locale) {
    if (conclusion instanceof Sense c) {
      return new Sense(c.reading(), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof Doubt c) {
      return new Doubt(c.reading(), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof ClearedBy c) {
      return new ClearedBy(
          c.suspect(), sorted(c.readings()), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof CondemnedBy c) {
      return new CondemnedBy(
          c.suspect(), sorted(c.readings()), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof ForbiddenBy c) {
      return new ForbiddenBy(c.check(), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof PreferredBy c) {
      return new PreferredBy(
          c.check(), c.rule(), c.weight(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof Advice c) {
      return new Advice(c.suspect(), c.stage(), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof Caution c) {
      return new Caution(c.check(), c.rule(), c.key(), of(c.args(), titles, locale));
    } else if (conclusion instanceof Finding c) {
      return new Finding(
          c.figure(),
          c.part(),
          c.severity(),
          c.rule(),
          c.key(),
          c.consequence(),
          c.cure(),
          of(c.args(), titles, locale));
    }
    return conclusion;
  }

  /** A set prints in the order of its making; sorted, it can be compared as text. */
  private static Set<Integer> sorted(Set<Integer> readings) {
    return Collections.unmodifiableSortedSet(new TreeSet<>(readings));
  }

  static List<Object> of(List<Object> args, Map<String, String> titles, Locale locale) {
    List<Object> words = new ArrayList<>(args.size());
    for (Object arg : args) {
      words.add(arg instanceof Argument a ? of(a, titles, locale) : arg);
    }
    return List.copyOf(words);
  }

  private static String of(Argument argument, Map<String, String> titles, Locale locale) {
    if (argument instanceof Argument.Title title) {
      return title(title.part(), titles);
    } else if (argument instanceof Argument.Titles all) {
      return all.parts().stream().map(p -> title(p, titles)).collect(Collectors.joining(", "));
    } else if (argument instanceof Argument.Word word) {
      return word(word.word(), locale);
    } else if (argument instanceof Argument.Volts volts) {
      return volts(volts.volts(), locale);
    } else if (argument instanceof Argument.Celsius celsius) {
      return Units.inUse().temperature(celsius.degrees(), locale);
    } else if (argument instanceof Argument.Ohms ohms) {
      return ohms(ohms.ohms(), locale);
    } else if (argument instanceof Argument.Band band) {
      String low = of(band.low(), titles, locale);
      String high = of(band.high(), titles, locale);
      return low.equals(high) ? low : Language.range(low, high, locale);
    }
    throw new IllegalArgumentException("no words for " + argument);
  }

  /** A word of the trade; what stands in brackets behind it is a name and stays. */
  private static String word(String word, Locale locale) {
    int bracket = word.indexOf(" (");
    String bare = bracket < 0 ? word : word.substring(0, bracket);
    Bundle trade = new Bundle("loopwright.rules.trade", locale);
    String key = bare.replace(' ', '-');
    return trade.has(key) ? trade.text(key) + word.substring(bare.length()) : word;
  }

  private static String title(String name, Map<String, String> titles) {
    String part = Trade.base(name);
    String filament = Trade.element(name);
    String words = titles.getOrDefault(part, part);
    return filament.isEmpty() ? words : words + " (" + filament + ")";
  }

  private static String volts(double volts, Locale locale) {
    double size = Math.abs(volts);
    return size > 0 && size < 0.1
        ? number(volts * 1e3, 1, locale) + " mV"
        : number(volts, 2, locale) + " V";
  }

  private static String ohms(double ohms, Locale locale) {
    if (Double.isInfinite(ohms)) {
      return "OL";
    } else if (ohms >= 1e6) {
      return number(ohms / 1e6, 2, locale) + " " + Language.ohm("M", locale);
    } else if (ohms >= 1e3) {
      return number(ohms / 1e3, 2, locale) + " " + Language.ohm("k", locale);
    }
    return number(ohms, ohms < 10 ? 2 : 1, locale) + " " + Language.ohm("", locale);
  }

  private static String number(double value, int places, Locale locale) {
    NumberFormat format = NumberFormat.getNumberInstance(locale);
    format.setGroupingUsed(false);
    format.setMinimumFractionDigits(places);
    format.setMaximumFractionDigits(places);
    // Adding zero turns a minus zero into a plain one.
    return format.format(Math.rint(value * 1e6) / 1e6 + 0.0);
  }

  private static Map<Class<?>, Integer> ranks() {
    Map<Class<?>, Integer> ranks = new HashMap<>();
    for (Class<?> kind : Conclusion.class.getPermittedSubclasses()) {
      ranks.put(kind, ranks.size());
    }
    return ranks;
  }
}
