package loopwright.ui.find;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.CaseDesk;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;

/** What is wrong: circuit, what it does, what happened before, which meter. */
public final class ComplaintViewModel {
  private final CaseDesk desk;
  private final List<MeterSpec> meters;
  private final Preferences preferences;
  private final MeterViewModel ownMeter;
  private Optional<Vehicle> vehicle = Optional.empty();
  private String vehicleName = "";
  private Optional<String> load = Optional.empty();
  private final StringProperty words = new SimpleStringProperty("");
  private final ObservableList<Circuit> circuits = FXCollections.observableArrayList();
  private final IntegerProperty circuit = new SimpleIntegerProperty(0);
  private final ObjectProperty<ComplaintKind> kind = new SimpleObjectProperty<>(ComplaintKind.DEAD);
  private final ObjectProperty<Context> context = new SimpleObjectProperty<>(Context.IN_SERVICE);
  private final ObjectProperty<MeterSpec> meter = new SimpleObjectProperty<>();
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");

  /**
   * Makes the complaint form.
   *
   * @param desk understands words
   * @param meters the meters there are; at least one
   * @param preferences remembers the meter
   */
  public ComplaintViewModel(CaseDesk desk, List<MeterSpec> meters, Preferences preferences) {
    if (meters.isEmpty()) {
      throw new IllegalArgumentException("at least one meter must be given");
    }
    this.desk = desk;
    this.meters = List.copyOf(meters);
    this.preferences = preferences;
    this.ownMeter = new MeterViewModel(preferences);
    meter.set(
        preferences
            .read(Preferences.Item.METER)
            .flatMap(id -> this.meters.stream().filter(m -> m.id().equals(id)).findFirst())
            .orElse(this.meters.get(0)));
    words.addListener((o, was, is) -> wordsChanged());
  }

  /** Takes a vehicle with a circuit to begin with. */
  public void begin(String name, Vehicle of, Optional<String> circuitId) {
    vehicle = Optional.of(of);
    vehicleName = name;
    words.set("");
    wordsChanged();
    circuitId.ifPresent(this::choose);
  }

  /** The vehicle, once there is one. */
  public Optional<Vehicle> vehicle() {
    return vehicle;
  }

  /** What is typed: part of a circuit's name, or a whole complaint. */
  public StringProperty wordsProperty() {
    return words;
  }

  /** The circuits that go with what is typed. */
  public ObservableList<Circuit> circuits() {
    return circuits;
  }

  /** Index of the chosen circuit among those. */
  public IntegerProperty circuitProperty() {
    return circuit;
  }

  /** What the circuit does. */
  public ObjectProperty<ComplaintKind> kindProperty() {
    return kind;
  }

  /** What happened to the vehicle before. */
  public ObjectProperty<Context> contextProperty() {
    return context;
  }

  /** The meter at hand. */
  public ObjectProperty<MeterSpec> meterProperty() {
    return meter;
  }

  /** The meters there are. */
  public List<MeterSpec> meters() {
    return meters;
  }

  /** The person's own meter, if it sends its readings. */
  public MeterViewModel ownMeter() {
    return ownMeter;
  }

  /** Why the complaint can't be used; empty if it can. */
  public ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** The chosen circuit. */
  public Optional<Circuit> chosen() {
    int i = circuit.get();
    return i >= 0 && i < circuits.size() ? Optional.of(circuits.get(i)) : Optional.empty();
  }

  /** Moves the choice of circuit. */
  public void moveCircuit(int by) {
    if (!circuits.isEmpty()) {
      circuit.set(Math.max(0, Math.min(circuits.size() - 1, circuit.get() + by)));
    }
  }

  private void choose(String circuitId) {
    for (int i = 0; i < circuits.size(); i++) {
      if (circuits.get(i).id().equals(circuitId)) {
        circuit.set(i);
        return;
      }
    }
  }

  private void wordsChanged() {
    problem.set("");
    load = Optional.empty();
    if (vehicle.isEmpty()) {
      return;
    }
    Optional<String> before = chosen().map(Circuit::id);
    String said = words.get().toLowerCase(Locale.ROOT).trim();
    List<Circuit> all = vehicle.orElseThrow().circuits();
    List<Circuit> fitting = all.stream().filter(c -> fits(c, said)).toList();
    circuits.setAll(fitting.isEmpty() ? all : fitting);
    circuit.set(0);
    before.ifPresent(this::choose);
    if (said.isEmpty()) {
      return;
    }
    for (ComplaintKind k : ComplaintKind.values()) {
      if (said.endsWith(k.words()) || said.endsWith(Texts.of(k).toLowerCase(Locale.ROOT))) {
        kind.set(k);
      }
    }
    try {
      CaseDesk.Complaint understood = desk.understand(vehicle.orElseThrow(), words.get());
      if (circuits.stream().noneMatch(c -> c.id().equals(understood.circuit()))) {
        circuits.setAll(all);
      }
      choose(understood.circuit());
      kind.set(understood.kind());
      load = understood.load();
    } catch (Problem p) {
      if (fitting.isEmpty()) {
        problem.set(Texts.of("complaint.notFound", words.get()));
      }
    }
  }

  private static boolean fits(Circuit circuit, String said) {
    if (said.isEmpty()) {
      return true;
    }
    String name = circuit.name().toLowerCase(Locale.ROOT);
    return name.contains(said) || said.contains(name) || circuit.id().contains(said);
  }

  /** The new case as chosen; empty while no vehicle or circuit is chosen. */
  public Optional<CaseDesk.NewCase> newCase() {
    if (vehicle.isEmpty() || chosen().isEmpty()) {
      return Optional.empty();
    }
    preferences.keep(Preferences.Item.METER, meter.get().id());
    Circuit of = chosen().orElseThrow();
    boolean own =
        load.isPresent()
            && of.loads().stream().map(LoadRef::toString).anyMatch(load.orElseThrow()::equals);
    return Optional.of(
        new CaseDesk.NewCase(
            vehicle.orElseThrow(),
            vehicleName,
            of.id(),
            own ? load : Optional.empty(),
            kind.get(),
            context.get(),
            meter.get().id()));
  }
}
