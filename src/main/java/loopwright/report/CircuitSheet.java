package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.CircuitDrawing;
import loopwright.casework.Phrases;
import loopwright.casework.list.ListTable;
import loopwright.model.Access;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.report.PageSize.Turn;

/**
 * Circuits drawn on paper, each on a page of its own: switch positions in words, the loops with
 * battery at the left and ground rail below, cautions, and a table of what is healthy where.
 */
public final class CircuitSheet {
  private static final double STEP = 0.04;

  /** Across from the battery's middle to the page's margin. */
  private static final double BATTERY = 15;

  private static final double RAIL = 16;
  private static final double STRAND_GAP = 4;

  /** Across from the margin to the first node of a loop that doesn't begin at the battery. */
  private static final double INDENT = 26;

  /** Where somebody writes what they read. */
  private static final String READ = "_".repeat(9);

  private final Vehicle vehicle;
  private final Paper paper;
  private final Phrases phrases;
  private final double left;

  private CircuitSheet(Vehicle vehicle, Paper paper, Phrases phrases) {
    this.vehicle = vehicle;
    this.paper = paper;
    this.phrases = phrases;
    double name = Typeface.BOLD.width(vehicle.battery().id(), StrandRows.TEXT);
    this.left = Paper.MARGIN + 2 * BATTERY + 2 + Math.max(26, name);
  }

  /**
   * The drawings as a PDF file.
   *
   * @param drawings at least one
   * @param date the day, in words
   */
  public static byte[] pdf(
      Vehicle vehicle, List<CircuitDrawing> drawings, PageSize size, String date, Phrases phrases) {
    return paper(vehicle, drawings, size, date, phrases).pdf();
  }

  static Paper paper(
      Vehicle vehicle, List<CircuitDrawing> drawings, PageSize size, String date, Phrases phrases) {
    Paper paper = new Paper(size, vehicle.name(), phrases.say("print.drawings"), date, phrases);
    CircuitSheet sheet = new CircuitSheet(vehicle, paper, phrases);
    drawings.forEach(sheet::circuit);
    return paper;
  }

  private void circuit(CircuitDrawing drawing) {
    List<Strand> strands = Strand.of(drawing);
    Fit fit = fit(drawing, strands);
    head(drawing, fit.turn());
    if (strands.isEmpty()) {
      paper.paragraph(phrases.say("print.drawings.none"));
    } else {
      draw(strands, fit);
      paper.moveTo(paper.y() + STRAND_GAP);
    }
    foot(drawing);
    if (!strands.isEmpty()) {
      ListTable known = known(strands);
      paper.room(paper.height(known));
      paper.table(known);
    }
  }

  private void head(CircuitDrawing drawing, Turn turn) {
    paper.newPage(turn);
    paper.title(drawing.circuit().name());
    paper.labelled(phrases.say("print.drawings.on"), String.join("; ", drawing.on()));
    paper.moveTo(paper.y() + STRAND_GAP);
  }

  private void foot(CircuitDrawing drawing) {
    if (!drawing.circuit().note().isBlank()) {
      paper.labelled(phrases.say("print.drawings.note"), drawing.circuit().note());
    }
    paper.paragraph(phrases.say("print.drawings.basis", vehicle.groundedPost().toString()));
    paper.caution(
        Stream.concat(drawing.cautions().stream(), Stream.of(phrases.say("print.drawings.ohms")))
            .collect(Collectors.joining(" ")));
  }

  // Which way up and how large.

  private record Fit(Turn turn, double scale) {}

  /** The largest scale at which the drawing stays on one page, upright or across. */
  private Fit fit(CircuitDrawing drawing, List<Strand> strands) {
    for (double scale = 1; scale > StrandRows.LEAST; scale -= STEP) {
      for (Turn turn : List.of(Turn.ACROSS, Turn.UPRIGHT)) {
        if (fits(drawing, strands, new Fit(turn, scale))) {
          return new Fit(turn, scale);
        }
      }
    }
    return new Fit(Turn.UPRIGHT, StrandRows.LEAST);
  }

  private boolean fits(CircuitDrawing drawing, List<Strand> strands, Fit fit) {
    // Tried on a page that is thrown away.
    Paper trial = paper.trial(fit.turn());
    CircuitSheet sheet = new CircuitSheet(vehicle, trial, phrases);
    sheet.head(drawing, fit.turn());
    double height =
        sheet.rows(strands, fit).stream().mapToDouble(r -> r.height() + STRAND_GAP).sum() + RAIL;
    trial.moveTo(trial.y() + height + STRAND_GAP);
    sheet.foot(drawing);
    return trial.pages() == 1;
  }

  private List<StrandRows> rows(List<Strand> strands, Fit fit) {
    List<StrandRows> rows = new ArrayList<>();
    for (int i = 0; i < strands.size(); i++) {
      double room = paper.right() - first(i);
      rows.add(new StrandRows(vehicle, strands.get(i), fit.scale(), room));
    }
    return rows;
  }

  // Drawing.

  private void draw(List<Strand> strands, Fit fit) {
    List<StrandRows> rows = rows(strands, fit);
    for (int i = 0; i < rows.size(); i++) {
      StrandRows strand = rows.get(i);
      paper.room(strand.height());
      double top = paper.y();
      double end = strand.draw(paper.leaf(), first(i), Paper.MARGIN, top);
      paper.moveTo(top + strand.height());
      if (i == 0) {
        battery(top + strand.firstLine(), paper.y() + RAIL / 2, fit.scale());
        rail(end, top + strand.lastLine(), paper.y() + RAIL / 2);
        paper.moveTo(paper.y() + RAIL);
      }
      paper.moveTo(paper.y() + STRAND_GAP);
    }
  }

  /** Where the first node of a strand stands; the first strand leaves room for the battery. */
  private double first(int strand) {
    return strand == 0 ? left : Paper.MARGIN + INDENT;
  }

  /** The battery in the left column, from the line of the first row down to the rail. */
  private void battery(double lineY, double railY, double scale) {
    Leaf leaf = paper.leaf();
    double x = Paper.MARGIN + BATTERY;
    double middle = lineY + 30 * scale;
    boolean feedIsPlus = vehicle.feedPost().terminal().equals("pos");
    double plus = feedIsPlus ? middle - 3 : middle + 3;
    double minus = feedIsPlus ? middle + 3 : middle - 3;
    leaf.line(left - 8 * scale, lineY, x, lineY, 1.2);
    leaf.line(x, lineY, x, middle - 3, 1.2);
    leaf.line(x - 13, plus, x + 13, plus, 1.6);
    leaf.line(x - 6, minus, x + 6, minus, 3);
    leaf.line(x, middle + 3, x, railY, 1.2);
    double size = StrandRows.TEXT;
    double height = size * Typeface.LEADING;
    double right = x + BATTERY + 1;
    leaf.text(feedIsPlus ? "+" : "-", Typeface.BOLD, size, right, middle - 3 - height);
    leaf.text(feedIsPlus ? "-" : "+", Typeface.BOLD, size, right, middle + 3);
    leaf.text(vehicle.battery().id(), Typeface.BOLD, size, x + 4, middle + 3 + height);
    leaf.text(vehicle.systemVolts() + " V", Typeface.REGULAR, size, x + 4, middle + 3 + 2 * height);
  }

  /** The rail on which current returns, from under the last node back to the battery. */
  private void rail(double end, double lineY, double railY) {
    Leaf leaf = paper.leaf();
    double x = Math.min(end + 20, paper.right() - 8);
    leaf.line(end + 8, lineY, x, lineY, 1.2);
    leaf.line(x, lineY, x, railY, 1.2);
    leaf.line(Paper.MARGIN + BATTERY, railY, x, railY, 2.4);
    for (int i = 0; i < 3; i++) {
      double half = 8 - 2.5 * i;
      leaf.line(x - half, railY + 2.5 * i, x + half, railY + 2.5 * i, 1.2);
    }
  }

  // What is healthy where.

  private ListTable known(List<Strand> strands) {
    Map<Integer, Strand.Node> nodes = new TreeMap<>();
    strands.forEach(s -> s.nodes().forEach(n -> nodes.putIfAbsent(n.number(), n)));
    List<List<String>> rows = new ArrayList<>();
    for (Strand.Node node : nodes.values()) {
      List<TerminalRef> points = new ArrayList<>(List.of(node.stair().point()));
      points.addAll(node.stair().others());
      Access access = vehicle.access(node.stair().point());
      String where = vehicle.requirePart(node.stair().point().part()).where();
      rows.add(
          List.of(
              Integer.toString(node.number()),
              points.stream().map(TerminalRef::toString).collect(Collectors.joining(", ")),
              // A range is never broken.
              node.volts().replace(' ', '\u00a0'),
              node.stair().reachable()
                  ? (access.how().isEmpty() ? where : access.how())
                  : phrases.say("print.drawings.buried"),
              READ));
    }
    return new ListTable(
        phrases.say("print.known"),
        List.of(phrases.say("print.known.basis", vehicle.groundedPost().toString())),
        List.of(
            new ListTable.Column(phrases.say("print.known.node"), 0.5, ListTable.Side.RIGHT),
            new ListTable.Column(phrases.say("print.known.points"), 4, ListTable.Side.LEFT),
            new ListTable.Column(phrases.say("print.known.volts"), 1.6, ListTable.Side.LEFT),
            new ListTable.Column(phrases.say("print.known.reach"), 3, ListTable.Side.LEFT),
            new ListTable.Column(phrases.say("print.known.read"), 1.2, ListTable.Side.LEFT)),
        rows);
  }
}
