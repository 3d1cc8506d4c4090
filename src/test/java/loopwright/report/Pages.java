package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;

/** What every printed page must keep to. */
final class Pages {
  /** All operators that set a colour or a shading (ISO 32000-1, table 74 and 8.7.4.2). */
  private static final Set<String> COLOUR =
      Set.of("CS", "cs", "SC", "SCN", "sc", "scn", "G", "g", "RG", "rg", "K", "k", "sh", "gs");

  private Pages() {}

  /** No text over another, none off the page, none too small to read. */
  static void wellLaidOut(List<Leaf> leaves, double leastSize) {
    for (Leaf leaf : leaves) {
      List<Leaf.Text> texts = leaf.texts();
      for (int i = 0; i < texts.size(); i++) {
        Leaf.Text text = texts.get(i);
        assertThat(text.size()).as(text.text()).isGreaterThanOrEqualTo(leastSize);
        assertThat(text.box().x()).as(text.text()).isGreaterThanOrEqualTo(Paper.MARGIN - 1e-6);
        assertThat(text.box().right())
            .as(text.text())
            .isLessThanOrEqualTo(leaf.width() - Paper.MARGIN + 1e-6);
        assertThat(text.box().y()).as(text.text()).isGreaterThanOrEqualTo(Paper.MARGIN - 1e-6);
        assertThat(text.box().bottom())
            .as(text.text())
            .isLessThanOrEqualTo(leaf.height() - Paper.MARGIN + 1e-6);
        for (int j = i + 1; j < texts.size(); j++) {
          Leaf.Text other = texts.get(j);
          // Asked first, since a description for each pair takes longer than all the rest.
          if (text.box().overlaps(other.box())) {
            fail("'%s' %s over '%s' %s", text.text(), text.box(), other.text(), other.box());
          }
        }
      }
    }
  }

  /** The text of each page, in the order in which it is read. */
  static List<String> texts(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<String> texts = new ArrayList<>();
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        texts.add(stripper.getText(document));
      }
      return texts;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Black on white: no colour is ever set, so all is black. */
  static void blackOnly(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        List<String> operators = new ArrayList<>();
        for (Object token : new PDFStreamParser(page).parse()) {
          if (token instanceof Operator o) {
            operators.add(o.getName());
          }
        }
        assertThat(operators).contains("Tj").doesNotContainAnyElementsOf(COLOUR);
        assertThat(page.getResources().getXObjectNames()).isEmpty();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
