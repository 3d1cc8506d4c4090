package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.published.Csv;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The solver against ngspice, a general circuit simulator. The netlists lie in
 * src/test/resources/ngspice; recorded.csv beside them holds what ngspice-39 printed. Where ngspice
 * is installed the netlists are run anew. Lamps and junctions are written in the netlists as
 * current sources of their own volts, with the law of the handbook: what is checked is the
 * solution, not the law (that is in {@link ClosedFormsTest}).
 */
class NgspiceTest {

  /** Our leak of a gigaohm at each node and the simulator's gmin of 1e-12 S are not the same. */
  private static final double CLOSE = 2e-6;

  private static Map<String, Rig> rigs() {
    Map<String, Rig> rigs = new LinkedHashMap<>();
    // V1 12.6 V -- top -- RA 1 Mohm -- mid -- (RB 2.2 Mohm | meter 10 Mohm) -- ground
    rigs.put(
        "divider.cir",
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .resistor("RA", 1e6, "top", "mid")
            .resistor("RB", 2.2e6, "mid", "0")
            .resistor("RM", 1e7, "mid", "0"));
    // 12.6 V, 10 mohm -- s; s -100- a -220- ground; s -330- b -150- ground; a -47- b
    rigs.put(
        "bridge.cir",
        Rig.of(12)
            .battery(12.6, 0.01, "s")
            .resistor("R1", 100, "s", "a")
            .resistor("R2", 220, "a", "0")
            .resistor("R3", 330, "s", "b")
            .resistor("R4", 150, "b", "0")
            .resistor("R5", 47, "a", "b"));
    rigs.put("beacon-healthy.cir", beacon(0.0015));
    rigs.put("beacon-bad-ground.cir", beacon(1200));
    // 12.6 V, 10 mohm -- bat -- stop wire -- two dual lamps; the left one's common hangs in the air
    rigs.put(
        "lost-ground.cir",
        Rig.of(12)
            .battery(12.6, 0.01, "bat")
            .resistor("RSF", 0.05, "bat", "stop")
            .lamp("BLS", 21, 12, "stop", "leftbody")
            .lamp("BLT", 5, 12, "tail", "leftbody")
            .lamp("BRS", 21, 12, "stop", "rightbody")
            .lamp("BRT", 5, 12, "tail", "rightbody")
            .resistor("RG", 0.002, "rightbody", "0"));
    // 12.6 V -- RS 470 ohm -- in -- LED 2.0 V, 15 mA at 12.6 V -- ground
    rigs.put(
        "led.cir",
        Rig.of(12)
            .battery(12.6, 1e-7, "top")
            .resistor("RS", 470, "top", "in")
            .part("BD", new PartSpec.Led(Optional.of(exactly(2.0)), exactly(0.015)), "in", "0"));
    // 12.6 V -- bat -- coil 90 ohm -- coil; coil -D1- clutch -- ground; coil -D2- neutral -- open
    // switch; the neutral lamp from bat to neutral
    rigs.put(
        "interlock.cir",
        Rig.of(12)
            .battery(12.6, 0.007, "bat")
            .resistor("RC", 90, "bat", "coil")
            .part("BD1", new PartSpec.Diode(Optional.of(exactly(0.65))), "coil", "clutch")
            .resistor("RCL", 0.01, "clutch", "0")
            .part("BD2", new PartSpec.Diode(Optional.of(exactly(0.65))), "coil", "neutral")
            .lamp("BL", 2, 12, "bat", "neutral"));
    // 12.6 V, 10 mohm -- bat -- F 7.7 mohm -- fused -- (2.618 ohm | 6.857 ohm) -- ground
    rigs.put(
        "fuse-drop.cir",
        Rig.of(12)
            .battery(12.6, 0.01, "bat")
            .fuse("RF", 10, 0.0077, "bat", "fused")
            .resistor("R1", 2.618181818, "fused", "0")
            .resistor("R2", 6.857142857, "fused", "0"));
    // 25.2 V, 14 mohm -- bat -- worn contact 0.4 ohm -- bus -- (70 W lamp | 5 A heater) -- frame --
    // 0.05 ohm -- ground
    rigs.put(
        "truck-24v.cir",
        Rig.of(24)
            .battery(25.2, 0.014, "bat")
            .resistor("RK", 0.4, "bat", "bus")
            .lamp("BL", 70, 24, "bus", "frame")
            .part("RH", new PartSpec.PlainLoad(PartKind.HEATER, exactly(5)), "bus", "frame")
            .resistor("RG", 0.05, "frame", "0"));
    // -6.3 V, 4 mohm -- bat -- 0.05 ohm -- a -- 25 W lamp -- b -- 0.02 ohm -- ground
    rigs.put(
        "positive-ground.cir",
        Rig.positiveGround(6)
            .battery(6.3, 0.004, "bat")
            .resistor("RS", 0.05, "bat", "a")
            .lamp("BL", 25, 6, "a", "b")
            .resistor("RG", 0.02, "b", "0"));
    return rigs;
  }

  /** 12.6 V -- bat -- fuse -- switch -- wire -- lamp 55 W -- lug -- ground joint -- ground. */
  private static Rig beacon(double ground) {
    return Rig.of(12)
        .battery(12.6, 0.007, "bat")
        .fuse("RF", 50, 0.0094, "bat", "fused")
        .resistor("RS", 0.008, "fused", "sw")
        .resistor("RW", 0.15, "sw", "lamp")
        .lamp("BL", 55, 12, "lamp", "lug")
        .resistor("RG", ground, "lug", "0");
  }

  static Stream<String> netlists() {
    return rigs().keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("netlists")
  void solverGivesWhatTheSimulatorPrinted(String netlist) {
    List<Map<String, String>> recorded =
        Csv.rows("/ngspice/recorded.csv").stream()
            .filter(r -> r.get("netlist").equals(netlist))
            .toList();
    assertThat(recorded).isNotEmpty();
    Map<String, Double> printed = new LinkedHashMap<>();
    recorded.forEach(r -> printed.put(r.get("vector"), Double.valueOf(r.get("volts"))));
    compare(netlist, printed, "recorded");
  }

  @ParameterizedTest
  @MethodSource("netlists")
  void solverGivesWhatTheSimulatorPrintsNow(String netlist, @TempDir Path folder)
      throws IOException, InterruptedException {
    Optional<Path> ngspice = installed();
    assumeTrue(ngspice.isPresent(), "ngspice is not installed");
    Path file = folder.resolve(netlist);
    try (InputStream in = NgspiceTest.class.getResourceAsStream("/ngspice/" + netlist)) {
      Files.copy(in, file);
    }
    Path printed = folder.resolve("printed");
    Process process =
        new ProcessBuilder(ngspice.get().toString(), "-b", file.toString())
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    if (!process.waitFor(60, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("ngspice did not end on " + netlist);
    }
    // It ends with 0 even where it found no solution: what counts is what it printed.
    Matcher line =
        Pattern.compile("^(v\\([^)]*\\)) = (\\S+)\\s*$", Pattern.MULTILINE)
            .matcher(Files.readString(printed, StandardCharsets.ISO_8859_1));
    Map<String, Double> found = new LinkedHashMap<>();
    while (line.find()) {
      found.put(line.group(1), Double.valueOf(line.group(2)));
    }
    List<String> expected = new ArrayList<>();
    for (Map<String, String> row : Csv.rows("/ngspice/recorded.csv")) {
      if (row.get("netlist").equals(netlist)) {
        expected.add(row.get("vector"));
      }
    }
    assertThat(found.keySet()).containsExactlyElementsOf(expected);
    compare(netlist, found, "now");
  }

  private static void compare(String netlist, Map<String, Double> printed, String when) {
    Rig rig = rigs().get(netlist);
    Network network = rig.network();
    double worst = 0;
    for (Solver solver : List.of(Solver.full(network), Solver.lowRank(network, Setting.REST))) {
      Rig.Solved solved = rig.solved(solver, Variant.healthy(network), Setting.REST);
      for (Map.Entry<String, Double> e : printed.entrySet()) {
        String[] nodes = e.getKey().substring(2, e.getKey().length() - 1).split(",");
        double volts =
            nodes.length == 1 ? solved.volts(nodes[0]) : solved.volts(nodes[0], nodes[1]);
        double seen = solved.point().ohmsSeen(solved.node(nodes[0]), Network.REFERENCE);
        // The leak takes seen / 1e9 of the volts; the rest is the simulator's own tolerance.
        double allowed = CLOSE + 1.1 * Math.abs(e.getValue()) * seen / 1e9;
        worst = Math.max(worst, Math.abs(volts - e.getValue()));
        assertThat(volts).as("%s %s", netlist, e.getKey()).isEqualTo(e.getValue(), within(allowed));
      }
    }
    System.out.printf("ngspice %s, %s: worst %.2g V%n", when, netlist, worst);
  }

  private static Optional<Path> installed() {
    String path = System.getenv("PATH");
    return path == null
        ? Optional.empty()
        : Stream.of(path.split(java.io.File.pathSeparator))
            .map(folder -> Path.of(folder).resolve("ngspice"))
            .filter(Files::isExecutable)
            .findFirst();
  }
}
