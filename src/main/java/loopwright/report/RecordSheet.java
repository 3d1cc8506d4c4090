package loopwright.report;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loopwright.casework.Phrases;
import loopwright.casework.Picture;
import loopwright.casework.list.ListTable;
import loopwright.casework.record.RecordText;

/** A case on one page, with its photos on another. */
public final class RecordSheet {
  private RecordSheet() {}

  /** How much is told; what the paper of a case is for comes last. */
  private enum Room {
    ALL,
    /** Without what any such repair wants. */
    LESS,
    /** Nor what was ruled out on the way to it. */
    LEAST
  }

  /**
   * The record as a PDF file: one page, wherever all readings fit on one; what can be looked up
   * again is left out first.
   *
   * @param pictures the photos put to it, by their paths; they follow on a page of their own
   * @param date the day of printing, in words
   */
  public static byte[] pdf(
      RecordText text,
      Function<String, Optional<Picture>> pictures,
      PageSize size,
      String date,
      Phrases phrases) {
    Paper paper = paper(text, size, date, phrases);
    new PhotoPage(paper, phrases).add(text.record().photos(), pictures);
    return paper.pdf();
  }

  static Paper paper(RecordText text, PageSize size, String date, Phrases phrases) {
    for (Room room : List.of(Room.ALL, Room.LESS)) {
      Paper paper = paper(text, size, date, phrases, room);
      if (paper.pages() == 1) {
        return paper;
      }
    }
    return paper(text, size, date, phrases, Room.LEAST);
  }

  private static Paper paper(
      RecordText text, PageSize size, String date, Phrases phrases, Room room) {
    Paper paper =
        new Paper(
            size, text.record().opened().vehicleId(), phrases.say("record.title"), date, phrases);
    paper.title(text.record().title());
    facts(paper, text.facts());
    int stages = text.record().stages().size();
    for (int stage = 0; stage < stages; stage++) {
      ListTable readings = text.readings(stage);
      if (!readings.rows().isEmpty()) {
        paper.table(readings);
      }
      if (room != Room.LEAST && !text.cleared(stage).isEmpty()) {
        paper.heading(phrases.say("record.cleared"));
        text.cleared(stage).forEach(c -> paper.paragraph(c.text() + ": " + c.label()));
      }
      List<RecordText.Fact> found = text.found(stage, room == Room.ALL);
      if (!found.isEmpty()) {
        paper.heading(phrases.say("record.fault"));
        facts(paper, found);
      }
      text.mend(stage).ifPresent(m -> paper.labelled(m.label(), m.text()));
      paper.gap();
    }
    if (!text.besides().isEmpty()) {
      paper.heading(phrases.say("record.besides"));
      facts(paper, text.besides());
    }
    return paper;
  }

  private static void facts(Paper paper, List<RecordText.Fact> facts) {
    facts.forEach(f -> paper.labelled(f.label(), f.text()));
  }
}
