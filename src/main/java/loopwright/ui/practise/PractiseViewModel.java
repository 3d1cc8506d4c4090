package loopwright.ui.practise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.CaseDesk;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.SettingView;
import loopwright.casework.Sketch;
import loopwright.casework.practise.ClassSheet;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Drilling;
import loopwright.casework.practise.Expectation;
import loopwright.casework.practise.FaultKind;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.Progress;
import loopwright.casework.practise.Step;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;

/** Practice: which drill, what the hands are about to do, what came of it. */
public final class PractiseViewModel {

  /** What there is to show. */
  public enum Stage {
    /** A drill is to be chosen. */
    CHOOSE,
    /** It is made. */
    MAKING,
    /** It is played. */
    PLAYING,
    /** What there is to learn from it. */
    DEBRIEF
  }

  private final PractiseSource source;
  private final Worker worker;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.CHOOSE);
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private final ReadOnlyIntegerWrapper changes = new ReadOnlyIntegerWrapper();
  private final ReadOnlyBooleanWrapper asks = new ReadOnlyBooleanWrapper();
  private boolean printing;
  private final Random random = new Random();
  private Optional<String> name = Optional.empty();
  private Optional<Vehicle> vehicle = Optional.empty();
  private List<Level> levels = List.of();
  private Optional<Progress> progress = Optional.empty();
  private Optional<Drilling> drilling = Optional.empty();
  private Optional<Debrief> debrief = Optional.empty();
  private Optional<LoopView> drawn = Optional.empty();
  private List<PointView> points = List.of();
  private List<PartView> parts = List.of();
  private List<Setting> settings = List.of();
  private Doing doing = Doing.VOLTS;
  private Setting setting = Setting.REST;
  private int red;
  private int black;
  private int part;
  private int step;
  private final Set<String> named = new LinkedHashSet<>();
  private Optional<FaultKind> how = Optional.empty();
  private boolean foretelling;
  private final Set<String> foretold = new LinkedHashSet<>();
  private boolean none;
  private boolean working;

  /**
   * Makes the view model.
   *
   * @param source where drills come from
   * @param worker runs what takes a while
   */
  public PractiseViewModel(PractiseSource source, Worker worker) {
    this.source = source;
    this.worker = worker;
  }

  /** What there is to show. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** What was told last. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Counts up with everything that changes what is shown. */
  public ReadOnlyIntegerProperty changesProperty() {
    return changes.getReadOnlyProperty();
  }

  /** Whether it is asked before each reading what is expected. */
  public ReadOnlyBooleanProperty asksProperty() {
    return asks.getReadOnlyProperty();
  }

  private void changed() {
    changes.set(changes.get() + 1);
  }

  // ---- which drill ---------------------------------------------------------------------------

  /** Takes a vehicle, or the one at hand as it is now. */
  public void show(String vehicleName, Vehicle now) {
    name = Optional.of(vehicleName);
    vehicle = Optional.of(now);
    levels = List.of();
  }

  /** The page is in sight: works out which levels the vehicle has. */
  public void opened() {
    if (stage.get() != Stage.CHOOSE) {
      return;
    }
    record Found(List<Level> levels, Progress progress) {}
    Optional<Vehicle> of = vehicle;
    run(
        () ->
            new Found(
                of.isPresent() ? source.desk().levels(of.get()) : List.of(),
                source.desk().progress()),
        found -> {
          levels = found.levels();
          progress = Optional.of(found.progress());
        });
  }

  /** The name of the vehicle at hand; empty without one. */
  public String vehicleName() {
    return vehicle.map(Vehicle::name).orElse("");
  }

  /** Levels that the vehicle has something for. */
  public List<Level> levels() {
    return levels;
  }

  /** How it went so far; empty until it has been read. */
  public Optional<Progress> progress() {
    return progress;
  }

  /** Asks what is expected before each reading, or no longer. */
  public void toggleAsks() {
    asks.set(!asks.get());
    changed();
  }

  /** Whether class sheets can be printed. */
  public boolean printsSheets() {
    return source.sheets().isPresent();
  }

  /** Whether what is chosen is printed as a class sheet instead of played. */
  public boolean printing() {
    return printing;
  }

  /** Prints class sheets from now on, or no longer. */
  public void togglePrinting() {
    printing = printsSheets() && !printing;
    told.set(Told.NOTHING);
    changed();
  }

  /** Begins a new drill of a level on the vehicle at hand, or prints a sheet of such. */
  public void begin(Level level) {
    if (vehicle.isEmpty() || !levels.contains(level)) {
      return;
    }
    int number = source.demo().indexOf(name.orElse("")) + 1;
    begin(source.desk().anyCode(level, number, vehicle.get(), random), vehicle.get());
  }

  /** Begins the drill of a code as it was typed, or prints the sheet of that code. */
  public void begin(String text) {
    try {
      DrillCode code = DrillCode.parse(text);
      Optional<Vehicle> of =
          code.vehicle() == DrillCode.OWN
              ? vehicle
              : Optional.of(code.vehicle() - 1)
                  .filter(n -> n < source.demo().size())
                  .flatMap(n -> source.vehicles().apply(source.demo().get(n)));
      if (of.isEmpty()) {
        told.set(Told.problem(Texts.of("practise.noVehicle")));
        changed();
        return;
      }
      begin(code, of.get());
    } catch (Problem p) {
      told.set(Told.problem(Texts.of("practise.noCode", p.value())));
      changed();
    }
  }

  private void begin(DrillCode code, Vehicle of) {
    stage.set(Stage.MAKING);
    if (printing) {
      run(
          () ->
              source
                  .sheets()
                  .orElseThrow()
                  .write(ClassSheet.of(code, of, source.desk(), CaseDesk.Progress.SILENT)),
          file -> {
            stage.set(Stage.CHOOSE);
            told.set(Told.plain(Texts.of("practise.sheet.written", code.toString(), file)));
          });
      return;
    }
    run(() -> source.desk().open(code, of, CaseDesk.Progress.SILENT), this::play);
  }

  private void play(Drilling made) {
    drilling.ifPresent(Drilling::close);
    drilling = Optional.of(made);
    debrief = Optional.empty();
    drawn = new Sketch(made.vehicle()).of(made.circuit());
    points = made.points().stream().filter(PointView::reachable).toList();
    parts = made.parts();
    Set<Setting> all = new LinkedHashSet<>(List.of(Setting.REST, made.on()));
    made.settings().stream()
        .map(SettingView::setting)
        .filter(s -> s.apart().isEmpty())
        .forEach(all::add);
    settings = List.copyOf(all);
    doing = Doing.VOLTS;
    setting = Setting.REST;
    red = Math.max(0, at(made.vehicle().feedPost()));
    black = Math.max(0, at(made.vehicle().groundedPost()));
    part = 0;
    step = 0;
    named.clear();
    how = Optional.empty();
    foretelling = false;
    stage.set(Stage.PLAYING);
  }

  private int at(TerminalRef point) {
    return points.stream().map(PointView::ref).toList().indexOf(point);
  }

  /** The same drill once more. */
  public void again() {
    drilling.ifPresent(
        d -> {
          stage.set(Stage.MAKING);
          run(() -> source.desk().again(d, CaseDesk.Progress.SILENT), this::play);
        });
  }

  /** Back to the choice of drills. */
  public void leave() {
    stage.set(Stage.CHOOSE);
    opened();
  }

  // ---- what the hands are about to do --------------------------------------------------------

  /** The drill that is played; empty before the first. */
  public Optional<Drilling> drilling() {
    return drilling;
  }

  /** The circuit drawn from its wiring alone. */
  public Optional<LoopView> drawn() {
    return drawn;
  }

  /** What is to be done next. */
  public Doing doing() {
    return doing;
  }

  /** Chooses what is to be done next. */
  public void choose(Doing what) {
    String inHand = LoadRef.parse(choice()).part();
    doing = what;
    part = choiceOf(inHand, 0);
    changed();
  }

  /** How the vehicle is to stand for it. */
  public Setting setting() {
    return setting;
  }

  /** The next setting of the switches. */
  public void nextSetting() {
    int now = settings.indexOf(Setting.of(setting.positions()));
    Setting next = settings.get((now + 1) % settings.size());
    setting = new Setting(next.positions(), setting.apart());
    changed();
  }

  /** Takes the battery's lead off, or puts it back. */
  public void toggleBattery() {
    drilling.ifPresent(d -> toggleApart(d.vehicle().battery().id()));
  }

  /** Takes out the part under the red lead or in hand, or puts it back, where it comes apart. */
  public void togglePulled() {
    String id = doing.leads() ? points.get(red).ref().part() : choice();
    boolean comesApart = parts.stream().anyMatch(p -> p.apart().filter(id::equals).isPresent());
    if (!comesApart) {
      told.set(Told.problem(Texts.of("practise.notApart", title(id))));
      changed();
      return;
    }
    toggleApart(id);
  }

  private void toggleApart(String id) {
    SortedSet<String> apart = new TreeSet<>(setting.apart());
    if (!apart.remove(id)) {
      apart.add(id);
    }
    setting = new Setting(setting.positions(), apart);
    told.set(Told.NOTHING);
    changed();
  }

  private String title(String id) {
    return drilling.map(d -> d.vehicle().requirePart(id).title()).orElse(id);
  }

  /** How the vehicle is to stand, in words. */
  public String settingWords() {
    List<String> words = new ArrayList<>();
    setting.positions().forEach((c, p) -> words.add(Texts.of("practise.position", title(c), p)));
    setting.apart().forEach(id -> words.add(Texts.of("practise.apart", title(id))));
    return words.isEmpty() ? Texts.of("practise.atRest") : String.join(", ", words);
  }

  /** Where the red lead is. */
  public PointView red() {
    return points.get(red);
  }

  /** Where the black lead is. */
  public PointView black() {
    return points.get(black);
  }

  private List<String> choices() {
    return doing.looks()
        ? parts.stream()
            .filter(p -> p.checks().containsKey(doing.kind()))
            .map(PartView::subject)
            .toList()
        : parts.stream().map(p -> LoadRef.parse(p.subject()).part()).distinct().toList();
  }

  /** The part in hand, looked at or named: its id, with its function where it has several. */
  public String choice() {
    List<String> all = choices();
    return all.isEmpty() ? "" : all.get(Math.min(part, all.size() - 1));
  }

  /** The same in words. */
  public String choiceTitle() {
    String subject = choice();
    return parts.stream()
        .filter(p -> doing.looks() && p.subject().equals(subject))
        .map(PartView::title)
        .findFirst()
        .orElseGet(() -> title(LoadRef.parse(subject).part()));
  }

  /** What can be seen in what is set up; empty for the meter. */
  private List<Seen> answers() {
    return parts.stream()
        .filter(p -> doing.looks() && p.subject().equals(choice()))
        .findFirst()
        .map(p -> p.checks().getOrDefault(doing.kind(), List.of()))
        .orElse(List.of());
  }

  /** What can be expected by its number, in words; empty for the meter. */
  public String expectable() {
    List<Seen> answers = answers();
    return IntStream.range(0, answers.size())
        .mapToObj(
            i -> Texts.of("practise.expected.seen", i + 1, Texts.of(doing.kind(), answers.get(i))))
        .collect(Collectors.joining(" · "));
  }

  private static Expectation expectation(
      CheckKind kind, List<Seen> answers, String typed, Optional<Set<String>> parts)
      throws Problem {
    int number = typed.strip().matches("[1-9]") ? Integer.parseInt(typed.strip()) : 0;
    return number >= 1 && number <= answers.size()
        ? new Expectation(Optional.empty(), Optional.of(answers.get(number - 1)), parts)
        : Expectation.of(kind, typed, parts);
  }

  /** Whether what was typed as expected is understood; says why not. */
  public boolean understands(String typed) {
    try {
      expectation(doing.kind(), answers(), typed, Optional.empty());
      return true;
    } catch (Problem p) {
      told.set(notTaken(p));
      return false;
    }
  }

  private static Told notTaken(Problem p) {
    return Told.problem(Texts.of("practise.notTaken", p.value(), p.accepted()));
  }

  // ---- what the check will tell --------------------------------------------------------------

  /** Asks of which parts the check will tell; false if there is nothing to ask. */
  public boolean startForetelling() {
    foretelling = !working && drilling.filter(d -> !d.asked().isEmpty()).isPresent();
    foretold.clear();
    none = false;
    changed();
    return foretelling;
  }

  /** Whether it is asked just now of which parts the check will tell. */
  public boolean foretelling() {
    return foretelling;
  }

  /** Leaves the question without taking the check. */
  public void leaveForetelling() {
    foretelling = false;
    changed();
  }

  /** The parts asked for, in the order of their keys 1, 2, 3...; they are asked by title. */
  public List<String> askedTitles() {
    return asked().stream().map(this::title).toList();
  }

  private List<String> asked() {
    return drilling.map(Drilling::asked).orElse(List.of());
  }

  /** Whether a part is said to show, by its number from 0. */
  public boolean foretold(int number) {
    return foretold.contains(asked().get(number));
  }

  /** Whether none is said to show. */
  public boolean foretoldNone() {
    return none;
  }

  /** Says of a part that its failure would show, or no longer; by its number from 0. */
  public void toggleForetold(int number) {
    if (number < asked().size()) {
      String part = asked().get(number);
      if (!foretold.remove(part)) {
        foretold.add(part);
      }
      none = false;
      changed();
    }
  }

  /** Says that none of them would show, or no longer. */
  public void toggleForetoldNone() {
    none = !none;
    foretold.clear();
    changed();
  }

  /** Titles of all parts that are named together. */
  public List<String> namedTitles() {
    return named.stream().map(this::title).toList();
  }

  /** Puts the part in question to those that are named together, or takes it out. */
  public void toggleNamed() {
    if (doing == Doing.NAME && !named.remove(choice())) {
      named.add(choice());
    }
    changed();
  }

  /** The parts that are accused: those named together, else the one in question. */
  private Set<String> accused() {
    return named.isEmpty() ? Set.of(choice()) : Set.copyOf(named);
  }

  /** The kinds of failure that can be named of what is accused; none where there is no choice. */
  private List<FaultKind> kinds() {
    if (doing != Doing.NAME || drilling.isEmpty()) {
      return List.of();
    }
    List<FaultKind> all =
        accused().stream()
            .flatMap(p -> drilling.get().kinds(p).stream())
            .distinct()
            .sorted()
            .toList();
    return all.size() > 1 ? all : List.of();
  }

  /** Whether it can be said how it has failed. */
  public boolean saysHow() {
    return !kinds().isEmpty();
  }

  /** How it is said to have failed; empty if that isn't said. */
  public Optional<FaultKind> how() {
    return how.filter(kinds()::contains);
  }

  /** The next kind of failure; after the last one none is said. */
  public void nextHow() {
    List<FaultKind> all = kinds();
    int next = how().map(all::indexOf).orElse(-1) + 1;
    how = next < all.size() ? Optional.of(all.get(next)) : Optional.empty();
    changed();
  }

  /** Moves the red lead or the choice of a part. */
  public void move(int by) {
    if (doing.leads()) {
      red = Math.floorMod(red + by, points.size());
    } else {
      part = Math.floorMod(part + by, Math.max(1, choices().size()));
    }
    changed();
  }

  /** Moves the black lead. */
  public void moveBlack(int by) {
    if (doing.leads()) {
      black = Math.floorMod(black + by, points.size());
      changed();
    }
  }

  /**
   * A piece of the drawing was chosen: a lead goes there, or it is looked at or named, or said to
   * show.
   *
   * @param id id of the part
   * @param at points where the lead is meant to go, the first that can be reached
   * @param toBlack whether it is the black lead
   */
  public void pick(String id, List<TerminalRef> at, boolean toBlack) {
    if (foretelling) {
      if (asked().contains(id)) {
        toggleForetold(asked().indexOf(id));
      }
      return;
    }
    if (doing.leads()) {
      int point =
          at.stream()
              .map(this::at)
              .filter(i -> i >= 0)
              .findFirst()
              .orElseGet(() -> first(points.stream().map(p -> p.ref().part()).toList(), id, -1));
      black = toBlack && point >= 0 ? point : black;
      red = !toBlack && point >= 0 ? point : red;
    } else {
      part = choiceOf(id, part);
    }
    changed();
  }

  private int choiceOf(String id, int otherwise) {
    return first(choices().stream().map(c -> LoadRef.parse(c).part()).toList(), id, otherwise);
  }

  private static int first(List<String> ids, String id, int otherwise) {
    int at = ids.indexOf(id);
    return at < 0 ? otherwise : at;
  }

  // ---- doing it ------------------------------------------------------------------------------

  /** What was done last. */
  public Optional<Step> last() {
    return drilling
        .map(Drilling::steps)
        .filter(all -> !all.isEmpty())
        .map(all -> all.get(all.size() - 1));
  }

  /** Whether something is worked out just now. */
  public boolean working() {
    return working;
  }

  /**
   * Does what is set up.
   *
   * @param expected what is expected, as it was typed, or its number; empty if nothing
   */
  public void act(String expected) {
    if (working || drilling.isEmpty() || stage.get() != Stage.PLAYING) {
      return;
    }
    Drilling at = drilling.get();
    Doing what = doing;
    Setting in = setting;
    PointView from = points.get(red);
    PointView to = points.get(black);
    Set<String> accused = accused();
    Optional<FaultKind> failed = how();
    String subject = choice();
    List<Seen> seen = answers();
    Optional<Set<String>> parts =
        foretold.isEmpty() && !none ? Optional.empty() : Optional.of(Set.copyOf(foretold));
    foretelling = false;
    foretold.clear();
    none = false;
    run(
        () ->
            switch (what) {
              case AMPS -> at.amps(from.ref(), to.ref(), in);
              case NAME -> at.accuse(accused, failed);
              default -> {
                OwnCheck check =
                    new OwnCheck(
                        what.kind(),
                        Optional.of(from.ref()).filter(r -> what.leads()),
                        Optional.of(to.ref()).filter(r -> what.leads()),
                        Optional.of(subject).filter(s -> !what.leads()),
                        in);
                Optional<Expectation> expects =
                    asks.get()
                        ? Optional.of(expectation(what.kind(), seen, expected, parts))
                        : Optional.empty();
                yield at.take(check, expects);
              }
            },
        done -> {
          named.clear();
          how = Optional.empty();
        });
  }

  /** Puts a new fuse into the meter. */
  public void newMeterFuse() {
    drilling.filter(d -> !working).ifPresent(d -> run(d::newMeterFuse, done -> {}));
  }

  private <T> void run(Callable<T> work, Consumer<T> done) {
    working = true;
    told.set(Told.NOTHING);
    changed();
    worker.run(
        work,
        result -> {
          working = false;
          done.accept(result);
          changed();
        },
        e -> {
          working = false;
          if (stage.get() == Stage.MAKING) {
            stage.set(Stage.CHOOSE);
          }
          told.set(
              e instanceof Problem p ? notTaken(p) : Told.problem(String.valueOf(e.getMessage())));
          changed();
        });
  }

  // ---- the debrief ---------------------------------------------------------------------------

  /** Ends the drill. */
  public void end() {
    if (working || drilling.isEmpty() || stage.get() != Stage.PLAYING) {
      return;
    }
    Drilling at = drilling.get();
    run(
        () -> source.desk().finish(at),
        made -> {
          debrief = Optional.of(made);
          step = 0;
          stage.set(Stage.DEBRIEF);
        });
  }

  /** What there is to learn; empty while it is played. */
  public Optional<Debrief> debrief() {
    return debrief;
  }

  /** Number of the step that is shown, from 0. */
  public int shownStep() {
    return step;
  }

  /** Shows another step. */
  public void moveStep(int by) {
    int all = debrief.map(d -> d.own().steps().size()).orElse(0);
    step = Math.max(0, Math.min(all - 1, step + by));
    changed();
  }
}
