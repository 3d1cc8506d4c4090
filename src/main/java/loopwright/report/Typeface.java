package loopwright.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The two weights of the font that comes with the program: measured here, embedded on writing. */
enum Typeface {
  REGULAR("AtkinsonHyperlegibleNext-Regular.ttf"),
  BOLD("AtkinsonHyperlegibleNext-Bold.ttf");

  /** Height of a line as a share of the size. */
  static final double LEADING = 1.25;

  /** From the top of a line to its baseline, as a share of the size. */
  static final double ABOVE = 0.95;

  /** How far the tallest letters reach above the baseline, as a share of the size. */
  static final double TALLEST = 0.83;

  /** How far the deepest letters reach below the baseline, as a share of the size. */
  static final double DEEPEST = 0.25;

  private final byte[] bytes;
  private final CmapLookup glyphs;
  private final TrueTypeFont font;
  private final double perEm;

  Typeface(String file) {
    try (InputStream in = Typeface.class.getResourceAsStream("/loopwright/ui/fonts/" + file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its font " + file);
      }
      bytes = in.readAllBytes();
      font = open();
      glyphs = font.getUnicodeCmapLookup();
      perEm = font.getUnitsPerEm();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The font anew, for one document. */
  TrueTypeFont open() throws IOException {
    return new TTFParser().parse(new RandomAccessReadBuffer(bytes));
  }

  /** Width of a text in points. */
  double width(String text, double size) {
    double units =
        plain(text)
            .codePoints()
            .mapToDouble(
                c -> {
                  try {
                    return font.getAdvanceWidth(glyphs.getGlyphId(c));
                  } catch (IOException e) {
                    throw new UncheckedIOException(e);
                  }
                })
            .sum();
    return units / perEm * size;
  }

  /** The text with a question mark for whatever the font has no glyph for, without line breaks. */
  String plain(String text) {
    StringBuilder out = new StringBuilder();
    text.replaceAll("\\s", " ")
        .codePoints()
        .map(c -> c == '\u2212' ? '-' : c)
        .forEach(c -> out.appendCodePoint(glyphs.getGlyphId(c) == 0 ? '?' : c));
    return out.toString();
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
