package loopwright.paper;

import java.util.ArrayList;
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
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Gate;
import loopwright.solver.History;
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
  private final Plan plan;
  private final Map<String, List<String>> positions = new LinkedHashMap<>();
  private final Set<String> keys = new HashSet<>();
  private final Set<String> momentary = new HashSet<>();
  private final Map<Setting, Solver> bases = new HashMap<>();

  States(Plan plan) {
    this.plan = plan;
    positions.putAll(plan.vehicle().controls());
    for (String control : positions.keySet()) {
      if (plan.part(control).spec() instanceof PartSpec.Switch s) {
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
    plan.vehicle().circuits().forEach(c -> settings.add(moved(c.onSetting())));
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
    plan.vehicle()
        .circuits()
        .forEach(c -> c.on().entrySet().forEach(p -> wanted.merge(p, 1, Integer::sum)));
    Setting usual = Setting.REST;
    for (Map.Entry<Map.Entry<String, String>, Integer> w : wanted.entrySet()) {
      String control = w.getKey().getKey();
      boolean most = 3 * w.getValue() >= 2 * plan.vehicle().circuits().size();
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

  /** The whole vehicle in a setting. */
  OperatingPoint whole(Setting setting) {
    return base(setting).solve(variant(setting), onlyKeys(setting));
  }

  /** With one element gone. */
  OperatingPoint without(Setting setting, int element) {
    Variant variant = variant(setting).with(List.of(new Change.Remove(element)));
    return base(setting).solve(variant, onlyKeys(setting));
  }

  /** The whole vehicle in a setting that it comes to with these relays pulled in. */
  OperatingPoint from(Setting setting, BitSet pulledIn) {
    Variant variant = variant(setting);
    return base(setting)
        .solve(variant, onlyKeys(setting), Values.typical(variant), History.NONE, pulledIn);
  }

  private Solver base(Setting setting) {
    return bases.computeIfAbsent(onlyKeys(setting), s -> Solver.lowRank(plan.network(), s));
  }

  private Setting onlyKeys(Setting setting) {
    SortedMap<String, String> turned = new TreeMap<>(setting.positions());
    turned.keySet().retainAll(keys);
    return Setting.of(turned);
  }

  /** The network with the contacts of all controls but keys stuck as the setting has them. */
  private Variant variant(Setting setting) {
    List<Change> changes = new ArrayList<>();
    setting
        .positions()
        .forEach(
            (control, position) -> {
              if (!keys.contains(control)) {
                changes.addAll(moved(control, position));
              }
            });
    return Variant.healthy(plan.network()).with(changes);
  }

  private List<Change> moved(String control, String position) {
    List<Change> changes = new ArrayList<>();
    for (int e : plan.network().elementsOf(control)) {
      Element.Contact c = (Element.Contact) plan.network().elements().get(e);
      boolean closed = ((Gate.Position) c.gate()).closedIn().contains(position);
      if (closed != ((Gate.Position) c.gate()).closedIn().contains(rest(control))) {
        Gate stuck = new Gate.Fixed(closed ? Gate.Rest.CLOSED : Gate.Rest.OPEN);
        changes.add(
            new Change.Replace(
                e, new Element.Contact(c.part(), c.role(), c.a(), c.b(), c.ohms(), stuck)));
      }
    }
    return changes;
  }
}
