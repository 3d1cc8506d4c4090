package loopwright.ui.wiring;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import loopwright.casework.LoopView;
import loopwright.casework.Sketch;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** The drawing of the circuit that the chosen row belongs to; it follows every edit. */
public final class SketchViewModel {

  /** What was found out off the window's thread. */
  private record Found(Optional<String> circuit, Optional<LoopView> loop) {}

  private final Worker worker;
  private final ReadOnlyObjectWrapper<Optional<LoopView>> loop =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> marked =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper why = new ReadOnlyStringWrapper("");
  private final AtomicInteger asked = new AtomicInteger();
  private Optional<String> circuit = Optional.empty();
  private Optional<String> last = Optional.empty();

  /** The drawings of the last vehicle; the worker's alone. */
  private Optional<Sketch> sketch = Optional.empty();

  private Optional<Vehicle> sketched = Optional.empty();

  /**
   * Follows what is worked on.
   *
   * @param worker draws, in a queue of its own
   */
  public SketchViewModel(WiringViewModel work, GridViewModel grid, Worker worker) {
    this.worker = worker;
    work.vehicleProperty()
        .addListener(o -> follow(work.vehicleProperty().get(), grid.chosenProperty().get()));
    grid.chosenProperty()
        .addListener(o -> follow(work.vehicleProperty().get(), grid.chosenProperty().get()));
  }

  /** The loop to draw; empty where there is none. */
  public ReadOnlyObjectProperty<Optional<LoopView>> loopProperty() {
    return loop.getReadOnlyProperty();
  }

  /** Id of the part to mark. */
  public ReadOnlyObjectProperty<Optional<String>> markedProperty() {
    return marked.getReadOnlyProperty();
  }

  /** Why nothing is drawn. */
  public ReadOnlyStringProperty whyProperty() {
    return why.getReadOnlyProperty();
  }

  /** Id of the circuit that is drawn, or can't be. */
  public Optional<String> circuit() {
    return circuit;
  }

  /** On an empty row the drawing stays what it was. */
  private void follow(Optional<Vehicle> vehicle, Optional<String> row) {
    int now = asked.incrementAndGet();
    marked.set(row);
    last = row.or(() -> last);
    Optional<String> chosen = last;
    if (vehicle.isEmpty()) {
      loop.set(Optional.empty());
      return;
    }
    List<String> likely = circuit.stream().toList();
    worker.run(
        () -> now == asked.get() ? find(vehicle.get(), chosen, likely) : null,
        found -> {
          if (found != null && now == asked.get()) {
            show(vehicle.get(), chosen, found);
          }
        },
        failed -> why.set(String.valueOf(failed.getMessage())));
  }

  private Found find(Vehicle vehicle, Optional<String> chosen, List<String> likely) {
    if (sketched.filter(v -> v == vehicle).isEmpty()) {
      sketch = Optional.of(new Sketch(vehicle));
      sketched = Optional.of(vehicle);
    }
    Sketch drawings = sketch.orElseThrow();
    Optional<String> of =
        chosen
            .flatMap(
                id ->
                    vehicle.part(id).isPresent()
                        ? drawings.circuitOf(id, likely)
                        : vehicle.circuit(id).map(Circuit::id))
            .or(() -> likely.stream().findFirst());
    return new Found(of, of.flatMap(drawings::of));
  }

  private void show(Vehicle vehicle, Optional<String> chosen, Found found) {
    circuit = found.circuit();
    loop.set(found.loop());
    String title = chosen.flatMap(vehicle::part).map(Part::title).orElse("");
    if (found.loop().isPresent()) {
      why.set("");
    } else if (found.circuit().isPresent()) {
      String name = found.circuit().flatMap(vehicle::circuit).map(Circuit::name).orElse("");
      why.set(Texts.of("wiring.noWay", name));
    } else {
      why.set(
          title.isEmpty() ? Texts.of("wiring.noCircuits") : Texts.of("wiring.noCircuit", title));
    }
  }
}
