package loopwright.ui.ground;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.MeterInHand;
import loopwright.casework.Problem;
import loopwright.casework.ground.GroundCheck;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.ground.GroundView;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;
import loopwright.ui.find.MeterViewModel;

/**
 * Checking the grounds of the vehicle that the window shows. All that is worked out is worked out
 * by one worker, in the order in which it was asked for; what was asked of a vehicle shown before
 * is dropped.
 */
public final class GroundViewModel {

  /** What there is to show. */
  public enum Stage {
    /** No vehicle is open. */
    NO_VEHICLE,
    /** The grounds are being worked out. */
    WORKING,
    /** They are there. */
    READY,
    /** They can't be worked out; {@link #toldProperty} says why. */
    FAILED
  }

  private final GroundDesk desk;
  private final Preferences preferences;
  private final Worker worker;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.NO_VEHICLE);
  private final ReadOnlyObjectWrapper<List<GroundRow>> rows =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<String>> chosen =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<GroundView>> view =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<GroundResult>> result =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private int begun;
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private MeterViewModel meter = new MeterViewModel(Preferences.NONE);
  private final ReadOnlyBooleanWrapper details = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper byOhms = new ReadOnlyBooleanWrapper();
  private Optional<Vehicle> vehicle = Optional.empty();
  private Optional<Vehicle> worked = Optional.empty();
  private Optional<GroundCheck> check = Optional.empty();
  private int asked;

  /**
   * Makes the view model with no vehicle.
   *
   * @param desk checks grounds
   * @param preferences for the meter in hand
   * @param worker runs what takes a while
   */
  public GroundViewModel(GroundDesk desk, Preferences preferences, Worker worker) {
    this.desk = Objects.requireNonNull(desk, "desk");
    this.preferences = Objects.requireNonNull(preferences, "preferences");
    this.worker = Objects.requireNonNull(worker, "worker");
  }

  /** Says which meter sends its readings. */
  void readBy(MeterViewModel own) {
    meter = own;
  }

  /** The person's own meter, if it sends its readings. */
  MeterViewModel meter() {
    return meter;
  }

  /** The meter is to measure what a proof asks for; what it says is shown. */
  void lookAtMeter() {
    meter.follow(CheckKind.MILLIVOLTS);
  }

  /** What there is to show. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** All grounds in the order of a walk. */
  public ReadOnlyObjectProperty<List<GroundRow>> rowsProperty() {
    return rows.getReadOnlyProperty();
  }

  /** Id of the ground in question. */
  public ReadOnlyObjectProperty<Optional<String>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** It in words; empty while it is worked out. */
  public ReadOnlyObjectProperty<Optional<GroundView>> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What the reading just taken said. */
  public ReadOnlyObjectProperty<Optional<GroundResult>> resultProperty() {
    return result.getReadOnlyProperty();
  }

  /** What was told last. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Whether the details of the ground are shown. */
  public ReadOnlyBooleanProperty detailsProperty() {
    return details.getReadOnlyProperty();
  }

  /** Whether ohms are entered in place of volts. */
  public ReadOnlyBooleanProperty byOhmsProperty() {
    return byOhms.getReadOnlyProperty();
  }

  /** How many are proven good, of how many that a load proves. */
  public String progress() {
    long provable = rows.get().stream().filter(GroundRow::provable).count();
    long good = rows.get().stream().filter(GroundRow::good).count();
    return Texts.of("ground.progress", Long.toString(good), Long.toString(provable));
  }

  /** Takes a vehicle, or the one at hand as it is now. Costs nothing until the page is opened. */
  public void show(Vehicle now) {
    vehicle = Optional.of(now);
  }

  /** The page is in sight: works out what the vehicle at hand has. */
  public void opened() {
    if (vehicle.isEmpty()) {
      return;
    }
    if (vehicle.equals(worked) && check.isPresent()) {
      reread();
      return;
    }
    Vehicle now = vehicle.get();
    worked = vehicle;
    check = Optional.empty();
    stage.set(Stage.WORKING);
    tellNothing();
    run(
        () -> desk.open(now, preferences.read(Preferences.Item.METER).orElse(MeterInHand.USUAL)),
        made -> {
          check = Optional.of(made);
          stage.set(Stage.READY);
          if (!made.missing().isEmpty()) {
            told.set(Told.problem(made.missing()));
          }
          List<GroundRow> all = made.rows();
          rows.set(all);
          Optional<String> same =
              chosen.get().filter(id -> all.stream().anyMatch(r -> r.id().equals(id)));
          choose(same.or(() -> made.next("")).or(() -> first(all)));
        },
        () -> stage.set(Stage.FAILED));
  }

  private static Optional<String> first(List<GroundRow> rows) {
    return rows.stream().map(GroundRow::id).findFirst();
  }

  /** Takes up what another program or window has added meanwhile. */
  private void reread() {
    GroundCheck now = check.orElseThrow();
    run(
        () -> {
          now.read();
          return now.rows();
        },
        rows::set,
        () -> {});
  }

  /** Clears what was told: whatever is still under way has nothing to tell any more. */
  private void tellNothing() {
    begun++;
    told.set(Told.NOTHING);
  }

  /**
   * Runs work of the vehicle shown; results for another one are dropped, and so is what went wrong
   * with work that something else was begun after.
   */
  private <T> void run(Callable<T> work, Consumer<T> done, Runnable failed) {
    Optional<Vehicle> of = worked;
    int now = begun;
    worker.run(
        work,
        result -> {
          if (of.equals(worked)) {
            done.accept(result);
          }
        },
        e -> {
          if (of.equals(worked)) {
            if (now == begun) {
              told.set(Told.problem(words(e)));
            }
            failed.run();
          }
        });
  }

  private static String words(Exception e) {
    if (!(e instanceof Problem p)) {
      return String.valueOf(e.getMessage());
    }
    return switch (p.field()) {
      case "value", "unit" -> Texts.of("ground.notTaken", p.value(), p.accepted());
      case "vehicle" -> Texts.of("ground.notWhole", p.value());
      default -> p.getMessage();
    };
  }

  // ---- which one -----------------------------------------------------------------------------

  /** Chooses a ground. */
  public void choose(String id) {
    choose(Optional.of(id));
  }

  private void choose(Optional<String> id) {
    chosen.set(id);
    result.set(Optional.empty());
    byOhms.set(false);
    tellNothing();
    id.ifPresent(i -> look(c -> c.view(i)));
  }

  /** What is asked of the grounds at hand. */
  private interface Asked<T> {
    T of(GroundCheck check) throws Problem;
  }

  /** Works out what is shown of the ground in question; only what was asked for last counts. */
  private void look(Asked<GroundView> asks) {
    int now = ++asked;
    GroundCheck at = check.orElseThrow();
    view.set(Optional.empty());
    run(
        () -> asks.of(at),
        made -> {
          if (now == asked) {
            view.set(Optional.of(made));
          }
        },
        () -> {});
  }

  /** Moves the choice up or down. */
  public void move(int by) {
    List<GroundRow> all = rows.get();
    if (stage.get() != Stage.READY || all.isEmpty()) {
      return;
    }
    int at = chosen.get().map(id -> all.stream().map(GroundRow::id).toList().indexOf(id)).orElse(0);
    int to = Math.max(0, Math.min(all.size() - 1, at + by));
    if (to != at) {
      choose(all.get(to).id());
    }
  }

  /** Goes on to the next ground that isn't proven good. */
  public void goOn() {
    check.ifPresent(
        c ->
            run(
                () -> c.next(chosen.get().orElse("")),
                next -> {
                  if (next.isPresent()) {
                    choose(next);
                  } else {
                    told.set(Told.plain(Texts.of("ground.allProven")));
                  }
                },
                () -> {}));
  }

  // ---- what is read --------------------------------------------------------------------------

  /** Takes a reading as it was typed. */
  public void take(String text) {
    act(
        id ->
            c -> {
              GroundResult said = c.take(id, text);
              return new Taken(said, c.rows());
            },
        taken -> {
          result.set(Optional.of(taken.said()));
          rows.set(taken.rows());
        });
  }

  /** Takes what the person's own meter steadily reads. */
  void takeSteady() {
    lookAtMeter();
    meter
        .take()
        .ifPresentOrElse(this::take, () -> told.set(Told.problem(Texts.of("entry.meterNot"))));
  }

  private record Taken(GroundResult said, List<GroundRow> rows) {}

  /** Takes two ohms readings as they were typed: the leads held together, and across the ground. */
  public void takeOhms(String leads, String across) {
    act(id -> c -> c.ohms(id, leads, across), said -> result.set(Optional.of(said)));
  }

  private interface AskedOf<T> {
    Asked<T> of(String id);
  }

  private <T> void act(AskedOf<T> asks, Consumer<T> done) {
    if (stage.get() != Stage.READY || chosen.get().isEmpty() || view.get().isEmpty()) {
      return;
    }
    String id = chosen.get().get();
    GroundCheck at = check.orElseThrow();
    tellNothing();
    run(
        () -> asks.of(id).of(at),
        made -> {
          if (chosen.get().equals(Optional.of(id))) {
            done.accept(made);
          }
        },
        () -> {});
  }

  /** Shows the proof with a greater load on, if there is one. */
  public void greater() {
    boolean there =
        view.get().flatMap(GroundView::proof).filter(GroundView.Proof::greater).isPresent();
    if (there) {
      String id = chosen.get().orElseThrow();
      result.set(Optional.empty());
      look(c -> c.greater(id));
    }
  }

  /** Enters ohms in place of volts, or volts again. */
  public void toggleOhms() {
    byOhms.set(!byOhms.get());
    result.set(Optional.empty());
    tellNothing();
  }

  /** Shows or hides what the ground should have, where its limit comes from and what ohms show. */
  public void toggleDetails() {
    details.set(!details.get());
  }
}
