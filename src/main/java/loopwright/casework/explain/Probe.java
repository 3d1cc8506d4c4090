package loopwright.casework.explain;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import loopwright.bench.HiddenTruth;
import loopwright.casework.Band;
import loopwright.casework.Figures;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.Sketch;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.Language;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.paper.Plan;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Variant;

/** Takes the figures of a board that is solved, and notes them down in the order taken. */
final class Probe {
  /** Less than this is only the leak of the solver's nodes, in amperes. */
  private static final double NO_AMPS = 1e-6;

  private final String lesson;
  private final Phrases phrases;
  private final Knowledge knowledge;
  private final Board board;
  private final MeterSpec meter;
  private final Network network;
  private final HiddenTruth truth;
  private final OperatingPoint point;
  private final List<Figure> figures = new ArrayList<>();

  /**
   * Solves a board.
   *
   * @param lesson id of the page, under which its words stand
   */
  Probe(String lesson, Board board, MeterSpec meter, Knowledge knowledge, Phrases phrases) {
    this.lesson = lesson;
    this.phrases = phrases;
    this.knowledge = knowledge;
    this.board = board;
    this.meter = meter;
    network = Network.of(board.vehicle(), knowledge.typicals());
    truth = new HiddenTruth(network, List.of(), Map.of(), meter, HiddenTruth.Draw.TYPICAL, 0);
    point = truth.run(board.setting());
  }

  List<Figure> figures() {
    return List.copyOf(figures);
  }

  MeterSpec meter() {
    return meter;
  }

  // What there is, whoever looks.

  /** Volts from one terminal to another with no meter there. */
  double volts(String red, String black) {
    return point.volts(node(red), node(black));
  }

  /** Volts of a terminal against the grounded post with no meter there. */
  double volts(String at) {
    return point.volts(node(at));
  }

  /** Amperes through a part that has one element. */
  double amps(String part) {
    return amps(network, point, part);
  }

  private static double amps(Network network, OperatingPoint point, String part) {
    return Math.abs(point.amps(network.elementsOf(part).get(0)));
  }

  /** Amperes that a fuse would have to carry if it could not blow. */
  double ampsIfWhole(String fuse) {
    Network whole =
        new Plan(network.vehicle(), knowledge.typicals(), knowledge.wireFuses()).network();
    OperatingPoint at = Solver.full(whole).solve(Variant.healthy(whole), board.setting());
    return amps(whole, at, fuse);
  }

  boolean blown(String fuse) {
    return truth.blown().contains(fuse);
  }

  boolean pulledIn(String relay) {
    return point.pulledIn(network.element(relay, "coil").orElseThrow());
  }

  /** Amperes above which a fuse opens in the end. */
  double opensAbove(double rating) {
    return rating * knowledge.typicals().constant("fuse-blow-multiple").typical();
  }

  private int node(String terminal) {
    return network.requireNode(TerminalRef.parse(terminal));
  }

  // What goes on the page.

  void tellVolts(String id, double volts) {
    tell(id, volts, Figures.volts(volts));
  }

  void tellAmps(String id, double amps) {
    tell(id, amps, ampsInWords(amps));
  }

  /** With three figures from an ampere on, so that what a fuse carries and what opens it differ. */
  private static String ampsInWords(double amps) {
    if (amps < NO_AMPS) {
      return "0 A";
    }
    return amps < 1
        ? Figures.amps(amps)
        : Language.marked(
                BigDecimal.valueOf(amps)
                    .round(new MathContext(3))
                    .stripTrailingZeros()
                    .toPlainString())
            + " A";
  }

  /** Volts with as many places as the display would have. */
  void tellAsShown(String id, double volts) {
    double step = meter.rangeFor(MeterFunction.VOLTS_DC, volts).step();
    tell(id, volts, Language.marked(Figures.displayed(volts, step, "V")));
  }

  void tellOhms(String id, double ohms) {
    tell(id, ohms, ohmsInWords(ohms));
  }

  /** A state that has words of its own. */
  void tellState(String id, String state) {
    tell(id, Double.NaN, phrases.say("explain.state." + state));
  }

  /** What the meter shows where its leads lie. */
  double tellReading(String id) {
    return tell(id, truth.volts(board.red(), board.black(), board.setting()), "V");
  }

  /** Ohms that the meter shows where its leads lie, the battery off. */
  void tellOhmsReading(String id) {
    tell(id, truth.ohms(board.red(), board.black(), board.setting().without("BATT")), "ohm");
  }

  /** Ohms that the meter shows of a part by itself, out on the bench. */
  void tellOhmsInHand(String id, String part, String red, String black) {
    tell(id, truth.ohms(at(part, red), at(part, black), Setting.REST.without(part)), "ohm");
  }

  /** What the diode test shows of a part by itself, out on the bench. */
  void tellDiodeInHand(String id, String part, String red, String black) {
    tell(id, truth.diode(at(part, red), at(part, black), Setting.REST.without(part)), "V");
  }

  private static TerminalRef at(String part, String terminal) {
    return new TerminalRef(part, terminal);
  }

  /**
   * Which pieces may be open by what the meter shows, and how many the same place leaves on
   * average, each of them being the open one as often as the others.
   *
   * @param opened makes a board with one piece open, the leads where they lie
   */
  void tellOpened(List<String> pieces, BiFunction<Board, String, Board> opened) {
    List<Double> shown = new ArrayList<>();
    for (String piece : pieces) {
      Board open = opened.apply(new Board(phrases), piece);
      shown.add(new Probe(lesson, open, meter, knowledge, phrases).reading());
    }
    double now = reading();
    List<String> fit = new ArrayList<>();
    int left = 0;
    for (int i = 0; i < pieces.size(); i++) {
      if (alike(now, shown.get(i))) {
        fit.add(phrases.say("explain.stop." + pieces.get(i)));
      }
      double one = shown.get(i);
      left += (int) shown.stream().filter(other -> alike(one, other)).count();
    }
    tell("fit", fit.size(), Integer.toString(fit.size()));
    tell("which", Double.NaN, fit.isEmpty() ? "-" : String.join(", ", fit));
    double mean = (double) left / pieces.size();
    tell("mean", mean, Language.marked(BigDecimal.valueOf(mean).toPlainString()));
    tell("all", pieces.size(), Integer.toString(pieces.size()));
  }

  private double reading() {
    HiddenTruth.Display display = truth.volts(board.red(), board.black(), board.setting());
    return display instanceof HiddenTruth.Display.Number n ? n.value() : Double.POSITIVE_INFINITY;
  }

  /** Whether the meter could show one for the other. */
  private boolean alike(double one, double other) {
    return Math.abs(one - other) <= voltsError(one) + voltsError(other);
  }

  private double tell(String id, HiddenTruth.Display display, String unit) {
    if (display instanceof HiddenTruth.Display.Number n) {
      tell(id, n.value(), Language.marked(Figures.displayed(n.value(), n.step(), unit)));
      return n.value();
    }
    tell(id, Double.POSITIVE_INFINITY, "OL");
    return Double.POSITIVE_INFINITY;
  }

  private void tell(String id, double value, String text) {
    figures.add(new Figure(id, phrases.say("explain." + lesson + ".figure." + id), value, text));
  }

  /** The most that the meter may be off at what it shows, in volts. */
  double voltsError(double shown) {
    return meter.error(MeterFunction.VOLTS_DC, shown);
  }

  static String ohmsInWords(double ohms) {
    return ohms < 1 ? Figures.milliohms(ohms, ohms) : Figures.ohms(ohms);
  }

  // The drawing.

  /**
   * The loop with its staircase.
   *
   * @param sound the same board as it is when all is well, for the volts that are expected
   */
  Optional<LoopView> loop(Probe sound) {
    return new Sketch(network.vehicle()).of(Board.CIRCUIT).map(loop -> solved(loop, sound));
  }

  private LoopView solved(LoopView loop, Probe sound) {
    List<LoopView.Stair> stairs = new ArrayList<>();
    for (LoopView.Stair stair : loop.stairs()) {
      double well = sound.volts(stair.point().toString());
      double now = volts(stair.point().toString());
      stairs.add(
          new LoopView.Stair(
              stair.point(),
              stair.others(),
              new Band(well, well, Band.Unit.VOLT),
              List.of(new LoopView.Measured(stairs.size() + 1, now)),
              stair.reachable()));
    }
    return new LoopView(
        loop.title(),
        loop.pieces(),
        stairs,
        loop.branches().stream().map(branch -> solved(branch, sound)).toList());
  }
}
