package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loopwright.casework.Problem;
import loopwright.model.PartSpec;

/**
 * Lamps behind a relay:
 *
 * <pre>
 * bar -- fuse -- 30 (relay) 87 -- (splice) -- lamp -- ground
 * coil fuse -- switch -- 86 (coil) 85 -- ground
 * </pre>
 */
final class LampByRelay extends Pattern {
  LampByRelay() {
    super("lamp-relay");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "lamp", 20);
    ask.count("count", 1, 4, 2);
    ask.feed(Questions.HOT);
    ask.coilFeed();
    ask.metres("to-relay", 0.3);
    ask.metres("to-switch", 1);
    ask.metres("to-load", 3);
    ask.ground("ground");
    ask.metres("to-ground", 0.3);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    int count = (int) a.number("count");
    double amps = a.amps("power") * count;
    Harness.Fused fuse = h.fuse(feed(h, a), amps, h.words("part.fuse"));
    Harness.Fused coil = h.coilFuse(feed(h, a.is("coil-feed", Questions.KEY)));
    String k = h.relay(h.words("part.relay"), Harness.Coil.BY_SWITCH, "relay", amps);
    h.wire(fuse, Harness.at(k, "30"), a.number("to-relay"), h.words("wire.to-relay"));
    List<String> lamps = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      lamps.add(
          h.lamp(
              count == 1 ? a.words("name") : h.words("part.numbered", i),
              a.watts("power"),
              "load",
              h.why(a, "power")));
    }
    Run run = h.run(Side.SWITCHED, fuse.amps());
    Branches.feed(h, run, Harness.at(k, "87"), lamps, "in", a.number("to-load"), 0.5);
    Run ground = h.run(Side.GROUND, fuse.amps());
    for (String lamp : lamps) {
      h.wire(
          ground,
          Harness.at(lamp, "out"),
          h.ground(a.words("ground"), "load"),
          a.number("to-ground"),
          h.groundOf(lamp));
    }
    String s =
        h.plainSwitch(
            h.words("part.switch"),
            PartSpec.Control.MANUAL,
            "off",
            "on",
            false,
            false,
            h.coilAmps(),
            "dash");
    Coils.bySwitch(h, a, coil, s, k);
    h.circuit(
        Names.capital(a.words("name")),
        Harness.loads(lamps),
        List.of(fuse.on(), coil.on(), Map.of(s, "on")));
  }
}
