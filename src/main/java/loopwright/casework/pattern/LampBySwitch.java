package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.knowledge.PatternValues;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;

/**
 * A lamp or other load behind a switch:
 *
 * <pre>
 * bar -- fuse -- switch -- (splice) -- load -- ground
 * </pre>
 */
final class LampBySwitch extends Pattern {
  private static final List<String> KINDS = List.of("lamp", "motor", "heater", "electronics");

  /** More than this is a relay's work, in amperes. Common practice. */
  private static final double MOST_AMPS = 16;

  LampBySwitch() {
    super("lamp-switch");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.choice("kind", KINDS, "lamp", "");
    ask.power("power", KINDS.contains(ask.answer("kind")) ? ask.answer("kind") : "lamp", MOST_AMPS);
    ask.count("count", 1, 4, 1);
    ask.choice(
        "switched", List.of("switch", "pedal", "none"), "switch", PatternValues.COMMON_PRACTICE);
    ask.feed(Questions.KEY);
    if (!ask.is("switched", "none")) {
      ask.metres("to-switch", 1);
    }
    ask.metres("to-load", 3);
    ask.ground("ground");
    ask.metres("to-ground", 0.3);
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    double each = a.amps("power");
    int count = (int) a.number("count");
    double amps = each * count;
    if (amps > MOST_AMPS) {
      throw new Problem(
          "count",
          a.words("count"),
          h.basis().words().say("problem.fewer", Answers.number(amps), Answers.number(MOST_AMPS)));
    }
    Feed feed = feed(h, a);
    Harness.Fused fuse =
        a.is("kind", "motor")
            ? h.motorFuse(feed, amps, h.words("part.fuse"))
            : h.fuse(feed, amps, h.words("part.fuse"));
    List<Map<String, String>> on = new ArrayList<>(List.of(fuse.on()));
    TerminalRef out = fuse.load();
    Run run = h.run(fuse.side(), fuse.amps());
    if (!a.is("switched", "none")) {
      boolean pedal = a.is("switched", "pedal");
      String s =
          h.plainSwitch(
              h.words("part.switch"),
              pedal ? PartSpec.Control.PEDAL : PartSpec.Control.MANUAL,
              pedal ? "up" : "off",
              pedal ? "pressed" : "on",
              false,
              pedal,
              amps,
              pedal ? "pedals" : "dash");
      h.wire(run, out, Harness.at(s, "in"), a.number("to-switch"), h.words("wire.to-switch"));
      out = Harness.at(s, "out");
      on.add(Map.of(s, pedal ? "pressed" : "on"));
      run = h.run(Side.SWITCHED, fuse.amps());
    }
    List<String> loads = loads(h, a, count, each);
    Branches.feed(h, run, out, loads, "in", a.number("to-load"), 0.5);
    Run ground = h.run(Side.GROUND, fuse.amps());
    for (String load : loads) {
      h.wire(
          ground,
          Harness.at(load, "out"),
          h.ground(a.words("ground"), "load"),
          a.number("to-ground"),
          h.groundOf(load));
    }
    h.circuit(Names.capital(a.words("name")), Harness.loads(loads), on);
  }

  private static List<String> loads(Harness h, Answers a, int count, double each) throws Problem {
    List<String> loads = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      String called = count == 1 ? a.words("name") : h.words("part.numbered", i);
      String source = h.why(a, "power");
      String kind = a.words("kind");
      if (kind.equals("lamp")) {
        loads.add(h.lamp(called, a.watts("power"), "load", source));
      } else if (kind.equals("motor")) {
        loads.add(
            h.add(
                "M",
                called,
                new PartSpec.Motor(Estimate.of(each), Optional.empty()),
                "load",
                source));
      } else {
        PartKind plain = kind.equals("heater") ? PartKind.HEATER : PartKind.ELECTRONICS;
        loads.add(
            h.add("E", called, new PartSpec.PlainLoad(plain, Estimate.of(each)), "load", source));
      }
    }
    return loads;
  }
}
