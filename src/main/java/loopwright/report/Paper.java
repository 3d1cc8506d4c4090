package loopwright.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Phrases;
import loopwright.casework.list.ListTable;
import loopwright.model.Language;
import loopwright.report.PageSize.Turn;

/**
 * Pages written from top to bottom: titles, paragraphs, tables, bars. A new page begins by itself
 * where the last is full; every page says what it belongs to and which of how many it is.
 */
public final class Paper {
  /** Margin on all sides in points: 14 mm, which every printer reaches. */
  static final double MARGIN = 40;

  static final double BODY = 10;
  static final double SMALL = 9;
  static final double HEADING = 13;
  static final double TITLE = 18;

  /** Height kept free at the top and bottom of a page for what stands on each. */
  private static final double HEAD = 22;

  private static final double FOOT = 20;
  private static final double GAP = 6;

  /** Where the text behind a label begins. */
  private static final double LABEL = 78;

  private final PageSize size;
  private final String subject;
  private final String title;
  private final String date;
  private final Phrases phrases;
  private final List<Leaf> leaves = new ArrayList<>();
  private Turn turn = Turn.UPRIGHT;
  private double y;

  /**
   * Begins the first page.
   *
   * @param subject what it is about, for instance the vehicle's name
   * @param title what it is
   * @param date the day, in words
   */
  public Paper(PageSize size, String subject, String title, String date, Phrases phrases) {
    this.size = size;
    this.subject = subject;
    this.title = title;
    this.date = date;
    this.phrases = phrases;
    newPage();
  }

  /** A day as pages say it, for instance {@code 17 May 2024}. */
  public static String day(LocalDate day) {
    return day.format(DateTimeFormatter.ofPattern("d MMMM yyyy", Language.inUse().locale()));
  }

  /** Begins a new page of the same turn. */
  public void newPage() {
    Leaf leaf = new Leaf(size.width(turn), size.height(turn));
    leaves.add(leaf);
    Box name = leaf.text(subject, Typeface.BOLD, SMALL, MARGIN, MARGIN);
    leaf.text(title, Typeface.REGULAR, SMALL, name.right() + 10, MARGIN);
    leaf.textRight(date, Typeface.REGULAR, SMALL, right(), MARGIN);
    leaf.line(MARGIN, MARGIN + 14, right(), MARGIN + 14, 0.6);
    y = MARGIN + HEAD;
  }

  /** Begins a new page if anything is on this one yet, turned as told. */
  public void newPage(Turn turn) {
    if (fresh()) {
      leaves.remove(leaves.size() - 1);
    }
    this.turn = turn;
    newPage();
  }

  private boolean fresh() {
    return y == MARGIN + HEAD;
  }

  /** The title of what follows, in the largest type. */
  public void title(String text) {
    lines(text, Typeface.BOLD, TITLE, 0);
    y += GAP;
  }

  /** A heading, kept together with at least three lines of what follows. */
  public void heading(String text) {
    if (!fresh()) {
      y += GAP;
    }
    room(HEADING * Typeface.LEADING + 3 * BODY * Typeface.LEADING);
    lines(text, Typeface.BOLD, HEADING, 0);
    y += GAP / 2;
  }

  /** A paragraph. */
  public void paragraph(String text) {
    lines(text, Typeface.REGULAR, BODY, 0);
    y += GAP;
  }

  /** A paragraph that must not be missed, between two thick lines. */
  public void caution(String text) {
    List<String> lines = Typeface.BOLD.wrap(text, BODY, right() - MARGIN);
    room(lines.size() * BODY * Typeface.LEADING + 3 * GAP);
    leaf().line(MARGIN, y + 1, right(), y + 1, 1.5);
    y += GAP;
    lines(text, Typeface.BOLD, BODY, 0);
    y += GAP / 2;
    leaf().line(MARGIN, y, right(), y, 1.5);
    y += GAP;
  }

  /** A word or two in front, bold, and what it introduces behind, indented. */
  public void labelled(String label, String text) {
    room(BODY * Typeface.LEADING);
    leaf().text(label, Typeface.BOLD, BODY, MARGIN, y);
    lines(text, Typeface.REGULAR, BODY, LABEL);
    y += 2;
  }

  /** Something to be done or looked at, bold, with a box to tick off; kept with what follows. */
  public void tick(String text) {
    double side = 0.8 * BODY;
    room(9 * BODY * Typeface.LEADING);
    leaf().rectangle(new Box(MARGIN + 1, y + 2, side, side), 0.9);
    lines(text, Typeface.BOLD, BODY, side + 8);
    y += 2;
  }

  /** A little room. */
  public void gap() {
    y += GAP;
  }

  /**
   * A bar, black as far as the share goes, with a word before and a value behind it.
   *
   * @param share 0 to 1
   */
  public void bar(String label, double share, String value) {
    double height = BODY * Typeface.LEADING;
    room(height + 3);
    double left = MARGIN + (right() - MARGIN) * 0.4;
    double width = (right() - MARGIN) * 0.4;
    leaf().text(fit(label, left - MARGIN - 8), Typeface.REGULAR, BODY, MARGIN, y);
    double held = Math.max(0, Math.min(1, share));
    leaf().rectangle(new Box(left, y + 2, width, height - 4), 0.6);
    if (held > 0) {
      leaf().bar(new Box(left, y + 2, width * held, height - 4));
    }
    double room = right() - left - width - 8;
    leaf().text(fit(value, room), Typeface.BOLD, BODY, left + width + 8, y);
    y += height + 3;
  }

  private static String fit(String text, double width) {
    List<String> lines = Typeface.BOLD.wrap(text, BODY, width);
    return lines.size() == 1
        ? lines.get(0)
        : Typeface.BOLD.wrap(text, BODY, width - 10).get(0) + "…";
  }

  /** A list with its title and notes; its headings stand again on every page it runs on to. */
  public void table(ListTable table) {
    Grid grid = new Grid(this, table);
    room(above(table) + grid.height(3));
    heading(table.title());
    table.notes().forEach(this::paragraph);
    grid.draw();
    y += GAP;
  }

  /** Height of a list with its title in points, wherever it is broken. */
  double height(ListTable table) {
    return above(table) + new Grid(this, table).height(table.rows().size());
  }

  private double above(ListTable table) {
    double notes = 0;
    for (String note : table.notes()) {
      int lines = Typeface.REGULAR.wrap(note, BODY, right() - MARGIN).size();
      notes += lines * BODY * Typeface.LEADING + GAP;
    }
    return 2 * GAP + HEADING * Typeface.LEADING + notes;
  }

  private void lines(String text, Typeface face, double size, double indent) {
    double height = size * Typeface.LEADING;
    for (String line : face.wrap(text, size, right() - MARGIN - indent)) {
      room(height);
      leaf().text(line, face, size, MARGIN + indent, y);
      y += height;
    }
  }

  // For what draws on the page itself.

  /** The page written on. */
  Leaf leaf() {
    return leaves.get(leaves.size() - 1);
  }

  /** How far down it is written. */
  double y() {
    return y;
  }

  /** Goes on writing further down. */
  void moveTo(double y) {
    this.y = y;
  }

  /** Right end of the lines. */
  double right() {
    return size.width(turn) - MARGIN;
  }

  /** Lowest end of what is written. */
  double bottom() {
    return size.height(turn) - MARGIN - FOOT;
  }

  /** Begins a new page unless so much height is left on this one. */
  void room(double height) {
    if (y + height > bottom() + 1e-6 && !fresh()) {
      newPage();
    }
  }

  /** A paper of its own to try on how much fits a page turned as told. */
  Paper trial(Turn turn) {
    Paper trial = new Paper(size, subject, title, date, phrases);
    trial.newPage(turn);
    return trial;
  }

  /** How many pages there are so far. */
  int pages() {
    return leaves.size();
  }

  /** The pages, each with its number, and what names of scripts stand for where there are any. */
  List<Leaf> finished() {
    List<Leaf> numbered = new ArrayList<>();
    for (int i = 0; i < leaves.size(); i++) {
      Leaf leaf = leaves.get(i).copy();
      String number =
          phrases.say("print.page", Integer.toString(i + 1), Integer.toString(leaves.size()));
      double foot = leaf.height() - MARGIN - SMALL * Typeface.LEADING;
      leaf.textRight(number, Typeface.REGULAR, SMALL, leaf.width() - MARGIN, foot);
      if (leaf.texts().stream().anyMatch(t -> t.text().contains(Typeface.NAMED))) {
        leaf.text(phrases.say("print.script"), Typeface.REGULAR, SMALL, MARGIN, foot);
      }
      numbered.add(leaf);
    }
    return numbered;
  }

  /** The pages as a PDF file. */
  public byte[] pdf() {
    return PdfWriter.write(finished(), subject + " - " + title);
  }
}
