package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.PartSpec;

/**
 * A motor whose relay a control unit grounds:
 *
 * <pre>
 * bar -- fuse -- 30 (relay) 87 -- plug -- motor -- plug -- ground
 * coil fuse -- 86 (coil) 85 -- driver -- ground
 * </pre>
 */
abstract class ByDriver extends Pattern {
  private final String load;

  /**
   * A motor.
   *
   * @param load its name in the table of usual loads
   */
  ByDriver(String id, String load) {
    super(id);
    this.load = load;
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", load, 30);
    ask.words("command", ask.say(id() + ".command"));
    ask.feed(Questions.HOT);
    ask.coilFeed();
    ask.metres("to-relay", 0.3);
    ask.metres("to-load", 2);
    ask.metres("to-driver", 1.5);
    ask.ground("ground");
    ask.metres("to-ground", 0.3);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    double amps = a.amps("power");
    Harness.Fused fuse = h.motorFuse(feed(h, a), amps, h.words("part.fuse"));
    Harness.Fused coil = h.coilFuse(feed(h, a.is("coil-feed", Questions.KEY)));
    String k = h.relay(h.words("part.relay"), Harness.Coil.BY_DRIVER, "relay", amps);
    h.wire(fuse, Harness.at(k, "30"), a.number("to-relay"), h.words("wire.to-relay"));
    String motor =
        h.add(
            "M",
            a.words("name"),
            new PartSpec.Motor(Estimate.of(amps), Optional.empty()),
            "load",
            h.why(a, "power"));
    String plug = h.plug(h.words("part.plug"), List.of("1", "2"), "load");
    h.wire(
        h.run(Side.SWITCHED, fuse.amps()),
        Harness.at(k, "87"),
        Harness.at(plug, "1a"),
        a.number("to-load"),
        h.words("wire.to-plug"));
    h.wire(
        h.run(Side.SWITCHED, fuse.amps()),
        Harness.at(plug, "1b"),
        Harness.at(motor, "in"),
        0.2,
        h.words("wire.to-load"));
    Run ground = h.run(Side.GROUND, fuse.amps());
    h.wire(
        ground, Harness.at(motor, "out"), Harness.at(plug, "2b"), 0.2, h.words("wire.ground-plug"));
    h.wire(
        ground,
        Harness.at(plug, "2a"),
        h.ground(a.words("ground"), "load"),
        a.number("to-ground"),
        h.words("wire.ground"));
    String driver =
        h.add(
            "U",
            h.words("part.driver"),
            new PartSpec.Driver(Optional.empty(), a.words("command")),
            "unit",
            h.words(h.negativeGround() ? "why.driver" : "why.driver-positive"));
    h.wire(coil, Harness.at(k, "86"), 0.3, h.words("wire.to-coil"));
    h.wire(
        h.run(Side.CONTROL, 0),
        Harness.at(k, "85"),
        Harness.at(driver, "out"),
        a.number("to-driver"),
        h.words("wire.to-driver"));
    h.smallGround(
        a.words("coil-ground"), 0, Harness.at(driver, "ground"), h.words("wire.driver-ground"));
    h.note(id() + ".note");
    h.circuit(
        Names.capital(a.words("name")),
        List.of(LoadRef.of(motor)),
        List.of(fuse.on(), coil.on(), Map.of(driver, "on")));
  }
}
