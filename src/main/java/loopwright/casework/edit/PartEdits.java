package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.casework.Problem;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Photo;
import loopwright.model.ShortName;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Edits of a part. */
public final class PartEdits {
  private PartEdits() {}

  /** Gives a part other values, or another kind. */
  public static Edit spec(String part, PartSpec spec) {
    return change(EditWords.say("change", part), part, p -> p.withSpec(spec));
  }

  /** Says what is written on a part on the vehicle; may be empty. */
  public static Edit label(String part, String label) {
    return change(EditWords.say("label", part), part, p -> p.withLabel(label));
  }

  /** Says what a person calls a part; may be empty. */
  public static Edit name(String part, String name) {
    return change(EditWords.say("name", part), part, p -> p.withName(name));
  }

  /** Says where a part sits; may be empty. */
  public static Edit where(String part, String where) {
    return change(EditWords.say("place", part), part, p -> p.withWhere(where));
  }

  /** Says what is worth knowing of a part; may be empty. */
  public static Edit note(String part, String note) {
    return change(EditWords.say("note", part), part, p -> p.withNote(note));
  }

  /** Says how long it takes to take a part out and to replace it, in minutes, 0 or more. */
  public static Edit minutes(String part, Optional<Double> apart, Optional<Double> swap) {
    return change(EditWords.say("minutes", part), part, p -> p.withMinutes(apart, swap));
  }

  /** Puts other photos to a part. */
  public static Edit photos(String part, List<Photo> photos) {
    return change(EditWords.say("photos", part), part, p -> p.withPhotos(photos));
  }

  /** Says what it takes to reach a terminal. */
  public static Edit access(TerminalRef at, Access access) {
    return change(
        EditWords.say("access", at),
        at.part(),
        p -> {
          Map<String, Access> all = new HashMap<>(p.access());
          all.put(at.terminal(), access);
          return p.withAccess(all);
        });
  }

  private static Edit change(String title, String id, UnaryOperator<Part> how) {
    return Edit.of(
        title,
        before -> {
          require(before, id);
          List<Part> parts = new ArrayList<>(before.parts());
          parts.replaceAll(p -> p.id().equals(id) ? how.apply(p) : p);
          return new Edit.Made(before.with(parts, before.joins(), before.circuits()), List.of());
        });
  }

  /** Adds a part, for instance a wire between two terminals, at the end. */
  public static Edit add(Part part) {
    return Edit.of(
        EditWords.say("add", part.id()),
        before -> {
          requireNew(before, part.id());
          List<Part> parts = new ArrayList<>(before.parts());
          parts.add(part);
          return new Edit.Made(before.with(parts, before.joins(), before.circuits()), List.of());
        });
  }

  /**
   * Removes a part, the wires that end on it, and what circuits say of it; a circuit left without a
   * load goes too.
   */
  public static Edit remove(String id) {
    return Edit.of(EditWords.say("remove", id), before -> removed(before, id));
  }

  private static Edit.Made removed(Vehicle before, String id) throws Problem {
    require(before, id);
    List<String> told = new ArrayList<>();
    List<Part> parts = new ArrayList<>();
    for (Part part : before.parts()) {
      boolean ends =
          part.spec() instanceof PartSpec.Wire w
              && (w.from().part().equals(id) || w.to().part().equals(id));
      if (ends && !part.id().equals(id)) {
        told.add(EditWords.say("removed.wire", part.kind().said(), part.title()));
      } else if (!part.id().equals(id)) {
        parts.add(part);
      }
    }
    List<List<TerminalRef>> joins = new ArrayList<>();
    for (List<TerminalRef> join : before.joins()) {
      List<TerminalRef> rest = join.stream().filter(t -> !t.part().equals(id)).toList();
      if (rest.size() > 1 || rest.size() == join.size()) {
        joins.add(rest);
      }
    }
    List<Circuit> circuits = new ArrayList<>();
    for (Circuit c : before.circuits()) {
      List<LoadRef> loads = c.loads().stream().filter(l -> !l.part().equals(id)).toList();
      if (loads.isEmpty() && !c.loads().isEmpty()) {
        told.add(EditWords.say("removed.circuit", EditWords.title(c)));
        continue;
      }
      Map<String, String> on = new LinkedHashMap<>(c.on());
      if (on.remove(id) != null) {
        told.add(EditWords.say("removed.control", EditWords.title(c)));
      }
      circuits.add(new Circuit(c.id(), c.name(), loads, on, c.note()));
    }
    return new Edit.Made(before.with(parts, joins, circuits), told);
  }

  /** Gives a part another id everywhere: in wires, joins and circuits. */
  public static Edit rename(String from, String to) {
    return Edit.of(EditWords.say("rename", from, to), before -> renamed(before, from, to));
  }

  private static Edit.Made renamed(Vehicle before, String from, String to) throws Problem {
    require(before, from);
    requireNew(before, to);
    UnaryOperator<String> id = i -> i.equals(from) ? to : i;
    List<Part> parts = new ArrayList<>(before.parts());
    parts.replaceAll(p -> withIds(p, id));
    List<List<TerminalRef>> joins =
        before.joins().stream().map(j -> j.stream().map(t -> withId(t, id)).toList()).toList();
    List<Circuit> circuits = new ArrayList<>(before.circuits());
    circuits.replaceAll(c -> withIds(c, c.id(), c.name(), id));
    return new Edit.Made(before.with(parts, joins, circuits), List.of());
  }

  static TerminalRef withId(TerminalRef at, UnaryOperator<String> id) {
    return new TerminalRef(id.apply(at.part()), at.terminal());
  }

  /** A part with other ids for itself and, if it is a wire, for what its ends lie on. */
  static Part withIds(Part p, UnaryOperator<String> id) {
    PartSpec spec = p.spec();
    if (spec instanceof PartSpec.Wire w) {
      spec = w.withEnds(withId(w.from(), id), withId(w.to(), id));
    }
    return p.withId(id.apply(p.id())).withSpec(spec);
  }

  /** A circuit under an id and name, with other ids for the parts it names. */
  static Circuit withIds(Circuit c, String newId, String name, UnaryOperator<String> id) {
    Map<String, String> on = new LinkedHashMap<>();
    c.on().forEach((control, position) -> on.put(id.apply(control), position));
    List<LoadRef> loads =
        c.loads().stream().map(l -> new LoadRef(id.apply(l.part()), l.filament())).toList();
    return new Circuit(newId, name, loads, on, c.note());
  }

  /** Gives a loom another name on every wire that runs in it. */
  public static Edit renameLoom(String from, String to) {
    return Edit.of(
        EditWords.say("rename.loom", from, to),
        before -> {
          List<Part> parts = new ArrayList<>(before.parts());
          parts.replaceAll(p -> withLoom(p, from, to));
          if (from.isEmpty() || parts.equals(before.parts())) {
            throw EditWords.problem("loom", from, "loom");
          }
          return new Edit.Made(before.with(parts, before.joins(), before.circuits()), List.of());
        });
  }

  private static Part withLoom(Part p, String from, String to) {
    return p.spec() instanceof PartSpec.Wire w && w.loom().equals(from)
        ? p.withSpec(w.withLoom(to))
        : p;
  }

  static Part require(Vehicle vehicle, String id) throws Problem {
    Optional<Part> part = vehicle.part(id);
    if (part.isEmpty()) {
      throw EditWords.problem("part", id, "part", vehicle.name());
    }
    return part.get();
  }

  private static void requireNew(Vehicle vehicle, String id) throws Problem {
    if (!ShortName.fits(id)) {
      throw new Problem(EditWords.say("field.id"), id, ShortName.limit());
    }
    if (vehicle.part(id).isPresent()) {
      throw EditWords.problem("id", id, "id.taken");
    }
  }
}
