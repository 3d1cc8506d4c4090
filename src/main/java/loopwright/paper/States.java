package loopwright.paper;

import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.solver.Change;
import loopwright.solver.History;
import loopwright.solver.Network;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Solver;
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

  /**
   * Of a network.
   *
   * @param vehicle the vehicle with its fuses as they are
   * @param network the network to solve
   */
  States(Vehicle vehicle, Network network) {
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

  /** The whole vehicle in a setting, no fuse blown; solved once. */
  OperatingPoint whole(Setting setting) {
    return whole.computeIfAbsent(setting, s -> of(Variant.healthy(network), s));
  }

  /** With one element gone. */
  OperatingPoint without(Setting setting, int element) {
    return of(Variant.healthy(network).with(List.of(new Change.Remove(element))), setting);
  }

  /** A changed vehicle in a setting. */
  OperatingPoint of(Variant variant, Setting setting) {
    return of(variant, setting, Values.typical(variant));
  }

  /** A changed vehicle in a setting, with values of its own. */
  OperatingPoint of(Variant variant, Setting setting, Values values) {
    return base(setting).solve(variant, setting, values, History.NONE);
  }

  /** The whole vehicle in a setting that it comes to with these relays pulled in. */
  OperatingPoint from(Setting setting, BitSet pulledIn) {
    Variant variant = Variant.healthy(network);
    return base(setting).solve(variant, setting, Values.typical(variant), History.NONE, pulledIn);
  }

  private Solver base(Setting setting) {
    SortedMap<String, String> turned = new TreeMap<>(setting.positions());
    turned.keySet().retainAll(keys);
    return bases.computeIfAbsent(Setting.of(turned), s -> Solver.lowRank(network, s));
  }
}
