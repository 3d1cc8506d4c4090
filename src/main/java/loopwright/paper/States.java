package loopwright.paper;

import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
import loopwright.solver.Trail;
import loopwright.solver.Values;
import loopwright.solver.Variant;

/**
 * States of the plan in many settings, whole or with one thing lost. Each is solved as a change of
 * one of a few bases, everything at rest or only the key turned, so that thousands of them are
 * quick. Not for several threads.
 */
final class States {
  private final Vehicle vehicle;
  private final Network network;
  private final Map<String, List<String>> positions = new LinkedHashMap<>();
  private final Set<String> keys = new HashSet<>();
  private final Set<String> momentary = new HashSet<>();
  private final Map<Setting, Solver> bases = new HashMap<>();
  private final Map<Setting, OperatingPoint> whole = new HashMap<>();
  private final Function<Kept.Key, Trail> earlier;
  private final Kept kept;
  private final BooleanSupplier stale;

  /**
   * Of a network.
   *
   * @param vehicle the vehicle with its fuses as they are
   * @param network the network to solve
   * @param before what an earlier check left
   * @param stale whether nobody waits for this check any more
   */
  States(Vehicle vehicle, Network network, Optional<Kept> before, BooleanSupplier stale) {
    this.earlier = before.map(b -> b.in(network)).orElse(key -> Trail.NONE);
    this.kept = new Kept(network);
    this.stale = stale;
    this.vehicle = vehicle;
    this.network = network;
    positions.putAll(vehicle.controls());
    for (String control : positions.keySet()) {
      if (vehicle.requirePart(control).spec() instanceof PartSpec.Switch s) {
        if (s.control() == PartSpec.Control.KEY) {
          keys.add(control);
        }
        if (s.momentary()) {
          momentary.add(control);
        }
      }
    }
  }

  /**
   * The settings that are looked at: everything at rest, each circuit on, and each control moved by
   * itself, with the key at rest and in each of its other positions. A control that most circuits
   * want moved, as a battery switch, is moved for those too.
   */
  Set<Setting> settings() {
    Set<Setting> settings = new LinkedHashSet<>();
    settings.add(Setting.REST);
    vehicle.circuits().forEach(c -> settings.add(moved(c.onSetting())));
    Set<Setting> turned = new LinkedHashSet<>(List.of(Setting.REST, usual()));
    keys.forEach(k -> moves(k).forEach(p -> turned.add(usual().with(k, p))));
    settings.addAll(turned);
    for (Setting key : turned) {
      for (String control : positions.keySet()) {
        if (!keys.contains(control)) {
          moves(control).forEach(p -> settings.add(key.with(control, p)));
        }
      }
    }
    return settings;
  }

  /** The controls besides keys that two in three of all circuits want in the same position. */
  private Setting usual() {
    Map<Map.Entry<String, String>, Integer> wanted = new HashMap<>();
    vehicle
        .circuits()
        .forEach(c -> c.on().entrySet().forEach(p -> wanted.merge(p, 1, Integer::sum)));
    Setting usual = Setting.REST;
    for (Map.Entry<Map.Entry<String, String>, Integer> w : wanted.entrySet()) {
      String control = w.getKey().getKey();
      boolean most = 3 * w.getValue() >= 2 * vehicle.circuits().size();
      if (most && !keys.contains(control)) {
        usual = usual.with(control, w.getKey().getValue());
      }
    }
    return moved(usual);
  }

  private List<String> moves(String control) {
    List<String> all = positions.get(control);
    return all.subList(1, all.size());
  }

  /** The same setting, without controls that are named but stand at rest. */
  private Setting moved(Setting setting) {
    SortedMap<String, String> moved = new TreeMap<>(setting.positions());
    moved.entrySet().removeIf(e -> e.getValue().equals(rest(e.getKey())));
    return Setting.of(moved);
  }

  /** The position at rest of a control. */
  String rest(String control) {
    return positions.get(control).get(0);
  }

  /** The position of a control in a setting. */
  String position(String control, Setting setting) {
    return setting.positions().getOrDefault(control, rest(control));
  }

  /** Whether a control springs back when it is let go. */
  boolean springsBack(String control) {
    return momentary.contains(control);
  }

  /** What this check leaves to the next one. */
  Kept kept() {
    return kept;
  }

  /** The whole vehicle in a setting, no fuse blown; solved once. */
  OperatingPoint whole(Setting setting) {
    return whole.computeIfAbsent(
        setting,
        s ->
            base(s)
                .reference()
                .filter(r -> r.setting().equals(s))
                .orElseGet(() -> of(Variant.healthy(network), "", s)));
  }

  /** With one element gone. */
  OperatingPoint without(Setting setting, int element) {
    Element e = network.elements().get(element);
    return of(
        Variant.healthy(network).with(List.of(new Change.Remove(element))),
        e.part() + " " + e.role(),
        setting);
  }

  /**
   * A changed vehicle in a setting.
   *
   * @param changed what is changed, in words that no other change has
   */
  OperatingPoint of(Variant variant, String changed, Setting setting) {
    return of(variant, changed, setting, Values.typical(variant), new BitSet());
  }

  /** The whole vehicle in a setting that it comes to with these relays pulled in. */
  OperatingPoint from(Setting setting, BitSet pulledIn) {
    Variant variant = Variant.healthy(network);
    return of(variant, "", setting, Values.typical(variant), pulledIn);
  }

  /** The whole vehicle in a setting with values of its own. */
  OperatingPoint with(Values values, String changed, Setting setting) {
    return of(Variant.healthy(network), changed, setting, values, new BitSet());
  }

  private OperatingPoint of(
      Variant variant, String changed, Setting setting, Values values, BitSet pulledIn) {
    if (stale.getAsBoolean()) {
      throw new CancellationException("the plan was edited meanwhile");
    }
    Set<String> relays =
        pulledIn.stream()
            .mapToObj(coil -> network.elements().get(coil).part())
            .collect(Collectors.toSet());
    Kept.Key key = new Kept.Key(setting, changed, relays);
    OperatingPoint point =
        base(setting).solve(variant, setting, values, History.NONE, pulledIn, earlier.apply(key));
    kept.keep(key, point.trail(), point.solved());
    return point;
  }

  private Solver base(Setting setting) {
    SortedMap<String, String> turned = new TreeMap<>(setting.positions());
    turned.keySet().retainAll(keys);
    return bases.computeIfAbsent(Setting.of(turned), s -> Solver.lowRank(network, s));
  }
}
