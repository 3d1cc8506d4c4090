package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import loopwright.casework.Phrases;
import loopwright.casework.list.Allowance;
import loopwright.casework.list.Label;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTables;
import loopwright.casework.list.MakingList;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class MakingSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static MakingList making(String vehicle) {
    return MakingList.of(Bench.vehicle(vehicle), Allowance.USUAL, PHRASES);
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void theListsOfThePumperFitTheirPages(PageSize size) {
    Paper paper = MakingSheet.paper(making("pumper"), size, "1 May 2024", PHRASES);
    Pages.wellLaidOut(paper.finished(), 9);
    Pages.blackOnly(paper.pdf());
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void everyWordOfTheTablesIsOnThePages(String name) {
    MakingList making = making(name);
    List<String> pages = Pages.texts(MakingSheet.pdf(making, PageSize.A4, "1 May 2024", PHRASES));
    Set<String> printed = words(String.join(" ", pages));
    ListTables tables = new ListTables(making, PHRASES);
    for (ListTable table : List.of(tables.buying(), tables.cutting(), tables.looms())) {
      for (List<String> row : table.rows()) {
        for (String cell : row) {
          assertThat(printed).containsAll(words(cell));
        }
      }
    }
  }

  private static Set<String> words(String text) {
    Set<String> words = new HashSet<>(Arrays.asList(text.split("\\s+")));
    words.remove("");
    return words;
  }

  @Test
  void everyPageSaysWhatItIsAndWhichOfHowMany() {
    List<String> pages =
        Pages.texts(MakingSheet.pdf(making("pumper"), PageSize.A4, "1 May 2024", PHRASES));
    assertThat(pages.size()).isGreaterThan(5);
    for (int i = 0; i < pages.size(); i++) {
      assertThat(pages.get(i))
          .contains("Light pumper")
          .contains("1 May 2024")
          .contains("page " + (i + 1) + " of " + pages.size());
    }
    // The headings stand again where a table runs on.
    assertThat(pages.get(1)).contains("Quantity");
    assertThat(pages.get(pages.size() - 1)).contains("Cut m");
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void labelsFitTheirSheets(PageSize size) {
    Vehicle vehicle = Bench.vehicle("pumper");
    Paper paper = LabelSheet.paper(vehicle, size, "1 May 2024", PHRASES);
    Pages.wellLaidOut(paper.finished(), 6);
    Pages.blackOnly(paper.pdf());
    String all = String.join("\n", Pages.texts(paper.pdf()));
    for (Label label : Label.ofWires(vehicle)) {
      assertThat(all).contains("on " + label.here()).contains("to " + label.far());
    }
  }

  @Test
  void whatTheFontsLackIsNamedByItsScript() {
    assertThat(Typeface.REGULAR.plain("front\n\u4e2d \u03a9 \u2014 \u20ac\u0007"))
        .isEqualTo("front \u27e6Han\u27e7 \u03a9 \u2014 \u20ac?");
    Paper paper = new Paper(PageSize.A4, "\u4e2d\u0000 cart", "t", "d", PHRASES);
    paper.paragraph("fi fl ffi \u4e2d");
    assertThat(Pages.texts(paper.pdf()).get(0)).contains("fi fl ffi \u27e6Han\u27e7");
  }

  @Test
  void aWordWiderThanItsColumnIsCutAndARowHigherThanThePageGoesOn() {
    String word = "x".repeat(300);
    String much = "word ".repeat(4000);
    ListTable table =
        new ListTable(
            "t",
            List.of(),
            List.of(
                new ListTable.Column("a", 1, ListTable.Side.LEFT),
                new ListTable.Column("b", 1, ListTable.Side.RIGHT)),
            List.of(List.of(word, "1"), List.of("2", much), List.of("3", "end")));
    Paper paper = new Paper(PageSize.A4, "cart", "t", "d", PHRASES);
    paper.table(table);
    Pages.wellLaidOut(paper.finished(), 9);
    String all = String.join(" ", Pages.texts(paper.pdf()));
    assertThat(all.replaceAll("\\s", "")).contains("end");
    assertThat(all.split("word", -1)).hasSize(4001);
    assertThat(paper.finished().size()).isGreaterThan(3);
  }

  @Test
  void aBarIsBlackAsFarAsItsShare() {
    Paper paper = new Paper(PageSize.A4, "cart", "t", "d", PHRASES);
    paper.bar("half", 0.5, "50 %");
    paper.bar("none", 0, "0 %");
    paper.caution("Battery off first.");
    paper.labelled("SET", "key on");
    Leaf leaf = paper.finished().get(0);
    List<Leaf.Path> filled =
        leaf.marks().stream()
            .filter(m -> m instanceof Leaf.Path p && p.width() == 0)
            .map(Leaf.Path.class::cast)
            .toList();
    assertThat(filled).hasSize(1);
    Pages.wellLaidOut(paper.finished(), 9);
  }
}
