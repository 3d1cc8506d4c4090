package loopwright.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** A font file that comes with the program: its letters are measured here. */
final class Letters {
  private final byte[] bytes;
  private final CmapLookup glyphs;
  private final TrueTypeFont font;
  private final double perEm;

  /** Reads a file below {@code /loopwright}. */
  Letters(String file) {
    try (InputStream in = Letters.class.getResourceAsStream("/loopwright/" + file)) {
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

  boolean has(int codePoint) {
    return glyphs.getGlyphId(codePoint) != 0;
  }

  /** Width of a letter as a share of the size. */
  double width(int codePoint) {
    try {
      return font.getAdvanceWidth(glyphs.getGlyphId(codePoint)) / perEm;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
