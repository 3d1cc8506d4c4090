package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanFinding;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Known mistakes put into the pumper's plan one at a time: each must be found and named, and the
 * plan without them must be clean. The list is {@code paper/seeded-defects.csv}.
 */
class SeededDefectsTest {

  /** One mistake: what was done, and which rule must name which part. */
  private record Seed(String what, List<String> edits, List<String> rules, String part) {}

  private static List<Seed> seeds() {
    List<Seed> seeds = new ArrayList<>();
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                SeededDefectsTest.class.getResourceAsStream("/paper/seeded-defects.csv"),
                StandardCharsets.UTF_8))) {
      in.lines()
          .skip(1)
          .map(line -> line.split(";"))
          .forEach(
              c ->
                  seeds.add(
                      new Seed(c[0], List.of(c[1].split(", ")), List.of(c[2].split("\\|")), c[3])));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return seeds;
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void nothingIsWrongWithTheDemoVehicles(String name) {
    PaperReport report = Bench.paperDesk().check(Bench.vehicle(name));
    assertThat(report.unsolved()).isEmpty();
    assertThat(report.defects()).extracting(PlanFinding::finding).isEmpty();
    assertThat(report.figures()).isGreaterThan(100);
  }

  @Test
  void thereAreAtLeastSixtySeeds() {
    assertThat(seeds()).extracting(Seed::what).doesNotHaveDuplicates().hasSizeGreaterThan(60);
  }

  @TestFactory
  Stream<DynamicTest> everySeededMistakeIsFoundAndNamed() {
    Vehicle sound = Bench.vehicle("pumper");
    Set<String> known = said(Bench.paperDesk().check(sound));
    return seeds().stream()
        .map(
            seed ->
                DynamicTest.dynamicTest(
                    seed.what(),
                    () -> {
                      Vehicle broken = sound;
                      for (String edit : seed.edits()) {
                        broken = edited(broken, edit.split(" "));
                      }
                      PaperReport report = Bench.paperDesk().check(broken);
                      assertThat(report.unsolved()).isEmpty();
                      assertThat(report.findings())
                          .filteredOn(f -> !known.contains(f.part() + f.rule()))
                          .as(seed.what())
                          .anyMatch(
                              f ->
                                  seed.rules().contains(f.rule())
                                      && (seed.part().equals("*") || f.part().equals(seed.part())));
                    }));
  }

  private static Set<String> said(PaperReport report) {
    Set<String> said = new HashSet<>();
    report.findings().forEach(f -> said.add(f.part() + f.rule()));
    return said;
  }

  // Making mistakes.

  private static Vehicle edited(Vehicle v, String[] e) {
    return switch (e[0]) {
      case "size" ->
          wire(v, e[1], w -> sized(w, WireSize.parse(e[2] + " " + e[3]), w.metres(), w.loom()));
      case "metres" ->
          wire(v, e[1], w -> sized(w, w.size(), Estimate.of(Double.parseDouble(e[2])), w.loom()));
      case "loom" -> looms(v, e[1]);
      case "from" -> wire(v, e[1], w -> ends(w, TerminalRef.parse(e[2]), w.to()));
      case "to" -> wire(v, e[1], w -> ends(w, w.from(), TerminalRef.parse(e[2])));
      case "fuse" ->
          spec(v, e[1], s -> new PartSpec.Fuse(number(e[2]), ((PartSpec.Fuse) s).ohms()));
      case "watts" ->
          spec(
              v,
              e[1],
              s -> new PartSpec.Lamp(((PartSpec.Lamp) s).ratedVolts(), Estimate.of(number(e[2]))));
      case "ground" ->
          spec(v, e[1], s -> new PartSpec.Ground(Optional.of(Estimate.of(number(e[2])))));
      case "contact" -> spec(v, e[1], s -> contact(s, number(e[2])));
      case "stall" ->
          spec(
              v,
              e[1],
              s ->
                  new PartSpec.Motor(
                      ((PartSpec.Motor) s).amps(), Optional.of(Estimate.of(number(e[2])))));
      case "coil" -> relay(v, e[1], Optional.of(number(e[2])), Optional.empty(), Optional.empty());
      case "pull" -> relay(v, e[1], Optional.empty(), Optional.of(number(e[2])), Optional.empty());
      case "suppression" ->
          relay(
              v,
              e[1],
              Optional.empty(),
              Optional.empty(),
              Stream.of(PartSpec.Suppression.values())
                  .filter(s -> s.word().equals(e[2]))
                  .findFirst());
      case "on" -> on(v, e[1], e[2], e[3]);
      case "flip" -> flip(v, e[1]);
      case "lamp" -> lamp(v, e[1], e[2], e[3]);
      default -> throw new AssertionError("no such edit: " + e[0]);
    };
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  private static Vehicle parts(Vehicle v, UnaryOperator<Part> change) {
    return v.with(v.parts().stream().map(change).toList(), v.joins(), v.circuits());
  }

  private static Vehicle spec(Vehicle v, String id, UnaryOperator<PartSpec> change) {
    Vehicle after = parts(v, p -> p.id().equals(id) ? p.withSpec(change.apply(p.spec())) : p);
    assertThat(after).as("edit of " + id).isNotEqualTo(v);
    return after;
  }

  private static Vehicle wire(Vehicle v, String id, UnaryOperator<PartSpec.Wire> change) {
    return spec(v, id, s -> change.apply((PartSpec.Wire) s));
  }

  private static PartSpec.Wire sized(PartSpec.Wire w, WireSize size, Estimate metres, String loom) {
    return new PartSpec.Wire(
        w.kind(), w.from(), w.to(), size, metres, w.endOhms(), w.colour(), loom);
  }

  private static PartSpec.Wire ends(PartSpec.Wire w, TerminalRef from, TerminalRef to) {
    return new PartSpec.Wire(
        w.kind(), from, to, w.size(), w.metres(), w.endOhms(), w.colour(), w.loom());
  }

  private static Vehicle looms(Vehicle v, String loom) {
    return parts(
        v,
        p ->
            p.spec() instanceof PartSpec.Wire w
                    && w.kind() == PartKind.WIRE
                    && w.size().mm2() > 3
                    && w.size().mm2() < 20
                ? p.withSpec(sized(w, w.size(), w.metres(), "heavy " + loom))
                : p);
  }

  private static PartSpec contact(PartSpec spec, double amps) {
    if (spec instanceof PartSpec.Switch s) {
      return new PartSpec.Switch(
          s.terminals(),
          s.positions(),
          s.contacts(),
          s.control(),
          s.momentary(),
          s.ohms(),
          Optional.of(amps));
    }
    PartSpec.Relay r = (PartSpec.Relay) spec;
    return new PartSpec.Relay(
        r.changeover(),
        r.coilOhms(),
        r.pullInVolts(),
        r.dropOutVolts(),
        r.contactOhms(),
        r.suppression(),
        Optional.of(amps));
  }

  private static Vehicle relay(
      Vehicle v,
      String id,
      Optional<Double> coil,
      Optional<Double> pull,
      Optional<PartSpec.Suppression> suppression) {
    return spec(
        v,
        id,
        s -> {
          PartSpec.Relay r = (PartSpec.Relay) s;
          return new PartSpec.Relay(
              r.changeover(),
              coil.map(Estimate::of).or(r::coilOhms),
              pull.map(Estimate::of).or(r::pullInVolts),
              r.dropOutVolts(),
              r.contactOhms(),
              suppression.orElse(r.suppression()),
              r.amps());
        });
  }

  private static Vehicle on(Vehicle v, String id, String control, String position) {
    return v.with(
        v.parts(),
        v.joins(),
        v.circuits().stream()
            .map(
                c -> {
                  if (!c.id().equals(id)) {
                    return c;
                  }
                  Map<String, String> on = new LinkedHashMap<>(c.on());
                  on.put(control, position);
                  return new Circuit(c.id(), c.name(), c.loads(), on, c.note());
                })
            .toList());
  }

  /** Turns a diode round: the wires on its ends change places. */
  private static Vehicle flip(Vehicle v, String diode) {
    TerminalRef anode = new TerminalRef(diode, "anode");
    TerminalRef cathode = new TerminalRef(diode, "cathode");
    UnaryOperator<TerminalRef> turn =
        t -> t.equals(anode) ? cathode : t.equals(cathode) ? anode : t;
    return parts(
        v,
        p ->
            p.spec() instanceof PartSpec.Wire w
                ? p.withSpec(ends(w, turn.apply(w.from()), turn.apply(w.to())))
                : p);
  }

  private static Vehicle lamp(Vehicle v, String id, String in, String out) {
    List<Part> parts = new ArrayList<>(v.parts());
    parts.add(Part.of(id, "", new PartSpec.Lamp(Optional.empty(), Estimate.of(5))));
    parts.add(wireBetween("WX1", new TerminalRef(id, "in"), TerminalRef.parse(in)));
    parts.add(wireBetween("WX2", new TerminalRef(id, "out"), TerminalRef.parse(out)));
    return v.with(parts, v.joins(), v.circuits());
  }

  private static Part wireBetween(String id, TerminalRef from, TerminalRef to) {
    return Part.of(
        id,
        "",
        new PartSpec.Wire(
            PartKind.WIRE,
            from,
            to,
            WireSize.parse("18 AWG"),
            Estimate.of(1),
            Optional.empty(),
            "",
            ""));
  }
}
