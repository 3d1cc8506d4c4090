package loopwright.ui.paper;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import loopwright.casework.LoopView;
import loopwright.casework.PaperDesk;
import loopwright.casework.Phrases;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/**
 * The paper check of the vehicle that the window shows. It checks while its place is open; what was
 * found before stays until the new findings are there, and results of an older edit are dropped.
 */
public final class PaperViewModel {

  /** What there is to show. */
  public enum Stage {
    /** No vehicle is open. */
    NO_VEHICLE,
    /** Nothing is known of the vehicle yet. */
    FIRST_CHECK,
    /** It can't be solved yet. */
    UNSOLVED,
    /** It was checked; perhaps nothing was found. */
    CHECKED
  }

  /**
   * Findings of one severity that are shown.
   *
   * @param severity empty for what keeps the plan from being solved
   * @param count how many there are, folded or not
   * @param items those shown; none where it is folded
   * @param folded whether it is folded
   */
  public record Group(
      Optional<Severity> severity, int count, List<PaperItem> items, boolean folded) {
    /** Copies the list. */
    public Group {
      items = List.copyOf(items);
    }
  }

  private record Asked(Vehicle vehicle, double hottest) {}

  private final Phrases phrases = Phrases.inUse();
  private final PlanCheck check;
  private final Worker worker;
  private final Worker drawer;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.NO_VEHICLE);
  private final ReadOnlyObjectWrapper<Optional<Checked>> checked =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Group>> groups = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<PaperItem>> chosen =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Set<String>> opened = new ReadOnlyObjectWrapper<>(Set.of());
  private final ReadOnlyBooleanWrapper checking = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper rulesAwaited = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper verdict = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper change = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper failure = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper hottestProblem = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Optional<LoopView>> loop =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final StringProperty filter = new SimpleStringProperty("");
  private Optional<Vehicle> vehicle = Optional.empty();
  private Optional<Asked> done = Optional.empty();
  private double hottest = PaperDesk.USUAL_SURROUNDINGS;
  private boolean knowUnfolded;
  private boolean open;
  private boolean running;

  /** What should be checked by now, open or not; looked at from the thread that checks. */
  private volatile Optional<Asked> latest = Optional.empty();

  private int drawings;

  /**
   * Makes the view model with no vehicle.
   *
   * @param check checks plans
   * @param worker runs it
   */
  public PaperViewModel(PlanCheck check, Worker worker) {
    this.check = Objects.requireNonNull(check, "check");
    this.worker = Objects.requireNonNull(worker, "worker");
    this.drawer = worker.another();
    filter.addListener(o -> regroup());
    chosen.addListener(o -> draw());
  }

  /** What there is to show. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** The groups shown, worst first. */
  public ReadOnlyObjectProperty<List<Group>> groupsProperty() {
    return groups.getReadOnlyProperty();
  }

  /** The chosen card; empty where none is shown. */
  public ReadOnlyObjectProperty<Optional<PaperItem>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** Keys of the cards whose details are shown. */
  public ReadOnlyObjectProperty<Set<String>> openedProperty() {
    return opened.getReadOnlyProperty();
  }

  /** Whether a check is under way; what is shown may be of an older edit then. */
  public ReadOnlyBooleanProperty checkingProperty() {
    return checking.getReadOnlyProperty();
  }

  /** Whether that check waits for the rules to be compiled. */
  public ReadOnlyBooleanProperty rulesAwaitedProperty() {
    return rulesAwaited.getReadOnlyProperty();
  }

  /** The check in one line. */
  public ReadOnlyStringProperty verdictProperty() {
    return verdict.getReadOnlyProperty();
  }

  /** What the last edit changed; empty after the first check of a vehicle. */
  public ReadOnlyStringProperty changeProperty() {
    return change.getReadOnlyProperty();
  }

  /** Why the last check failed; empty if it didn't. */
  public ReadOnlyStringProperty failureProperty() {
    return failure.getReadOnlyProperty();
  }

  /** What is wrong with the surroundings that were typed; empty if nothing. */
  public ReadOnlyStringProperty hottestProblemProperty() {
    return hottestProblem.getReadOnlyProperty();
  }

  /** The circuit of the chosen card, its part as the one in question; empty where there is none. */
  public ReadOnlyObjectProperty<Optional<LoopView>> loopProperty() {
    return loop.getReadOnlyProperty();
  }

  /** Words that a card must have to be shown: of a part, a circuit, a sentence. */
  public StringProperty filterProperty() {
    return filter;
  }

  /** What was held against limits, and how hot the wires were taken to be; empty before a check. */
  public String extent() {
    return checked
        .get()
        .filter(c -> c.report().unsolved().isEmpty())
        .map(Checked::report)
        .map(r -> Texts.of("paper.extent", r.circuits(), r.figures()) + " " + r.air(phrases))
        .orElse("");
  }

  /** The vehicle shown; empty if none is open. */
  public Optional<Vehicle> vehicle() {
    return vehicle;
  }

  /** Surroundings of the wires at their hottest, in degrees C. */
  public double hottest() {
    return hottest;
  }

  /**
   * Takes surroundings as they were typed.
   *
   * @return whether they were taken; else {@link #hottestProblemProperty} says why not
   */
  public boolean takeHottest(String typed) {
    double value = typed.isBlank() ? PaperDesk.USUAL_SURROUNDINGS : Units.inUse().celsius(typed);
    if (!(value >= PaperDesk.COLDEST_SURROUNDINGS && value <= PaperDesk.HOTTEST_SURROUNDINGS)) {
      hottestProblem.set(
          Texts.of(
              "paper.hottest.problem",
              typed.strip(),
              Units.inUse().degrees(PaperDesk.COLDEST_SURROUNDINGS),
              Units.inUse()
                  .temperature(PaperDesk.HOTTEST_SURROUNDINGS, Language.inUse().locale())));
      return false;
    }
    hottestProblem.set("");
    hottest = value;
    checkIfNeeded();
    return true;
  }

  /** Opens the place: from now on each edit is checked. */
  public void open() {
    open = true;
    checkIfNeeded();
  }

  /** Leaves the place: nothing more is checked. */
  public void close() {
    open = false;
  }

  /** Shows a vehicle, or the one shown as it is now. */
  public void show(Vehicle now) {
    vehicle = Optional.of(now);
    if (checked.get().map(c -> !c.sameVehicle(now)).orElse(true)) {
      checked.set(Optional.empty());
      verdict.set("");
      change.set("");
      failure.set("");
      stage.set(Stage.FIRST_CHECK);
      regroup();
    }
    checkIfNeeded();
  }

  private Optional<Asked> latest() {
    return vehicle.map(v -> new Asked(v, hottest));
  }

  private Optional<Asked> wanted() {
    return latest().filter(a -> open);
  }

  private void checkIfNeeded() {
    latest = latest();
    Optional<Asked> wanted = wanted();
    if (!running && wanted.isPresent() && !wanted.equals(done)) {
      begin(wanted.get());
    } else if (!running) {
      checking.set(false);
    }
  }

  private void begin(Asked asked) {
    running = true;
    rulesAwaited.set(!check.ready());
    checking.set(true);
    worker.run(
        () ->
            Checked.of(
                asked.vehicle(),
                check.check(
                    asked.vehicle(), asked.hottest(), () -> !latest.equals(Optional.of(asked)))),
        result -> finished(asked, () -> take(result)),
        failed -> failed(asked, failed));
  }

  /** A check that was given up is none, even if the edit that it was given up for is undone. */
  private void failed(Asked asked, Exception failed) {
    if (failed instanceof CancellationException) {
      running = false;
      checkIfNeeded();
    } else {
      finished(asked, () -> failure.set(Texts.of("paper.failed", String.valueOf(root(failed)))));
    }
  }

  private static String root(Throwable failed) {
    Throwable at = failed;
    while (at.getCause() != null) {
      at = at.getCause();
    }
    return String.valueOf(at.getMessage());
  }

  /** A result is taken only if nothing was edited meanwhile. */
  private void finished(Asked asked, Runnable take) {
    running = false;
    if (latest().equals(Optional.of(asked))) {
      done = Optional.of(asked);
      failure.set("");
      take.run();
    }
    checkIfNeeded();
  }

  private void take(Checked now) {
    Optional<Checked> before = checked.get().filter(b -> b.sameVehicle(now.vehicle()));
    change.set(before.map(b -> change(b, now)).orElse(""));
    checked.set(Optional.of(now));
    verdict.set(Verdict.of(now.report()));
    regroup();
    stage.set(now.report().unsolved().isEmpty() ? Stage.CHECKED : Stage.UNSOLVED);
  }

  private static String change(Checked before, Checked now) {
    boolean solved = now.report().unsolved().isEmpty();
    if (solved != before.report().unsolved().isEmpty()) {
      return solved ? Texts.of("paper.change.solved") : "";
    }
    return Verdict.change(before.items(), now.items());
  }

  /** The same card, or else the next one that was shown after it, or before it. */
  private Optional<PaperItem> successor(Optional<PaperItem> was, List<PaperItem> order) {
    int at = was.map(order::indexOf).orElse(-1);
    List<PaperItem> nearest = new ArrayList<>();
    if (at >= 0) {
      nearest.addAll(order.subList(at, order.size()));
      List<PaperItem> above = new ArrayList<>(order.subList(0, at));
      Collections.reverse(above);
      nearest.addAll(above);
    }
    List<PaperItem> now = shown();
    return nearest.stream()
        .flatMap(n -> now.stream().filter(i -> i.key().equals(n.key())))
        .findFirst()
        .or(() -> now.stream().findFirst());
  }

  /** All cards shown, in order. */
  public List<PaperItem> shown() {
    return groups.get().stream().flatMap(g -> g.items().stream()).toList();
  }

  private void regroup() {
    List<PaperItem> items = checked.get().map(Checked::items).orElse(List.of());
    String words = filter.get().strip();
    List<PaperItem> wanted = items.stream().filter(i -> words.isEmpty() || i.has(words)).toList();
    List<Group> now = new ArrayList<>();
    add(now, Optional.empty(), wanted, false);
    for (Severity severity : Severity.values()) {
      boolean folded = severity == Severity.KNOW && !knowUnfolded && words.isEmpty();
      add(now, Optional.of(severity), wanted, folded);
    }
    Optional<PaperItem> was = chosen.get();
    List<PaperItem> order = shown();
    groups.set(List.copyOf(now));
    choose(successor(was, order));
  }

  private static void add(
      List<Group> groups, Optional<Severity> severity, List<PaperItem> items, boolean folded) {
    List<PaperItem> of = items.stream().filter(i -> i.severity().equals(severity)).toList();
    if (!of.isEmpty()) {
      groups.add(new Group(severity, of.size(), folded ? List.of() : of, folded));
    }
  }

  private void choose(Optional<PaperItem> item) {
    if (!chosen.get().equals(item)) {
      chosen.set(item);
    }
  }

  /** The drawing before stays until the next one is there. */
  private void draw() {
    int now = ++drawings;
    Optional<Vehicle> drawn = checked.get().map(Checked::vehicle);
    Optional<PaperItem> item = chosen.get();
    Consumer<Optional<LoopView>> show =
        found -> {
          if (now == drawings) {
            loop.set(found);
          }
        };
    drawer.run(
        () -> item.flatMap(i -> drawn.flatMap(i::drawing)),
        show,
        failed -> show.accept(Optional.empty()));
  }

  /** Chooses a card. */
  public void choose(PaperItem item) {
    choose(Optional.of(item));
  }

  /** Moves the choice up or down. */
  public void move(int by) {
    List<PaperItem> all = shown();
    int at = chosen.get().map(all::indexOf).orElse(-1);
    if (!all.isEmpty()) {
      choose(all.get(Math.max(0, Math.min(all.size() - 1, at + by))));
    }
  }

  /** Shows or hides the details of the chosen card. */
  public void toggleDetails() {
    chosen
        .get()
        .ifPresent(
            item -> {
              Set<String> now = new HashSet<>(opened.get());
              if (!now.remove(item.key())) {
                now.add(item.key());
              }
              opened.set(Set.copyOf(now));
            });
  }

  /** Folds or unfolds what is worth knowing. */
  public void toggleKnow() {
    knowUnfolded = !knowUnfolded;
    regroup();
    if (knowUnfolded) {
      shown().stream().filter(i -> !i.isDefect()).findFirst().ifPresent(this::choose);
    }
  }

  /** Where the chosen card is mended: a part or circuit. */
  public Optional<String> target() {
    return chosen.get().flatMap(PaperItem::target);
  }

  /** What the chosen card's mender should do, to be read in the tables. */
  public String task() {
    return chosen
        .get()
        .map(
            item ->
                item.cure().isEmpty()
                    ? Texts.of("paper.task.unsolved", item.says())
                    : Texts.of("paper.task", item.says(), item.cure()))
        .orElse("");
  }
}
