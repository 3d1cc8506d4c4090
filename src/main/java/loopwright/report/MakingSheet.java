package loopwright.report;

import loopwright.casework.Phrases;
import loopwright.casework.list.ListTables;
import loopwright.casework.list.MakingList;
import loopwright.report.PageSize.Turn;

/** The making list on paper: what to buy, the looms, and across the page what to cut. */
public final class MakingSheet {
  private MakingSheet() {}

  /**
   * The pages as a PDF file.
   *
   * @param date the day, in words
   */
  public static byte[] pdf(MakingList making, PageSize size, String date, Phrases phrases) {
    return paper(making, size, date, phrases).pdf();
  }

  static Paper paper(MakingList making, PageSize size, String date, Phrases phrases) {
    ListTables tables = new ListTables(making, phrases);
    Paper paper =
        new Paper(size, making.vehicle().name(), phrases.say("print.making"), date, phrases);
    paper.table(tables.buying());
    if (!making.looms().isEmpty()) {
      paper.table(tables.looms());
    }
    paper.newPage(Turn.ACROSS);
    paper.table(tables.cutting());
    return paper;
  }
}
