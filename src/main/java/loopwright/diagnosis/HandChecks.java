package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.knowledge.Provocation;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.OperatingPoint;

/**
 * The checks in which hands do something: a lamp in a fuse's place, something unplugged, a good
 * twin fitted, a joint moved, a part taken out and measured by itself. Few of each: every one costs
 * a solve of many suspects.
 */
final class HandChecks {

  /** Fuses in whose place a lamp is thought of, and settings of each. */
  private static final int MOST_FUSES = 2;

  private static final int MOST_LAMPS = 10;

  /** Loads that are taken out for one lamp. */
  private static final int MOST_LOADS = 8;

  /** Share of the belief before any reading from which a hand is laid on a part. */
  private static final double WORTH_A_HAND = 0.004;

  private static final int MOST_MOVED = 12;
  private static final int MOST_SWAPPED = 6;
  private static final int MOST_IN_HAND = 8;
  private static final int MOST_UNPLUGGED = 8;
  private static final int MOST_WOKEN = 2;

  private final Workbench bench;
  private final Vehicle vehicle;
  private final Complaint complaint;
  private final Optional<Loop> loop;
  private final Prospects prospects;
  private final Substitutions substitutions;
  private final Twins twins;

  HandChecks(Workbench bench, Complaint complaint, Optional<Loop> loop, Prospects prospects) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
    this.complaint = complaint;
    this.loop = loop;
    this.prospects = prospects;
    this.substitutions = new Substitutions(bench, Optional.of(complaint.load()));
    this.twins = new Twins(vehicle);
  }

  /** All of them. */
  List<Check> all() {
    Set<Check> checks = new LinkedHashSet<>();
    addLamps(checks);
    addUnplugged(checks);
    Set<String> likely = new LinkedHashSet<>();
    prospects.parts().entrySet().stream()
        .filter(e -> e.getValue() >= WORTH_A_HAND)
        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
        .forEach(e -> likely.add(e.getKey()));
    addSwaps(checks, likely);
    addProvoked(checks, likely);
    addInHand(checks, likely);
    return new ArrayList<>(checks);
  }

  // ---- a lamp in a fuse's place -----------------------------------------------------------------

  private void addLamps(Set<Check> checks) {
    prospects.blown().entrySet().stream()
        .filter(e -> e.getValue() >= WORTH_A_HAND)
        .map(Map.Entry::getKey)
        .filter(f -> vehicle.requirePart(f).apartMinutes().isPresent())
        .limit(MOST_FUSES)
        .forEach(fuse -> addLamps(checks, fuse));
  }

  /** With all on that can be and the loads out; then parted once more, here and there. */
  private void addLamps(Set<Check> checks, String fuse) {
    Set<String> loads = new LinkedHashSet<>();
    Setting out = loadsOut(fuse, complaint.on(), loads);
    List<Setting> settings = new ArrayList<>(List.of(out, Setting.REST));
    for (Setting elsewhere : prospects.spentIn(fuse)) {
      settings.add(loadsOut(fuse, elsewhere, new LinkedHashSet<>()));
    }
    for (String connector : connectors(loads)) {
      settings.add(out.without(connector));
    }
    for (String control : complaint.on().positions().keySet()) {
      settings.add(out.resting(control));
    }
    settings.stream()
        .distinct()
        .limit(MOST_LAMPS)
        .forEach(setting -> checks.add(Check.lampForFuse(fuse, setting)));
  }

  /** A circuit on, and whatever a healthy one would still light the lamp through taken out. */
  private Setting loadsOut(String fuse, Setting on, Set<String> loads) {
    Setting setting = on;
    for (int n = 0; n < MOST_LOADS; n++) {
      if (Brightness.dark(substitutions.lamp(bench.healthy(), fuse, setting).get(0))) {
        break;
      }
      Optional<String> glows = glowsThrough(fuse, setting);
      if (glows.isEmpty()) {
        break;
      }
      loads.add(glows.get());
      setting = setting.without(glows.get());
    }
    // The load complained of has its own path, whether or not it would light the lamp by itself.
    loads.add(complaint.load().part());
    return setting;
  }

  /** The load or relay through which most of the lamp's current flows in a healthy circuit. */
  private Optional<String> glowsThrough(String fuse, Setting setting) {
    OperatingPoint point = substitutions.lit(bench.healthy(), fuse, setting);
    OperatingPoint parted = bench.point(bench.healthy(), setting.without(fuse));
    double most = 0;
    Optional<String> found = Optional.empty();
    for (int e = 0; e < bench.network().elements().size(); e++) {
      Part part = vehicle.requirePart(bench.network().elements().get(e).part());
      boolean takes = part.kind().isLoad() || part.kind() == PartKind.RELAY;
      // Only what goes out with the lamp hangs on it.
      double amps = Math.abs(point.amps(e)) - Math.abs(parted.amps(e));
      if (takes && amps > most) {
        most = amps;
        found = Optional.of(part.id());
      }
    }
    return found;
  }

  /** Connectors on the way to these loads, and any other that hangs on the same wires. */
  private List<String> connectors(Set<String> loads) {
    Set<String> found = new LinkedHashSet<>();
    for (String load : loads) {
      for (LoadRef ref : refs(load)) {
        Loop.trace(bench, complaint.on(), bench.loadElement(ref))
            .ifPresent(l -> l.pieces().forEach(p -> found.add(p.part())));
      }
    }
    Set<String> parts = new LinkedHashSet<>();
    prospects
        .parts()
        .forEach(
            (part, share) -> {
              if (share >= WORTH_A_HAND) {
                parts.add(part);
              }
            });
    Stream<Part> likely =
        vehicle.parts().stream()
            .filter(p -> found.contains(p.id()) || near(p, parts))
            .filter(p -> p.kind() == PartKind.CONNECTOR && p.apartMinutes().isPresent());
    return likely.map(Part::id).toList();
  }

  /** Whether a wire that may have failed ends on this part. */
  private boolean near(Part part, Set<String> suspects) {
    return suspects.stream()
        .map(vehicle::requirePart)
        .anyMatch(
            s ->
                s.spec() instanceof PartSpec.Wire w
                    && (w.from().part().equals(part.id()) || w.to().part().equals(part.id())));
  }

  private List<LoadRef> refs(String part) {
    return vehicle.circuits().stream()
        .flatMap(c -> c.loads().stream())
        .filter(l -> l.part().equals(part))
        .distinct()
        .toList();
  }

  // ---- something unplugged ----------------------------------------------------------------------

  private void addUnplugged(Set<Check> checks) {
    switch (complaint.kind()) {
      case STUCK_ON -> {
        // What keeps a load on is found by taking the loop apart while it is on.
        for (String part : pulled(loop)) {
          checks.add(
              Check.unplugAndLook(
                  complaint.load().toString(), bench.shows(complaint).without(part)));
        }
      }
      case WAKES_OTHER ->
          prospects.woken(complaint).keySet().stream()
              .limit(MOST_WOKEN)
              .forEach(woken -> addWoken(checks, woken));
      case DRAINS_BATTERY -> {
        String battery = vehicle.battery().id();
        List<Setting> settings = new ArrayList<>(List.of(Setting.REST));
        prospects.drained().keySet().stream()
            .filter(f -> vehicle.requirePart(f).apartMinutes().isPresent())
            .limit(MOST_UNPLUGGED)
            .forEach(f -> settings.add(Setting.REST.without(f)));
        for (Setting setting : settings) {
          checks.add(Check.drain(vehicle.groundedPost(), setting));
          checks.add(Check.unplugAndLook(battery, setting));
        }
        // The charge wire has no fuse to pull: it comes off the alternator itself.
        prospects.parts().keySet().stream()
            .map(vehicle::requirePart)
            .filter(p -> Hazards.alternator(p) && p.apartMinutes().isPresent())
            .forEach(
                p -> checks.add(Check.drain(vehicle.groundedPost(), Setting.REST.without(p.id()))));
      }
      default -> {}
    }
  }

  private void addWoken(Set<Check> checks, LoadRef woken) {
    checks.add(Check.look(woken.toString(), complaint.on()));
    Set<String> parts = new LinkedHashSet<>(List.of(complaint.load().part()));
    parts.addAll(pulled(loop));
    parts.addAll(pulled(Loop.trace(bench, bench.onSetting(woken), bench.loadElement(woken))));
    parts.remove(woken.part());
    parts.stream()
        .filter(p -> vehicle.requirePart(p).apartMinutes().isPresent())
        .limit(MOST_UNPLUGGED)
        .forEach(p -> checks.add(Check.unplugAndLook(woken.toString(), complaint.on().without(p))));
  }

  /** Parts of a loop and its branches that are pulled or unplugged by hand. */
  private List<String> pulled(Optional<Loop> from) {
    Set<String> parts = new LinkedHashSet<>();
    from.ifPresent(
        l ->
            l.all()
                .forEach(
                    x ->
                        x.pieces().stream()
                            .map(p -> vehicle.requirePart(p.part()))
                            .filter(HandChecks::comesApart)
                            .forEach(p -> parts.add(p.id()))));
    return new ArrayList<>(parts);
  }

  private static boolean comesApart(Part part) {
    return part.kind() == PartKind.CONNECTOR
        || part.kind() == PartKind.FUSE
        || part.kind() == PartKind.RELAY;
  }

  // ---- a twin, a hand, a part by itself
  // ----------------------------------------------------------

  private void addSwaps(Set<Check> checks, Set<String> likely) {
    if (complaint.kind() == ComplaintKind.DRAINS_BATTERY
        || complaint.kind() == ComplaintKind.WAKES_OTHER) {
      return;
    }
    Set<String> first = new LinkedHashSet<>();
    if (complaint.kind() == ComplaintKind.BLOWS_FUSE) {
      prospects.blown().keySet().stream().limit(1).forEach(first::add);
    }
    first.addAll(likely);
    first.stream()
        .map(vehicle::requirePart)
        .filter(twins::swaps)
        .limit(MOST_SWAPPED)
        .forEach(p -> checks.add(Check.swap(p.id(), bench.shows(complaint))));
  }

  private void addProvoked(Set<Check> checks, Set<String> likely) {
    if (complaint.kind() != ComplaintKind.WORKS_SOMETIMES) {
      return;
    }
    likely.stream()
        .filter(p -> mayShow(p, Provocation.MOVED))
        .limit(MOST_MOVED)
        .forEach(p -> checks.add(Check.wiggle(p, complaint.on())));
    likely.stream()
        .filter(p -> mayShow(p, Provocation.WARM))
        .limit(MOST_MOVED)
        .forEach(p -> checks.add(Check.warm(p, complaint.on())));
    checks.add(Check.load(complaint.load().toString(), complaint.on()));
  }

  private boolean mayShow(String part, Provocation way) {
    return bench.knowledge().faults(vehicle.requirePart(part).kind()).stream()
        .anyMatch(m -> m.shows(way) > 0);
  }

  private void addInHand(Set<Check> checks, Set<String> likely) {
    likely.stream()
        .map(vehicle::requirePart)
        .filter(p -> p.kind().comesOutWhole() && p.apartMinutes().isPresent())
        .limit(MOST_IN_HAND)
        .forEach(p -> addInHand(checks, p));
  }

  private void addInHand(Set<Check> checks, Part part) {
    Setting out = Setting.REST.without(part.id());
    // The second for when the battery is off anyway, or has to be.
    for (Setting setting : List.of(out, out.without(vehicle.battery().id()))) {
      addInHand(checks, part, setting);
    }
  }

  private void addInHand(Set<Check> checks, Part part, Setting out) {
    for (String[] ends : ends(part)) {
      TerminalRef red = new TerminalRef(part.id(), ends[0]);
      TerminalRef black = new TerminalRef(part.id(), ends[1]);
      if (bench.network().requireNode(red) == bench.network().requireNode(black)) {
        continue;
      }
      if (part.kind() != PartKind.DIODE && part.kind() != PartKind.LED) {
        checks.add(Check.measure(CheckKind.OHMS, red, black, out));
      }
      if (junction(part, ends[0])) {
        checks.add(Check.measure(CheckKind.DIODE, red, black, out));
        checks.add(Check.measure(CheckKind.DIODE, black, red, out));
      }
    }
  }

  private static boolean junction(Part part, String end) {
    return part.kind() == PartKind.DIODE
        || part.kind() == PartKind.LED
        || (part.spec() instanceof PartSpec.Relay r
            && end.equals("86")
            && (r.suppression() == PartSpec.Suppression.DIODE_CATHODE_85
                || r.suppression() == PartSpec.Suppression.DIODE_CATHODE_86));
  }

  /** Pairs of a part's own contacts between which something is to be read. */
  private static List<String[]> ends(Part part) {
    if (part.spec() instanceof PartSpec.Relay) {
      return List.<String[]>of(new String[] {"86", "85"});
    }
    if (part.spec() instanceof PartSpec.DualLamp d) {
      return List.of(new String[] {d.first(), "common"}, new String[] {d.second(), "common"});
    }
    if (part.spec() instanceof PartSpec.Diode) {
      return List.<String[]>of(new String[] {"anode", "cathode"});
    }
    List<String> terminals = part.spec().terminals();
    return terminals.size() == 2
        ? List.<String[]>of(new String[] {terminals.get(0), terminals.get(1)})
        : List.of();
  }
}
