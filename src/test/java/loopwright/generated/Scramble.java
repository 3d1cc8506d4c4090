package loopwright.generated;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Spoils documents: whole words changed for others, which keeps the shape and reaches far into a
 * reader; lines and spans moved; bytes changed; now and then noise, or far too much of something.
 */
public final class Scramble {
  /** What somebody might write, or send, in place of what belongs there. */
  private static final List<String> WORDS =
      List.of(
          "0",
          "-1",
          "-0.0",
          "0.1",
          "1e308",
          "-1e308",
          "1e999999999",
          "1e-320",
          "9223372036854775808",
          "2147483647",
          "9".repeat(400),
          "0." + "3".repeat(90),
          "NaN",
          "Infinity",
          "-Infinity",
          "null",
          "true",
          "{}",
          "[]",
          "[[[[]]]]",
          "{\"a\":{\"a\":{}}}",
          "\"\"",
          "\" \"",
          "\"\\u0000\"",
          "\"\\ud800\"",
          "\"\u0431\u0430\u0442\u0430\u0440\u0435\u044f\"",
          "\"\u0628\u0637\u0627\u0631\u064a\u0629\"",
          "\"\u202e\u96fb\u6c60\u202c\"",
          "\"\ud83d\ude92\"",
          "\"../../../etc/passwd\"",
          "\"/etc/passwd\"",
          "\"C:\\\\boot.ini\"",
          "\"http://localhost:9/\"",
          "\"{0}{1,number}\"",
          "\"%s%n\"",
          "\"'; --\"",
          "\"=1+1\"",
          "12,40",
          "12.4 V",
          "OL",
          "1 mm2",
          "-3 m",
          "\"",
          "'",
          "\\",
          ",",
          ";",
          ":",
          "=",
          "{",
          "}",
          "[",
          "]",
          "#",
          "\n",
          "\r\n",
          "\t",
          "\u0000",
          "\ufeff");

  private static final Pattern WORD =
      Pattern.compile(
          "\"(?:[^\"\\\\\\n]|\\\\.)*\"|-?\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?|[A-Za-z_][\\w.-]*");

  private static final int MOST_CHANGES = 5;

  /** A line, of which little would be left after as many. */
  private static final int SHORT = 300;

  private final List<byte[]> seeds;

  /** Spoils these; none may be empty. */
  public Scramble(List<byte[]> seeds) {
    this.seeds = List.copyOf(seeds);
  }

  /** The next input; the same for the same dice. */
  public byte[] next(Random dice) {
    int kind = dice.nextInt(100);
    if (kind < 4) {
      byte[] noise = new byte[dice.nextInt(2_000)];
      dice.nextBytes(noise);
      return noise;
    }
    // A character a byte, so that nothing is changed but what is meant to be.
    String text = new String(seed(dice), StandardCharsets.ISO_8859_1);
    if (kind < 8) {
      return bytes(text);
    }
    int changes = dice.nextInt(text.length() < SHORT ? 3 : MOST_CHANGES + 1);
    for (int i = 0; i < changes; i++) {
      text = dice.nextInt(10) < 7 ? wordChanged(text, dice) : spanChanged(text, dice);
    }
    if (kind < 11) {
      text = inserted(text, dice, tooMuch(dice));
    }
    return bytes(text);
  }

  private byte[] seed(Random dice) {
    return seeds.get(dice.nextInt(seeds.size()));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static String anyWord(Random dice) {
    byte[] utf = WORDS.get(dice.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8);
    return new String(utf, StandardCharsets.ISO_8859_1);
  }

  private String wordChanged(String text, Random dice) {
    Span span = word(text, dice);
    String by =
        switch (dice.nextInt(6)) {
          case 0, 1 -> anyWord(dice);
          case 2, 3 -> word(text, dice).of(text);
          case 4 -> {
            String other = new String(seed(dice), StandardCharsets.ISO_8859_1);
            yield word(other, dice).of(other);
          }
          default -> nudged(span.of(text), dice);
        };
    return text.substring(0, span.from) + by + text.substring(span.to);
  }

  /** A number a little or a lot greater or less; any other word with a sign more or less. */
  private static String nudged(String word, Random dice) {
    try {
      double value = Double.parseDouble(word);
      double[] factors = {-1, 0.001, 0.5, 0.999999, 1.000001, 2, 1000, 1e12};
      return String.valueOf(value * factors[dice.nextInt(factors.length)]);
    } catch (NumberFormatException e) {
      if (word.length() < 3) {
        return word + word;
      }
      int at = 1 + dice.nextInt(word.length() - 2);
      return dice.nextBoolean()
          ? word.substring(0, at) + word.substring(at + 1)
          : word.substring(0, at) + (char) (32 + dice.nextInt(95)) + word.substring(at);
    }
  }

  private String spanChanged(String text, Random dice) {
    int from = dice.nextInt(text.length() + 1);
    int to = Math.min(text.length(), from + 1 + dice.nextInt(1 + text.length() / 8));
    String span = text.substring(from, to);
    return switch (dice.nextInt(9)) {
      case 0 -> text.substring(0, from) + text.substring(to);
      case 1 -> inserted(text, dice, span);
      case 2 -> inserted(text, dice, anyWord(dice));
      case 3 -> dice.nextInt(4) == 0 ? text.substring(0, from) : text;
      case 4 -> {
        String other = new String(seed(dice), StandardCharsets.ISO_8859_1);
        yield text.substring(0, from) + other.substring(dice.nextInt(other.length()));
      }
      case 5, 6 -> linesChanged(text, dice);
      case 7 ->
          span.isEmpty()
              ? text
              : text.substring(0, from) + (char) dice.nextInt(256) + text.substring(from + 1);
      default -> inserted(text, dice, String.valueOf((char) dice.nextInt(256)));
    };
  }

  private static String linesChanged(String text, Random dice) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    int one = dice.nextInt(lines.size());
    int other = dice.nextInt(lines.size());
    switch (dice.nextInt(3)) {
      case 0 -> lines.remove(one);
      case 1 -> lines.add(other, lines.get(one));
      default -> Collections.swap(lines, one, other);
    }
    return String.join("\n", lines);
  }

  private static String inserted(String text, Random dice, String what) {
    int at = dice.nextInt(text.length() + 1);
    return text.substring(0, at) + what + text.substring(at);
  }

  private static String tooMuch(Random dice) {
    int many = 1 << dice.nextInt(17);
    return switch (dice.nextInt(6)) {
      case 0 -> "[".repeat(many);
      case 1 -> "{\"a\":".repeat(many);
      case 2 -> "9".repeat(many);
      case 3 -> "\"" + "x".repeat(many) + "\"";
      case 4 -> "\n".repeat(many);
      default -> "\"a\",1,".repeat(many / 4 + 1);
    };
  }

  private record Span(int from, int to) {
    String of(String text) {
      return text.substring(from, to);
    }
  }

  /** The first word behind a place thrown for; the empty one at the end if there is none. */
  private static Span word(String text, Random dice) {
    Matcher matcher = WORD.matcher(text);
    if (!text.isEmpty() && (matcher.find(dice.nextInt(text.length())) || matcher.find(0))) {
      return new Span(matcher.start(), matcher.end());
    }
    return new Span(text.length(), text.length());
  }
}
