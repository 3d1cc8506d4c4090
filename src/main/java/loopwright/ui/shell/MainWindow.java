package loopwright.ui.shell;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.image.Image;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.stage.Stage;
import javafx.stage.Window;
import javafx.stage.WindowEvent;
import loopwright.casework.CaseEvent;
import loopwright.model.Circuit;
import loopwright.ui.Fonts;
import loopwright.ui.Look;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.Worker;
import loopwright.ui.cases.CaseRow;
import loopwright.ui.cases.CasesScreen;
import loopwright.ui.cases.CasesViewModel;
import loopwright.ui.cases.OwnRecordSwitch;
import loopwright.ui.explain.ExplainScreen;
import loopwright.ui.explain.ExplainViewModel;
import loopwright.ui.find.CaseViewModel;
import loopwright.ui.find.ComplaintViewModel;
import loopwright.ui.find.FindScreen;
import loopwright.ui.find.FindViewModel;
import loopwright.ui.home.HomeScreen;
import loopwright.ui.home.HomeScreen.Errand;
import loopwright.ui.home.HomeViewModel;
import loopwright.ui.home.Recent;
import loopwright.ui.paper.PaperScreen;
import loopwright.ui.paper.PaperViewModel;
import loopwright.ui.practise.PractiseScreen;
import loopwright.ui.practise.PractiseViewModel;
import loopwright.ui.prove.ProveScreen;
import loopwright.ui.shell.ShellViewModel.Place;
import loopwright.ui.vehicle.VehicleScreen;
import loopwright.ui.vehicle.VehicleViewModel;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.WiringPage;
import loopwright.ui.wiring.WiringScreen;
import loopwright.ui.wiring.WiringViewModel;
import org.kordamp.ikonli.javafx.FontIcon;

/** The window: one frame around all views. Make and use it on the window's thread. */
public final class MainWindow {
  /** Width that all views are made for, in pixels. */
  public static final double LEAST_WIDTH = 1024;

  /** Height that all views are made for, in pixels. */
  public static final double LEAST_HEIGHT = 700;

  /** Numbers of the pages in the place Prove. */
  private static final int FIRST_POWER = 1;

  private static final int GROUND = 2;

  private static final double WIDEST = 92;
  private static final double WIDE = 70;
  private static final double MEDIUM = 60;
  private static final double SHORT = 56;
  private static final double MIDDLE = Looks.NARROW;
  private static final double NARROWEST = 36;

  /** Places that the bar has at any width. */
  private static final Set<Place> IN_BAR =
      EnumSet.of(Place.VEHICLE, Place.FIND, Place.CASES, Place.PAPER, Place.WIRING, Place.PROVE);

  private final ShellViewModel shell;
  private final VehicleViewModel vehicle;
  private final FindViewModel find;
  private final CasesViewModel cases;
  private final WiringViewModel wiring;
  private final PaperViewModel paper;
  private final OnDemand<VehicleScreen> vehicleScreen;
  private final OnDemand<FindScreen> findScreen;
  private final OnDemand<CasesScreen> casesScreen;
  private final OnDemand<WiringScreen> wiringScreen;
  private final OnDemand<PaperScreen> paperScreen;
  private final OnDemand<ProveScreen> proveScreen;
  private final Optional<OnDemand<PractiseScreen>> practiseScreen;
  private final Optional<PractiseViewModel> practise;
  private final Optional<OnDemand<ExplainViewModel>> explain;
  private final Optional<OnDemand<ExplainScreen>> explainScreen;
  private final Optional<HomeScreen> home;
  private final OnDemand<Node> keysScreen;
  private final ReadyCases ready;
  private final BorderPane root = new BorderPane();
  private final HBox bar = Parts.row("top-bar");

  /** Ems that the bar is filled for. */
  private double room = MIDDLE;

  private Place before = Place.VEHICLE;

  /** Builds the window of what it is fitted with. */
  public MainWindow(Fittings fittings) {
    ready = fittings.ready;
    Fonts.load();
    Worker worker = new Worker(fittings.background, Platform::runLater);
    shell = new ShellViewModel(fittings.preferences);
    vehicle = new VehicleViewModel(fittings.library, fittings.loops, fittings.preferences, worker);
    find =
        new FindViewModel(
            fittings.desk,
            new ComplaintViewModel(fittings.desk, fittings.meters, fittings.preferences),
            worker.another());
    cases =
        new CasesViewModel(
            fittings.shelf,
            new OwnRecordSwitch(fittings.preferences, fittings.desk::countOwnRecord),
            worker.another());
    wiring = new WiringViewModel(fittings.keeping, worker.another(), vehicle::edited);
    paper = new PaperViewModel(fittings.check, worker.another());
    List<WiringPage> toRead =
        fittings.pages.stream().filter(p -> p.needs() == WiringPage.Needs.TO_READ).toList();
    vehicleScreen =
        new OnDemand<>(
            () ->
                new VehicleScreen(
                    vehicle, shell.emProperty(), this::complain, toRead, worker.another()));
    findScreen = new OnDemand<>(() -> new FindScreen(find, shell.emProperty()));
    casesScreen =
        new OnDemand<>(
            () ->
                new CasesScreen(
                    cases,
                    this::reopen,
                    this::attach,
                    ready.entries(),
                    this::practise,
                    shell.emProperty()));
    wiringScreen =
        new OnDemand<>(() -> new WiringScreen(wiring, shell.emProperty(), fittings.pages));
    paperScreen =
        new OnDemand<>(
            () -> new PaperScreen(paper, shell.emProperty(), this::mend, toRead, worker.another()));
    proveScreen = new OnDemand<>(() -> proveScreen(fittings));
    practise = fittings.practise.map(p -> new PractiseViewModel(p, worker.another()));
    practiseScreen =
        practise.map(p -> new OnDemand<>(() -> new PractiseScreen(p, shell.emProperty())));
    explain =
        fittings.explain.map(
            desk -> new OnDemand<>(() -> new ExplainViewModel(desk, worker.another())));
    explainScreen =
        explain.map(
            model ->
                new OnDemand<>(
                    () ->
                        new ExplainScreen(
                            model.get(), shell.emProperty(), this::leaveHelp, this::help)));
    home = fittings.startScreen ? Optional.of(home(fittings, worker.another())) : Optional.empty();
    home.ifPresent(h -> shell.placeProperty().set(Place.HOME));
    keysScreen = new OnDemand<>(() -> KeysPage.make(shell));
    fittings.ownMeters.ifPresent(find.complaint().ownMeter()::through);
    root.setId("window");
    root.getStyleClass().add("window");
    root.setTop(bar);
    root.addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    shell.placeProperty().addListener(o -> showPlace());
    shell.lookProperty().addListener(o -> applyLook());
    shell.emProperty().addListener(o -> applyLook());
    vehicle.vehicleProperty().addListener(o -> vehicleChanged());
    // What is worked on may not be solvable; the others never see it then.
    wiring.vehicleProperty().addListener((o, was, is) -> is.ifPresent(paper::show));
    find.openCaseProperty().addListener(o -> fillBar());
    root.widthProperty().addListener(o -> fillBar());
    applyLook();
    showPlace();
    if (home.isPresent()) {
      vehicle.loadLastOrDemo();
    } else {
      vehicle.loadLast();
    }
  }

  private ProveScreen proveScreen(Fittings fittings) {
    ProveScreen screen =
        new ProveScreen(
            fittings.proofs, shell.emProperty(), find.complaint().ownMeter(), this::findFault);
    vehicle.vehicleProperty().get().ifPresent(v -> screen.show(v.name(), v.vehicle()));
    return screen;
  }

  private HomeScreen home(Fittings fittings, Worker worker) {
    List<Errand> errands = new ArrayList<>();
    errands.add(
        new Errand("dead", Texts.of("home.dead"), Texts.of("home.is.dead"), this::newComplaint));
    errands.add(
        new Errand("plan", Texts.of("home.plan"), Texts.of("home.is.plan"), () -> go(Place.PAPER)));
    errands.add(
        new Errand(
            "power", Texts.of("home.power"), Texts.of("home.is.power"), () -> prove(FIRST_POWER)));
    errands.add(
        new Errand(
            "ground", Texts.of("home.ground"), Texts.of("home.is.ground"), () -> prove(GROUND)));
    practise.ifPresent(
        p ->
            errands.add(
                new Errand(
                    "practise",
                    Texts.of("home.practise"),
                    Texts.of("home.is.practise"),
                    () -> go(Place.PRACTISE))));
    ready
        .first()
        .ifPresent(
            first ->
                errands.add(
                    new Errand(
                        "first",
                        Texts.of("home.first"),
                        Texts.of("home.is.first"),
                        () -> practise(first))));
    errands.add(
        new Errand(
            "own",
            Texts.of("home.own"),
            Texts.of("home.is.own"),
            () -> {
              go(Place.WIRING);
              wiringScreen.get().beginVehicle();
            }));
    return new HomeScreen(
        new HomeViewModel(fittings.shelf.archive(), fittings.library::entries, worker),
        shell.emProperty(),
        vehicle.vehicleProperty().map(v -> v.map(this::called).orElse("")),
        errands,
        () -> {
          go(Place.VEHICLE);
          vehicle.chooseAnother();
        },
        this::goOn);
  }

  /** A vehicle's name, with what is said of one that comes with the program. */
  private String called(VehicleViewModel.Named named) {
    boolean demo =
        vehicle.entries().stream()
            .filter(e -> e.shelf() == VehicleLibrary.Shelf.DEMO)
            .anyMatch(e -> e.name().equals(named.name()));
    String name = named.vehicle().name();
    return demo ? Texts.of("home.demo", name) : name;
  }

  private void newComplaint() {
    find.leaveCase();
    go(Place.FIND);
  }

  private void prove(int page) {
    go(Place.PROVE);
    proveScreen.get().turnTo(page);
  }

  private void goOn(Recent recent) {
    recent
        .opened()
        .ifPresentOrElse(
            this::reopen, () -> vehicle.load(recent.vehicleName(), () -> go(Place.VEHICLE)));
  }

  /** All that the window shows. */
  public Parent root() {
    return root;
  }

  /** Puts the window on a stage and shows it. */
  public void show(Stage stage) {
    stage.setTitle(Texts.of("window.title"));
    stage
        .getIcons()
        .setAll(
            new Image(
                Objects.requireNonNull(Look.class.getResourceAsStream("/loopwright/ui/icon.png"))));
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    if (stage.getScene() == null) {
      stage.setScene(new Scene(root, 1280, 800));
    } else {
      stage.getScene().setRoot(root);
    }
    // A closed window holds no meter: another program may want its port.
    stage.addEventHandler(WindowEvent.WINDOW_HIDDEN, e -> find.complaint().ownMeter().close());
    stage.show();
    takeFocus();
  }

  /** The frame's own state, for instance the look. */
  public ShellViewModel shell() {
    return shell;
  }

  private void applyLook() {
    Looks.put(root, shell);
    fillBar();
  }

  private void fillBar() {
    fillBar(root.getWidth() > 0 ? root.getWidth() / shell.emProperty().get() : MIDDLE);
    // What doesn't fit says less, as in a narrower window; a bar that is too wide widens all below.
    for (double less : List.of(WIDEST, WIDE, MEDIUM, SHORT, MIDDLE, NARROWEST)) {
      if (!barTooWide()) {
        return;
      }
      if (room >= less) {
        fillBar(Math.nextDown(less));
      }
    }
  }

  private boolean barTooWide() {
    if (root.getScene() == null) {
      return false;
    }
    bar.applyCss();
    return bar.minWidth(-1) > root.getWidth();
  }

  private void fillBar(double ems) {
    room = ems;
    boolean narrow = ems < MIDDLE;
    bar.getChildren().clear();
    Looks.fit(root, ems);
    if (ems >= WIDEST) {
      Label mark = Parts.line(Texts.of("window.title"), "word-mark");
      // The place's name gives way to it.
      mark.setMinWidth(Region.USE_PREF_SIZE);
      bar.getChildren().add(mark);
    }
    if (home.isPresent() && ems >= NARROWEST) {
      KeyButton start = place("place.home", "Shift F2", Place.HOME);
      if (ems < WIDEST) {
        start.setText("");
        start.setGraphic(icon("mdi2h-home-outline"));
      }
    }
    boolean brief = ems < MEDIUM;
    place("place.vehicle", "F2", Place.VEHICLE);
    place(brief ? "place.findShort" : "place.find", "F3", Place.FIND);
    place("place.cases", "F4", Place.CASES);
    place(brief ? "place.paperShort" : "place.paper", "F5", Place.PAPER);
    place(brief ? "place.wiringShort" : "place.wiring", "F6", Place.WIRING);
    place(brief ? "place.proveShort" : "place.prove", "F7", Place.PROVE);
    if (practise.isPresent() && ems >= SHORT) {
      place("place.practise", "Shift F4", Place.PRACTISE);
    }
    Label where = Parts.line(narrow ? "" : whereAmI(), "where");
    where.setId("where");
    where.setMinWidth(0);
    where.setMaxWidth(Double.MAX_VALUE);
    // A few letters before three dots would say nothing.
    where
        .visibleProperty()
        .bind(
            Bindings.createBooleanBinding(
                () ->
                    where.getWidth() >= Math.min(where.prefWidth(-1), 8 * shell.emProperty().get()),
                where.widthProperty(),
                shell.emProperty()));
    HBox.setHgrow(where, Priority.ALWAYS);
    bar.getChildren().add(where);
    // In the least room the page of keys alone says how size and look are changed.
    if (ems >= NARROWEST) {
      int percent = shell.textSizeProperty().get().percent();
      tool(
          "mdi2f-format-size",
          Texts.of("bar.size", Integer.toString(percent)),
          "F8",
          this::nextSize);
      tool("mdi2t-theme-light-dark", Texts.of(shell.lookProperty().get()), "F9", this::nextLook);
    }
    // There it fits beside the places only while one of them stands without its key.
    if (ems >= NARROWEST || IN_BAR.contains(shell.placeProperty().get())) {
      tool("mdi2h-help-circle-outline", Texts.of("bar.help"), "F1", this::help);
    }
  }

  /** The open case, or else the vehicle. */
  private String whereAmI() {
    return find.openCaseProperty()
        .get()
        .filter(c -> shell.placeProperty().get() == Place.FIND)
        .map(c -> c.view().title())
        .or(() -> vehicle.vehicleProperty().get().map(v -> v.vehicle().name()))
        .orElse("");
  }

  private KeyButton place(String key, String cap, Place to) {
    KeyButton button = new KeyButton(Texts.of(key), cap, () -> go(to)).styled("place");
    if (shell.placeProperty().get() == to) {
      button.getStyleClass().add("here");
      if (room < NARROWEST) {
        button.setGraphic(null);
      }
    }
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    bar.getChildren().add(button);
    return button;
  }

  private FontIcon icon(String name) {
    FontIcon image = new FontIcon(name);
    image.setStyle(
        image.getStyle() + ";-fx-icon-size: " + Math.round(1.3 * shell.emProperty().get()) + "px;");
    image.getStyleClass().add("tool-icon");
    return image;
  }

  /** A tool of the frame: an icon; its key and its words where there is room. */
  private void tool(String icon, String text, String cap, Runnable action) {
    KeyButton button = new KeyButton(text, cap, action).styled("tool");
    if (room < WIDE) {
      HBox icons = Parts.row("tool-icons", icon(icon));
      if (room >= SHORT) {
        icons.getChildren().add(Parts.keyCap(cap));
      }
      button.setText("");
      button.setGraphic(icons);
    }
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    bar.getChildren().add(button);
  }

  private void nextSize() {
    shell.textSizeProperty().set(shell.textSizeProperty().get().next());
  }

  private void nextLook() {
    shell.lookProperty().set(shell.lookProperty().get().next());
  }

  private boolean helping() {
    Place now = shell.placeProperty().get();
    return now == Place.EXPLAIN || now == Place.KEYS;
  }

  /** From a place to the page that belongs to it, from there to the keys, and back. */
  private void help() {
    Place now = shell.placeProperty().get();
    if (now == Place.KEYS) {
      leaveHelp();
      return;
    }
    if (!helping()) {
      before = now;
      explain.ifPresent(model -> model.get().open(topic(now)));
    }
    go(now == Place.EXPLAIN || explain.isEmpty() ? Place.KEYS : Place.EXPLAIN);
  }

  /** Takes the next language, and shows what was taken. */
  private void chooseLanguage() {
    KeysPage.nextLanguage(shell);
    if (!helping()) {
      before = shell.placeProperty().get();
    }
    go(Place.KEYS);
  }

  private void leaveHelp() {
    go(before);
  }

  /** The explaining page that belongs to a place. */
  private String topic(Place place) {
    return switch (place) {
      case FIND -> findScreen.get().explains();
      case CASES -> "loaded";
      case PAPER -> "fuse";
      case WIRING -> "relay";
      case PROVE -> proveScreen.get().explains();
      case PRACTISE -> practiseScreen.orElseThrow().get().explains();
      default -> "loop";
    };
  }

  private void go(Place to) {
    if (to == Place.FIND
        && shell.placeProperty().get() == Place.FIND
        && findScreen.get().caseEnded()) {
      find.leaveCase();
    }
    shell.placeProperty().set(to);
    takeFocus();
  }

  private void showPlace() {
    root.setCenter(
        switch (shell.placeProperty().get()) {
          case HOME -> home.orElseThrow();
          case VEHICLE -> vehicleScreen.get();
          case FIND -> findScreen.get();
          case CASES -> casesScreen.get();
          case PAPER -> paperScreen.get();
          case WIRING -> wiringScreen.get();
          case PROVE -> proveScreen.get();
          case PRACTISE -> practiseScreen.orElseThrow().get();
          case EXPLAIN -> explainScreen.orElseThrow().get();
          case KEYS -> keysScreen.get();
        });
    if (shell.placeProperty().get() == Place.HOME) {
      home.ifPresent(HomeScreen::opened);
    }
    if (shell.placeProperty().get() == Place.CASES) {
      cases.refresh();
    }
    if (shell.placeProperty().get() == Place.PAPER) {
      paper.open();
    } else {
      paper.close();
    }
    if (shell.placeProperty().get() == Place.WIRING) {
      vehicle.vehicleProperty().get().ifPresent(v -> wiring.takeUp(v.name(), v.vehicle()));
    }
    if (shell.placeProperty().get() == Place.PROVE) {
      proveScreen.get().opened();
    }
    if (shell.placeProperty().get() == Place.PRACTISE) {
      practise.ifPresent(PractiseViewModel::opened);
    }
    fillBar();
    takeFocus();
  }

  private void takeFocus() {
    if (root.getScene() == null) {
      return;
    }
    switch (shell.placeProperty().get()) {
      case HOME -> home.orElseThrow().takeFocus();
      case VEHICLE -> vehicleScreen.get().takeFocus();
      case FIND -> findScreen.get().takeFocus();
      case CASES -> casesScreen.get().takeFocus();
      case PAPER -> paperScreen.get().takeFocus();
      case WIRING -> wiringScreen.get().takeFocus();
      case PROVE -> proveScreen.get().takeFocus();
      case PRACTISE -> practiseScreen.orElseThrow().get().takeFocus();
      case EXPLAIN -> explainScreen.orElseThrow().get().takeFocus();
      case KEYS -> keysScreen.get().requestFocus();
    }
  }

  private void vehicleChanged() {
    fillBar();
    vehicle
        .vehicleProperty()
        .get()
        .ifPresent(
            v -> {
              find.vehicleChosen(v.name(), v.vehicle());
              paper.show(v.vehicle());
              proveScreen.ifMade(s -> s.show(v.name(), v.vehicle()));
              practise.ifPresent(p -> p.show(v.name(), v.vehicle()));
            });
  }

  private void findFault(String caseId) {
    vehicle.vehicleProperty().get().ifPresent(v -> find.resume(caseId, v.name(), v.vehicle()));
    go(Place.FIND);
  }

  private void mend(String part, String task) {
    go(Place.WIRING);
    wiringScreen.get().show(part, task);
  }

  private void complain(VehicleViewModel.Named named, Circuit circuit) {
    find.complain(named.name(), named.vehicle(), Optional.of(circuit.id()));
    go(Place.FIND);
  }

  private Optional<CaseViewModel> openHere(String caseId) {
    return find.openCaseProperty().get().filter(c -> c.view().caseId().equals(caseId));
  }

  private void attach(CaseRow row, Path photo) {
    openHere(row.caseId())
        .ifPresentOrElse(
            open -> {
              open.attach(photo);
              cases.photoKept(photo);
            },
            () -> cases.attach(photo));
  }

  private void reopen(CaseEvent.Opened kept) {
    if (openHere(kept.caseId()).isPresent()) {
      go(Place.FIND);
      return;
    }
    vehicle.load(
        kept.vehicleName(),
        () ->
            vehicle
                .vehicleProperty()
                .get()
                .ifPresent(
                    v -> {
                      find.resume(kept.caseId(), v.name(), v.vehicle());
                      go(Place.FIND);
                    }));
  }

  private void practise(ReadyCases.Entry entry) {
    vehicle.load(
        entry.vehicleName(),
        () ->
            vehicle
                .vehicleProperty()
                .get()
                .ifPresent(
                    v -> {
                      find.practise(ready, entry, v.vehicle());
                      go(Place.FIND);
                    }));
  }

  private void pressed(KeyEvent e) {
    boolean handled = true;
    switch (e.getCode()) {
      case F1 -> help();
      case F2 -> go(e.isShiftDown() && home.isPresent() ? Place.HOME : Place.VEHICLE);
      case F3 -> go(Place.FIND);
      case F4 -> {
        handled = !e.isAltDown();
        if (handled) {
          go(e.isShiftDown() && practise.isPresent() ? Place.PRACTISE : Place.CASES);
        }
      }
      case F5 -> go(Place.PAPER);
      case F6 -> go(Place.WIRING);
      case F7 -> go(Place.PROVE);
      case F8 -> nextSize();
      case F9 -> {
        if (e.isShiftDown()) {
          chooseLanguage();
        } else {
          nextLook();
        }
      }
      case PLUS, EQUALS, ADD -> {
        handled = e.isShortcutDown();
        if (handled) {
          shell.textSizeProperty().set(shell.textSizeProperty().get().larger());
        }
      }
      case MINUS, SUBTRACT -> {
        handled = e.isShortcutDown();
        if (handled) {
          shell.textSizeProperty().set(shell.textSizeProperty().get().smaller());
        }
      }
      case Q -> {
        handled = e.isShortcutDown();
        if (handled) {
          Window window = root.getScene().getWindow();
          window.fireEvent(new WindowEvent(window, WindowEvent.WINDOW_CLOSE_REQUEST));
        }
      }
      case ESCAPE -> {
        handled = helping();
        if (handled) {
          leaveHelp();
        }
      }
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }
}
