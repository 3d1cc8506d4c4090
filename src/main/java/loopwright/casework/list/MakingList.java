package loopwright.casework.list;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import loopwright.casework.Phrases;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * All that has to be bought and cut for a vehicle's wiring.
 *
 * @param vehicle the vehicle
 * @param allowance what is cut beyond the length that runs
 * @param cuts every wire and strap, in the order of the file
 * @param buying what to buy, by group
 * @param looms the looms, by name
 */
public record MakingList(
    Vehicle vehicle, Allowance allowance, List<Cut> cuts, List<Buy> buying, List<Loom> looms) {

  /**
   * Wires that run together.
   *
   * @param name its name
   * @param cuts its wires
   * @param millimetres about its diameter in mm
   * @param metres the longest wire in it, as cut, in metres
   */
  public record Loom(String name, List<Cut> cuts, double millimetres, double metres) {}

  /** Copies the lists. */
  public MakingList {
    cuts = List.copyOf(cuts);
    buying = List.copyOf(buying);
    looms = List.copyOf(looms);
  }

  /**
   * Works the list out.
   *
   * @param phrases words for what is bought
   */
  public static MakingList of(Vehicle vehicle, Allowance allowance, Phrases phrases) {
    List<Cut> cuts = cuts(vehicle, allowance);
    return new MakingList(
        vehicle, allowance, cuts, new Buying(vehicle, cuts, phrases).all(), looms(cuts));
  }

  private static List<Cut> cuts(Vehicle vehicle, Allowance allowance) {
    Map<TerminalRef, Integer> wires = new HashMap<>();
    vehicle.parts().stream()
        .flatMap(
            p -> p.spec() instanceof PartSpec.Wire w ? Stream.of(w.from(), w.to()) : Stream.of())
        .forEach(t -> wires.merge(t, 1, Integer::sum));
    Set<String> bars = bars(vehicle);
    List<Cut> cuts = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Wire w) {
        double mm2 = w.size().mm2();
        List<Cut.End> ends =
            Stream.of(w.from(), w.to())
                .map(
                    t -> {
                      Part on = vehicle.requirePart(t.part());
                      return new Cut.End(
                          t, on, Fitting.of(on, t.terminal(), mm2, bars), wires.get(t));
                    })
                .toList();
        cuts.add(new Cut(part, w, allowance.cut(w.metres()), ends.get(0), ends.get(1)));
      }
    }
    return cuts;
  }

  /** Splices that something is bolted to or a heavy wire ends on: no crimp joint does that. */
  private static Set<String> bars(Vehicle vehicle) {
    Set<String> bars = new HashSet<>();
    vehicle.joins().forEach(join -> join.forEach(t -> bars.add(t.part())));
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Wire w && w.size().mm2() > Fitting.MOST_BLADE) {
        bars.add(w.from().part());
        bars.add(w.to().part());
      }
    }
    bars.removeIf(id -> vehicle.requirePart(id).kind() != PartKind.SPLICE);
    return bars;
  }

  private static List<Loom> looms(List<Cut> cuts) {
    Map<String, List<Cut>> byName = new TreeMap<>();
    cuts.stream()
        .filter(c -> !c.spec().loom().isEmpty())
        .forEach(c -> byName.computeIfAbsent(c.spec().loom(), n -> new ArrayList<>()).add(c));
    return byName.entrySet().stream()
        .map(
            e ->
                new Loom(
                    e.getKey(),
                    List.copyOf(e.getValue()),
                    Insulated.bundle(e.getValue().stream().map(Cut::mm2).toList()),
                    e.getValue().stream().mapToDouble(Cut::metres).max().orElse(0)))
        .toList();
  }

  /** The wires that run in no loom, straps left out. */
  public List<Cut> loose() {
    return cuts.stream()
        .filter(c -> c.spec().loom().isEmpty() && c.part().kind() == PartKind.WIRE)
        .toList();
  }
}
