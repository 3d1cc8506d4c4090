package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.model.PartSpec.SwitchContact;
import loopwright.model.TerminalRef;

/**
 * Turn signals with a flasher:
 *
 * <pre>
 * bar -- fuse -- 49 (flasher) 49a -- stalk --+-- splice -- left lamps -- ground
 *                                            +-- splice -- right lamps -- ground
 * </pre>
 */
final class TurnSignals extends Pattern {
  private static final List<SwitchContact> CONTACTS =
      List.of(
          new SwitchContact("49a", "L", Set.of("left")),
          new SwitchContact("49a", "R", Set.of("right")));

  TurnSignals() {
    super("flasher");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "turn-lamp", 6);
    ask.feed(Questions.KEY);
    ask.metres("to-stalk", 1);
    ask.metres("to-front", 2);
    ask.metres("to-rear", 4);
    ask.ground("front-ground");
    ask.ground("rear-ground");
    ask.metres("to-ground", 0.3);
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    double amps = 2 * a.amps("power");
    Harness.Fused fuse = h.fuse(feed(h, a), amps, h.words("part.fuse"));
    String unit = Flasher.add(h, amps);
    String stalk = Flasher.stalk(h, List.of("49a", "L", "R"), CONTACTS, amps);
    Flasher.wire(h, a, fuse, unit, stalk);
    Map<String, List<String>> bySide = new LinkedHashMap<>();
    Run front = h.run(Side.SWITCHED, fuse.amps());
    Run rear = h.run(Side.SWITCHED, fuse.amps());
    Run ground = h.run(Side.GROUND, fuse.amps());
    for (String side : List.of("left", "right")) {
      List<String> lamps = new ArrayList<>();
      TerminalRef out = Harness.at(stalk, side.equals("left") ? "L" : "R");
      for (String end : List.of("front", "rear")) {
        String lamp =
            h.lamp(
                h.words("flasher.lamp." + end + "-" + side),
                a.watts("power"),
                end + "-" + side,
                h.why(a, "power"));
        lamps.add(lamp);
        h.wire(
            end.equals("front") ? front : rear,
            out,
            Harness.at(lamp, "in"),
            a.number("to-" + end),
            h.feedOf(lamp));
        h.wire(
            ground,
            Harness.at(lamp, "out"),
            h.ground(a.words(end + "-ground"), end),
            a.number("to-ground"),
            h.groundOf(lamp));
      }
      bySide.put(side, lamps);
    }
    bySide.forEach(
        (side, lamps) ->
            h.circuit(
                h.words("flasher.circuit." + side),
                Harness.loads(lamps),
                List.of(fuse.on(), Map.of(stalk, side))));
  }
}
