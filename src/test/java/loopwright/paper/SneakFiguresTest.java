package loopwright.paper;

import static loopwright.solver.Rig.setting;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.evidence.Bench;
import loopwright.evidence.generated.MadeUp;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Change;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Rig;
import loopwright.solver.Solver;
import loopwright.solver.Variant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What else gets current: known circuits by hand, and all against a plain search. */
class SneakFiguresTest {

  private static PartSpec relay(PartSpec.Suppression suppression) {
    return new PartSpec.Relay(
        false,
        Optional.of(Rig.exactly(85)),
        Optional.of(Rig.exactly(6.5)),
        Optional.of(Rig.exactly(3.5)),
        Optional.of(Rig.exactly(0.006)),
        suppression,
        Optional.empty());
  }

  private static PartSpec button(String on) {
    return new PartSpec.Switch(
        List.of("in", "out"),
        List.of("off", on),
        List.of(new PartSpec.SwitchContact("in", "out", Set.of(on))),
        PartSpec.Control.MANUAL,
        true,
        Optional.empty(),
        Optional.empty());
  }

  private static final PartSpec STUD = new PartSpec.Ground(Optional.empty());
  private static final PartSpec TAIL_AND_STOP =
      new PartSpec.DualLamp("tail", Rig.exactly(5), "stop", Rig.exactly(21), Optional.of(12.0));

  private static Plan plan(Network network) {
    return new Plan(network.vehicle(), Bench.KNOWLEDGE.typicals(), Bench.KNOWLEDGE.wireFuses());
  }

  private static List<Figure> figures(Network network) {
    Plan plan = plan(network);
    new SneakFigures(plan).add();
    return plan.figures();
  }

  /**
   * Two lamps of tail and stop on one stud.
   *
   * <pre>
   * BAT - FT - ST - L1:tail, L2:tail      FS - SS - L1:stop, L2:stop
   *                 L1, L2: common - G - metal - BAT
   * </pre>
   */
  static Rig rear() {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .fuse("FT", 5, 0.02, "top", "ft")
        .onOff("ST", 0.01, "ft", "t")
        .fuse("FS", 10, 0.01, "top", "fs")
        .onOff("SS", 0.01, "fs", "s")
        .part("L1", TAIL_AND_STOP, "t", "s", "lug")
        .part("L2", TAIL_AND_STOP, "t", "s", "lug")
        .lamp("DASH", 2, 12, "t", "0")
        .part("G", STUD, "lug", "0")
        .circuit("tails", "L1:tail", "ST=on")
        .circuit("tail2", "L2:tail", "ST=on")
        .circuit("dash", "DASH", "ST=on")
        .circuit("stops", "L1:stop", "SS=on")
        .circuit("stop2", "L2:stop", "SS=on");
  }

  @Test
  void aLostStudSharedByTailAndStopLampsIsANote() {
    // Braking without the stud: the current of the stop filaments goes back through the tail
    // filaments to what else is fed from the tail switch, the dash lamp, and lights that.
    Figure f = only(figures(rear().network()));
    assertThat(f.kind()).isEqualTo(Figure.Kind.GROUND_SNEAK);
    assertThat(f.part()).isEqualTo("DASH");
    assertThat(f.at()).isEqualTo(setting("SS=on"));
    // Left and right are alike: either is the way.
    assertThat(String.join(" ", f.with())).matches("G FS SS L(.):stop L\\1:tail DASH");
    assertThat(f.said().get(0)).isEqualTo("glows");
    // 2 W behind two of 21 W and two of 5 W in series: these stay nearly cold.
    assertThat(f.value()).isBetween(80.0, 110.0);
  }

  private static Figure only(List<Figure> figures) {
    assertThat(figures).hasSize(1);
    return figures.get(0);
  }

  /**
   * A tell-tale for two circuits, with a diode from each or without.
   *
   * <pre>
   * BAT - F1 - S1 - LA - ground        one - D1 - L     L - ground
   *     - F2 - S2 - LB - ground        two - D2 - L
   * </pre>
   */
  private static Rig pair(boolean diodes) {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 10, 0.01, "top", "f1")
            .onOff("S1", 0.01, "f1", "one")
            .lamp("LA", 21, 12, "one", "0")
            .fuse("F2", 10, 0.01, "top", "f2")
            .onOff("S2", 0.01, "f2", "two")
            .lamp("LB", 21, 12, "two", "0")
            .lamp("L", 2, 12, "tell", "0");
    PartSpec diode = new PartSpec.Diode(Optional.empty());
    if (diodes) {
      rig.part("D1", diode, "one", "tell").part("D2", diode, "two", "tell");
    } else {
      rig.part("C1", new PartSpec.Connector(List.of("1"), Optional.empty()), "one", "tell")
          .part("C2", new PartSpec.Connector(List.of("1"), Optional.empty()), "two", "tell");
    }
    return rig.circuit("a", "LA", "S1=on")
        .circuit("b", "LB", "S2=on")
        .circuit("t1", "L", "S1=on")
        .circuit("t2", "L", "S2=on");
  }

  @Test
  void withoutItsDiodesATellTaleFeedsBack() {
    List<Figure> figures = figures(pair(false).network());
    assertThat(figures)
        .extracting(Figure::kind)
        .containsExactlyInAnyOrder(Figure.Kind.BACKFEED, Figure.Kind.BACKFEED);
    Figure b = figures.stream().filter(f -> f.part().equals("LB")).findFirst().orElseThrow();
    assertThat(b.at()).isEqualTo(setting("S1=on"));
    assertThat(b.with()).containsExactly("F1", "S1", "C1", "C2", "LB");
    assertThat(b.value()).isBetween(95.0, 115.0);
  }

  @Test
  void withItsDiodesItDoesNot() {
    assertThat(figures(pair(true).network())).isEmpty();
  }

  /**
   * Two warning lamps behind each other between a key line and a switched one: with the key off and
   * the lamps on, the key line is fed through the lamp.
   *
   * <pre>
   * BAT - FK - KEY - line - E - ground            line - L - side
   *     - FL - SL - side - T - ground
   * </pre>
   */
  @Test
  void aLampBetweenTwoFeedsCarriesCurrentFromOneToTheOther() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("FK", 10, 0.01, "top", "fk")
            .onOff("KEY", 0.01, "fk", "line")
            .part("E", new PartSpec.PlainLoad(PartKind.ELECTRONICS, Rig.exactly(0.05)), "line", "0")
            .lamp("L", 5, 12, "line", "side")
            .fuse("FL", 10, 0.01, "top", "fl")
            .onOff("SL", 0.01, "fl", "side")
            .lamp("T", 5, 12, "side", "0")
            .circuit("e", "E", "KEY=on")
            .circuit("t", "T", "SL=on");
    List<Figure> figures = figures(rig.network());
    Figure e = figures.stream().filter(f -> f.part().equals("E")).findFirst().orElseThrow();
    assertThat(e.kind()).isEqualTo(Figure.Kind.SNEAK);
    assertThat(e.at()).isEqualTo(setting("SL=on"));
    assertThat(e.with()).containsExactly("FL", "SL", "L", "E");
    // 50 mA of 12 V behind a cold 5 W lamp of 2.2 ohm: nearly all volts.
    assertThat(e.value()).isBetween(90.0, 108.0);
    Figure t = figures.stream().filter(f -> f.part().equals("T")).findFirst().orElseThrow();
    assertThat(t.at()).isEqualTo(setting("KEY=on"));
    assertThat(t.with()).containsExactly("FK", "KEY", "L", "T");
  }

  /**
   * A relay that feeds its own coil.
   *
   * <pre>
   * BAT - F - S - 86 K 85 - ground;  F - 30 K 87 - L - ground;  87 joined to 86 by a connector
   * </pre>
   */
  private static Rig holding(PartSpec starts) {
    return Rig.of(12)
        .battery(12.6, 0.01, "top")
        .fuse("F", 15, 0.01, "top", "f")
        .part("S", starts, "f", "coil")
        .part("K", relay(PartSpec.Suppression.NONE), "coil", "0", "f", "out")
        .part("C", new PartSpec.Connector(List.of("1"), Optional.empty()), "out", "coil")
        .lamp("L", 21, 12, "out", "0")
        .circuit("l", "L", "S=on");
  }

  @Test
  void aRelayThatHoldsItselfInBehindASwitchIsToldAndBehindAButtonIsMeant() {
    PartSpec latching = ((PartSpec.Switch) button("on"));
    Rig behindButton = holding(latching);
    assertThat(figures(behindButton.network())).isEmpty();
    PartSpec.Switch b = (PartSpec.Switch) button("on");
    PartSpec stays =
        new PartSpec.Switch(
            b.terminals(), b.positions(), b.contacts(), b.control(), false, b.ohms(), b.amps());
    Figure f = only(figures(holding(stays).network()));
    assertThat(f.kind()).isEqualTo(Figure.Kind.STAYS_ON);
    assertThat(f.part()).isEqualTo("L");
    assertThat(f.at()).isEqualTo(Setting.REST);
    assertThat(f.with().get(0)).isEqualTo("S");
    assertThat(f.said().get(2)).isEqualTo("K");
  }

  /**
   * The start relay's coil returns by a neutral switch, which also grounds a lamp: with the lamps'
   * fuse out the coil returns through the lamp and its fellow. A diode in the lamp's wire stops it.
   *
   * <pre>
   * BAT - FK - SK - 86 K 85 - N (open in gear) - ground;  BAT - FM - 30 K 87 - M - ground
   * BAT - FL - LN - 85 of K;  FL - LO - ground
   * </pre>
   */
  private static Rig starter(boolean diode) {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.005, "top")
            .fuse("FK", 10, 0.01, "top", "fk")
            .onOff("SK", 0.01, "fk", "st")
            .part("K", relay(PartSpec.Suppression.NONE), "st", "nn", "fm", "m")
            .onOff("N", 0.01, "nn", "0")
            .fuse("FM", 200, 0.001, "top", "fm")
            .part("M", new PartSpec.Motor(Rig.exactly(100), Optional.empty()), "m", "0")
            .fuse("FL", 5, 0.02, "top", "fl")
            .lamp("LO", 2, 12, "fl", "0")
            .circuit("start", "M", "SK=on", "N=on")
            .circuit("neutral", "LN", "N=on")
            .circuit("oil", "LO");
    return diode
        ? rig.lamp("LN", 2, 12, "fl", "ln")
            .part("D", new PartSpec.Diode(Optional.empty()), "ln", "nn")
        : rig.lamp("LN", 2, 12, "fl", "nn");
  }

  @Test
  void aFuseOutLetsTheStarterTurnInGear() {
    List<Figure> figures = figures(starter(false).network());
    Figure m = figures.stream().filter(f -> f.part().equals("M")).findFirst().orElseThrow();
    assertThat(m.kind()).isEqualTo(Figure.Kind.FUSE_SNEAK);
    assertThat(m.at()).isEqualTo(setting("SK=on"));
    // The lost fuse, the lamp that glows with it, and the way of the coil.
    assertThat(m.with()).containsExactly("FL", "LN", "FK", "SK", "K", "LN", "LO");
    assertThat(m.said()).startsWith("turns").contains("K");
    assertThat(figures(starter(true).network())).noneMatch(f -> f.part().equals("M"));
  }

  @Test
  void twoFusesSideBySideAreTold() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 10, 0.01, "top", "f")
            .fuse("F2", 10, 0.01, "top", "f")
            .onOff("S", 0.01, "f", "s")
            .lamp("L", 55, 12, "s", "0")
            .circuit("l", "L", "S=on");
    assertThat(figures(rig.network()))
        .allMatch(f -> f.kind() == Figure.Kind.FUSE_BYPASSED && f.part().equals("L"))
        .hasSize(1);
  }

  @Test
  void twoFusesInSeriesAreNot() {
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 20, 0.01, "top", "m")
            .fuse("F2", 10, 0.01, "m", "f")
            .onOff("S", 0.01, "f", "s")
            .lamp("L", 55, 12, "s", "0")
            .circuit("l", "L", "S=on");
    assertThat(figures(rig.network())).isEmpty();
  }

  @Test
  void aLoadThatWorksPastItsKeyIsInformation() {
    // The lamp is wired before the key though its circuit names it.
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F", 10, 0.01, "top", "f")
            .onOff("KEY", 0.01, "f", "k")
            .onOff("S", 0.01, "f", "s")
            .lamp("L", 21, 12, "s", "0")
            .lamp("P", 5, 12, "k", "0")
            .circuit("l", "L", "KEY=on", "S=on")
            .circuit("p", "P", "KEY=on");
    Figure f = only(figures(rig.network()));
    assertThat(f.kind()).isEqualTo(Figure.Kind.ALSO_ON);
    assertThat(f.part()).isEqualTo("L");
    assertThat(f.at()).isEqualTo(setting("S=on"));
  }

  // Against a plain search.

  /** Every load that one loss wakes in a setting, each solved anew by the whole matrix. */
  private static Set<String> plain(Network network) {
    return plain(network, plan(network).states().settings());
  }

  private static Set<String> plain(Network network, Iterable<Setting> settings) {
    Plan plan = plan(network);
    Set<String> woken = new TreeSet<>();
    for (Setting setting : settings) {
      OperatingPoint whole = Solver.full(network).solve(Variant.healthy(network), setting);
      for (int e = 0; e < network.elements().size(); e++) {
        Part part = plan.part(network.elements().get(e));
        if (part.kind() != PartKind.FUSE && part.kind() != PartKind.GROUND) {
          continue;
        }
        Variant variant = Variant.healthy(network).with(List.of(new Change.Remove(e)));
        OperatingPoint lost = Solver.full(network).solve(variant, setting);
        for (int l = 0; l < network.elements().size(); l++) {
          Optional<Noticed> load = Noticed.of(plan, l);
          if (load.isPresent()
              && load.get().in(plan, lost)
              && !load.get().in(plan, whole)
              && !on(network, load.get().name(), setting)) {
            woken.add(part.id() + " " + load.get().name());
          }
        }
      }
    }
    return woken;
  }

  private static boolean on(Network network, String load, Setting setting) {
    for (Circuit c : network.vehicle().circuits()) {
      if (c.loads().contains(LoadRef.parse(load))
          && c.on().entrySet().stream()
              .allMatch(
                  p -> network.vehicle().position(p.getKey(), setting).equals(p.getValue()))) {
        return true;
      }
    }
    return false;
  }

  /**
   * The same from the figures; loads that a relay's falling back switches on are left out there.
   */
  private static Set<String> told(Network network) {
    Set<String> woken = new TreeSet<>();
    for (Figure f : figures(network)) {
      if (f.kind() == Figure.Kind.FUSE_SNEAK || f.kind() == Figure.Kind.GROUND_SNEAK) {
        int losses = (Integer) f.said().get(3);
        int others = (Integer) f.said().get(4);
        List<String> loads = new ArrayList<>(f.with().subList(losses, losses + others));
        loads.add(f.part());
        for (String loss : f.with().subList(0, losses)) {
          loads.forEach(l -> woken.add(loss + " " + l));
        }
      }
    }
    // The plain search leaves out wires and straps.
    woken.removeIf(
        w ->
            !Set.of(PartKind.FUSE, PartKind.GROUND)
                .contains(network.vehicle().requirePart(w.substring(0, w.indexOf(' '))).kind()));
    return woken;
  }

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor", "truck", "pumper"})
  void demoVehiclesAsByPlainSearch(String name) {
    Network network = Bench.network(Bench.vehicle(name));
    assertThat(told(network)).isEqualTo(plain(network));
  }

  static Stream<Network> small() {
    return Stream.of(
        rear().network(),
        pair(true).network(),
        pair(false).network(),
        starter(true).network(),
        starter(false).network(),
        holding(button("on")).network());
  }

  @ParameterizedTest
  @MethodSource("small")
  void smallCircuitsAsByPlainSearch(Network network) {
    assertThat(told(network)).isEqualTo(plain(network));
  }

  /** Every setting there is. */
  private static List<Setting> all(Network network) {
    List<Setting> all = new ArrayList<>(List.of(Setting.REST));
    network
        .vehicle()
        .controls()
        .forEach(
            (control, positions) -> {
              for (Setting setting : List.copyOf(all)) {
                positions.stream().skip(1).forEach(p -> all.add(setting.with(control, p)));
              }
            });
    return all;
  }

  @ParameterizedTest
  @MethodSource("small")
  void noOtherSettingOfSmallCircuitsWakesMore(Network network) {
    assertThat(told(network)).isEqualTo(plain(network, all(network)));
  }

  @Test
  void madeUpVehiclesWakeNothingEitherWay() {
    for (int n = 0; n < 45; n++) {
      Network network = Bench.network(MadeUp.vehicle(n));
      assertThat(plain(network)).isEmpty();
      assertThat(figures(network)).as("made-up vehicle " + n).isEmpty();
    }
  }

  /** Two feeds, three switches, and lamps and relays between any points. */
  private static Network tangle(Random random) {
    List<String> points = List.of("f1", "f2", "a", "b", "c", "lug", "0");
    Rig rig =
        Rig.of(12)
            .battery(12.6, 0.01, "top")
            .fuse("F1", 15, 0.01, "top", "f1")
            .fuse("F2", 15, 0.01, "top", "f2")
            .onOff("S1", 0.01, "f1", "a")
            .onOff("S2", 0.01, "f2", "b")
            .onOff("S3", 0.01, "f1", "c")
            .part("G", STUD, "lug", "0");
    for (int n = 0; n < 5; n++) {
      String from = points.get(random.nextInt(5));
      String to = points.get(random.nextInt(points.size()));
      if (from.equals(to)) {
        to = "lug";
      }
      if (n == 4) {
        String fed = List.of("f1", "f2").get(random.nextInt(2));
        rig.part("K", relay(PartSpec.Suppression.NONE), from, to, fed, "out")
            .lamp("LK", 21, 12, "out", "lug")
            .circuit("k", "LK", "S1=on");
      } else {
        rig.lamp("L" + n, List.of(2, 5, 21).get(random.nextInt(3)), 12, from, to)
            .circuit("c" + n, "L" + n, "S" + (1 + random.nextInt(3)) + "=on");
      }
    }
    return rig.network();
  }

  @Test
  void tanglesAsByPlainSearch() {
    Random random = new Random(20);
    int woken = 0;
    for (int n = 0; n < 300; n++) {
      Network network = tangle(random);
      if (figures(network).stream().anyMatch(f -> f.kind() == Figure.Kind.BUZZES)) {
        continue;
      }
      Set<String> told = told(network);
      assertThat(told).as("tangle " + n).isEqualTo(plain(network));
      woken += told.size();
    }
    assertThat(woken).isGreaterThan(300);
  }
}
