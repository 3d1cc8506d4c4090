package loopwright.casework.pattern;

import java.util.List;
import loopwright.casework.Problem;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;

/**
 * What must work without the key, behind a fuse of its own at the battery:
 *
 * <pre>
 * battery -- inline fuse -- splice --+-- clock -- ground
 *                                    +-- 30 (relay) 87 -- horn -- ground
 *                                    +-- 86 (coil)  85 -- button -- ground
 * </pre>
 */
final class ClockAndHorn extends Pattern {
  ClockAndHorn() {
    super("clock-horn");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "horn", 25);
    ask.power("clock", "clock", 1);
    ask.metres("to-splice", 1.5);
    ask.metres("to-relay", 0.3);
    ask.metres("to-load", 2);
    ask.metres("to-button", 1.2);
    ask.ground("ground");
    ask.metres("to-ground", 0.3);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    Harness.Fused fuse =
        h.fuse(
            h.existing().post(),
            a.amps("power") + a.amps("clock") + h.coilAmps(),
            h.words("part.inline-fuse"));
    String splice = h.splice(h.words("part.splice"), 3);
    h.wire(fuse, Harness.at(splice, "a"), a.number("to-splice"), h.words("wire.to-splice"));
    String clock =
        h.add(
            "E",
            h.basis().words().say("part.clock"),
            new PartSpec.PlainLoad(PartKind.ELECTRONICS, Estimate.of(a.amps("clock"))),
            "dash",
            h.why(a, "clock"));
    h.wire(
        h.run(Side.HOT, fuse.amps()),
        Harness.at(splice, "b"),
        Harness.at(clock, "in"),
        0.5,
        h.words("wire.to-clock"));
    h.smallGround(
        a.words("coil-ground"),
        fuse.amps(),
        Harness.at(clock, "out"),
        h.words("wire.clock-ground"));
    HornByRelay.behind(h, a, fuse, Harness.at(splice, "c"));
    h.circuit(
        Names.capital(h.basis().words().say("part.clock")), List.of(LoadRef.of(clock)), List.of());
  }
}
