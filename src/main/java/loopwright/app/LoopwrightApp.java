package loopwright.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import loopwright.casework.CaseDesk;
import loopwright.casework.CircuitLoops;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanWatch;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.RulesElsewhere;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.PatternWords;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.KeptCases;
import loopwright.io.UnsavedFiles;
import loopwright.io.VehicleFiles;
import loopwright.io.instrument.Instruments;
import loopwright.io.sheet.SheetFiles;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;
import loopwright.ui.ReadyCases;
import loopwright.ui.Worker;
import loopwright.ui.cases.CaseShelf;
import loopwright.ui.ground.GroundPage;
import loopwright.ui.lists.PrintPage;
import loopwright.ui.paper.PlanCheck;
import loopwright.ui.practise.PractiseSource;
import loopwright.ui.prove.CircuitPage;
import loopwright.ui.sheet.ListOutPage;
import loopwright.ui.sheet.SheetPage;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.shell.RulesViewModel;
import loopwright.ui.shell.RulesWindow;
import loopwright.ui.starting.AddCircuitPage;
import loopwright.ui.starting.NewVehiclePage;
import loopwright.ui.wiring.Keeping;

/** The desktop window. */
public class LoopwrightApp extends Application {
  private static final Vehicles VEHICLES = new Vehicles();

  /** What needs no window, begun while the toolkit starts; then the demo vehicles are read. */
  private record Begun(
      CompletableFuture<Engine> engine, CompletableFuture<List<ReadyCase>> cases) {}

  private static Optional<Begun> begun = Optional.empty();

  private ExecutorService background;

  /** Opens the window; returns when it is closed. */
  static void open(String[] args) {
    if (args.length == 0) {
      Path data = Places.data();
      CompletableFuture<Engine> engine = CompletableFuture.supplyAsync(() -> new Engine(data));
      // Not by whoever waits for them: that is the window's thread. One after the other, since both
      // open the program's own file.
      CompletableFuture<List<ReadyCase>> cases = engine.thenApplyAsync(e -> Practice.cases());
      cases.thenRunAsync(() -> Vehicles.DEMO.forEach(VEHICLES::demo));
      begun = Optional.of(new Begun(engine, cases));
    }
    launch(LoopwrightApp.class, args);
  }

  @Override
  public void start(Stage stage) {
    background =
        new ThreadPoolExecutor(
            0,
            Integer.MAX_VALUE,
            1,
            TimeUnit.MINUTES,
            new SynchronousQueue<>(),
            work -> {
              Thread thread = new Thread(work, "background");
              thread.setDaemon(true);
              return thread;
            },
            // Once the window is closed nothing is begun any more.
            new ThreadPoolExecutor.DiscardPolicy());
    KeptPreferences preferences = new KeptPreferences(Places.settings());
    Optional<Path> rules =
        Optional.ofNullable(getParameters()).flatMap(p -> Main.rules(p.getRaw()));
    if (rules.isPresent()) {
      ask(stage, rules.get(), preferences);
    } else {
      Engine engine = begun.map(b -> b.engine().join()).orElseGet(() -> new Engine(Places.data()));
      open(stage, engine, preferences);
    }
  }

  private void ask(Stage stage, Path folder, KeptPreferences preferences) {
    AtomicReference<Engine> taken = new AtomicReference<>();
    RulesElsewhere rules;
    try {
      rules =
          new FolderRules(
              folder, Places.data(), book -> taken.set(new Engine(Places.data(), book)));
    } catch (Problem e) {
      rules = new Unreadable(e);
    }
    RulesViewModel question =
        new RulesViewModel(
            rules,
            new Worker(background, Platform::runLater),
            () -> {
              Engine engine = taken.get();
              open(stage, engine == null ? new Engine(Places.data()) : engine, preferences);
            });
    RulesWindow.ask(stage, question, folder.toString(), preferences);
  }

  /** A folder that holds no rules: there is nothing to ask, only to tell. */
  private record Unreadable(Problem why) implements RulesElsewhere {
    @Override
    public List<Rule> rules() {
      return List.of();
    }

    @Override
    public String fingerprint() {
      return "";
    }

    @Override
    public boolean allowedBefore() {
      return true;
    }

    @Override
    public void take() throws Problem {
      throw why;
    }
  }

  private void open(Stage stage, Engine engine, KeptPreferences preferences) {
    CompletableFuture<List<ReadyCase>> cases =
        begun.map(Begun::cases).orElseGet(() -> CompletableFuture.supplyAsync(Practice::cases));
    Path data = Places.data();
    Path home = Path.of(Places.here().user());
    Loops loops = new Loops(engine);
    Basis basis = new Basis(engine.knowledge(), PatternWords.inUse());
    CaseArchive archive = new KeptCases(Engine.store(data), Clock.systemDefaultZone());
    MainWindow window =
        new MainWindow(
            new Fittings(
                    engine.desk(),
                    new Library(VEHICLES, preferences),
                    loops,
                    engine.knowledge().meters(),
                    preferences,
                    background)
                .ready(new Ready(engine, cases))
                .keeping(
                    new Keeping(
                        new VehicleFiles(), new UnsavedFiles(data.resolve("unsaved")), home))
                .pages(
                    List.of(
                        new NewVehiclePage(basis, loops),
                        new AddCircuitPage(basis, loops),
                        new SheetPage(new SheetFiles()),
                        new ListOutPage(new SheetFiles()),
                        new PrintPage(new PrintFiles(engine, Clock.systemDefaultZone()), home)))
                .check(new Checks(engine))
                .practise(
                    new PractiseSource(
                        engine.practiseDesk(),
                        Vehicles.DEMO,
                        VEHICLES::demo,
                        Optional.of(
                            new ClassSheetFiles(
                                engine.phrases(), Clock.systemDefaultZone(), home))))
                .proofs(
                    List.of(
                        new CircuitPage(engine.proveDesk(), preferences, background),
                        new GroundPage(engine.groundDesk(), preferences, background)))
                .shelf(
                    new CaseShelf(
                        archive,
                        new KeptCaseFiles(archive, engine.phrases(), Clock.systemDefaultZone()),
                        home))
                .explain(new ExplainDesk(engine.knowledge(), engine.phrases()))
                .ownMeters(new Instruments())
                .startScreen());
    stage.setTitle("Loopwright");
    window.show(stage);
    ReadyToType.then(stage, engine::compileRules);
  }

  @Override
  public void stop() {
    if (background != null) {
      background.shutdown();
    }
  }

  /** The ready-made cases with their practice meters. */
  private record Ready(Engine engine, CompletableFuture<List<ReadyCase>> cases)
      implements ReadyCases {
    /** Five checks on the demo vehicle that a new window opens. */
    private static final String FIRST = "beacon-ground";

    @Override
    public List<Entry> entries() {
      return cases.join().stream()
          .map(c -> new Entry(c.id(), c.title(), c.vehicle(), c.story()))
          .toList();
    }

    @Override
    public Optional<Entry> first() {
      return entries().stream().filter(e -> e.id().equals(FIRST)).findFirst();
    }

    @Override
    public Opened open(String id, Vehicle vehicle, CaseDesk.Progress progress) throws Problem {
      ReadyCase ready =
          cases.join().stream()
              .filter(c -> c.id().equals(id))
              .findFirst()
              .orElseThrow(() -> new Problem("case", id, "a ready-made case"));
      SimulatedMeter meter = Practice.meter(engine, ready, vehicle);
      FindCase found = engine.desk().open(CaseDesk.NewCase.practice(ready, vehicle), progress);
      return new Opened(meter.following(found), meter::read);
    }
  }

  /** The paper check over the engine's rules. */
  private static final class Checks implements PlanCheck {
    private final Engine engine;
    private final PlanWatch watch;

    Checks(Engine engine) {
      this.engine = engine;
      this.watch = engine.paperDesk().watch();
    }

    @Override
    public PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
      return watch.check(vehicle, hottest, stale);
    }

    @Override
    public boolean ready() {
      return engine.rulesReady();
    }
  }

  /** Loops of the vehicle shown; its network is built once. */
  private static final class Loops implements LoopSource {
    private final Engine engine;
    private final Map<Vehicle, CircuitLoops> known = new HashMap<>();

    Loops(Engine engine) {
      this.engine = engine;
    }

    @Override
    public synchronized Optional<LoopView> loop(Vehicle vehicle, String circuit) {
      if (!known.containsKey(vehicle)) {
        known.clear();
        known.put(vehicle, engine.loops(vehicle));
      }
      return known.get(vehicle).loop(circuit);
    }
  }
}
