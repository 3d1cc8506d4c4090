package loopwright.model;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How the vehicle stands while a reading is taken: the position of every control that is not at
 * rest, and what is unplugged, pulled or taken off.
 *
 * @param positions position by control (the id of a switch or driver); a control that is not named
 *     is at rest
 * @param apart ids of parts taken out of the circuit: a connector unplugged, a fuse, relay or bulb
 *     pulled, a battery with its grounded lead off
 */
public record Setting(SortedMap<String, String> positions, SortedSet<String> apart) {

  /** Everything at rest and plugged in. */
  public static final Setting REST = new Setting(new TreeMap<>(), new TreeSet<>());

  /** Copies both collections. */
  public Setting {
    positions = Collections.unmodifiableSortedMap(new TreeMap<>(positions));
    apart = Collections.unmodifiableSortedSet(new TreeSet<>(apart));
  }

  /** Only controls moved, nothing unplugged. */
  public static Setting of(Map<String, String> positions) {
    return new Setting(new TreeMap<>(positions), new TreeSet<>());
  }

  /** This setting with one control moved. */
  public Setting with(String control, String position) {
    SortedMap<String, String> moved = new TreeMap<>(positions);
    moved.put(control, position);
    return new Setting(moved, apart);
  }

  /** This setting with one control back at rest. */
  public Setting resting(String control) {
    SortedMap<String, String> moved = new TreeMap<>(positions);
    moved.remove(control);
    return new Setting(moved, apart);
  }

  /** This setting with these parts taken out as well. */
  public Setting without(Set<String> parts) {
    SortedSet<String> more = new TreeSet<>(apart);
    more.addAll(parts);
    return new Setting(positions, more);
  }

  /** This setting with one part taken out as well. */
  public Setting without(String part) {
    return without(Set.of(part));
  }

  /** How many single moves lead from the other setting to this one. */
  public int movesFrom(Setting other) {
    Set<String> controls = new TreeSet<>(positions.keySet());
    controls.addAll(other.positions.keySet());
    int moves = 0;
    for (String control : controls) {
      if (!java.util.Objects.equals(positions.get(control), other.positions.get(control))) {
        moves++;
      }
    }
    Set<String> parts = new TreeSet<>(apart);
    parts.addAll(other.apart);
    for (String part : parts) {
      if (apart.contains(part) != other.apart.contains(part)) {
        moves++;
      }
    }
    return moves;
  }
}
