package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.model.Estimate;
import loopwright.model.LoadRef;
import loopwright.model.PartSpec;

/**
 * One or two headlamps with a light switch and a dip switch, by relays or straight:
 *
 * <pre>
 * coil fuse -- light switch -- dip switch --+-- 86 (dip relay) 85 -- ground
 *                                           +-- 86 (main relay) 85 -- ground
 * bar -- dip fuse -- 30 (dip relay) 87 -- splice -- dip filaments -- ground
 * bar -- main fuse -- 30 (main relay) 87 -- splice -- main filaments -- ground
 * </pre>
 */
final class HeadAndDip extends Pattern {
  HeadAndDip() {
    super("headlamps");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    ask.count("count", 1, 2, 2);
    ask.power("dip-power", "dip-lamp", 15);
    ask.power("main-power", "main-lamp", 15);
    ask.yes("relays", true);
    ask.feed(Questions.HOT);
    ask.yes("tell-tale", true);
    ask.metres("to-switch", 1);
    ask.metres("to-dip-switch", 1);
    if (!ask.is("relays", Questions.NO)) {
      ask.metres("to-relay", 0.3);
    }
    ask.metres("to-load", 2);
    ask.ground("ground");
    ask.metres("to-ground", 0.4);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    boolean relays = a.is("relays", Questions.YES);
    double count = a.number("count");
    double dip = count * a.amps("dip-power");
    double main = count * a.amps("main-power");
    List<String> lamps =
        count == 1
            ? List.of(lamp(h, a, a.words("name"), "front"))
            : List.of(
                lamp(h, a, h.words("part.left"), "front-left"),
                lamp(h, a, h.words("part.right"), "front-right"));
    Existing.Feed feed = feed(h, a);
    Harness.Fused first =
        relays ? h.coilFuse(feed) : h.fuse(feed, Math.max(dip, main), h.words("part.fuse"));
    double switched = relays ? h.coilAmps() : Math.max(dip, main);
    String light =
        h.plainSwitch(
            h.words("headlamps.light-switch"),
            PartSpec.Control.MANUAL,
            "off",
            "head",
            false,
            false,
            switched,
            "dash");
    String dipper = dipSwitch(h, switched);
    h.wire(first, Harness.at(light, "in"), a.number("to-switch"), h.words("wire.to-switch"));
    Side control = relays ? Side.CONTROL : Side.SWITCHED;
    h.wire(
        h.run(control, first.amps()),
        Harness.at(light, "out"),
        Harness.at(dipper, "in"),
        a.number("to-dip-switch"),
        h.words("headlamps.wire.to-dip-switch"));
    Run ground = h.run(Side.GROUND, h.rating(Math.max(dip, main)));
    if (relays) {
      beam(h, a, feed, first, dipper, "dip", lamps, dip);
      beam(h, a, feed, first, dipper, "main", lamps, main);
    } else {
      for (String beam : List.of("dip", "main")) {
        Run run = h.run(Side.SWITCHED, first.amps());
        Branches.feed(h, run, Harness.at(dipper, beam), lamps, beam, a.number("to-load"), 0.5);
      }
    }
    for (String lamp : lamps) {
      h.wire(
          ground,
          Harness.at(lamp, "common"),
          h.ground(a.words("ground"), lamp.equals(lamps.get(0)) ? "front-left" : "front-right"),
          a.number("to-ground"),
          h.groundOf(lamp));
    }
    Map<String, String> head = Map.of(light, "head");
    circuit(h, "dip", lamps, List.of(first.on(), head, Map.of(dipper, "dip")));
    circuit(h, "main", lamps, List.of(first.on(), head, Map.of(dipper, "main")));
    if (a.is("tell-tale", Questions.YES)) {
      String tell = tellTale(h, a, first, dipper);
      h.circuit(
          h.words("headlamps.circuit.tell-tale"),
          List.of(LoadRef.of(tell)),
          List.of(first.on(), head, Map.of(dipper, "main")));
    }
  }

  private static void circuit(
      Harness h, String beam, List<String> lamps, List<Map<String, String>> on) {
    List<LoadRef> loads = new ArrayList<>();
    lamps.forEach(l -> loads.add(new LoadRef(l, Optional.of(beam))));
    h.circuit(h.words("headlamps.circuit." + beam), loads, on);
  }

  private static String lamp(Harness h, Answers a, String called, String where) throws Problem {
    return h.add(
        "L",
        called,
        new PartSpec.DualLamp(
            "dip",
            Estimate.of(a.watts("dip-power")),
            "main",
            Estimate.of(a.watts("main-power")),
            Optional.empty()),
        where,
        h.why(a, "dip-power") + " " + h.why(a, "main-power"));
  }

  private static String dipSwitch(Harness h, double amps) {
    double rating = h.contact(amps);
    return h.add(
        "S",
        h.words("headlamps.dip-switch"),
        new PartSpec.Switch(
            List.of("in", "dip", "main"),
            List.of("dip", "main"),
            List.of(
                new PartSpec.SwitchContact("in", "dip", Set.of("dip")),
                new PartSpec.SwitchContact("in", "main", Set.of("main"))),
            PartSpec.Control.MANUAL,
            false,
            Harness.contactOhms(rating),
            Optional.of(rating)),
        "dip-switch",
        h.whyContact(amps));
  }

  private static void beam(
      Harness h,
      Answers a,
      Existing.Feed feed,
      Harness.Fused coil,
      String dipper,
      String beam,
      List<String> lamps,
      double amps)
      throws Problem {
    Harness.Fused fuse = h.fuse(feed, amps, h.words("headlamps.fuse." + beam));
    String k = h.relay(h.words("headlamps.relay." + beam), Harness.Coil.BY_SWITCH, "relay", amps);
    h.wire(fuse, Harness.at(k, "30"), a.number("to-relay"), h.words("wire.to-relay"));
    h.wire(
        h.run(Side.CONTROL, coil.amps()),
        Harness.at(dipper, beam),
        Harness.at(k, "86"),
        a.number("to-dip-switch"),
        h.words("wire.to-coil"));
    Coils.grounded(h, a, coil.amps(), k);
    Run run = h.run(Side.SWITCHED, fuse.amps());
    Branches.feed(h, run, Harness.at(k, "87"), lamps, beam, a.number("to-load"), 0.5);
  }

  private static String tellTale(Harness h, Answers a, Harness.Fused fuse, String dipper)
      throws Problem {
    String tell = h.tellTale(h.words("headlamps.tell-tale"));
    h.wire(
        h.run(Side.CONTROL, fuse.amps()),
        Harness.at(dipper, "main"),
        Harness.at(tell, "in"),
        a.number("to-dip-switch"),
        h.words("wire.to-tell-tale"));
    h.smallGround(
        a.words("coil-ground"),
        fuse.amps(),
        Harness.at(tell, "out"),
        h.words("wire.tell-tale-ground"));
    return tell;
  }
}
