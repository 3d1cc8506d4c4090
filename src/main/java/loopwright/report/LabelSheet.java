package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Phrases;
import loopwright.casework.list.Label;
import loopwright.model.Vehicle;

/**
 * Labels on a plain sheet with lines to cut along. A wire's label is folded round the wire in its
 * middle and reads the same on both sides.
 */
public final class LabelSheet {
  private static final int ACROSS = 3;

  /** Height of a label in points: 15 mm. */
  private static final double HEIGHT = 42.5;

  /** Width kept free in the middle of a wire's label, where the wire lies. */
  private static final double FOLD = 12;

  private static final double PAD = 3;
  private static final double HEAD = 11;
  private static final double TEXT = 8.5;
  private static final double LEAST = 6;

  private final Paper paper;
  private final Phrases phrases;
  private final double width;
  private int column;

  private LabelSheet(Paper paper, Phrases phrases) {
    this.paper = paper;
    this.phrases = phrases;
    this.width = (paper.right() - Paper.MARGIN) / ACROSS;
  }

  /**
   * The labels of a vehicle as a PDF file: two for every wire, one for every part.
   *
   * @param date the day, in words
   */
  public static byte[] pdf(Vehicle vehicle, PageSize size, String date, Phrases phrases) {
    return paper(vehicle, size, date, phrases).pdf();
  }

  static Paper paper(Vehicle vehicle, PageSize size, String date, Phrases phrases) {
    Paper paper = new Paper(size, vehicle.name(), phrases.say("print.labels"), date, phrases);
    LabelSheet sheet = new LabelSheet(paper, phrases);
    paper.heading(phrases.say("print.labels.wires"));
    paper.paragraph(phrases.say("print.labels.fold"));
    Label.ofWires(vehicle).forEach(sheet::wire);
    sheet.endRow();
    paper.heading(phrases.say("print.labels.parts"));
    Label.ofParts(vehicle).forEach(sheet::part);
    sheet.endRow();
    return paper;
  }

  private void wire(Label label) {
    Box box = next();
    double half = (width - FOLD) / 2;
    double middle = box.x() + width / 2;
    paper.leaf().dashed(middle, box.y() + 2, middle, box.bottom() - 2, 0.3, 2);
    List<String> lines =
        List.of(
            label.head(),
            phrases.say("print.labels.here", label.here()),
            phrases.say("print.labels.far", label.far()));
    lines(lines, new Box(box.x(), box.y(), half, HEIGHT));
    lines(lines, new Box(box.right() - half, box.y(), half, HEIGHT));
  }

  private void part(Label label) {
    List<String> lines = new ArrayList<>(List.of(label.head()));
    lines.add(label.here());
    lines.add(label.far());
    lines(lines, next());
  }

  /** The first line in bold, those after it smaller. */
  private void lines(List<String> lines, Box box) {
    double y = box.y() + PAD;
    for (int i = 0; i < lines.size(); i++) {
      Typeface face = i == 0 ? Typeface.BOLD : Typeface.REGULAR;
      double size = i == 0 ? HEAD : TEXT;
      fitted(lines.get(i), face, size, box.x() + PAD, y, box.width() - 2 * PAD);
      y += size * Typeface.LEADING;
    }
  }

  /** Set smaller where it is too wide, and cut where it still is. */
  private void fitted(String text, Typeface face, double size, double x, double y, double room) {
    double fits =
        Math.max(LEAST, Math.min(size, size * room / Math.max(1, face.width(text, size))));
    String shown = text;
    while (face.width(shown, fits) > room + 0.01 && shown.length() > 2) {
      shown = shown.substring(0, shown.length() - 2) + "…";
    }
    paper.leaf().text(shown, face, fits, x, y);
  }

  private Box next() {
    if (column == 0) {
      paper.room(HEIGHT);
    }
    Box box = new Box(Paper.MARGIN + column * width, paper.y(), width, HEIGHT);
    paper.leaf().rectangle(box, 0.3);
    column++;
    if (column == ACROSS) {
      endRow();
    }
    return box;
  }

  private void endRow() {
    if (column > 0) {
      column = 0;
      paper.moveTo(paper.y() + HEIGHT);
    }
  }
}
