package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/**
 * A made-up hand cart of 12 V, small enough to know by heart.
 *
 * <pre>
 * BAT.pos = F1 10 A = S1 -W4- K1.86   K1.85 = G1
 *              F1   = K1.30   K1.87 -W7- C1 -W8- L1 work lamp 21 W -W9- G1
 * BAT.pos = F2 10 A = S2 -W11- L2 tail lamp 21 W = G1
 * G1 = BODY -W13- BAT.neg
 * </pre>
 *
 * W8 and W11 run in one loom. K1 has a diode across its coil. C1's cavities can't be reached.
 */
public final class Cart {

  static final MeterSpec METER = Bench.KNOWLEDGE.meter("basic").orElseThrow();
  public static final Vehicle VEHICLE = vehicle();
  static final Network NETWORK = Network.of(VEHICLE, Bench.KNOWLEDGE.typicals());
  static final Setting LAMP_ON = Setting.REST.with("S1", "on");
  static final Setting TAIL_ON = Setting.REST.with("S2", "on");
  static final LoadRef LAMP = LoadRef.of("L1");
  static final LoadRef TAIL = LoadRef.of("L2");

  private Cart() {}

  static Workbench bench() {
    return new Workbench(NETWORK, Bench.KNOWLEDGE, METER);
  }

  /** A complaint of the work lamp. */
  static Complaint complaint(ComplaintKind kind) {
    return new Complaint(kind, "lamp", LAMP, LAMP_ON);
  }

  static TerminalRef at(String ref) {
    return TerminalRef.parse(ref);
  }

  static Check volts(String red, Setting setting) {
    return Check.measure(CheckKind.VOLTS, at(red), VEHICLE.groundedPost(), setting);
  }

  /** A failure of a part by its name. */
  static Failure failure(String part, String name) {
    return Failure.of(NETWORK, VEHICLE.requirePart(part), Bench.KNOWLEDGE.faults()).stream()
        .filter(f -> f.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** The hypotheses of one mode of a part, least ohms first where there is a range. */
  static List<Hypothesis> suspects(Workbench bench, String part, String mode) {
    return bench
        .singles(VEHICLE.requirePart(part), Context.IN_SERVICE, LAMP_ON, v -> false, h -> true)
        .stream()
        .filter(h -> h.suspect().mode().equals(mode))
        .sorted(java.util.Comparator.comparingDouble(h -> h.cell().map(c -> c.low()).orElse(0.0)))
        .toList();
  }

  static Hypothesis suspect(Workbench bench, String part, String mode) {
    return suspects(bench, part, mode).get(0);
  }

  private static Part part(
      String id, String name, PartSpec spec, double apart, double swap, double reach) {
    Map<String, Access> access = new java.util.HashMap<>();
    for (String terminal : spec.terminals()) {
      access.put(terminal, new Access(reach, "", true));
    }
    return new Part(
        id,
        name,
        "",
        spec,
        access,
        apart > 0 ? Optional.of(apart) : Optional.empty(),
        swap > 0 ? Optional.of(swap) : Optional.empty(),
        Set.of(),
        "");
  }

  private static Part wire(String id, String from, String to, double metres, String loom) {
    return Part.of(
        id,
        "wire",
        new PartSpec.Wire(
            PartKind.WIRE,
            at(from),
            at(to),
            WireSize.parse("1.5 mm2"),
            Estimate.of(metres),
            Optional.empty(),
            "",
            loom));
  }

  private static Vehicle vehicle() {
    List<Part> parts = new ArrayList<>();
    parts.add(
        part(
            "BAT", "battery", new PartSpec.Battery(Optional.empty(), Optional.empty()), 2, 0, 0.1));
    parts.add(part("F1", "lamp fuse", new PartSpec.Fuse(10, Optional.empty()), 0.3, 0.5, 0.2));
    parts.add(part("F2", "tail fuse", new PartSpec.Fuse(10, Optional.empty()), 0.4, 0.5, 0.2));
    parts.add(part("S1", "lamp switch", PartSpec.Switch.onOff(Optional.empty()), 0, 0, 1));
    parts.add(part("S2", "tail switch", PartSpec.Switch.onOff(Optional.empty()), 0, 0, 1));
    parts.add(
        part(
            "K1",
            "lamp relay",
            new PartSpec.Relay(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                PartSpec.Suppression.DIODE_CATHODE_86,
                Optional.empty()),
            0.5,
            1,
            0.5));
    PartSpec connector = new PartSpec.Connector(List.of("1"), Optional.empty());
    parts.add(
        new Part(
            "C1",
            "rear connector",
            "",
            connector,
            Map.of("1a", new Access(0, "", false), "1b", new Access(0, "", false)),
            Optional.of(0.6),
            Optional.empty(),
            Set.of(),
            ""));
    parts.add(
        part(
            "L1", "work lamp", new PartSpec.Lamp(Optional.of(12.0), Estimate.of(21)), 0.5, 1, 0.4));
    parts.add(
        part(
            "L2", "tail lamp", new PartSpec.Lamp(Optional.of(12.0), Estimate.of(21)), 0.5, 1, 0.4));
    parts.add(part("G1", "ground stud", new PartSpec.Ground(Optional.empty()), 0, 0, 0.7));
    parts.add(part("BODY", "frame", new PartSpec.Body(), 0, 0, 0.1));
    parts.add(wire("W4", "S1.out", "K1.86", 1, ""));
    parts.add(wire("W7", "K1.87", "C1.1a", 1, ""));
    parts.add(wire("W8", "C1.1b", "L1.in", 2, "rear"));
    parts.add(wire("W9", "L1.out", "G1.lug", 1, ""));
    parts.add(wire("W11", "S2.out", "L2.in", 2, "rear"));
    parts.add(wire("W13", "BODY.metal", "BAT.neg", 0.5, ""));
    return new Vehicle(
        "cart",
        "hand cart",
        12,
        GroundedPole.NEGATIVE,
        parts,
        List.of(
            List.of(at("BAT.pos"), at("F1.feed"), at("F2.feed")),
            List.of(at("F1.load"), at("S1.in"), at("K1.30")),
            List.of(at("F2.load"), at("S2.in")),
            List.of(at("G1.lug"), at("K1.85"), at("L2.out")),
            List.of(at("G1.metal"), at("BODY.metal"))),
        List.of(
            new Circuit("lamp", "work lamp", List.of(LoadRef.of("L1")), Map.of("S1", "on"), ""),
            new Circuit("tail", "tail lamp", List.of(LoadRef.of("L2")), Map.of("S2", "on"), "")),
        "made up for the tests");
  }
}
