package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import loopwright.casework.Problem;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.CircuitWays.Pass;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Edits of a whole circuit. */
public final class CircuitEdits {
  private static final int LONGEST_ID = 40;

  private CircuitEdits() {}

  /** Takes a circuit away; its parts stay. */
  public static Edit remove(String circuit) {
    return Edit.of(
        EditWords.say("circuit.remove", circuit),
        before -> {
          List<Circuit> circuits = new ArrayList<>(before.circuits());
          if (!circuits.removeIf(c -> c.id().equals(circuit))) {
            throw EditWords.problem("circuit", circuit, "circuit.id", before.name());
          }
          return new Edit.Made(before.with(before.parts(), before.joins(), circuits), List.of());
        });
  }

  // Duplicating.

  /**
   * Makes a second circuit like one there is: its loads and the parts that serve no other circuit
   * come again under new ids, joined to the same feed and ground; what is shared stays shared.
   * Nothing is written on the new parts.
   *
   * @param name what a person calls the new function
   */
  public static Edit duplicate(String circuit, String name) {
    return Edit.of(
        EditWords.say("circuit.duplicate", circuit), before -> duplicated(before, circuit, name));
  }

  private static Edit.Made duplicated(Vehicle before, String id, String name) throws Problem {
    CircuitParts of = CircuitParts.of(before, id);
    Set<String> taken = new HashSet<>();
    before.parts().forEach(p -> taken.add(p.id()));
    Map<String, String> ids = new HashMap<>();
    List<Part> parts = new ArrayList<>(before.parts());
    for (Part part : before.parts()) {
      if (of.owns(part.id())) {
        ids.put(part.id(), free(part.id(), taken));
      }
    }
    UnaryOperator<String> renamed = i -> ids.getOrDefault(i, i);
    for (Part part : before.parts()) {
      if (of.owns(part.id())) {
        parts.add(PartEdits.withIds(part, renamed).withLabel("").withPhotos(List.of()));
      }
    }
    List<List<TerminalRef>> joins = joins(before, of, renamed);
    Set<String> circuitIds = new HashSet<>();
    before.circuits().forEach(c -> circuitIds.add(c.id()));
    List<Circuit> circuits = new ArrayList<>(before.circuits());
    Circuit copy = PartEdits.withIds(of.circuit(), free(id, circuitIds), name, renamed);
    circuits.add(copy);
    Set<String> copies = new HashSet<>(ids.values());
    List<String> told = new ArrayList<>();
    told.add(EditWords.say("duplicated", EditWords.title(copy), Integer.toString(copies.size())));
    Set<String> fuses = new LinkedHashSet<>();
    of.ways().forEach(way -> way.forEach(pass -> fuses.add(pass.part())));
    for (String fuse : fuses) {
      Part part = before.requirePart(fuse);
      if (part.kind() == PartKind.FUSE && !of.owns(fuse)) {
        told.add(EditWords.say("duplicated.fuse", part.title()));
      }
    }
    return new Edit.Made(
        before.with(
            Terminals.settled(parts, joins, t -> copies.contains(t.part())), joins, circuits),
        told);
  }

  private static List<List<TerminalRef>> joins(
      Vehicle before, CircuitParts of, UnaryOperator<String> renamed) {
    Set<TerminalRef> passed = of.passed();
    List<List<TerminalRef>> joins = new ArrayList<>();
    List<List<TerminalRef>> more = new ArrayList<>();
    for (List<TerminalRef> join : before.joins()) {
      List<TerminalRef> copies =
          join.stream().filter(passed::contains).map(t -> PartEdits.withId(t, renamed)).toList();
      boolean shared = join.stream().anyMatch(t -> !of.owns(t.part()));
      List<TerminalRef> now = new ArrayList<>(join);
      if (shared) {
        now.addAll(copies);
      } else if (copies.size() > 1) {
        more.add(copies);
      }
      joins.add(now);
    }
    joins.addAll(more);
    for (TerminalRef tied : of.tied(before)) {
      tie(joins, tied, PartEdits.withId(tied, renamed));
    }
    return joins;
  }

  /** Puts a terminal where another one is. */
  private static void tie(List<List<TerminalRef>> joins, TerminalRef there, TerminalRef added) {
    for (int i = 0; i < joins.size(); i++) {
      List<TerminalRef> join = joins.get(i);
      if (join.contains(there)) {
        if (!join.contains(added)) {
          List<TerminalRef> longer = new ArrayList<>(join);
          longer.add(added);
          joins.set(i, longer);
        }
        return;
      }
    }
    joins.add(List.of(there, added));
  }

  /** The next free id: the same letters with the next number that nobody has. */
  private static String free(String id, Set<String> taken) {
    String letters = id.replaceAll("[0-9]{1,6}$", "");
    String digits = id.substring(letters.length());
    int number = digits.isEmpty() ? 2 : Integer.parseInt(digits) + 1;
    while (true) {
      String end = Integer.toString(number++);
      String next =
          letters.substring(0, Math.min(letters.length(), LONGEST_ID - end.length())) + end;
      if (taken.add(next)) {
        return next;
      }
    }
  }

  // Moving.

  /**
   * Feeds a circuit from another fuse. What begins its own part of the way after the fuse that
   * feeds it now is taken off there and put on the other fuse's load terminal.
   *
   * @param fuse id of the fuse to feed it from
   */
  public static Edit moveToFuse(String circuit, String fuse) {
    return Edit.of(
        EditWords.say("circuit.move", circuit, fuse), before -> moved(before, circuit, fuse));
  }

  private static Edit.Made moved(Vehicle before, String id, String to) throws Problem {
    Part target = PartEdits.require(before, to);
    if (!(target.spec() instanceof PartSpec.Fuse rating)) {
      throw EditWords.problem("fuse", to, "fuse.id");
    }
    CircuitParts of = CircuitParts.of(before, id);
    Set<String> from = new LinkedHashSet<>();
    Set<TerminalRef> cut = new HashSet<>();
    for (List<Pass> way : of.ways()) {
      cut(before, of, way, from, cut);
    }
    if (from.isEmpty()) {
      throw EditWords.problem("circuit", id, "move.fuse");
    }
    if (from.size() > 1) {
      throw EditWords.problem("circuit", id, "move.fuses", String.join(EditWords.say("and"), from));
    }
    String now = from.iterator().next();
    if (now.equals(to)) {
      throw EditWords.problem("fuse", to, "move.same");
    }
    if (of.ways().stream().flatMap(List::stream).anyMatch(p -> p.part().equals(to))) {
      throw EditWords.problem("fuse", to, "move.on-way");
    }
    return rewired(before, of, now, target, rating, cut);
  }

  /** Notes the last fuse on the way to the load, and the node at which the circuit's own begins. */
  private static void cut(
      Vehicle before, CircuitParts of, List<Pass> way, Set<String> from, Set<TerminalRef> cut) {
    int fuse = -1;
    for (int i = 0; i < way.size(); i++) {
      if (before.requirePart(way.get(i).part()).kind() == PartKind.FUSE) {
        fuse = i;
      }
    }
    for (int i = fuse + 1; fuse >= 0 && i < way.size(); i++) {
      if (of.owns(way.get(i).part())) {
        from.add(way.get(fuse).part());
        cut.addAll(way.get(i).in());
        return;
      }
    }
  }

  private static Edit.Made rewired(
      Vehicle before,
      CircuitParts of,
      String now,
      Part target,
      PartSpec.Fuse rating,
      Set<TerminalRef> cut)
      throws Problem {
    TerminalRef feed = new TerminalRef(target.id(), "load");
    UnaryOperator<TerminalRef> end = t -> cut.contains(t) ? feed : t;
    Set<TerminalRef> taken = new HashSet<>();
    of.passed().stream().filter(t -> cut.contains(t) && !t.part().equals(now)).forEach(taken::add);
    for (TerminalRef tied : of.tied(before)) {
      if (taken.contains(tied)) {
        throw EditWords.problem("circuit", of.circuit().id(), "move.tied", tied);
      }
    }
    List<Part> parts = new ArrayList<>(before.parts());
    parts.replaceAll(
        p -> {
          // A wire that lies on the circuit's own terminal goes along with that.
          if (!(p.spec() instanceof PartSpec.Wire w) || !of.owns(p.id())) {
            return p;
          }
          TerminalRef a = taken.contains(w.from()) ? w.from() : end.apply(w.from());
          TerminalRef b = taken.contains(w.to()) ? w.to() : end.apply(w.to());
          return a.equals(b) ? p : p.withSpec(w.withEnds(a, b));
        });
    List<List<TerminalRef>> joins = new ArrayList<>();
    for (List<TerminalRef> join : before.joins()) {
      List<TerminalRef> rest = join.stream().filter(t -> !taken.contains(t)).toList();
      if (rest.size() > 1) {
        joins.add(rest);
      }
    }
    if (!taken.isEmpty()) {
      List<TerminalRef> put = new ArrayList<>();
      put.add(feed);
      taken.stream().sorted().forEach(put::add);
      joins.add(put);
    }
    Part old = before.requirePart(now);
    List<String> told = new ArrayList<>();
    if (old.spec() instanceof PartSpec.Fuse was && rating.amps() > was.amps()) {
      told.add(EditWords.say("moved.higher", target.title(), old.title()));
    }
    told.add(EditWords.say("moved", target.title()));
    List<Part> settled = Terminals.settled(parts, joins, before.usedTerminals()::contains);
    if (settled.stream().anyMatch(p -> p.id().equals(now) && p.spare().contains("load"))) {
      told.add(EditWords.say("moved.idle", old.title()));
    }
    Vehicle after = before.with(settled, joins, before.circuits());
    if (loads(after, new CircuitWays(after).of(of.circuit())) > loads(before, of.ways())) {
      told.add(EditWords.say("moved.dead", target.title()));
    }
    return new Edit.Made(after, told);
  }

  /** The most loads and coils that lie one after the other on a way. */
  private static long loads(Vehicle vehicle, List<List<Pass>> ways) {
    return ways.stream()
        .mapToLong(way -> way.stream().filter(pass -> pass.works(vehicle)).count())
        .max()
        .orElse(0);
  }
}
