package loopwright.casework.prove;

import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.CRC32;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Prints of all that is electrical about what a proof rests on, part by part: kind, values, where a
 * wire's ends lie, what a terminal touches. Names, labels, colours and places are no part of it.
 * Values that are left open leave no trace, so that a later program that knows more of them makes
 * nothing unproven.
 */
public final class Prints {
  /** Stands for how the controls of a circuit are moved and what it is to work. */
  static final String CIRCUIT = "";

  /** Components that say nothing electrical. */
  private static final Set<String> PLAIN = Set.of("colour", "loom", "command");

  private Prints() {}

  /** Prints of these parts. */
  public static SortedMap<String, String> of(Vehicle vehicle, Collection<String> parts) {
    SortedMap<String, String> prints = new TreeMap<>();
    for (String id : new LinkedHashSet<>(parts)) {
      vehicle.part(id).ifPresent(p -> prints.put(id, print(vehicle, p)));
    }
    return prints;
  }

  /** Prints of what the proof of a subject rests on. */
  static SortedMap<String, String> of(Subject subject, Vehicle vehicle, ProvePlan plan) {
    Set<String> parts = new LinkedHashSet<>();
    switch (subject.kind()) {
      case SUPPLY ->
          vehicle.parts().stream()
              .filter(p -> p.kind() == PartKind.BATTERY || p.kind() == PartKind.STRAP)
              .forEach(p -> parts.add(p.id()));
      case FEED ->
          plan.waysTo(subject.part().orElseThrow())
              .forEach(w -> w.forEach(p -> parts.add(p.part())));
      case CIRCUIT -> plan.ways(subject.id()).forEach(w -> w.forEach(p -> parts.add(p.part())));
      case FULL -> parts.add(vehicle.battery().id());
    }
    SortedMap<String, String> prints = of(vehicle, parts);
    if (subject.kind() == Subject.Kind.CIRCUIT) {
      Circuit circuit = subject.circuit().orElseThrow();
      prints.put(CIRCUIT, sum(circuit.loads() + " " + new TreeMap<>(circuit.on())));
    }
    return prints;
  }

  /** What is in one set of prints otherwise than in another, by id. */
  public static SortedSet<String> changed(Map<String, String> was, Map<String, String> is) {
    SortedSet<String> changed = new TreeSet<>();
    was.forEach(
        (id, print) -> {
          if (!print.equals(is.get(id))) {
            changed.add(id);
          }
        });
    is.keySet().stream().filter(id -> !was.containsKey(id)).forEach(changed::add);
    return changed;
  }

  private static String print(Vehicle vehicle, Part part) {
    List<String> touching = new ArrayList<>();
    for (List<TerminalRef> join : vehicle.joins()) {
      if (join.stream().anyMatch(t -> t.part().equals(part.id()))) {
        touching.add(join.stream().map(TerminalRef::toString).sorted().toList().toString());
      }
    }
    return sum(
        part.kind() + " " + written(part.spec()) + " " + touching.stream().sorted().toList());
  }

  /** A record as {@code Name(component=value ...)}, components in the order of their names. */
  private static String written(Object value) {
    if (value instanceof Optional<?> o) {
      return o.map(Prints::written).orElse("");
    }
    if (value instanceof Set<?> set) {
      return set.stream().map(Prints::written).sorted().toList().toString();
    }
    if (value instanceof Collection<?> list) {
      return list.stream().map(Prints::written).toList().toString();
    }
    if (!(value instanceof Record)) {
      return String.valueOf(value);
    }
    SortedMap<String, String> components = new TreeMap<>();
    for (RecordComponent c : value.getClass().getRecordComponents()) {
      try {
        String written = written(c.getAccessor().invoke(value));
        if (!written.isEmpty() && !PLAIN.contains(c.getName())) {
          components.put(c.getName(), written);
        }
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException("a component can't be read: " + c, e);
      }
    }
    return value.getClass().getSimpleName() + components;
  }

  private static String sum(String text) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.UTF_8));
    return String.format("%08x", crc.getValue());
  }
}
