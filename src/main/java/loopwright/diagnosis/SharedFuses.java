package loopwright.diagnosis;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.model.Circuit;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.Network;

/**
 * What hangs on the fuses of the loop complained of besides that loop. A short there may do nothing
 * while the circuit complained of is on, and have spent the fuse for both at another time: behind
 * the resting contact of a changeover, or behind another switch.
 */
final class SharedFuses {

  private final Workbench bench;
  private final Complaint complaint;

  /** Ids of the fuses on the loop. */
  private final Set<String> fuses = new TreeSet<>();

  /** Nodes behind them, up to the next fuse and to the loads. */
  private final BitSet behind = new BitSet();

  /** Settings of other circuits behind the fuses. */
  private final List<Setting> mates;

  /** The same for what a short from there may lead to, by node. */
  private final Kept<Integer, List<Setting>> led = Kept.byEquals();

  /** Finds them; none for a complaint that a fuse spent at another time can't make. */
  SharedFuses(Workbench bench, Complaint complaint, Optional<Loop> loop) {
    this.bench = bench;
    this.complaint = complaint;
    // What blew when another circuit was on leaves a load dead, or dim where it is fed twice.
    if (complaint.kind() == ComplaintKind.DEAD || complaint.kind() == ComplaintKind.DIM) {
      loop.stream().flatMap(l -> l.all().stream()).forEach(this::follow);
    }
    this.mates = settings(behind);
  }

  private void follow(Loop loop) {
    for (Loop.Piece piece : loop.pieces()) {
      if (bench.vehicle().requirePart(piece.part()).kind() == PartKind.FUSE) {
        fuses.add(piece.part());
        spread(piece.out(), behind);
      }
    }
  }

  /** Goes on from a node through all that lets current pass, however switches stand. */
  private void spread(int from, BitSet area) {
    Deque<Integer> open = new ArrayDeque<>(List.of(from));
    while (!open.isEmpty()) {
      int node = open.pop();
      if (node == Network.REFERENCE || area.get(node)) {
        continue;
      }
      area.set(node);
      for (Element e : bench.network().elements()) {
        if (passes(e) && e.a() == node) {
          open.push(e.b());
        } else if (passes(e) && e.b() == node) {
          open.push(e.a());
        }
      }
    }
  }

  /** Whether current passes: through all but loads, diodes and fuses. */
  private static boolean passes(Element element) {
    return element instanceof Element.Contact
        || element instanceof Element.Resistor r && Workbench.IN_THE_WAY.test(r.role());
  }

  private static boolean touches(Element element, BitSet area) {
    return element.a() != Network.REFERENCE && area.get(element.a())
        || element.b() != Network.REFERENCE && area.get(element.b());
  }

  /**
   * Settings of circuits that feed or switch something in an area. Those that only differ in what
   * lies elsewhere stand for each other, and none is that of the complaint.
   */
  private List<Setting> settings(BitSet area) {
    if (area.isEmpty()) {
      return List.of();
    }
    Set<String> controls = new HashSet<>();
    for (Element e : bench.network().elements()) {
      if (e instanceof Element.Contact && touches(e, area)) {
        controls.add(e.part());
      }
    }
    Map<Map<String, String>, Setting> switched = new LinkedHashMap<>();
    switched.put(only(controls, complaint.on()), complaint.on());
    Set<Setting> all = new LinkedHashSet<>();
    for (Circuit circuit : bench.vehicle().circuits()) {
      Setting on = circuit.onSetting();
      boolean feeds =
          circuit.loads().stream()
              .anyMatch(l -> touches(bench.network().elements().get(bench.loadElement(l)), area));
      if (feeds) {
        all.add(on);
      } else {
        switched.putIfAbsent(only(controls, on), on);
      }
    }
    all.addAll(switched.values());
    all.removeIf(on -> on.positions().equals(complaint.on().positions()));
    return List.copyOf(all);
  }

  private static Map<String, String> only(Set<String> controls, Setting setting) {
    Map<String, String> positions = new LinkedHashMap<>(setting.positions());
    positions.keySet().retainAll(controls);
    return positions;
  }

  /** Whether nothing hangs behind a fuse of the loop, or the complaint can't come from one. */
  boolean none() {
    return behind.isEmpty();
  }

  /** Settings of other circuits in which what a failure puts in behind the fuses is live. */
  List<Setting> live(List<Change> changes) {
    Set<Setting> all = new LinkedHashSet<>();
    for (Change change : changes) {
      Element put =
          change instanceof Change.Add a
              ? a.element()
              : change instanceof Change.Replace r ? r.by() : null;
      if (put != null && touches(put, behind)) {
        all.addAll(mates);
        all.addAll(led(put.a()));
        all.addAll(led(put.b()));
      }
    }
    all.removeIf(on -> bench.point(bench.healthy(), on).idle(changes));
    return new ArrayList<>(all);
  }

  private List<Setting> led(int node) {
    if (node == Network.REFERENCE || behind.get(node)) {
      return List.of();
    }
    return led.get(
        node,
        n -> {
          BitSet area = new BitSet();
          spread(n, area);
          return settings(area);
        });
  }

  /** Whether a hypothesis may have spent one of the fuses. */
  boolean spends(Hypothesis h) {
    return fuses.stream().anyMatch(fuse -> bench.blown(h.history(), fuse))
        || fuses.stream().anyMatch(fuse -> bench.mayHaveBlown(h, fuse));
  }
}
