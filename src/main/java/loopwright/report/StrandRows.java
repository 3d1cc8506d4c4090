package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.drawing.PartSymbol;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Units;
import loopwright.model.Vehicle;

/**
 * A strand laid out in rows from left to right at a scale: volts over each node, its number on the
 * line, over each piece its id between the terminals where the loop enters and leaves, under it
 * what is written on it, what it is, its size or rating and the volts lost in it.
 */
final class StrandRows {
  /** Size of the texts at scale 1; nothing is set smaller than 7 points. */
  static final double TEXT = 9;

  /** Least scale: texts are then 7 points. */
  static final double LEAST = 7 / TEXT;

  private static final double ID = 10.5;
  private static final double EM = 12;
  private static final double CIRCLE = 8;
  private static final double GAP = 4;
  private static final double PART = 60;
  private static final double WIRE = 44;
  private static final double STRETCH = 16;
  private static final double BELOW = 12;
  private static final double ROW_GAP = 6;

  /** Lines of a piece stand closer than those of a paragraph. */
  private static final double LEADING = 1.15;

  /** Widest that a part grows to hold its name in two lines. */
  private static final double NAME_MOST = 92;

  /** Kept free behind the last node of a row, for its volts, an arrow or the way to the rail. */
  private static final double RIGHT = 26;

  /** How a text under a piece may be broken. */
  private enum Break {
    AT_SPACES,
    NEVER
  }

  /** A text under a piece. */
  private record Line(String text, Typeface face, Break broken) {}

  /** A piece with its column. */
  private record Cell(Strand.Piece piece, double width, List<Line> lines) {}

  /** Cells beside one another, with the index of the first. */
  private record Row(int from, List<Cell> cells) {
    double width() {
      return cells.stream().mapToDouble(Cell::width).sum();
    }
  }

  private final Vehicle vehicle;
  private final Strand strand;
  private final double scale;
  private final double room;
  private final List<Row> rows;

  /**
   * Lays out.
   *
   * @param scale 1 or less, at least {@link #LEAST}
   * @param room width from the first node to the right end of the page
   */
  StrandRows(Vehicle vehicle, Strand strand, double scale, double room) {
    this.vehicle = vehicle;
    this.strand = strand;
    this.scale = scale;
    this.room = room;
    this.rows = rows();
  }

  /** As few rows as the room allows, and those about equally long. */
  private List<Row> rows() {
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < strand.pieces().size(); i++) {
      cells.add(cell(i));
    }
    double most = room - s(RIGHT);
    int count = filled(cells, most).size();
    double limit = most;
    for (double tried = most; filled(cells, tried).size() == count; tried -= s(5)) {
      limit = tried;
    }
    List<Row> rows = filled(cells, limit);
    double longest = rows.stream().mapToDouble(Row::width).max().orElse(0);
    double more = rows.size() == 1 ? 0 : Math.min(most, 1.12 * longest);
    return rows.stream()
        .map(r -> new Row(r.from(), stretched(r.cells(), more - r.width())))
        .toList();
  }

  private static List<Row> filled(List<Cell> cells, double limit) {
    List<Row> rows = new ArrayList<>();
    List<Cell> row = new ArrayList<>();
    double used = 0;
    for (int i = 0; i < cells.size(); i++) {
      Cell cell = cells.get(i);
      if (!row.isEmpty() && used + cell.width() > limit) {
        rows.add(new Row(i - row.size(), List.copyOf(row)));
        row.clear();
        used = 0;
      }
      row.add(cell);
      used += cell.width();
    }
    rows.add(new Row(cells.size() - row.size(), List.copyOf(row)));
    return rows;
  }

  private List<Cell> stretched(List<Cell> row, double spare) {
    double more = Math.max(0, Math.min(s(STRETCH), spare / row.size()));
    return row.stream().map(c -> new Cell(c.piece(), c.width() + more, c.lines())).toList();
  }

  private Cell cell(int index) {
    Strand.Piece piece = strand.pieces().get(index);
    PieceView view = piece.view();
    Part part = vehicle.requirePart(view.part());
    boolean thin = thin(view.kind());
    double width = s(thin ? WIRE : PART);
    width = Math.max(width, Typeface.BOLD.width(view.part(), s(ID)) + ends(view));
    // Neighbouring volts stand beside one another.
    double volts = half(strand.nodes().get(index)) + half(strand.nodes().get(index + 1));
    width = Math.max(width, volts + 2 * s(GAP));
    List<Line> texts = texts(part, piece);
    for (Line line : texts) {
      String[] words =
          line.broken() == Break.NEVER ? new String[] {line.text()} : line.text().split(" ");
      for (String word : words) {
        width = Math.max(width, line.face().width(word, s(TEXT)) + 2 * s(GAP));
      }
    }
    while (!thin
        && width < s(NAME_MOST)
        && Typeface.REGULAR.wrap(part.name(), s(TEXT), width - s(GAP)).size() > 2) {
      width += s(2);
    }
    List<Line> lines = new ArrayList<>();
    for (Line line : texts) {
      line.face()
          .wrap(line.text(), s(TEXT), width - s(GAP))
          .forEach(l -> lines.add(new Line(l, line.face(), Break.NEVER)));
    }
    return new Cell(piece, width, List.copyOf(lines));
  }

  private double half(Strand.Node node) {
    return volts(node).stream().mapToDouble(v -> Typeface.BOLD.width(v, s(TEXT))).max().orElse(0)
        / 2;
  }

  /** Volts in two lines: {@code 12.4 to} over {@code 12.6 V}. */
  private static List<String> volts(Strand.Node node) {
    int to = node.volts().indexOf(" to ");
    return to < 0
        ? List.of("", node.volts())
        : List.of(node.volts().substring(0, to + 3), node.volts().substring(to + 4));
  }

  /** Width for the terminals on both sides of the id, which stands in the middle. */
  private double ends(PieceView view) {
    double longest =
        terminals(view).stream()
            .mapToDouble(t -> Typeface.REGULAR.width(t, s(TEXT)))
            .max()
            .orElse(0);
    return longest == 0 ? 0 : 2 * (longest + s(GAP) + s(CIRCLE) / 2);
  }

  private static List<String> terminals(PieceView view) {
    return Stream.of(view.in(), view.out())
        .map(t -> t.map(at -> at.terminal()).orElse(""))
        .toList();
  }

  private static boolean thin(PartKind kind) {
    return kind == PartKind.WIRE || kind == PartKind.STRAP;
  }

  private static List<Line> texts(Part part, Strand.Piece piece) {
    List<Line> lines = new ArrayList<>();
    if (!part.label().isEmpty()) {
      lines.add(new Line("\u201c" + part.label() + "\u201d", Typeface.BOLD, Break.AT_SPACES));
    }
    if (part.spec() instanceof PartSpec.Wire w) {
      lines.add(new Line(Units.inUse().size(w.size()), Typeface.REGULAR, Break.NEVER));
      lines.add(new Line(w.colour(), Typeface.REGULAR, Break.AT_SPACES));
      String metres = Units.inUse().length(w.metres().about(), 1);
      lines.add(new Line(metres, Typeface.REGULAR, Break.NEVER));
    } else {
      lines.add(new Line(part.name(), Typeface.REGULAR, Break.AT_SPACES));
      lines.add(new Line(piece.view().detail(), Typeface.REGULAR, Break.NEVER));
    }
    lines.add(new Line(piece.drop(), Typeface.REGULAR, Break.NEVER));
    lines.removeIf(l -> l.text().isBlank());
    return lines;
  }

  private double s(double points) {
    return points * scale;
  }

  private double lead() {
    return s(TEXT) * LEADING;
  }

  /** From the top of a row to its line. */
  double toLine() {
    return 2 * lead() + s(ID) * Typeface.LEADING + s(EM);
  }

  private double height(Row row) {
    int lines = row.cells().stream().mapToInt(c -> c.lines().size()).max().orElse(0);
    return toLine() + s(BELOW) + lines * lead() + s(ROW_GAP);
  }

  /** Height of its title and all rows in points. */
  double height() {
    return titleHeight() + rows.stream().mapToDouble(this::height).sum();
  }

  private double titleHeight() {
    return s(ID) * Typeface.LEADING + s(GAP);
  }

  /**
   * Draws on a page.
   *
   * @param left where the first node stands
   * @param top where the title stands
   * @return where the last node stands across
   */
  double draw(Leaf leaf, double left, double titleLeft, double top) {
    leaf.text(strand.title(), Typeface.BOLD, s(ID), titleLeft, top);
    double y = top + titleHeight();
    double end = left;
    for (int r = 0; r < rows.size(); r++) {
      Row row = rows.get(r);
      double lineY = y + toLine();
      double x = left;
      node(leaf, strand.nodes().get(row.from()), x, y, lineY);
      if (r > 0) {
        leaf.line(x - s(CIRCLE) - s(14), lineY, x - s(CIRCLE), lineY, s(1.2));
      }
      for (int c = 0; c < row.cells().size(); c++) {
        Cell cell = row.cells().get(c);
        piece(leaf, cell, x, y, lineY);
        x += cell.width();
        node(leaf, strand.nodes().get(row.from() + c + 1), x, y, lineY);
      }
      if (r < rows.size() - 1) {
        arrow(leaf, x + s(CIRCLE), lineY);
      }
      end = x;
      y += height(row);
    }
    return end;
  }

  /** The loop goes on in the next row, from the node of the same number. */
  private void arrow(Leaf leaf, double x, double y) {
    double tip = x + s(16);
    leaf.line(x, y, tip - s(5), y, s(1.2));
    leaf.filled(tip, y, tip - s(6), y - s(3), tip - s(6), y + s(3));
  }

  private void node(Leaf leaf, Strand.Node node, double x, double top, double lineY) {
    double y = top;
    for (String line : volts(node)) {
      leaf.textMiddle(line, Typeface.BOLD, s(TEXT), x, y);
      y += lead();
    }
    leaf.circle(x, lineY, s(CIRCLE), s(node.stair().reachable() ? 1.2 : 0.5));
    leaf.textMiddle(Integer.toString(node.number()), Typeface.BOLD, s(TEXT), x, lineY - lead() / 2);
  }

  private void piece(Leaf leaf, Cell cell, double x, double top, double lineY) {
    PieceView view = cell.piece().view();
    double middle = x + cell.width() / 2;
    double idTop = top + 2 * lead();
    leaf.textMiddle(view.part(), Typeface.BOLD, s(ID), middle, idTop);
    List<String> ends = terminals(view);
    double endTop = idTop + s(ID - TEXT) * Typeface.ABOVE;
    double inset = s(CIRCLE) / 2;
    leaf.text(ends.get(0), Typeface.REGULAR, s(TEXT), x + inset, endTop);
    leaf.textRight(ends.get(1), Typeface.REGULAR, s(TEXT), x + cell.width() - inset, endTop);
    double line = cell.width() - 2 * s(CIRCLE);
    double width = thin(view.kind()) || view.kind() == PartKind.BODY ? line : s(EM) * 2.6;
    Symbols.draw(leaf, PartSymbol.of(view, width / s(EM), 2), middle, lineY, s(EM), s(1.2));
    leaf.line(x + s(CIRCLE), lineY, middle - width / 2, lineY, s(1.2));
    leaf.line(middle + width / 2, lineY, x + cell.width() - s(CIRCLE), lineY, s(1.2));
    double y = lineY + s(BELOW);
    for (Line text : cell.lines()) {
      leaf.textMiddle(text.text(), text.face(), s(TEXT), middle, y);
      y += lead();
    }
  }

  /** Where the line of the last row lies, from the top. */
  double lastLine() {
    return height() - height(rows.get(rows.size() - 1)) + toLine();
  }

  /** Where the line of the first row lies, from the top. */
  double firstLine() {
    return titleHeight() + toLine();
  }
}
