package loopwright.report;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Phrases;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTable.Column;
import loopwright.casework.list.ListTable.Side;
import loopwright.casework.record.KnownGood;

/** What a vehicle reads when it is well, on a page or two for the glove box. */
public final class KnownGoodCard {
  private KnownGoodCard() {}

  /**
   * The card as a PDF file.
   *
   * @param zone where days are told
   * @param date the day of printing, in words
   */
  public static byte[] pdf(
      KnownGood known, PageSize size, ZoneId zone, String date, Phrases phrases) {
    return paper(known, size, zone, date, phrases).pdf();
  }

  /** Pages that a glove box takes. */
  private static final int MOST_PAGES = 2;

  /** Rows of a circuit that are tried to fit: all, those of its first load, its feed and itself. */
  private static final int[] ROWS = {Integer.MAX_VALUE, 3, 2};

  static Paper paper(KnownGood known, PageSize size, ZoneId zone, String date, Phrases phrases) {
    Paper paper = null;
    for (int rows : ROWS) {
      paper = pages(shorter(known, rows), size, zone, date, phrases);
      if (paper.pages() <= MOST_PAGES) {
        break;
      }
    }
    return paper;
  }

  /** The first rows of each circuit, and whatever was read good. */
  private static KnownGood shorter(KnownGood known, int most) {
    List<KnownGood.Card> cards = new ArrayList<>();
    for (KnownGood.Card card : known.circuits()) {
      List<KnownGood.Row> rows = new ArrayList<>();
      for (int i = 0; i < card.rows().size(); i++) {
        if (i < most || card.rows().get(i).good().isPresent()) {
          rows.add(card.rows().get(i));
        }
      }
      cards.add(new KnownGood.Card(card.name(), card.on(), rows));
    }
    return new KnownGood(known.vehicle(), cards, known.grounds());
  }

  private static Paper pages(
      KnownGood known, PageSize size, ZoneId zone, String date, Phrases phrases) {
    Paper paper = new Paper(size, known.vehicle().name(), phrases.say("card.title"), date, phrases);
    paper.title(phrases.say("card.title"));
    paper.paragraph(phrases.say("card.basis", known.vehicle().groundedPost()));
    paper.table(circuits(known, zone, phrases));
    if (!known.grounds().isEmpty()) {
      paper.heading(phrases.say("card.grounds"));
      known.grounds().forEach(g -> paper.labelled(g.id(), g.title() + ": " + words(g.result())));
    }
    paper.caution(phrases.say("paper.advice"));
    return paper;
  }

  private static String words(Optional<GroundResult> result) {
    return result.map(GroundResult::words).orElse("");
  }

  private static ListTable circuits(KnownGood known, ZoneId zone, Phrases phrases) {
    List<List<String>> rows = new ArrayList<>();
    for (KnownGood.Card card : known.circuits()) {
      String name = card.name() + ": " + String.join(", ", card.on());
      for (KnownGood.Row row : card.rows()) {
        rows.add(
            List.of(
                name,
                row.where(),
                // A range is never broken.
                row.healthy().replace(' ', '\u00a0'),
                row.good().map(g -> good(g, zone, phrases)).orElse("")));
        name = "";
      }
      if (card.rows().isEmpty()) {
        rows.add(List.of(name, phrases.say("print.drawings.none"), "", ""));
      }
    }
    return new ListTable(
        phrases.say("card.circuits"),
        List.of(),
        List.of(
            new Column(phrases.say("card.circuit"), 2, Side.LEFT),
            new Column(phrases.say("card.where"), 3, Side.LEFT),
            new Column(phrases.say("card.healthy"), 1, Side.LEFT),
            new Column(phrases.say("card.read"), 2, Side.LEFT)),
        rows);
  }

  private static String good(KnownGood.Good good, ZoneId zone, Phrases phrases) {
    String day = Paper.day(LocalDate.ofInstant(good.at(), zone));
    String text = phrases.say("card.from." + good.from(), good.value(), day);
    return good.fits() ? text : text + " " + phrases.say("card.outside");
  }
}
