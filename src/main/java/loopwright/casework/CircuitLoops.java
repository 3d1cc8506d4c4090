package loopwright.casework;

import java.util.Optional;
import loopwright.diagnosis.HealthyBands;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Workbench;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.solver.Network;

/** The loops of a vehicle's circuits with what a healthy vehicle shows at each node. */
public final class CircuitLoops {
  private final Vehicle vehicle;
  private final Workbench bench;
  private final HealthyBands bands;
  private final Words words;

  /** Solves nothing yet. */
  public CircuitLoops(Vehicle vehicle, Knowledge knowledge, MeterSpec meter, Phrases phrases) {
    this.vehicle = vehicle;
    this.bench = new Workbench(Network.of(vehicle, knowledge.typicals()), knowledge, meter);
    this.bands = new HealthyBands(bench);
    this.words = new Words(vehicle, phrases);
  }

  /**
   * The loop of a circuit's first load.
   *
   * @return empty for an unknown circuit, or one in which no current flows
   */
  public Optional<LoopView> loop(String circuitId) {
    Optional<Circuit> circuit = vehicle.circuit(circuitId);
    if (circuit.isEmpty()) {
      return Optional.empty();
    }
    return Loop.trace(
            bench, circuit.get().onSetting(), bench.loadElement(circuit.get().loads().get(0)))
        .map(
            loop ->
                new LoopViews(vehicle, bench, bands::band, words, circuit.get().onSetting())
                    .view(loop, circuit.get().name()));
  }
}
