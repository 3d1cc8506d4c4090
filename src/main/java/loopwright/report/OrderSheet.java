package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.OrderCard;
import loopwright.casework.Phrases;

/** Order-of-checks cards, a page each, to be read at arm's length and written on. */
public final class OrderSheet {
  /**
   * Type of what hands need in points. Capitals are 0.7 of it: at 70 cm, with the page on a fender,
   * they are seen under 17 minutes of arc, where 16 is least (ISO 9241-303, from memory).
   */
  static final double LARGE = 14;

  /** Type of set-up, cautions and ends: 17 minutes of arc at 60 cm, an arm's length. */
  static final double PLAIN = 12;

  private static final double NUMBER = 26;
  private static final double INDENT = 34;
  private static final double GUTTER = 14;
  private static final double GAP = 3;
  private static final String BETWEEN = "      ";

  /** Share of the page's width that the set-up takes; what is good and read takes the rest. */
  private static final double SHARE = 0.5;

  private OrderSheet() {}

  /**
   * The cards of a vehicle as a PDF file, a page each.
   *
   * @param cards at least one
   * @param date the day of printing, in words
   */
  public static byte[] pdf(List<OrderCard> cards, PageSize size, String date, Phrases phrases) {
    return paper(cards, size, date, phrases).pdf();
  }

  static Paper paper(List<OrderCard> cards, PageSize size, String date, Phrases phrases) {
    List<OrderCard.Page> pages = cards.stream().map(c -> c.upTo(checks(c, size, phrases))).toList();
    return pages(pages, size, date, phrases);
  }

  /** How many of the card's checks one page holds. */
  public static int checks(OrderCard card, PageSize size, Phrases phrases) {
    int checks = card.checks();
    while (checks > 1 && pages(List.of(card.upTo(checks)), size, "", phrases).pages() > 1) {
      checks--;
    }
    return checks;
  }

  private static Paper pages(
      List<OrderCard.Page> cards, PageSize size, String date, Phrases phrases) {
    String vehicle = cards.get(0).vehicle();
    Paper paper = new Paper(size, vehicle, phrases.say("order-card.title"), date, phrases);
    for (OrderCard.Page card : cards) {
      paper.newPage(PageSize.Turn.UPRIGHT);
      page(paper, card, phrases);
    }
    return paper;
  }

  private static void page(Paper paper, OrderCard.Page card, Phrases phrases) {
    paper.title(card.title());
    paper.caution(phrases.say("order-card.how") + " " + String.join(" ", card.cautions()));
    for (int i = 0; i < card.steps().size(); i++) {
      step(paper, i + 1, card.steps().get(i), phrases);
    }
    paper.caution(phrases.say("order-card.left"));
  }

  /** A line of a step. */
  private record Line(Typeface face, double size, String text) {
    double height() {
      return size * Typeface.LEADING;
    }
  }

  /** Lines as wide as a step. */
  private static final class Block {
    private final List<Line> lines = new ArrayList<>();
    private final double width;

    private Block(double width) {
      this.width = width;
    }

    private Block add(Typeface face, double size, String text) {
      face.wrap(text, size, width).forEach(t -> lines.add(new Line(face, size, t)));
      return this;
    }

    /** Side by side as many as a line holds. */
    private void flow(Typeface face, double size, List<String> texts) {
      String line = "";
      for (String text : texts) {
        String longer = line + BETWEEN + text;
        if (!line.isEmpty() && face.width(longer, size) <= width) {
          lines.set(lines.size() - 1, new Line(face, size, longer));
          line = longer;
        } else {
          add(face, size, text);
          line = lines.get(lines.size() - 1).text();
        }
      }
    }

    private double height() {
      return lines.stream().mapToDouble(Line::height).sum();
    }

    /** Draws the lines; says where the next one goes. */
    private double draw(Leaf leaf, double x, double top) {
      double y = top;
      for (Line line : lines) {
        leaf.text(line.text(), line.face(), line.size(), x, y);
        y += line.height();
      }
      return y;
    }
  }

  private static void step(Paper paper, int number, OrderCard.Step step, Phrases phrases) {
    double left = Paper.MARGIN + INDENT;
    double width = paper.right() - left;
    Block what = what(step, width, phrases);
    Block set =
        new Block(width * SHARE)
            .add(
                Typeface.REGULAR,
                PLAIN,
                phrases.say("order-card.set", String.join("; ", step.set())));
    Block ways = ways(step, width, phrases);
    double writing = Math.max(LARGE * Typeface.LEADING, set.height()) + GAP;
    double tall = what.height() + writing + ways.height() + 2 * GAP;
    paper.room(tall);
    double top = paper.y();
    Leaf leaf = paper.leaf();
    leaf.line(Paper.MARGIN, top, paper.right(), top, 0.9);
    leaf.text(Integer.toString(number), Typeface.BOLD, NUMBER, Paper.MARGIN, top + GAP);
    double y = what.draw(leaf, left, top + GAP);
    set.draw(leaf, left, y);
    read(leaf, step, left + width * SHARE + GUTTER, y, paper.right(), phrases);
    ways.draw(leaf, left, y + writing);
    paper.moveTo(top + tall);
  }

  /** What is good, and room to write what was read. */
  private static void read(
      Leaf leaf, OrderCard.Step step, double x, double y, double right, Phrases phrases) {
    String good = phrases.say("order-card.good", step.healthy());
    double said = leaf.text(good, Typeface.REGULAR, PLAIN, x, y).right() + GUTTER;
    String read = phrases.say("order-card.read");
    double rule = leaf.text(read, Typeface.REGULAR, PLAIN, said, y).right() + GAP;
    double under = y + LARGE * Typeface.LEADING - 1;
    leaf.line(rule, under, right, under, 0.6);
  }

  private static Block what(OrderCard.Step step, double width, Phrases phrases) {
    Block what = new Block(width);
    if (!step.cautions().isEmpty()) {
      String careful = phrases.say("order-card.careful", String.join(" ", step.cautions()));
      what.add(Typeface.BOLD, PLAIN, careful);
    }
    what.add(Typeface.BOLD, LARGE, step.what());
    if (!step.red().isEmpty()) {
      what.add(Typeface.REGULAR, LARGE, phrases.say("order-card.red", step.red()));
      what.add(Typeface.REGULAR, LARGE, phrases.say("order-card.black", step.black()));
    }
    return what;
  }

  /** Where to go on first; then what is left where the card ends. */
  private static Block ways(OrderCard.Step step, double width, Phrases phrases) {
    Block ways = new Block(width);
    List<String> on = new ArrayList<>();
    for (OrderCard.Way way : step.ways()) {
      way.step()
          .map(number -> phrases.say("order-card.go", Integer.toString(number)))
          .ifPresent(to -> on.add(phrases.say("order-card.way", way.result(), to)));
    }
    ways.flow(Typeface.BOLD, LARGE, on);
    for (OrderCard.Way way : step.ways()) {
      if (way.step().isEmpty()) {
        String end = phrases.say("order-card.way", way.result(), way.left());
        ways.add(Typeface.REGULAR, PLAIN, end);
      }
    }
    return ways;
  }
}
