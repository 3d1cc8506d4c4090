package loopwright.model;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.RandomAccess;
import java.util.Spliterator;

/**
 * An unchanging list of parts that knows them by id from the first time it is asked. To everybody
 * else it is a list like any other, so that vehicles stay equal by what they hold.
 */
final class PartList extends AbstractList<Part> implements RandomAccess {
  private final List<Part> parts;

  /** Built twice at worst, by two threads that ask for the first time. */
  private Map<String, Part> byId;

  private PartList(List<Part> parts) {
    this.parts = parts;
  }

  static PartList copyOf(List<Part> parts) {
    return parts instanceof PartList list ? list : new PartList(List.copyOf(parts));
  }

  /** The first part with an id; a vehicle that doesn't hold together may have two. */
  Optional<Part> part(String id) {
    Map<String, Part> known = byId;
    if (known == null) {
      Map<String, Part> fresh = new HashMap<>();
      parts.forEach(p -> fresh.putIfAbsent(p.id(), p));
      known = Map.copyOf(fresh);
      byId = known;
    }
    return Optional.ofNullable(known.get(id));
  }

  @Override
  public Part get(int index) {
    return parts.get(index);
  }

  @Override
  public int size() {
    return parts.size();
  }

  @Override
  public Iterator<Part> iterator() {
    return parts.iterator();
  }

  @Override
  public Spliterator<Part> spliterator() {
    return parts.spliterator();
  }
}
