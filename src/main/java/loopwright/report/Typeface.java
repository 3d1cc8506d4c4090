package loopwright.report;

import java.lang.Character.UnicodeScript;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The two weights of the font that comes with the program, each with a second font for the letters
 * that it lacks; that one is read when the first such letter comes.
 */
enum Typeface {
  REGULAR("ui/fonts/AtkinsonHyperlegibleNext-Regular.ttf", "report/fonts/DejaVuSans.ttf"),
  BOLD("ui/fonts/AtkinsonHyperlegibleNext-Bold.ttf", "report/fonts/DejaVuSans-Bold.ttf");

  /** Height of a line as a share of the size. */
  static final double LEADING = 1.25;

  /** From the top of a line to its baseline, as a share of the size. */
  static final double ABOVE = 0.95;

  /** How far the tallest letters reach above the baseline, as a share of the size. */
  static final double TALLEST = 0.83;

  /** How far the deepest letters reach below the baseline, as a share of the size. */
  static final double DEEPEST = 0.25;

  /** Stands before the name of a script that isn't printed. */
  static final String NAMED = "\u27e6";

  /** Scripts whose letters stand one behind the other, from left to right, each in one form. */
  private static final Set<UnicodeScript> BY_LETTERS =
      EnumSet.of(
          UnicodeScript.LATIN,
          UnicodeScript.GREEK,
          UnicodeScript.CYRILLIC,
          UnicodeScript.ARMENIAN,
          UnicodeScript.GEORGIAN,
          UnicodeScript.COMMON,
          UnicodeScript.INHERITED);

  private final Letters own;
  private final String moreFile;
  private Letters more;

  /** A text whose letters all come from one font file. */
  record Run(Letters letters, String text) {}

  Typeface(String file, String moreFile) {
    this.own = new Letters(file);
    this.moreFile = moreFile;
  }

  private Letters more() {
    synchronized (moreFile) {
      if (more == null) {
        more = new Letters(moreFile);
      }
      return more;
    }
  }

  /** The font file that a letter is taken from. */
  private Letters of(int codePoint) {
    return own.has(codePoint) ? own : more();
  }

  private boolean prints(int codePoint) {
    return own.has(codePoint)
        || (BY_LETTERS.contains(UnicodeScript.of(codePoint)) && more().has(codePoint));
  }

  /** Width of a text in points. */
  double width(String text, double size) {
    return size * plain(text).codePoints().mapToDouble(c -> of(c).width(c)).sum();
  }

  /**
   * A text that can be printed, cut where the font file changes.
   *
   * @param plain as {@link #plain} gives it
   */
  List<Run> runs(String plain) {
    List<Run> runs = new ArrayList<>();
    int from = 0;
    for (int at = 0; at < plain.length(); ) {
      Letters letters = of(plain.codePointAt(at));
      while (at < plain.length() && of(plain.codePointAt(at)) == letters) {
        at = plain.offsetByCodePoints(at, 1);
      }
      runs.add(new Run(letters, plain.substring(from, at)));
      from = at;
    }
    return runs;
  }

  /**
   * The text as it can be printed, without line breaks: what is in a script that can't be set
   * letter by letter is named by that script, for instance {@code ⟦Arabic⟧}.
   */
  String plain(String text) {
    String spaced = text.replaceAll("\\s", " ").replace('\u2212', '-');
    if (spaced.codePoints().allMatch(this::prints)) {
      return spaced;
    }
    StringBuilder out = new StringBuilder();
    String composed = Normalizer.normalize(spaced, Normalizer.Form.NFC);
    UnicodeScript left = UnicodeScript.COMMON;
    for (int c : composed.codePoints().toArray()) {
      UnicodeScript script = UnicodeScript.of(c);
      boolean joins = script == UnicodeScript.COMMON || script == UnicodeScript.INHERITED;
      if (prints(c)) {
        out.appendCodePoint(c);
        left = c == ' ' ? left : UnicodeScript.COMMON;
      } else if (joins && left == UnicodeScript.COMMON) {
        out.append(Character.getType(c) == Character.FORMAT ? "" : "?");
      } else if (!joins && script != left) {
        out.append(NAMED).append(name(script)).append('\u27e7');
        left = script;
      }
    }
    return out.toString();
  }

  /** Name of a script by Unicode. */
  private static String name(UnicodeScript script) {
    String name = script.name().replace('_', ' ');
    return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT);
  }

  /** The text in lines no wider than given; a word that is wider is cut. */
  List<String> wrap(String text, double size, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : plain(text).strip().split(" +")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(longer, size) <= width) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (width(line, size) > width && line.codePointCount(0, line.length()) > 1) {
        int fits = fitting(line, size, width);
        lines.add(line.substring(0, fits));
        line = line.substring(fits);
      }
    }
    lines.add(line);
    return lines;
  }

  /** How many of the first characters fit; at least one. */
  private int fitting(String word, double size, double width) {
    int end = word.offsetByCodePoints(0, 1);
    while (end < word.length()) {
      int next = word.offsetByCodePoints(end, 1);
      if (width(word.substring(0, next), size) > width) {
        break;
      }
      end = next;
    }
    // Names are cut where their own signs are, if there is one in reach.
    for (int i = end; i > end / 2; i--) {
      if ("-/._".indexOf(word.charAt(i - 1)) >= 0) {
        return i;
      }
    }
    return end;
  }
}
