package loopwright.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Writes leaves to a PDF document. No colour is ever set: what is drawn is black. */
final class PdfWriter {
  private PdfWriter() {}

  static byte[] write(List<Leaf> leaves, String title) {
    try (PDDocument document = new PDDocument();
        TrueTypeFont regular = Typeface.REGULAR.open();
        TrueTypeFont bold = Typeface.BOLD.open()) {
      document.getDocumentInformation().setTitle(title);
      Map<Typeface, PDFont> fonts = new EnumMap<>(Typeface.class);
      fonts.put(Typeface.REGULAR, embedded(document, regular));
      fonts.put(Typeface.BOLD, embedded(document, bold));
      for (Leaf leaf : leaves) {
        PDPage page = new PDPage(new PDRectangle((float) leaf.width(), (float) leaf.height()));
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
          for (Leaf.Mark mark : leaf.marks()) {
            if (mark instanceof Leaf.Text text) {
              text(out, text, leaf.height(), fonts);
            } else if (mark instanceof Leaf.Path path) {
              path(out, path, leaf.height());
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

  private static PDFont embedded(PDDocument document, TrueTypeFont font) throws IOException {
    // Ligatures would be one glyph for two letters: measured and searched for otherwise.
    font.disableGsubFeature("liga");
    font.disableGsubFeature("clig");
    return PDType0Font.load(document, font, true);
  }

  private static void text(
      PDPageContentStream out, Leaf.Text text, double height, Map<Typeface, PDFont> fonts)
      throws IOException {
    out.beginText();
    out.setFont(fonts.get(text.face()), (float) text.size());
    out.newLineAtOffset((float) text.box().x(), (float) (height - text.baseline()));
    out.showText(text.text());
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
