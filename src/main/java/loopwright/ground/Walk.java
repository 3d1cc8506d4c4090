package loopwright.ground;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Setting;

/**
 * All grounds of a vehicle in an order with few changes of the set-up: those proven with the same
 * loads on stand together, cranking comes last, and at the end what no current proves.
 */
public final class Walk {

  /**
   * Share of the greatest current with which a ground is still worth a proof in another's setting.
   */
  private static final double HALF = 0.5;

  private Walk() {}

  /**
   * A ground and how the controls stand for its proof.
   *
   * @param setting empty where no load proves it
   */
  public record Stop(Ground ground, Optional<Setting> setting) {}

  /** The stops of a walk, beginning with everything at rest. */
  public static List<Stop> through(List<Ground> grounds, DropProofs proofs) {
    Map<Ground, Set<Setting>> may = new LinkedHashMap<>();
    grounds.forEach(g -> may.put(g, worth(g, proofs)));
    Map<Setting, List<Ground>> chosen = new LinkedHashMap<>();
    Set<Ground> open = new LinkedHashSet<>(grounds);
    open.removeIf(g -> may.get(g).isEmpty());
    while (!open.isEmpty()) {
      Setting best = mostOf(open, may);
      List<Ground> here = open.stream().filter(g -> may.get(g).contains(best)).toList();
      chosen.put(best, here);
      here.forEach(open::remove);
    }
    List<Stop> stops = new ArrayList<>();
    Setting now = Setting.REST;
    while (!chosen.isEmpty()) {
      Setting from = now;
      now =
          chosen.keySet().stream()
              .min(Comparator.comparing(proofs::cranks).thenComparingInt(s -> s.movesFrom(from)))
              .orElseThrow();
      for (Ground ground : chosen.remove(now)) {
        stops.add(new Stop(ground, Optional.of(now)));
      }
    }
    grounds.stream()
        .filter(g -> may.get(g).isEmpty())
        .forEach(g -> stops.add(new Stop(g, Optional.empty())));
    return stops;
  }

  /** The setting in which most grounds can be proven; of equals the first. */
  private static Setting mostOf(Set<Ground> open, Map<Ground, Set<Setting>> may) {
    Map<Setting, Integer> counts = new LinkedHashMap<>();
    open.forEach(g -> may.get(g).forEach(s -> counts.merge(s, 1, Integer::sum)));
    return counts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  /**
   * Settings with one circuit on whose current is near the greatest and enough for the meter;
   * another one if there is none.
   */
  private static Set<Setting> worth(Ground ground, DropProofs proofs) {
    List<Setting> all = proofs.settings(ground);
    Set<Setting> worth = new LinkedHashSet<>();
    double most = 0;
    for (Setting setting : all) {
      double amps = proofs.amps(ground, setting);
      boolean alone = !proofs.cranks(setting) && !proofs.allOn(setting);
      if (alone && amps >= HALF * most && proofs.fine(ground, setting)) {
        most = Math.max(most, amps);
        worth.add(setting);
      }
    }
    if (worth.isEmpty()) {
      all.stream()
          .max(Comparator.comparingDouble(s -> proofs.amps(ground, s)))
          .ifPresent(worth::add);
    }
    return worth;
  }
}
