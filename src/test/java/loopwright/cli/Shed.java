package loopwright.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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

/**
 * A vehicle of one circuit for the tests here.
 *
 * <pre>
 * BATT.pos --W1-- F3 --W2-- S5 --W3-- L1 --W4-- G4 (metal) -- BATT.neg
 * </pre>
 */
final class Shed {
  private Shed() {}

  static Vehicle pumper() {
    return new Vehicle(
        "pumper",
        "Light pumper",
        12,
        GroundedPole.NEGATIVE,
        List.of(
            Part.of("BATT", "battery", new PartSpec.Battery(Optional.empty(), Optional.empty())),
            wire("W1", "BATT.pos", "F3.feed"),
            Part.of("F3", "beacon fuse", new PartSpec.Fuse(10, Optional.empty())),
            wire("W2", "F3.load", "S5.a"),
            Part.of(
                "S5",
                "beacon switch",
                new PartSpec.Switch(
                    List.of("a", "b"),
                    List.of("off", "on"),
                    List.of(new PartSpec.SwitchContact("a", "b", Set.of("on"))),
                    PartSpec.Control.MANUAL,
                    false,
                    Optional.empty(),
                    Optional.empty())),
            wire("W3", "S5.b", "L1.in"),
            Part.of("L1", "beacon", new PartSpec.Lamp(Optional.empty(), Estimate.of(55))),
            wire("W4", "L1.out", "G4.lug"),
            Part.of("G4", "beacon ground", new PartSpec.Ground(Optional.empty()))),
        List.of(List.of(TerminalRef.parse("G4.metal"), TerminalRef.parse("BATT.neg"))),
        List.of(new Circuit("beacon", "Beacon", List.of(LoadRef.of("L1")), Map.of("S5", "on"), "")),
        "");
  }

  private static Part wire(String id, String from, String to) {
    return Part.of(
        id,
        "wire",
        new PartSpec.Wire(
            PartKind.WIRE,
            TerminalRef.parse(from),
            TerminalRef.parse(to),
            WireSize.parse("18 AWG"),
            Estimate.of(1.5),
            Optional.empty(),
            "red",
            ""));
  }
}
