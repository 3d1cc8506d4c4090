package loopwright.ui.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.PaperReport;
import loopwright.model.Circuit;
import loopwright.model.CircuitWays;
import loopwright.model.CircuitWays.Pass;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;
import loopwright.ui.paper.PaperItem.Named;

/**
 * A vehicle with what the check says of it.
 *
 * @param vehicle the vehicle that was checked
 * @param report what the check says
 * @param items a card for each thing it says, in its order
 */
record Checked(Vehicle vehicle, PaperReport report, List<PaperItem> items) {

  /** Makes the cards; takes a while on a big vehicle. */
  static Checked of(Vehicle vehicle, PaperReport report) {
    if (!report.unsolved().isEmpty()) {
      return new Checked(
          vehicle,
          report,
          numbered(report.unsolved().stream().map(f -> PaperItem.of(f, vehicle)).toList()));
    }
    Map<String, List<Named>> circuits = circuits(vehicle);
    return new Checked(
        vehicle,
        report,
        numbered(
            report.findings().stream()
                .map(
                    f ->
                        PaperItem.of(
                            f,
                            vehicle,
                            circuits.getOrDefault(LoadRef.parse(f.part()).part(), List.of())))
                .toList()));
  }

  /** The circuits that each part lies in: those it works in before those it only feeds. */
  private static Map<String, List<Named>> circuits(Vehicle vehicle) {
    CircuitWays ways = new CircuitWays(vehicle);
    Map<String, List<Named>> own = new HashMap<>();
    Map<String, List<Named>> all = new LinkedHashMap<>();
    for (Circuit circuit : vehicle.circuits()) {
      Named named = new Named(circuit.id(), circuit.name());
      Set<String> on =
          Stream.concat(circuit.loads().stream().map(LoadRef::part), circuit.on().keySet().stream())
              .collect(Collectors.toCollection(TreeSet::new));
      on.forEach(part -> own.computeIfAbsent(part, p -> new ArrayList<>()).add(named));
      ways.of(circuit).stream()
          .flatMap(List::stream)
          .map(Pass::part)
          .filter(part -> !on.contains(part))
          .distinct()
          .forEach(part -> all.computeIfAbsent(part, p -> new ArrayList<>()).add(named));
    }
    own.forEach((part, in) -> all.computeIfAbsent(part, p -> new ArrayList<>()).addAll(0, in));
    return all;
  }

  /** Tells those apart that would be taken for each other. */
  private static List<PaperItem> numbered(List<PaperItem> items) {
    Map<String, Integer> seen = new HashMap<>();
    List<PaperItem> numbered = new ArrayList<>();
    for (PaperItem item : items) {
      int before = seen.merge(item.key(), 1, Integer::sum) - 1;
      numbered.add(before == 0 ? item : item.called(item.key() + " " + before));
    }
    return List.copyOf(numbered);
  }

  /** Whether it is about the same vehicle, perhaps edited since. */
  boolean sameVehicle(Vehicle other) {
    return vehicle.id().equals(other.id()) && vehicle.name().equals(other.name());
  }
}
