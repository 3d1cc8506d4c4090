package loopwright.ui.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.LoopView;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.LoopView.Stair;
import loopwright.casework.LoopView.Standing;
import loopwright.model.Language;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import loopwright.ui.drawing.LoopPlan.Box;
import loopwright.ui.drawing.LoopPlan.Label;
import loopwright.ui.drawing.LoopPlan.Lead;

/**
 * Lays a loop out from the model: battery at the left, pieces from left to right, the 0 V rail
 * below, the voltage staircase under the loop with each node's column under its node. All lengths
 * are in em. Knows no toolkit.
 */
public final class LoopLayout {
  /** Size of ids, names and figures in em of the drawing. */
  public static final double SMALL = 0.85;

  private static final double LEFT = 5.6;
  private static final double RIGHT = 1.6;
  private static final double ID_HEIGHT = 1.25;
  private static final double LEAD_SIZE = 1.5;
  private static final double SYMBOL_HALF = 1.0;
  private static final double NAME_LINE = 1.05;
  private static final double VALUE_LINE = 1.2;
  private static final double BELOW_RAIL = 0.6;
  private static final double BAND_WIDTH = 1.1;
  private static final double BAND_LEAST = 0.28;
  private static final double STAIRS_LEAST = 3;
  private static final double STAIRS_NONE = 1.2;
  private static final double ROW_HEIGHT = 3.2;

  /** A finger's breadth, 44 pixels at the normal size: a wire lies between two neighbours. */
  private static final double WIRE_WIDTH = 2.75;

  private static final double PART_WIDTH = 4.6;
  private static final double PART_MOST = 13;
  private static final double WIRE_MOST = 8;
  private static final double FOLD_WIDTH = 2.8;

  /** Measures text, in em of the drawing. */
  @FunctionalInterface
  public interface TextWidth {
    /** Width of a text set at {@code size} em. */
    double of(String text, double size);
  }

  /** Whether pieces far from the question may be folded away. */
  public enum Folding {
    /** Fold what does not fit. */
    PART_IN_QUESTION,
    /** Draw all; the drawing may be wider than the room. */
    WHOLE
  }

  /**
   * What to lay out.
   *
   * @param loop the loop, with the loops that act on it
   * @param width room across in em
   * @param height room down in em
   * @param red where the red lead belongs
   * @param black where the black lead belongs
   * @param folding whether to fold
   * @param text measures text
   */
  public record Request(
      LoopView loop,
      double width,
      double height,
      Optional<TerminalRef> red,
      Optional<TerminalRef> black,
      Folding folding,
      TextWidth text) {
    /** Rejects missing parts. */
    public Request {
      Objects.requireNonNull(loop, "loop");
      Objects.requireNonNull(text, "text");
    }
  }

  /** A column: one piece, or a run folded away. */
  private record Column(int from, int to) {
    boolean fold() {
      return to - from > 1;
    }
  }

  private final Request request;
  private final LoopView main;
  private final List<LoopView> others;

  private LoopLayout(Request request) {
    this.request = request;
    this.main = inFocus(request);
    this.others =
        Stream.concat(Stream.of(request.loop()), request.loop().branches().stream())
            .filter(l -> l != main)
            .toList();
  }

  /** Lays out. */
  public static LoopPlan of(Request request) {
    return new LoopLayout(request).plan();
  }

  /** The loop to which both leads belong, or the red one, or else the one given. */
  private static LoopView inFocus(Request r) {
    List<LoopView> all = new ArrayList<>();
    all.add(r.loop());
    all.addAll(r.loop().branches());
    return all.stream()
        .filter(l -> on(l, r.red()) && on(l, r.black()))
        .findFirst()
        .or(() -> all.stream().filter(l -> on(l, r.red())).findFirst())
        .orElse(r.loop());
  }

  private static boolean on(LoopView loop, Optional<TerminalRef> lead) {
    return lead.isPresent() && loop.stairs().stream().anyMatch(s -> at(s, lead));
  }

  private static boolean at(Stair stair, Optional<TerminalRef> lead) {
    return lead.isPresent()
        && (stair.point().equals(lead.get()) || stair.others().contains(lead.get()));
  }

  private LoopPlan plan() {
    List<Column> columns = columns();
    double[] widths = widths(columns);
    double[] edges = new double[columns.size() + 1];
    edges[0] = LEFT;
    for (int i = 0; i < widths.length; i++) {
      edges[i + 1] = edges[i] + widths[i];
    }
    double width = edges[columns.size()] + RIGHT;

    int valueLines = valueLines(columns, edges);
    boolean names = true;
    int rowCount = others.size();
    // The loops that act on this one matter while something in them is suspected; then they come
    // before the names, else after.
    boolean rowsMatter =
        others.stream().flatMap(l -> l.pieces().stream()).anyMatch(this::onlyThere);
    while (!fits(names, rowCount, valueLines)) {
      if (names && (rowsMatter || rowCount == 0)) {
        names = false;
      } else if (rowCount > 0) {
        rowCount--;
        names = names || fits(true, rowCount, valueLines);
      } else {
        break;
      }
    }
    double fixed = fixedHeight(names, valueLines);
    double top = rowCount * ROW_HEIGHT;
    double stairs =
        main.hasStaircase() ? Math.max(STAIRS_LEAST, request.height() - fixed - top) : STAIRS_NONE;
    double idY = top;
    double lineY = idY + ID_HEIGHT + LEAD_SIZE + 0.1;
    double namesY = lineY + SYMBOL_HALF + 0.05;
    double stairsTop = (names ? namesY + 2 * NAME_LINE : namesY) + 0.5;
    double stairsBottom = stairsTop + stairs - 0.5;
    Axis axis = axis(stairsTop, stairsBottom);
    double railY = axis.y(0);
    double valuesY = stairsBottom + 0.35;

    List<LoopPlan.Piece> pieces = new ArrayList<>();
    List<LoopPlan.Fold> folds = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      Box cell = new Box(edges[i], idY, widths[i], namesY - idY + (names ? 2 * NAME_LINE : 0));
      if (column.fold()) {
        String count = Integer.toString(column.to() - column.from());
        Box label = new Box(cell.x(), idY, cell.width(), ID_HEIGHT);
        folds.add(new LoopPlan.Fold(column.from(), column.to(), cell, new Label(count, label)));
      } else {
        pieces.add(piece(column.from(), main.pieces().get(column.from()), cell, lineY, names));
      }
    }

    List<LoopPlan.Node> nodes = new ArrayList<>();
    double[] lastValueRight = {-1, -1};
    for (int i = 0; i <= columns.size(); i++) {
      int index = i < columns.size() ? columns.get(i).from() : main.stairs().size() - 1;
      nodes.add(node(index, edges[i], lineY, axis, valuesY, lastValueRight));
    }
    List<LoopPlan.Row> rows = new ArrayList<>();
    for (int r = 0; r < rowCount; r++) {
      rows.add(row(others.get(r), r * ROW_HEIGHT, width, pieces, idY));
    }
    List<Label> titleLines = titleLines(main, idY);
    double height = stairsBottom + BELOW_RAIL + valueLines * VALUE_LINE;
    Box battery = new Box(1.3, lineY, 2.2, railY - lineY);
    return new LoopPlan(
        main.title(),
        List.copyOf(titleLines),
        Math.max(width, rowsWidth(rows)),
        height,
        lineY,
        battery,
        List.copyOf(pieces),
        List.copyOf(folds),
        List.copyOf(nodes),
        axis.ticks(),
        railY,
        List.copyOf(rows));
  }

  /** How many lines the measured values under the rail need: 0, 1 or 2. */
  private int valueLines(List<Column> columns, double[] edges) {
    int lines = 0;
    double[] lastRight = {-1, -1};
    for (int i = 0; i <= columns.size(); i++) {
      int index = i < columns.size() ? columns.get(i).from() : main.stairs().size() - 1;
      List<LoopView.Measured> measured = main.stairs().get(index).measured();
      if (!measured.isEmpty()) {
        double volts = measured.get(measured.size() - 1).volts();
        Label label = valueLabel(new LoopPlan.Point(0, volts, 0), edges[i], 0, lastRight);
        lines = Math.max(lines, label.box().y() > 0 ? 2 : 1);
      }
    }
    return lines;
  }

  private static double rowsWidth(List<LoopPlan.Row> rows) {
    return rows.stream()
        .flatMap(r -> r.nodes().stream())
        .mapToDouble(n -> n.x() + 0.5)
        .max()
        .orElse(0);
  }

  private List<Label> titleLines(LoopView loop, double top) {
    List<Label> lines = new ArrayList<>();
    for (String line : wrap(loop.title(), LEFT - 0.6)) {
      double y = top + lines.size() * NAME_LINE;
      lines.add(new Label(line, new Box(0.3, y, LEFT - 0.6, NAME_LINE)));
    }
    return lines;
  }

  private boolean fits(boolean names, int rowCount, int valueLines) {
    return request.height()
        >= fixedHeight(names, valueLines)
            + (main.hasStaircase() ? STAIRS_LEAST : STAIRS_NONE)
            + rowCount * ROW_HEIGHT;
  }

  /** Suspected, and not drawn in the main row. */
  private boolean onlyThere(PieceView piece) {
    return piece.standing() != Standing.CLEARED
        && main.pieces().stream().noneMatch(m -> m.part().equals(piece.part()));
  }

  private static double fixedHeight(boolean names, int valueLines) {
    return ID_HEIGHT
        + LEAD_SIZE
        + 0.1
        + SYMBOL_HALF
        + 0.05
        + (names ? 2 * NAME_LINE : 0)
        + BELOW_RAIL
        + valueLines * VALUE_LINE;
  }

  // Columns and folding.

  private List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < main.pieces().size(); i++) {
      columns.add(new Column(i, i + 1));
    }
    if (request.folding() == Folding.WHOLE) {
      return columns;
    }
    while (least(columns) > request.width()) {
      Optional<List<Column>> shorter = foldLeastWanted(columns);
      if (shorter.isEmpty()) {
        break;
      }
      columns = shorter.get();
    }
    return columns;
  }

  private double least(List<Column> columns) {
    return LEFT + RIGHT + columns.stream().mapToDouble(this::leastWidth).sum();
  }

  private double leastWidth(Column column) {
    if (column.fold()) {
      return FOLD_WIDTH;
    }
    return thin(main.pieces().get(column.from()).kind()) ? WIRE_WIDTH : PART_WIDTH;
  }

  private static boolean thin(PartKind kind) {
    return kind == PartKind.WIRE || kind == PartKind.STRAP || kind == PartKind.SPLICE;
  }

  /** Joins the two neighbouring columns that matter least; empty if all that is left matters. */
  private Optional<List<Column>> foldLeastWanted(List<Column> columns) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < columns.size(); i++) {
      if (nodeWanted(columns.get(i + 1).from())) {
        continue;
      }
      double weight = Math.max(weight(columns.get(i)), weight(columns.get(i + 1)));
      boolean grows = columns.get(i).fold() || columns.get(i + 1).fold();
      boolean measured = !main.stairs().get(columns.get(i + 1).from()).measured().isEmpty();
      double score = weight + (grows ? 0 : 0.001) + (measured ? 0.15 : 0);
      if (weight < 1 && score < least) {
        least = score;
        best = i;
      }
    }
    if (best < 0) {
      return Optional.empty();
    }
    List<Column> joined = new ArrayList<>(columns);
    Column right = joined.remove(best + 1);
    joined.set(best, new Column(joined.get(best).from(), right.to()));
    return Optional.of(joined);
  }

  /** A node that has to be seen: a lead belongs there. */
  private boolean nodeWanted(int index) {
    Stair stair = main.stairs().get(index);
    return at(stair, request.red()) || at(stair, request.black());
  }

  /** How much a column matters: 1 and more must be seen. */
  private double weight(Column column) {
    double most = 0;
    double strongest = main.pieces().stream().mapToDouble(PieceView::belief).max().orElse(0);
    for (int i = column.from(); i < column.to(); i++) {
      PieceView piece = main.pieces().get(i);
      double weight = 0;
      if (piece.standing() == Standing.CONDEMNED) {
        weight = 2;
      } else if (piece.standing() == Standing.HELD) {
        weight = strongest > 0 ? 0.2 + 0.7 * piece.belief() / strongest : 0.2;
        weight = piece.belief() >= 0.999 * strongest && strongest > 0 ? 1.5 : weight;
      }
      if (piece.kind().isLoad()) {
        weight += 0.1;
      }
      most = Math.max(most, weight);
    }
    return most;
  }

  private double[] widths(List<Column> columns) {
    double[] widths = columns.stream().mapToDouble(this::leastWidth).toArray();
    double spare = request.width() - LEFT - RIGHT - Arrays.stream(widths).sum();
    double[] room =
        columns.stream()
            .mapToDouble(
                c ->
                    c.fold()
                        ? 0
                        : thin(main.pieces().get(c.from()).kind())
                            ? WIRE_MOST - WIRE_WIDTH
                            : PART_MOST - PART_WIDTH)
            .toArray();
    double wanted = Arrays.stream(room).sum();
    if (spare > 0 && wanted > 0) {
      double share = Math.min(1, spare / wanted);
      for (int i = 0; i < widths.length; i++) {
        widths[i] += room[i] * share;
      }
    }
    return widths;
  }

  // Pieces.

  private LoopPlan.Piece piece(int index, PieceView view, Box cell, double lineY, boolean names) {
    Box idBox = new Box(cell.x(), cell.y(), cell.width(), ID_HEIGHT);
    String id = fit(view.part(), cell.width() - 0.2, SMALL);
    double half = thin(view.kind()) ? 0.6 : 1.3;
    Box symbol = new Box(cell.centreX() - half, lineY - SYMBOL_HALF, 2 * half, 2 * SYMBOL_HALF);
    List<Label> name = new ArrayList<>();
    if (names && !thin(view.kind())) {
      double y = lineY + SYMBOL_HALF + 0.05;
      for (String line : wrap(plainName(view), cell.width() - 0.3)) {
        name.add(new Label(line, new Box(cell.x() + 0.1, y, cell.width() - 0.2, NAME_LINE)));
        y += NAME_LINE;
      }
    }
    return new LoopPlan.Piece(index, view, cell, new Label(id, idBox), List.copyOf(name), symbol);
  }

  /** The title without the id at its end. */
  static String plainName(PieceView view) {
    String title = view.title();
    return title.endsWith(" " + view.part())
        ? title.substring(0, title.length() - view.part().length() - 1)
        : title;
  }

  /** At most two lines that fit. */
  private List<String> wrap(String text, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (line.isEmpty() || request.text().of(longer, SMALL) <= width) {
        line = longer;
      } else {
        lines.add(line);
        line = word;
      }
    }
    lines.add(line);
    if (lines.size() > 2) {
      String rest = String.join(" ", lines.subList(1, lines.size()));
      lines = new ArrayList<>(List.of(lines.get(0), rest));
    }
    return lines.stream().map(l -> fit(l, width, SMALL)).toList();
  }

  private String fit(String text, double width, double size) {
    if (request.text().of(text, size) <= width) {
      return text;
    }
    String cut = text;
    while (cut.length() > 1 && request.text().of(cut + "…", size) > width) {
      cut = cut.substring(0, cut.length() - 1);
    }
    return cut.stripTrailing() + "…";
  }

  // Nodes and staircase.

  private LoopPlan.Node node(
      int index, double x, double lineY, Axis axis, double valuesY, double[] lastValueRight) {
    Stair stair = main.stairs().get(index);
    double top = axis.y(extreme(stair.healthy().low(), stair.healthy().high(), axis, true));
    double bottom = axis.y(extreme(stair.healthy().low(), stair.healthy().high(), axis, false));
    if (bottom - top < BAND_LEAST) {
      double middle = (top + bottom) / 2;
      top = middle - BAND_LEAST / 2;
      bottom = middle + BAND_LEAST / 2;
    }
    Box band = new Box(x - BAND_WIDTH / 2, top, BAND_WIDTH, bottom - top);
    List<LoopPlan.Point> points =
        stair.measured().stream()
            .map(m -> new LoopPlan.Point(m.reading(), m.volts(), axis.y(m.volts())))
            .toList();
    Optional<Lead> lead =
        at(stair, request.red())
            ? Optional.of(Lead.RED)
            : at(stair, request.black()) ? Optional.of(Lead.BLACK) : Optional.empty();
    Box leadBox = new Box(x - LEAD_SIZE / 2, lineY - LEAD_SIZE - 0.1, LEAD_SIZE, LEAD_SIZE);
    Optional<Label> value =
        points.isEmpty()
            ? Optional.empty()
            : Optional.of(valueLabel(points.get(points.size() - 1), x, valuesY, lastValueRight));
    return new LoopPlan.Node(index, stair, x, band, lead, leadBox, points, value);
  }

  private Label valueLabel(LoopPlan.Point point, double x, double y, double[] lastRight) {
    String text = volts(point.volts());
    double width = request.text().of(text, SMALL) + 0.3;
    double left = x - width / 2;
    int line = left >= lastRight[0] ? 0 : 1;
    lastRight[line] = left + width;
    return new Label(text, new Box(left, y + line * VALUE_LINE, width, VALUE_LINE));
  }

  /** Volts with as many places as their size deserves. */
  public static String volts(double volts) {
    String format = Math.abs(volts) < 1 ? "%.2f" : "%.1f";
    return Language.marked(String.format(Locale.ROOT, format, volts));
  }

  private static double extreme(double low, double high, Axis axis, boolean upper) {
    double ceiling = axis.top();
    double floor = axis.bottom();
    double towardsTop = ceiling >= floor ? high : low;
    double towardsBottom = ceiling >= floor ? low : high;
    double value = upper ? towardsTop : towardsBottom;
    double least = Math.min(ceiling, floor);
    double most = Math.max(ceiling, floor);
    return Math.max(least, Math.min(most, value));
  }

  /** The volts axis: {@code top} volts at the top, {@code bottom} volts at the bottom. */
  private record Axis(
      double top, double bottom, double topY, double bottomY, List<LoopPlan.Tick> ticks) {
    double y(double volts) {
      double held = Math.max(Math.min(top, bottom), Math.min(Math.max(top, bottom), volts));
      return bottomY + (held - bottom) / (top - bottom) * (topY - bottomY);
    }
  }

  private Axis axis(double topY, double bottomY) {
    List<Double> all = new ArrayList<>(List.of(0.0));
    for (Stair stair : main.stairs()) {
      all.add(stair.healthy().low());
      all.add(stair.healthy().high());
      stair.measured().forEach(m -> all.add(m.volts()));
    }
    all.removeIf(v -> v.isInfinite() || v.isNaN());
    double least = Collections.min(all);
    double most = Collections.max(all);
    // On a positive-ground vehicle the feed is below zero; it is drawn at the top all the same,
    // because the rail is where current returns.
    boolean feedBelow = -least > most;
    double top = feedBelow ? least : most;
    double bottom = feedBelow ? most : least;
    if (top == bottom) {
      return new Axis(1, 0, topY, bottomY, List.of());
    }
    double step = tickStep(Math.abs(top - bottom), bottomY - topY);
    Axis bare = new Axis(top, bottom, topY, bottomY, List.of());
    List<LoopPlan.Tick> ticks = new ArrayList<>();
    int from = (int) Math.ceil(Math.min(top, bottom) / step - 1e-9);
    int to = (int) Math.floor(Math.max(top, bottom) / step + 1e-9);
    for (int i = from; i <= to; i++) {
      double volts = i * step;
      double y = bare.y(volts);
      String text = step == Math.rint(step) ? Long.toString(Math.round(volts)) : volts(volts);
      if (i == 0) {
        continue; // the rail itself
      }
      ticks.add(
          new LoopPlan.Tick(volts, y, new Label(text, new Box(LEFT - 2.6, y - 0.55, 1.6, 1.1))));
    }
    ticks.sort(Comparator.comparingDouble(LoopPlan.Tick::volts));
    return new Axis(top, bottom, topY, bottomY, List.copyOf(ticks));
  }

  private static double tickStep(double range, double height) {
    double most = Math.max(1, Math.floor(height / 1.3));
    for (double step : new double[] {0.1, 0.2, 0.5, 1, 2, 3, 6, 12, 24}) {
      if (range / step <= most) {
        return step;
      }
    }
    return range;
  }

  // Other loops.

  private LoopPlan.Row row(
      LoopView loop, double top, double width, List<LoopPlan.Piece> mainPieces, double mainTop) {
    List<Label> title = titleLines(loop, top + 0.6);
    int count = loop.pieces().size();
    double room = width - LEFT - RIGHT;
    double cell = Math.min(3.4, room / Math.max(1, count));
    double lineY = top + 2.15;
    Optional<LoopPlan.Piece> anchor =
        mainPieces.stream()
            .filter(m -> m.view().kind() == PartKind.RELAY)
            .filter(m -> indexOf(loop, m.view().part()) >= 0)
            .findFirst();
    double start = LEFT;
    if (anchor.isPresent()) {
      int at = indexOf(loop, anchor.get().view().part());
      start = anchor.get().cell().centreX() - (at + 0.5) * cell;
      start = Math.max(LEFT, Math.min(width - RIGHT - count * cell, start));
    }
    List<LoopPlan.Piece> pieces = new ArrayList<>();
    List<LoopPlan.RowNode> nodes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      PieceView view = loop.pieces().get(i);
      double x = start + i * cell;
      Box box = new Box(x, top, cell, ROW_HEIGHT - 0.2);
      double half = thin(view.kind()) ? 0.5 : Math.min(1.1, cell / 2 - 0.25);
      pieces.add(
          new LoopPlan.Piece(
              i,
              view,
              box,
              new Label(fit(view.part(), cell - 0.15, SMALL), new Box(x, top, cell, ID_HEIGHT)),
              List.of(),
              new Box(x + cell / 2 - half, lineY - 0.85, 2 * half, 1.7)));
      nodes.add(new LoopPlan.RowNode(i, loop.stairs().get(i), x));
    }
    nodes.add(new LoopPlan.RowNode(count, loop.stairs().get(count), start + count * cell));
    double from = start;
    Optional<LoopPlan.Link> link =
        anchor.map(
            a -> {
              int at = indexOf(loop, a.view().part());
              return new LoopPlan.Link(
                  from + (at + 0.5) * cell, lineY + 0.85, a.cell().centreX(), mainTop + 0.1);
            });
    return new LoopPlan.Row(
        loop.title(), title, lineY, List.copyOf(pieces), List.copyOf(nodes), link);
  }

  private static int indexOf(LoopView loop, String part) {
    for (int i = 0; i < loop.pieces().size(); i++) {
      if (loop.pieces().get(i).part().equals(part)) {
        return i;
      }
    }
    return -1;
  }
}
