package loopwright.ui.fake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.LoopView;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;

/** Loops of the invented pumper. */
public final class FakeLoops implements LoopSource {

  /** A part on a loop with the node before and after it. */
  public record Hop(String part, TerminalRef before, TerminalRef after, double prior) {
    static Hop of(String part, String before, String after, double prior) {
      return new Hop(part, TerminalRef.parse(before), TerminalRef.parse(after), prior);
    }
  }

  /** The lamp's loop. */
  public static List<Hop> beaconSteps() {
    return List.of(
        Hop.of("W1", "BATT.pos", "F3.feed", 0.02),
        Hop.of("F3", "F3.feed", "F3.load", 0.14),
        Hop.of("W2", "F3.load", "K1.30", 0.03),
        Hop.of("K1", "K1.30", "K1.87", 0.12),
        Hop.of("W3", "K1.87", "C4.1a", 0.03),
        Hop.of("C4", "C4.1a", "C4.1b", 0.1),
        Hop.of("W4", "C4.1b", "L1.in", 0.03),
        Hop.of("L1", "L1.in", "L1.out", 0.2),
        Hop.of("W31", "L1.out", "G4.lug", 0.05),
        Hop.of("G4", "G4.lug", "BODY.metal", 0.3),
        Hop.of("BODY", "BODY.metal", "FRM.metal", 0.01),
        Hop.of("ST1", "FRM.metal", "BATT.neg", 0.02));
  }

  /** The relay coil's loop. */
  public static List<Hop> coilSteps() {
    return List.of(
        Hop.of("W1", "BATT.pos", "F1.feed", 0.02),
        Hop.of("F1", "F1.feed", "F1.load", 0.1),
        Hop.of("W10", "F1.load", "S1.b", 0.02),
        Hop.of("S1", "S1.b", "S1.15", 0.05),
        Hop.of("W11", "S1.15", "S5.a", 0.02),
        Hop.of("S5", "S5.a", "S5.b", 0.1),
        Hop.of("W12", "S5.b", "K1.86", 0.02),
        Hop.of("K1", "K1.86", "K1.85", 0.12),
        Hop.of("W13", "K1.85", "G2.lug", 0.03),
        Hop.of("G2", "G2.lug", "BODY.metal", 0.06),
        Hop.of("ST1", "BODY.metal", "BATT.neg", 0.02));
  }

  @Override
  public Optional<LoopView> loop(Vehicle vehicle, String circuit) {
    return circuit.equals("beacon")
        ? Optional.of(unsuspected(new FakeFindCase(vehicle, "").view().loop()))
        : Optional.of(simple(vehicle, circuit));
  }

  private static LoopView unsuspected(LoopView loop) {
    return new LoopView(
        loop.title(),
        loop.pieces().stream()
            .map(
                p ->
                    new LoopView.PieceView(
                        p.part(),
                        p.title(),
                        p.label(),
                        p.kind(),
                        p.in(),
                        p.out(),
                        p.detail(),
                        p.standing(),
                        0,
                        List.of()))
            .toList(),
        loop.stairs(),
        loop.branches().stream().map(FakeLoops::unsuspected).toList());
  }

  private static LoopView simple(Vehicle vehicle, String circuit) {
    String load = vehicle.circuit(circuit).orElseThrow().loads().get(0).part();
    List<LoopView.PieceView> pieces = new ArrayList<>();
    List<LoopView.Stair> stairs = new ArrayList<>();
    List<String> parts = List.of("W1", "F7", "W2", load, "G2", "BODY", "ST1");
    for (String id : parts) {
      Part part = vehicle.requirePart(id);
      boolean high = pieces.stream().noneMatch(p -> p.part().equals(load));
      stairs.add(
          new LoopView.Stair(
              new TerminalRef(id, "in"),
              List.of(),
              high
                  ? new loopwright.casework.Band(12.1, 12.7, loopwright.casework.Band.Unit.VOLT)
                  : new loopwright.casework.Band(0, 0.1, loopwright.casework.Band.Unit.VOLT),
              List.of(),
              true));
      pieces.add(
          new LoopView.PieceView(
              id,
              part.title(),
              part.label(),
              part.kind(),
              Optional.empty(),
              Optional.empty(),
              detail(part),
              LoopView.Standing.HELD,
              0,
              List.of()));
    }
    stairs.add(
        new LoopView.Stair(
            TerminalRef.parse("BATT.neg"),
            List.of(),
            new loopwright.casework.Band(0, 0, loopwright.casework.Band.Unit.VOLT),
            List.of(),
            true));
    return new LoopView(vehicle.circuit(circuit).orElseThrow().name(), pieces, stairs, List.of());
  }

  static String detail(Part part) {
    if (part.spec() instanceof PartSpec.Wire wire) {
      return wire.size() + ", " + wire.metres().about() + " m " + wire.colour();
    }
    if (part.spec() instanceof PartSpec.Fuse fuse) {
      return (int) fuse.amps() + " A";
    }
    return part.kind() == PartKind.LAMP ? "55 W" : "";
  }
}
