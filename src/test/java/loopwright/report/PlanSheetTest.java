package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import loopwright.casework.PaperReport;
import loopwright.casework.Phrases;
import loopwright.casework.PlanFinding;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PlanSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static PlanFinding finding(Severity severity, String what) {
    return new PlanFinding(
        "W1",
        "feed W1",
        severity,
        "plan/x",
        what,
        "The wire burns before the fuse blows. " + "It goes on for some lines. ".repeat(8),
        "Fit 10 A.",
        "common practice",
        "20 A",
        "10 A",
        List.of("key switch KEY: on"),
        List.of("F1"));
  }

  private static PaperReport report() {
    List<PlanFinding> findings = new java.util.ArrayList<>();
    for (int i = 0; i < 20; i++) {
      findings.add(finding(Severity.KNOW, "Worth knowing number " + i + "."));
      findings.add(finding(Severity.BURNS, "Burning number " + i + "."));
    }
    return new PaperReport("cart", List.of(), findings, 40, 2, 70);
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void everyFindingStandsUnderItsSeverityTheWorstFirst(PageSize size) {
    Paper paper = PlanSheet.paper(report(), size, "1 May 2024", PHRASES);
    Pages.wellLaidOut(paper.finished(), 9);
    Pages.blackOnly(paper.pdf());
    String all = String.join(" ", Pages.texts(paper.pdf())).replaceAll("\\s+", " ");
    for (int i = 0; i < 20; i++) {
      assertThat(all).contains("Worth knowing number " + i + ".");
      assertThat(all.indexOf("Burning number " + i + "."))
          .isBetween(0, all.indexOf("Worth knowing number 0."));
    }
    assertThat(all)
        .contains("Can burn or be destroyed (20)")
        .contains("Do Fit 10 A.")
        .contains("Figure 20 A, limit 10 A")
        .contains("With key switch KEY: on")
        .contains("Source common practice")
        .contains("20 things are wrong")
        .contains("air of 70 C. The chart of wires and fuses is made for 57 C;");
  }

  @Test
  void aPlanThatCantBeSolvedSaysWhatIsMissing() {
    PaperReport report =
        new PaperReport(
            "cart",
            List.of(new VehicleCheck.Finding("wire W1", "x", "y", "parts[0]", "ends nowhere")),
            List.of(),
            0,
            0,
            70);
    assertThat(
            Pages.texts(PlanSheet.pdf(report, PageSize.A4, "1 May 2024", PHRASES))
                .get(0)
                .replaceAll("\\s+", " "))
        .contains("wire W1: ends nowhere");
  }
}
