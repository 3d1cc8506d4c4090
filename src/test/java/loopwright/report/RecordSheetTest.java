package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.Locale;
import loopwright.casework.CaseEvent;
import loopwright.casework.Phrases;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.Journals;
import loopwright.casework.record.RecordText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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
}
