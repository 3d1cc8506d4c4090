package loopwright.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;

/**
 * Writes leaves to a PDF document. No colour is ever set: what is drawn is black; only photos have
 * colours of their own.
 */
final class PdfWriter {
  private PdfWriter() {}

  static byte[] write(List<Leaf> leaves, String title) {
    try (PDDocument document = new PDDocument();
        Embedded fonts = new Embedded(document)) {
      document.getDocumentInformation().setTitle(title);
      for (Leaf leaf : leaves) {
        PDPage page = new PDPage(new PDRectangle((float) leaf.width(), (float) leaf.height()));
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
          for (Leaf.Mark mark : leaf.marks()) {
            if (mark instanceof Leaf.Text text) {
              text(out, text, leaf.height(), fonts);
            } else if (mark instanceof Leaf.Path path) {
              path(out, path, leaf.height());
            } else if (mark instanceof Leaf.Photo photo) {
              Box box = photo.box();
              out.drawImage(
                  JPEGFactory.createFromByteArray(document, photo.picture().jpeg()),
                  (float) box.x(),
                  (float) (leaf.height() - box.bottom()),
                  (float) box.width(),
                  (float) box.height());
            }
          }
        }
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      // Nothing here touches a disk but the fonts inside the program.
      throw new UncheckedIOException(e);
    }
  }

  /** The fonts of a document, each put in when its first letter is written. */
  private static final class Embedded implements AutoCloseable {
    private final PDDocument document;
    private final Map<Letters, PDFont> fonts = new HashMap<>();
    private final List<TrueTypeFont> open = new ArrayList<>();

    Embedded(PDDocument document) {
      this.document = document;
    }

    PDFont font(Letters letters) throws IOException {
      PDFont font = fonts.get(letters);
      if (font == null) {
        TrueTypeFont opened = letters.open();
        open.add(opened);
        // Ligatures would be one glyph for two letters: measured and searched for otherwise.
        opened.disableGsubFeature("liga");
        opened.disableGsubFeature("clig");
        font = PDType0Font.load(document, opened, true);
        fonts.put(letters, font);
      }
      return font;
    }

    @Override
    public void close() throws IOException {
      for (TrueTypeFont font : open) {
        font.close();
      }
    }
  }

  private static void text(PDPageContentStream out, Leaf.Text text, double height, Embedded fonts)
      throws IOException {
    out.beginText();
    out.newLineAtOffset((float) text.box().x(), (float) (height - text.baseline()));
    for (Typeface.Run run : text.face().runs(text.text())) {
      out.setFont(fonts.font(run.letters()), (float) text.size());
      out.showText(run.text());
    }
    out.endText();
  }

  private static void path(PDPageContentStream out, Leaf.Path path, double height)
      throws IOException {
    out.setLineWidth((float) path.width());
    float[] dash = path.dash() > 0 ? new float[] {(float) path.dash()} : new float[0];
    out.setLineDashPattern(dash, 0);
    for (Leaf.Step step : path.steps()) {
      if (step instanceof Leaf.Step.Move m) {
        out.moveTo((float) m.x(), (float) (height - m.y()));
      } else if (step instanceof Leaf.Step.Line l) {
        out.lineTo((float) l.x(), (float) (height - l.y()));
      } else if (step instanceof Leaf.Step.Curve c) {
        out.curveTo(
            (float) c.x1(),
            (float) (height - c.y1()),
            (float) c.x2(),
            (float) (height - c.y2()),
            (float) c.x(),
            (float) (height - c.y()));
      } else {
        out.closePath();
      }
    }
    if (path.width() > 0) {
      out.stroke();
    } else {
      out.fill();
    }
  }
}
