package loopwright.report;

import java.util.List;
import loopwright.casework.PaperReport;
import loopwright.casework.Phrases;
import loopwright.casework.PlanFinding;
import loopwright.diagnosis.rulebook.Conclusion.Severity;

/** What the paper check found, on paper: the worst first, each with a box to tick off. */
public final class PlanSheet {
  private PlanSheet() {}

  /**
   * The findings as a PDF file.
   *
   * @param date the day, in words
   */
  public static byte[] pdf(PaperReport report, PageSize size, String date, Phrases phrases) {
    return paper(report, size, date, phrases).pdf();
  }

  static Paper paper(PaperReport report, PageSize size, String date, Phrases phrases) {
    String title = phrases.say("print.plan");
    Paper paper = new Paper(size, report.vehicle(), title, date, phrases);
    paper.title(title);
    if (!report.unsolved().isEmpty()) {
      paper.paragraph(phrases.say("paper.unsolved"));
      report.unsolved().forEach(f -> paper.tick(f.object() + ": " + f.what()));
      return paper;
    }
    paper.paragraph(report.found(phrases));
    paper.paragraph(report.air(phrases));
    for (Severity severity : Severity.values()) {
      List<PlanFinding> findings = report.of(severity);
      if (!findings.isEmpty()) {
        paper.heading(phrases.say("paper.severity." + severity) + " (" + findings.size() + ")");
        findings.forEach(f -> finding(paper, f, phrases));
      }
    }
    paper.caution(phrases.say("paper.advice"));
    return paper;
  }

  private static void finding(Paper paper, PlanFinding finding, Phrases phrases) {
    paper.tick(finding.finding());
    paper.labelled(phrases.say("print.plan.follows"), finding.consequence());
    paper.labelled(phrases.say("paper.cure"), finding.cure());
    if (!finding.value().isEmpty()) {
      paper.labelled(
          phrases.say("print.plan.figure"),
          phrases.say("print.plan.figures", finding.value(), finding.limit()));
    }
    if (!finding.setting().isEmpty()) {
      paper.labelled(phrases.say("paper.with"), String.join(", ", finding.setting()));
    }
    paper.labelled(phrases.say("paper.source"), finding.source());
    paper.gap();
  }
}
