package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.practise.ClassSheet;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.Step;
import loopwright.casework.practise.Tally;
import loopwright.casework.practise.Way;
import org.junit.jupiter.api.Test;

class DrillSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static DrillCode code(int seed) {
    return new DrillCode(Level.RELAY, 1, seed, "");
  }

  private static Debrief drill(int number) {
    Step step =
        new Step(
            1,
            Step.Kind.CHECK,
            "volts DC at point " + number,
            "12." + number + " V",
            1.5,
            List.of(),
            List.of(),
            List.of(),
            new Tally(0, 0),
            true,
            new LoopView("loop", List.of(), List.of(), List.of()));
    Way best = new Way(List.of(step, step, step, step, step, step), List.of());
    return new Debrief(
        "Circuit " + number + " dead - Pumper",
        code(number),
        new Way(List.of(), List.of()),
        best,
        List.of("relay " + number + ": coil open"),
        List.of());
  }

  @Test
  void learnersGetOnePageAndTheAnswersStandOnOthers() {
    ClassSheet sheet =
        new ClassSheet(
            code(1),
            "Pumper",
            IntStream.rangeClosed(1, ClassSheet.DRILLS).mapToObj(DrillSheetTest::drill).toList());
    for (PageSize size : PageSize.values()) {
      Paper paper = DrillSheet.paper(sheet, size, "1 June 2024", PHRASES);
      Pages.wellLaidOut(paper.finished(), 9);
      Pages.blackOnly(paper.pdf());
      List<String> pages = Pages.texts(paper.pdf());
      assertThat(pages.size()).isBetween(2, 4);
      String answers = String.join(" ", pages.subList(1, pages.size()));
      assertThat(pages.get(0)).contains("Class sheet " + sheet.code());
      for (Debrief drill : sheet.drills()) {
        assertThat(pages.get(0)).contains(drill.code().toString(), drill.title());
        assertThat(pages.get(0)).doesNotContain(drill.truth().get(0));
        assertThat(pages.get(0)).doesNotContain(drill.best().steps().get(0).what());
        assertThat(answers).contains(drill.code().toString(), drill.truth().get(0), "6 checks");
        assertThat(answers).contains(drill.best().steps().get(0).what());
      }
    }
  }
}
