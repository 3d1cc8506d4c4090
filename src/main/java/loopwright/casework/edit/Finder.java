package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;

/** Finds parts and circuits of a vehicle by words. */
public final class Finder {
  private Finder() {}

  /** What was found. */
  public enum Sort {
    CIRCUIT,
    PART
  }

  /**
   * Something found.
   *
   * @param sort what it is
   * @param id its id
   * @param title how a person knows it
   */
  public record Found(Sort sort, String id, String title) {}

  private record Ranked(Found found, int rank) {}

  /**
   * Everything that has all the words in its id, name, label, kind, place, colour or loom, in any
   * order and case. First what is called exactly so, then what has them in its name, then the rest;
   * nothing for no words.
   */
  public static List<Found> find(Vehicle vehicle, String words) {
    String sought = words.strip().toLowerCase(Locale.ROOT);
    if (sought.isEmpty()) {
      return List.of();
    }
    List<Ranked> ranked = new ArrayList<>();
    for (Circuit c : vehicle.circuits()) {
      Found found = new Found(Sort.CIRCUIT, c.id(), c.name());
      rank(found, c.name(), c.note(), sought, ranked);
    }
    for (Part p : vehicle.parts()) {
      List<String> more =
          new ArrayList<>(List.of(p.label(), p.kind().word(), p.kind().said(), p.where()));
      if (p.spec() instanceof PartSpec.Wire w) {
        more.addAll(List.of(w.colour(), w.loom(), w.size().toString()));
      }
      Found found = new Found(Sort.PART, p.id(), p.title());
      rank(found, p.name(), String.join(" ", more), sought, ranked);
    }
    return ranked.stream()
        .sorted(Comparator.comparingInt(Ranked::rank))
        .map(Ranked::found)
        .toList();
  }

  private static void rank(
      Found found, String name, String more, String sought, List<Ranked> ranked) {
    String called = (found.id() + " " + name).toLowerCase(Locale.ROOT);
    String all = called + " " + more.toLowerCase(Locale.ROOT);
    String[] words = sought.split("\\s+");
    if (sought.equalsIgnoreCase(found.id()) || sought.equalsIgnoreCase(name)) {
      ranked.add(new Ranked(found, 0));
    } else if (Arrays.stream(words).allMatch(called::contains)) {
      ranked.add(new Ranked(found, 1));
    } else if (Arrays.stream(words).allMatch(all::contains)) {
      ranked.add(new Ranked(found, 2));
    }
  }
}
