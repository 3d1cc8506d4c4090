package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.model.PartSpec;
import loopwright.model.PartSpec.SwitchContact;

/**
 * Rear lamps that brake and flash with one filament. The stalk takes the brake feed off the side
 * that flashes:
 *
 * <pre>
 * brake fuse -- brake switch -- stop (stalk) --+-- LR -- plug -- left rear lamp -- plug -- ground
 *                                              +-- RR -- plug -- right rear lamp -- plug -- ground
 * turn fuse -- 49 (flasher) 49a -- 49a (stalk), to LR and LF, or to RR and RF
 *                                              LF -- left front lamp -- ground
 *                                              RF -- right front lamp -- ground
 * </pre>
 */
final class BrakeThroughStalk extends Pattern {
  private static final List<SwitchContact> CONTACTS =
      List.of(
          new SwitchContact("stop", "LR", Set.of("middle", "right")),
          new SwitchContact("stop", "RR", Set.of("middle", "left")),
          new SwitchContact("49a", "LR", Set.of("left")),
          new SwitchContact("49a", "LF", Set.of("left")),
          new SwitchContact("49a", "RR", Set.of("right")),
          new SwitchContact("49a", "RF", Set.of("right")));

  BrakeThroughStalk() {
    super("brake-turn");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.power("power", "stop-lamp", 6);
    ask.feed(Questions.HOT);
    ask.metres("to-switch", 1);
    ask.metres("to-stalk", 1);
    ask.metres("to-rear", 4);
    ask.metres("to-front", 2);
    ask.ground("rear-ground");
    ask.ground("front-ground");
    ask.metres("to-ground", 0.3);
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    double amps = 2 * a.amps("power");
    Harness.Fused brake = h.fuse(feed(h, a), amps, h.words("brake-turn.brake-fuse"));
    Harness.Fused turn = h.fuse(feed(h, true), amps, h.words("brake-turn.turn-fuse"));
    String pedal =
        h.plainSwitch(
            h.words("brake-turn.brake-switch"),
            PartSpec.Control.PEDAL,
            "up",
            "pressed",
            false,
            true,
            amps,
            "pedals");
    String unit = Flasher.add(h, amps);
    String stalk = Flasher.stalk(h, List.of("stop", "49a", "LR", "RR", "LF", "RF"), CONTACTS, amps);
    h.wire(
        brake,
        Harness.at(pedal, "in"),
        a.number("to-switch"),
        h.words("brake-turn.wire.to-switch"));
    h.wire(
        h.run(Side.SWITCHED, brake.amps()),
        Harness.at(pedal, "out"),
        Harness.at(stalk, "stop"),
        a.number("to-stalk"),
        h.words("wire.to-stalk"));
    Flasher.wire(h, a, turn, unit, stalk);
    Lamps lamps = lamps(h, a, stalk, Math.max(brake.amps(), turn.amps()));
    h.note("brake-turn.note");
    h.circuit(
        Names.capital(a.words("name")),
        Harness.loads(List.of(lamps.leftRear(), lamps.rightRear())),
        List.of(brake.on(), Map.of(pedal, "pressed")));
    h.circuit(
        h.basis().words().say("brake-turn.circuit.left"),
        Harness.loads(List.of(lamps.leftRear(), lamps.leftFront())),
        List.of(turn.on(), Map.of(stalk, "left")));
    h.circuit(
        h.basis().words().say("brake-turn.circuit.right"),
        Harness.loads(List.of(lamps.rightRear(), lamps.rightFront())),
        List.of(turn.on(), Map.of(stalk, "right")));
  }

  private record Lamps(String leftRear, String rightRear, String leftFront, String rightFront) {}

  private static Lamps lamps(Harness h, Answers a, String stalk, double fuse) throws Problem {
    Run rear = h.run(Side.SWITCHED, fuse);
    Run front = h.run(Side.SWITCHED, fuse);
    Run ground = h.run(Side.GROUND, fuse);
    String plug = h.plug(h.basis().words().say("brake-turn.plug"), List.of("1", "2", "3"), "rear");
    String[] ids = new String[4];
    int n = 0;
    for (String end : List.of("rear", "front")) {
      for (String side : List.of("left", "right")) {
        String lamp =
            h.lamp(
                h.basis().words().say("brake-turn.lamp." + end + "-" + side),
                a.watts("power"),
                end + "-" + side,
                h.why(a, "power"));
        String out = (side.equals("left") ? "L" : "R") + (end.equals("rear") ? "R" : "F");
        if (end.equals("rear")) {
          String cavity = side.equals("left") ? "1" : "2";
          h.wire(
              rear,
              Harness.at(stalk, out),
              Harness.at(plug, cavity + "a"),
              a.number("to-rear"),
              h.words("wire.to-plug"));
          h.wire(rear, Harness.at(plug, cavity + "b"), Harness.at(lamp, "in"), 0.5, h.feedOf(lamp));
          h.wire(ground, Harness.at(lamp, "out"), Harness.at(plug, "3b"), 0.5, h.groundOf(lamp));
        } else {
          h.wire(
              front,
              Harness.at(stalk, out),
              Harness.at(lamp, "in"),
              a.number("to-front"),
              h.feedOf(lamp));
          h.wire(
              ground,
              Harness.at(lamp, "out"),
              h.ground(a.words("front-ground"), "front"),
              a.number("to-ground"),
              h.groundOf(lamp));
        }
        ids[n++] = lamp;
      }
    }
    h.wire(
        ground,
        Harness.at(plug, "3a"),
        h.ground(a.words("rear-ground"), "rear"),
        a.number("to-ground"),
        h.words("wire.ground"));
    return new Lamps(ids[0], ids[1], ids[2], ids[3]);
  }
}
