package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Figures;
import loopwright.casework.Phrases;
import loopwright.casework.practise.ClassSheet;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.Step;

/** Drills for a class: one page to hand out, and the answers on pages of their own. */
public final class DrillSheet {
  private static final double TYPE = 12;
  private static final double CODE_INDENT = 26;
  private static final double TITLE_INDENT = 110;
  private static final double GAP = 4;

  /** Lines to write on for each drill. */
  private static final int LINES = 3;

  private DrillSheet() {}

  /**
   * The sheet as a PDF file.
   *
   * @param date the day of printing, in words
   */
  public static byte[] pdf(ClassSheet sheet, PageSize size, String date, Phrases phrases) {
    return paper(sheet, size, date, phrases).pdf();
  }

  static Paper paper(ClassSheet sheet, PageSize size, String date, Phrases phrases) {
    String code = sheet.code().toString();
    String title = phrases.say("class-sheet.title", code);
    Paper paper = new Paper(size, sheet.vehicle(), title, date, phrases);
    paper.title(title);
    paper.paragraph(phrases.say("class-sheet.how"));
    double height = (paper.bottom() - paper.y()) / ClassSheet.DRILLS;
    for (int i = 0; i < sheet.drills().size(); i++) {
      toAnswer(paper, i + 1, sheet.drills().get(i), height, phrases);
    }
    paper.newPage();
    paper.title(phrases.say("class-sheet.answers", code));
    paper.paragraph(phrases.say("class-sheet.again", sheet.code().level().word(), code));
    for (int i = 0; i < sheet.drills().size(); i++) {
      answer(paper, i + 1, sheet.drills().get(i), phrases);
    }
    return paper;
  }

  private static void toAnswer(
      Paper paper, int number, Debrief drill, double height, Phrases phrases) {
    double top = paper.y();
    double left = Paper.MARGIN;
    Leaf leaf = paper.leaf();
    leaf.line(left, top, paper.right(), top, 0.9);
    leaf.text(Integer.toString(number), Typeface.BOLD, TYPE, left, top + GAP);
    leaf.text(drill.code().toString(), Typeface.BOLD, TYPE, left + CODE_INDENT, top + GAP);
    String title =
        Typeface.BOLD.wrap(drill.title(), TYPE, paper.right() - left - TITLE_INDENT).get(0);
    leaf.text(title, Typeface.BOLD, TYPE, left + TITLE_INDENT, top + GAP);
    double from = top + GAP + TYPE * Typeface.LEADING;
    double pitch = (top + height - GAP - from) / LINES;
    double middle = left + (paper.right() - left) * 0.7;
    for (int i = 1; i <= LINES; i++) {
      double y = from + i * pitch;
      boolean last = i == LINES;
      if (i == 1) {
        write(leaf, phrases.say("class-sheet.checks"), left + CODE_INDENT, paper.right(), y);
      } else if (last) {
        write(leaf, phrases.say("class-sheet.failed"), left + CODE_INDENT, middle - GAP, y);
        write(leaf, phrases.say("class-sheet.minutes"), middle, paper.right(), y);
      } else {
        leaf.line(left + CODE_INDENT, y, paper.right(), y, 0.6);
      }
    }
    paper.moveTo(top + height);
  }

  /** A word, and behind it a line to write on. */
  private static void write(Leaf leaf, String word, double x, double right, double y) {
    double top = y - Paper.BODY;
    double end = leaf.text(word, Typeface.REGULAR, Paper.BODY, x, top).right();
    leaf.line(end + GAP, y, right, y, 0.6);
  }

  private static void answer(Paper paper, int number, Debrief drill, Phrases phrases) {
    paper.heading(
        phrases.say(
            "class-sheet.drill", Integer.toString(number), drill.code().toString(), drill.title()));
    paper.labelled(phrases.say("class-sheet.failed"), String.join("; ", drill.truth()));
    List<String> steps = new ArrayList<>();
    for (Step step : drill.best().steps()) {
      String said = step.shown().isEmpty() ? "class-sheet.step" : "class-sheet.step.shown";
      steps.add(phrases.say(said, Integer.toString(step.number()), step.what(), step.shown()));
    }
    paper.labelled(
        phrases.say("class-sheet.best"),
        phrases.say(
            "class-sheet.way",
            Figures.minutes(drill.best().minutes()),
            Integer.toString(drill.best().checks()),
            String.join("; ", steps)));
  }
}
