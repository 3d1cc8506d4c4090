package loopwright.evidence.generated;

import static loopwright.evidence.generated.Draft.at;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Vehicles of any size: one fuse block of several bars, and behind it as many lamp and relay
 * circuits as it takes. Every fourth circuit has a relay.
 */
public final class Fleet {
  private static final int PLACES = 12;

  private final Draft d = new Draft(12, GroundedPole.NEGATIVE, new Random(4_711));
  private final List<TerminalRef> free = new ArrayList<>();
  private TerminalRef feed;
  private int bars;
  private int parts = 4;

  private Fleet() {}

  /** A vehicle of about so many parts, at least 30. */
  public static Vehicle vehicle(int parts) {
    return new Fleet().build(parts);
  }

  private Vehicle build(int wanted) {
    feed = d.mains();
    int circuits = 0;
    while (parts < wanted || !free.isEmpty()) {
      if (free.isEmpty()) {
        bar(wanted - parts);
      }
      if (circuits % 4 == 3 && free.size() > 1) {
        relay(circuits++);
      } else {
        lamp(circuits++);
      }
    }
    return d.vehicle("fleet-" + wanted, "Vehicle of about " + wanted + " parts");
  }

  private void bar(int left) {
    int places = Math.max(1, Math.min(PLACES, left / 5));
    List<String> legs = new ArrayList<>(List.of("in", "on"));
    for (int n = 1; n <= places; n++) {
      legs.add("p" + n);
    }
    boolean last = left / 5 <= PLACES;
    if (last) {
      legs.remove("on");
    }
    String bar =
        d.part("BAR", "bar " + ++bars, new PartSpec.Splice(legs, Optional.empty()), d.spot());
    d.wire(feed, at(bar, "in"), 60, "bar feed " + bars, "");
    if (!last) {
      feed = at(bar, "on");
    }
    for (int n = 1; n <= places; n++) {
      free.add(at(bar, "p" + n));
    }
    parts += 2;
  }

  private String toggle(int n) {
    return d.part("S", "switch " + n, PartSpec.Switch.onOff(Optional.empty()), d.spot());
  }

  private TerminalRef fused(String name, double amps) {
    String fuse = d.fuse(name, amps, d.spot());
    d.join(free.remove(0), at(fuse, "feed"));
    return at(fuse, "load");
  }

  private void lamp(int n) {
    String s = toggle(n);
    String l =
        d.part("L", "lamp " + n, new PartSpec.Lamp(Optional.empty(), Estimate.of(10)), d.spot());
    d.wire(fused("fuse " + n, 1), at(s, "in"), 1, "feed " + n, "");
    d.wire(at(s, "out"), at(l, "in"), 1, "lamp wire " + n, "");
    d.join(at(l, "out"), at("BODY", "metal"));
    d.circuit("c" + n, "Lamp " + n, List.of(l), Map.of(s, "on"));
    parts += 5;
  }

  private void relay(int n) {
    String s = toggle(n);
    String l =
        d.part("L", "lamp " + n, new PartSpec.Lamp(Optional.empty(), Estimate.of(55)), d.spot());
    String k =
        d.part(
            "K",
            "relay " + n,
            new PartSpec.Relay(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                PartSpec.Suppression.NONE,
                Optional.empty()),
            d.spot());
    d.wire(fused("fuse " + n, 5), at(k, "30"), 5, "relay feed " + n, "");
    d.wire(fused("control fuse " + n, 1), at(s, "in"), 1, "switch feed " + n, "");
    d.wire(at(s, "out"), at(k, "86"), 1, "coil wire " + n, "");
    d.wire(at(k, "87"), at(l, "in"), 5, "lamp wire " + n, "");
    d.join(at(l, "out"), at(k, "85"), at("BODY", "metal"));
    d.circuit("c" + n, "Lamp " + n, List.of(l), Map.of(s, "on"));
    parts += 9;
  }
}
