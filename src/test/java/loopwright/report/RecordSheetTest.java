package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import loopwright.casework.CaseEvent;
import loopwright.casework.Phrases;
import loopwright.casework.Picture;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.Journals;
import loopwright.casework.record.RecordText;
import loopwright.report.PageSize.Turn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class RecordSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static Paper paper(CaseRecord record, PageSize size) {
    return RecordSheet.paper(
        new RecordText(record, PHRASES, ZoneOffset.UTC), size, "1 June 2024", PHRASES);
  }

  private static String text(Paper paper) {
    return String.join(" ", Pages.texts(paper.pdf())).replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void aCaseStandsOnOnePageWithItsReadingsFaultRepairAndProof(PageSize size) {
    CaseRecord record =
        Journals.begun("stud")
            .stud()
            .and(new CaseEvent.Photographed(Journals.AT, "photos/stud.jpg", "paint under the lug"))
            .record();
    Paper paper = paper(record, size);
    assertThat(paper.pages()).isEqualTo(1);
    Pages.wellLaidOut(paper.finished(), 9);
    Pages.blackOnly(paper.pdf());
    assertThat(text(paper))
        .contains("Beacon dead - Light pumper")
        .contains("Result mended and proven")
        .contains("12.7 V")
        .contains("Ruled out beacon fuse F3: 12.7 V at stud G4")
        .contains("Found beacon ground stud G4, 99 %")
        .contains("Repair Scrape to bright metal.")
        .contains("Proven by the readings after it")
        .contains("12.1 V")
        .contains("Photo paint under the lug (photos/stud.jpg)")
        .contains("page 1 of 1");
  }

  /** What doesn't fit on one page runs on: no reading is left out. */
  @Test
  void aLongCaseRunsOnAndLeavesNoReadingOut() {
    Journals journal = Journals.begun("long");
    for (int i = 0; i < 90; i++) {
      journal.volts("F3.load", "11." + (100 + i) + " V");
    }
    Paper paper = paper(journal.record(), PageSize.A4);
    assertThat(paper.pages()).isGreaterThan(1);
    Pages.wellLaidOut(paper.finished(), 9);
    String text = text(paper);
    for (int i = 0; i < 90; i++) {
      assertThat(text).contains("11." + (100 + i) + " V");
    }
  }

  private static Optional<Picture> picture(int width, int height) {
    try {
      BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      ImageIO.write(image, "jpg", bytes);
      return Optional.of(new Picture(bytes.toByteArray(), width, height));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** All on one page, none over another or over words, under each what it shows. */
  @ParameterizedTest
  @CsvSource({"1, 1, 1", "2, 2, 1", "3, 3, 1", "6, 6, 1", "9, 6, 1", "0, 0, 0"})
  void photosFollowOnAPageOfTheirOwn(int photos, int shown, int pages) {
    List<CaseEvent.Photographed> all = new ArrayList<>();
    for (int i = 0; i < photos; i++) {
      String words = "lug " + i + ", " + "with a long story ".repeat(i * 10);
      all.add(new CaseEvent.Photographed(Journals.AT, "photos/p" + i + ".jpg", words.strip()));
    }
    Paper paper = paper(Journals.begun("stud").stud().record(), PageSize.A4);
    new PhotoPage(paper, PHRASES)
        .add(all, f -> f.contains("1") ? picture(90, 160) : picture(160, 90));
    assertThat(paper.pages()).isEqualTo(1 + pages);
    Pages.wellLaidOut(paper.finished(), 9);
    Leaf last = paper.finished().get(paper.pages() - 1);
    List<Box> boxes = new ArrayList<>(last.photos().stream().map(Leaf.Photo::box).toList());
    assertThat(boxes).hasSize(shown);
    for (Box box : boxes) {
      assertThat(box.right()).isLessThanOrEqualTo(PageSize.A4.width(Turn.UPRIGHT) - Paper.MARGIN);
      assertThat(last.texts()).noneMatch(t -> t.box().overlaps(box));
      assertThat(boxes).filteredOn(b -> b.overlaps(box)).containsExactly(box);
    }
    String text = text(paper);
    for (int i = 0; i < photos; i++) {
      assertThat(text).contains(i < shown ? "lug " + i : "photos/p" + i + ".jpg");
    }
  }

  @Test
  void aPhotoThatIsGoneIsTold() {
    Paper paper = paper(Journals.begun("stud").stud().record(), PageSize.A4);
    new PhotoPage(paper, PHRASES)
        .add(
            List.of(new CaseEvent.Photographed(Journals.AT, "photos/stud.jpg", "paint")),
            f -> Optional.empty());
    assertThat(paper.pages()).isEqualTo(1);
    assertThat(text(paper)).contains("can't be read: photos/stud.jpg");
  }
}
