package loopwright.casework.explain;

import static loopwright.casework.explain.Board.FEED;
import static loopwright.casework.explain.Board.GROUND;

import java.util.List;
import java.util.Optional;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;

/** The pages. Each is a board, its controls and the figures taken of it. */
final class Lessons {
  /** The control that chooses the meter. */
  static final String METER = "meter";

  /** Ohms of a joint or ground point that is as it should be. */
  private static final double SOUND = 0.001;

  private static final Control WHICH_METER = Control.of(METER, "basic", "basic", "better", "old");

  private static final Lesson LOOP =
      new Lesson(
          "loop",
          List.of(Control.fault("opened", "nowhere", "nowhere", "fuse", "switch", "ground")),
          (board, stand) -> {
            lampLoop(board, SOUND).leads("L1.in", "L1.out");
            return switch (stand.at("opened")) {
              case "fuse" -> board.without("F1");
              case "switch" -> board.turned("S1", "off");
              case "ground" -> board.without("G1");
              default -> board;
            };
          },
          (probe, stand) -> {
            probe.tellAmps("amps", probe.amps("L1"));
            probe.tellVolts("fuse", probe.volts("F1.feed", "F1.load"));
            probe.tellVolts("switch", probe.volts("S1.in", "S1.out"));
            probe.tellVolts("lamp", probe.volts("L1.in", "L1.out"));
            probe.tellVolts("ground", probe.volts("G1.lug", "G1.metal"));
          });

  private static final Lesson ACROSS =
      new Lesson(
          "across",
          List.of(
              Control.fault("ground", "1", "0.001", "0.1", "0.5", "1", "5"),
              Control.of("red", "lamp-in", "lamp-in", "battery", "lamp-out"),
              Control.of("black", "post", "post", "lamp-out")),
          (board, stand) ->
              lampLoop(board, stand.ohms("ground"))
                  .leads(
                      switch (stand.at("red")) {
                        case "battery" -> "BATT.pos";
                        case "lamp-out" -> "L1.out";
                        default -> "L1.in";
                      },
                      stand.is("black", "post") ? "BATT.neg" : "L1.out"),
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellVolts("lamp", probe.volts("L1.in", "L1.out"));
            probe.tellVolts("ground", probe.volts("L1.out"));
            probe.tellAmps("amps", probe.amps("L1"));
          });

  private static final Lesson LOADED =
      new Lesson(
          "loaded",
          List.of(
              Control.of("bulb", "out", "in", "out"),
              Control.fault("joint", "10", "0.001", "1", "10", "100")),
          (board, stand) -> {
            board
                .fuse("F1", 10, FEED, "fused")
                .joint("C1", stand.ohms("joint"), "fused", "socket")
                .lamp("L1", 55, "socket", "back")
                .ground("G1", "ground", SOUND, "back")
                .leads("C1.1b", "BATT.neg");
            return stand.is("bulb", "out") ? board.without("L1") : board;
          },
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellAmps("amps", probe.amps("L1"));
            probe.tellVolts("lost", probe.volts("C1.1a", "C1.1b"));
          });

  private static final Lesson OHMS =
      new Lesson(
          "ohms",
          List.of(Control.fault("joint", "0.1", "0.001", "0.05", "0.1", "0.2", "0.5"), WHICH_METER),
          (board, stand) ->
              board
                  .fuse("F1", 10, FEED, "fused")
                  .onOff("S1", "fused", "switched")
                  .joint("C1", stand.ohms("joint"), "switched", "socket")
                  .lamp("L1", 55, "socket", "back")
                  .ground("G1", "ground", SOUND, "back")
                  .leads("C1.1a", "C1.1b"),
          (probe, stand) -> {
            probe.tellOhmsReading("joint");
            probe.tellVolts("lost", probe.volts("C1.1a", "C1.1b"));
            probe.tellAmps("amps", probe.amps("L1"));
            probe.tellOhmsInHand("cold", "L1", "in", "out");
            probe.tellOhms("hot", probe.volts("L1.in", "L1.out") / probe.amps("L1"));
          });

  private static final Lesson GHOST =
      new Lesson(
          "ghost",
          List.of(
              Control.of("bulb", "out", "in", "out"),
              Control.fault("damp", "1000000", "dry", "10000000", "1000000", "100000"),
              WHICH_METER),
          (board, stand) -> {
            board
                .fuse("F1", 10, FEED, "fused")
                .resistor("S1", "open-switch", damp(stand), "fused", "wire")
                .lamp("L1", 21, "wire", "back")
                .ground("G1", "ground", SOUND, "back")
                .leads("L1.in", "BATT.neg");
            return stand.is("bulb", "out") ? board.without("L1") : board;
          },
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellVolts("standing", probe.volts("L1.in"));
            probe.tellOhms("input", probe.meter().inputOhms());
          });

  private static final double FUSE_AMPS = 10;

  private static final List<String> NUMBERS = List.of("none", "one", "two", "three");

  private static final Lesson FUSE =
      new Lesson(
          "fuse",
          List.of(
              Control.of("loads", "one", "one", "two", "three"),
              Control.fault("chafe", "none", "none", "5", "0.1")),
          (board, stand) -> {
            board.fuse("F1", FUSE_AMPS, FEED, "fused").leads("F1.load", "BATT.neg");
            for (int i = 1; i <= NUMBERS.indexOf(stand.at("loads")); i++) {
              board.load("L" + i, "heater", PartKind.HEATER, 5, "fused", GROUND);
            }
            return stand.is("chafe", "none")
                ? board
                : board.resistor("X1", "chafe", stand.ohms("chafe"), "fused", GROUND);
          },
          (probe, stand) -> {
            probe.tellAmps("rating", FUSE_AMPS);
            probe.tellAmps("opens", probe.opensAbove(FUSE_AMPS));
            probe.tellAmps("amps", probe.amps("F1"));
            probe.tellAmps("wanted", probe.ampsIfWhole("F1"));
            probe.tellState("state", probe.blown("F1") ? "blown" : "whole");
            probe.tellReading("reading");
          });

  private static final double COIL_OHMS = 85;
  private static final double PULL_IN_VOLTS = 6.5;
  private static final double DROP_OUT_VOLTS = 3.5;

  private static final Lesson RELAY =
      new Lesson(
          "relay",
          List.of(
              Control.of("switch", "on", "on", "off"),
              Control.fault("coil-ground", "0.001", "0.001", "50", "100", "1000")),
          (board, stand) ->
              board
                  .fuse("F1", 15, FEED, "fused")
                  .part(
                      "K1",
                      "relay",
                      new PartSpec.Relay(
                          true,
                          Optional.of(Estimate.exactly(COIL_OHMS)),
                          Optional.of(Estimate.exactly(PULL_IN_VOLTS)),
                          Optional.of(Estimate.exactly(DROP_OUT_VOLTS)),
                          Optional.of(Estimate.exactly(0.01)),
                          PartSpec.Suppression.NONE,
                          Optional.empty()),
                      "86",
                      "85",
                      "fused",
                      "87",
                      "87a")
                  .onOff("S1", "fused", "86")
                  .lamp("L1", 55, "87", "back")
                  .ground("G1", "ground", SOUND, "back")
                  .ground("G2", "coil-ground", stand.ohms("coil-ground"), "85")
                  .turned("S1", stand.at("switch"))
                  .leads("K1.86", "K1.85"),
          (probe, stand) -> {
            probe.tellReading("coil");
            probe.tellVolts("pull-in", PULL_IN_VOLTS);
            probe.tellState("state", probe.pulledIn("K1") ? "pulled" : "rest");
            probe.tellVolts("86", probe.volts("K1.86"));
            probe.tellVolts("85", probe.volts("K1.85"));
            probe.tellVolts("30", probe.volts("K1.30"));
            probe.tellVolts("87", probe.volts("K1.87"));
            probe.tellVolts("87a", probe.volts("K1.87a"));
            probe.tellAmps("amps", probe.amps("L1"));
          });

  private static final Lesson DIODE =
      new Lesson(
          "diode",
          List.of(
              Control.fault("inline", "right", "right", "wrong"),
              Control.fault("across", "right", "right", "wrong")),
          (board, stand) ->
              board
                  .fuse("F1", 5, FEED, "fused")
                  .onOff("S1", "fused", "switched")
                  .part("D1", "diode-inline", diode(), turned(stand, "inline", "switched", "coil"))
                  .load("V1", "solenoid", PartKind.SOLENOID, 2, "coil", GROUND)
                  .part("D2", "diode-across", diode(), turned(stand, "across", GROUND, "coil"))
                  .leads("V1.in", "V1.out"),
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellAmps("amps", probe.amps("V1"));
            probe.tellVolts("lost", Math.abs(probe.volts("D1.anode", "D1.cathode")));
            probe.tellState("state", probe.blown("F1") ? "blown" : "whole");
            probe.tellDiodeInHand("forwards", "D1", "anode", "cathode");
            probe.tellDiodeInHand("backwards", "D1", "cathode", "anode");
          });

  private static final Lesson GROUNDS =
      new Lesson(
          "ground",
          List.of(
              Control.fault("strap", "0.02", "0.001", "0.005", "0.02", "0.1"),
              Control.of("load", "plugs", "plugs", "lamp"),
              WHICH_METER),
          (board, stand) -> {
            board.ground("G1", "strap", stand.ohms("strap"), "engine").leads("G1.lug", "G1.metal");
            return stand.is("load", "plugs")
                ? board.load("H1", "plugs", PartKind.HEATER, 60, FEED, "engine")
                : board.load("L1", "small-lamp", PartKind.ELECTRONICS, 0.4, FEED, "engine");
          },
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellAmps("amps", probe.amps("G1"));
            probe.tellOhms("ohms", probe.volts("G1.lug", "G1.metal") / probe.amps("G1"));
            probe.tellOhmsReading("meter-ohms");
          });

  private static final double GAUGE_AMPS = 12.6e-6;

  private static final Lesson ERRORS =
      new Lesson(
          "meter",
          List.of(
              Control.fault("behind", "100000", "10", "10000", "100000", "1000000"), WHICH_METER),
          (board, stand) ->
              board
                  .fuse("F1", 5, FEED, "fused")
                  .resistor("R1", "resistor", stand.ohms("behind"), "fused", "point")
                  .load("E1", "unit", PartKind.ELECTRONICS, GAUGE_AMPS, "point", GROUND)
                  .leads("E1.in", "BATT.neg"),
          (probe, stand) -> {
            double shown = probe.tellReading("reading");
            double standing = probe.volts("E1.in");
            probe.tellVolts("standing", standing);
            double error = probe.voltsError(shown);
            probe.tellVolts("error", error);
            probe.tellAsShown("least", shown - error);
            probe.tellAsShown("most", shown + error);
            probe.tellOhms("input", probe.meter().inputOhms());
          });

  /** What may be open in a loop, from the battery on. */
  private static final List<String> PIECES = List.of("fuse", "switch", "joint", "bulb", "ground");

  private static final Lesson HALVE =
      new Lesson(
          "halve",
          List.of(
              Control.of("red", "fuse-out", "fuse-out", "switch-out", "lamp-in", "lamp-out"),
              Control.fault(
                  "opened", "joint", "nowhere", "fuse", "switch", "joint", "bulb", "ground")),
          (board, stand) -> opened(board, stand.at("opened"), stand.at("red")),
          (probe, stand) -> {
            probe.tellReading("reading");
            probe.tellOpened(PIECES, (board, piece) -> opened(board, piece, stand.at("red")));
          });

  private static Board opened(Board board, String piece, String red) {
    board
        .fuse("F1", 10, FEED, "fused")
        .onOff("S1", "fused", "switched")
        .joint("C1", SOUND, "switched", "socket")
        .lamp("L1", 55, "socket", "back")
        .ground("G1", "ground", SOUND, "back")
        .leads(
            switch (red) {
              case "switch-out" -> "S1.out";
              case "lamp-in" -> "L1.in";
              case "lamp-out" -> "L1.out";
              default -> "F1.load";
            },
            "BATT.neg");
    return switch (piece) {
      case "fuse" -> board.without("F1");
      case "switch" -> board.turned("S1", "off");
      case "joint" -> board.without("C1");
      case "bulb" -> board.without("L1");
      case "ground" -> board.without("G1");
      default -> board;
    };
  }

  /** In the order of the list. */
  static final List<Lesson> ALL =
      List.of(LOOP, ACROSS, LOADED, OHMS, GHOST, FUSE, RELAY, DIODE, GROUNDS, ERRORS, HALVE);

  private Lessons() {}

  private static Board lampLoop(Board board, double groundOhms) {
    return board
        .fuse("F1", 10, FEED, "fused")
        .onOff("S1", "fused", "switched")
        .lamp("L1", 55, "switched", "back")
        .ground("G1", "ground", groundOhms, "back");
  }

  /** An open switch that is dry: what it lets through is less than any meter tells. */
  private static final double DRY_OHMS = 1e12;

  private static double damp(Stand stand) {
    return stand.is("damp", "dry") ? DRY_OHMS : stand.ohms("damp");
  }

  private static PartSpec diode() {
    return new PartSpec.Diode(Optional.of(Estimate.exactly(0.65)));
  }

  /** Nodes of anode and cathode as they belong, or changed over. */
  private static String[] turned(Stand stand, String control, String anode, String cathode) {
    return stand.is(control, "right")
        ? new String[] {anode, cathode}
        : new String[] {cathode, anode};
  }
}
