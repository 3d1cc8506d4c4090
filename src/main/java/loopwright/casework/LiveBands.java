package loopwright.casework;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Workbench;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.CircuitWays;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;

/**
 * Healthy volts of a large vehicle, worked out on what carries current in the setting asked about.
 * What is left out hangs off that by one node, so that it changes nothing but by the leak of a node
 * (12 nA each): less than 0.1 mV in all on 2,000 parts.
 */
final class LiveBands {
  private final Vehicle vehicle;
  private final Knowledge knowledge;
  private final MeterSpec meter;
  private final HealthyBands whole;
  private final Map<Setting, Live> known = new HashMap<>();
  private Optional<CircuitWays> ways = Optional.empty();

  private record Live(Set<String> parts, HealthyBands bands) {}

  LiveBands(Vehicle vehicle, Knowledge knowledge, MeterSpec meter, HealthyBands whole) {
    this.vehicle = vehicle;
    this.knowledge = knowledge;
    this.meter = meter;
    this.whole = whole;
  }

  /** Least and greatest value, in volts or ohms. */
  double[] band(Check check) {
    if (check.kind() != CheckKind.VOLTS || !check.setting().apart().isEmpty()) {
      return whole.band(check);
    }
    Live live = known.computeIfAbsent(check.setting(), this::live);
    boolean holds =
        List.of(check.red(), check.black()).stream()
            .allMatch(at -> at.filter(t -> live.parts().contains(t.part())).isPresent());
    return (holds ? live.bands() : whole).band(check);
  }

  private Live live(Setting setting) {
    if (ways.isEmpty()) {
      ways = Optional.of(new CircuitWays(vehicle));
    }
    Set<String> kept = new HashSet<>(ways.get().live(setting));
    for (Part part : vehicle.parts()) {
      if (part.kind() == PartKind.BATTERY || part.kind() == PartKind.BODY) {
        kept.add(part.id());
      }
      if (part.spec() instanceof PartSpec.Wire w && kept.contains(part.id())) {
        // A wire may end on a part that lets nothing through, beside another wire.
        kept.add(w.from().part());
        kept.add(w.to().part());
      }
    }
    List<Part> parts = vehicle.parts().stream().filter(p -> kept.contains(p.id())).toList();
    List<List<TerminalRef>> joins =
        vehicle.joins().stream()
            .map(j -> j.stream().filter(t -> kept.contains(t.part())).toList())
            .filter(j -> j.size() > 1)
            .toList();
    Vehicle less = vehicle.with(parts, joins, List.of());
    Network network = Network.of(less, knowledge.typicals());
    return new Live(kept, new HealthyBands(new Workbench(network, knowledge, meter)));
  }
}
