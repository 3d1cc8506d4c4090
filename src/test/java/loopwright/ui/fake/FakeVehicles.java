package loopwright.ui.fake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;

/** Vehicles invented for looking at the screens. */
public final class FakeVehicles {
  private FakeVehicles() {}

  /**
   * A 12 V light pumper. The beacon runs
   *
   * <pre>
   * BATT.pos -W1- F3 -W2- K1(30-87) -W3- C4 -W4- L1 -W31- G4 - BODY -ST1- BATT.neg
   * F1 feeds the coil: BATT.pos -W1- F1 -W10- S1 -W11- S5 -W12- K1(86-85) -W13- G2 - BODY - ST1
   * </pre>
   */
  public static Vehicle pumper() {
    List<Part> parts = new ArrayList<>();
    parts.add(
        part(
            "BATT",
            "battery",
            "",
            new PartSpec.Battery(Optional.empty(), Optional.empty()),
            "rear"));
    parts.add(wire("W1", PartKind.WIRE, "BATT.pos", "F3.feed", "10 AWG", 0.8, "red"));
    parts.add(
        part("F3", "beacon fuse", "BCN", new PartSpec.Fuse(10, Optional.empty()), "fuse board"));
    parts.add(
        part("F1", "control fuse", "CTL", new PartSpec.Fuse(5, Optional.empty()), "fuse board"));
    parts.add(wire("W2", PartKind.WIRE, "F3.load", "K1.30", "14 AWG", 0.6, "red/white"));
    parts.add(
        part(
            "K1",
            "beacon relay",
            "K1",
            new PartSpec.Relay(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                PartSpec.Suppression.DIODE_CATHODE_86,
                Optional.of(30.0)),
            "fuse board"));
    parts.add(wire("W3", PartKind.WIRE, "K1.87", "C4.1a", "14 AWG", 2.4, "blue"));
    parts.add(
        new Part(
            "C4",
            "roof connector",
            "ROOF",
            new PartSpec.Connector(List.of("1"), Optional.empty()),
            Map.of("1a", new Access(2, "behind the cab lining, two clips", true)),
            Optional.of(2.0),
            Optional.empty(),
            Set.of(),
            "behind the cab lining"));
    parts.add(wire("W4", PartKind.WIRE, "C4.1b", "L1.in", "16 AWG", 0.9, "blue"));
    parts.add(
        part(
            "L1",
            "beacon lamp",
            "",
            new PartSpec.Lamp(Optional.empty(), Estimate.of(55)),
            "cab roof"));
    parts.add(wire("W31", PartKind.WIRE, "L1.out", "G4.lug", "16 AWG", 1.1, "black"));
    parts.add(
        new Part(
            "G4",
            "beacon ground stud",
            "BCN-",
            new PartSpec.Ground(Optional.empty()),
            Map.of("lug", new Access(1, "behind the left lamp", true)),
            Optional.empty(),
            Optional.empty(),
            Set.of(),
            "behind the left lamp"));
    parts.add(part("BODY", "cab body", "", new PartSpec.Body(), ""));
    parts.add(part("FRM", "frame", "", new PartSpec.Body(), ""));
    parts.add(wire("ST1", PartKind.STRAP, "FRM.metal", "BATT.neg", "2/0 AWG", 0.5, "bare"));
    parts.add(wire("W10", PartKind.WIRE, "F1.load", "S1.b", "18 AWG", 1.4, "yellow"));
    parts.add(switchPart("S1", "key switch", PartSpec.Control.KEY, List.of("off", "on")));
    parts.add(wire("W11", PartKind.WIRE, "S1.15", "S5.a", "18 AWG", 0.4, "yellow/black"));
    parts.add(switchPart("S5", "beacon switch", PartSpec.Control.MANUAL, List.of("off", "on")));
    parts.add(wire("W12", PartKind.WIRE, "S5.b", "K1.86", "18 AWG", 1.2, "yellow/blue"));
    parts.add(wire("W13", PartKind.WIRE, "K1.85", "G2.lug", "18 AWG", 0.3, "black"));
    parts.add(
        part(
            "G2",
            "board ground stud",
            "GND 2",
            new PartSpec.Ground(Optional.empty()),
            "fuse board"));
    parts.add(
        part("F7", "horn fuse", "HRN", new PartSpec.Fuse(15, Optional.empty()), "fuse board"));
    parts.add(
        part(
            "H1",
            "horn",
            "",
            new PartSpec.PlainLoad(PartKind.HORN, Estimate.of(5)),
            "behind the grille"));
    parts.add(
        part(
            "M1",
            "fuel pump",
            "",
            new PartSpec.Motor(Estimate.of(5), Optional.empty()),
            "frame rail"));
    parts.add(
        part(
            "L7",
            "left tail lamp",
            "",
            new PartSpec.DualLamp(
                "tail", Estimate.of(5), "stop", Estimate.of(21), Optional.empty()),
            "rear left"));
    return new Vehicle(
        "pumper",
        "Light pumper",
        12,
        GroundedPole.NEGATIVE,
        parts,
        List.of(),
        List.of(
            circuit("beacon", "Beacon", "L1", Map.of("S1", "on", "S5", "on")),
            circuit("horn", "Horn", "H1", Map.of()),
            circuit("fuel-pump", "Fuel pump", "M1", Map.of("S1", "on")),
            circuit("tail", "Tail lamps", "L7:tail", Map.of()),
            circuit("stop", "Stop lamps", "L7:stop", Map.of())),
        "Village brigade, wired anew two winters ago.");
  }

  private static Circuit circuit(String id, String name, String load, Map<String, String> on) {
    return new Circuit(id, name, List.of(LoadRef.parse(load)), on, "");
  }

  private static Part part(String id, String name, String label, PartSpec spec, String where) {
    return new Part(
        id, name, label, spec, Map.of(), Optional.empty(), Optional.empty(), Set.of(), where);
  }

  private static Part switchPart(
      String id, String name, PartSpec.Control control, List<String> positions) {
    String from = control == PartSpec.Control.KEY ? "b" : "a";
    String to = control == PartSpec.Control.KEY ? "15" : "b";
    return part(
        id,
        name,
        "",
        new PartSpec.Switch(
            List.of(from, to),
            positions,
            List.of(new PartSpec.SwitchContact(from, to, Set.of("on"))),
            control,
            false,
            Optional.empty(),
            Optional.empty()),
        "dash");
  }

  private static Part wire(
      String id, PartKind kind, String from, String to, String size, double metres, String colour) {
    return part(
        id,
        kind == PartKind.STRAP ? "ground strap" : "wire",
        "",
        new PartSpec.Wire(
            kind,
            TerminalRef.parse(from),
            TerminalRef.parse(to),
            WireSize.parse(size),
            Estimate.of(metres),
            Optional.empty(),
            colour,
            ""),
        "");
  }
}
