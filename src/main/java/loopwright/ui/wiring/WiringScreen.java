package loopwright.ui.wiring;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.Observable;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.casework.table.Table;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** The Wiring place: tables to type into with a panel under them, or a page in their stead. */
public final class WiringScreen extends StackPane {
  private static final double WIDE_LEAST = 46;
  private static final double HIGH_LEAST = 34;

  /** What can stand under the table. */
  private enum Panel {
    DRAWING,
    PART,
    TODO,
    FILES,
    MORE
  }

  private final WiringViewModel model;
  private final GridViewModel grid;
  private final ReadOnlyDoubleProperty em;
  private final GridView view;
  private final List<WiringPage> pages;
  private final Map<KeyCombination, Runnable> keys = new LinkedHashMap<>();
  private final FlowPane tabs = new FlowPane();

  /** The panels, and how the vehicle's file stands: on a line of its own where room is short. */
  private final FlowPane panelTabs = new FlowPane();

  private final StackPane body = new StackPane();
  private final StackPane gridPlace = new StackPane();
  private final StackPane panelPlace = new StackPane();
  private final Label told;
  private final Label state = Parts.text("", "case-title", "wiring-state");

  private final SketchPanel drawing;
  private final PartPanel part;
  private final TodoPanel todo;
  private final FilesPanel files;
  private final FlowPane more = new FlowPane();
  private final VBox tables;
  private Panel panel = Panel.DRAWING;
  private boolean panelAlone;
  private Optional<AskPanel> asking = Optional.empty();
  private Optional<WiringPage> page = Optional.empty();
  private Optional<Runnable> awaited = Optional.empty();

  /**
   * Makes the screen.
   *
   * @param model the vehicle that is worked on
   * @param em pixels of one em
   * @param pages what else can be done here, each with its key
   */
  public WiringScreen(WiringViewModel model, ReadOnlyDoubleProperty em, List<WiringPage> pages) {
    this.model = model;
    this.em = em;
    this.grid = new GridViewModel(model);
    this.view = new GridView(grid, em);
    SketchViewModel sketch = new SketchViewModel(model, grid, model.worker().another());
    CircuitActions circuits = new CircuitActions(model, grid, sketch, this::ask);
    VehicleActions whole = new VehicleActions(model, this::ask);
    WiringActions actions = new WiringActions(model, grid, this::ask);
    this.drawing = new SketchPanel(sketch, em, this::goTo);
    this.part = new PartPanel(new PartViewModel(model, grid), em, this::ask);
    this.todo = new TodoPanel(model, grid);
    this.files = new FilesPanel(model.file(), actions);
    setId("wiring");
    this.told = Parts.told(model.toldProperty());
    told.setId("wiring-told");
    state.setId("wiring-state");
    state.maxWidthProperty().bind(panelTabs.widthProperty());
    for (FlowPane pane : List.of(tabs, panelTabs)) {
      pane.getStyleClass().add("grid-tabs");
      pane.setMinHeight(Region.USE_PREF_SIZE);
    }
    more.setId("more");
    more.getStyleClass().addAll("actions", "panel-body");
    action("wiring.add", "Ctrl+End", grid::goToEmpty);
    action("wiring.find", "Ctrl+F", circuits::find);
    action("wiring.undo", "Ctrl+Z", model::undo);
    action("wiring.redo", "Ctrl+Y", model::redo);
    action("wiring.rename", "Ctrl+R", circuits::rename);
    action("wiring.renameLoom", "Ctrl+L", circuits::renameLoom);
    action("wiring.duplicate", "Ctrl+T", circuits::duplicate);
    action("wiring.move", "Ctrl+M", circuits::move);
    action("wiring.remove", "Ctrl+Delete", grid::removeRows);
    action("wiring.fill", "Ctrl+D", grid::fillDown);
    action("wiring.name", "Ctrl+B", whole::name);
    action("wiring.setSupply", "Ctrl+G", whole::supply);
    this.pages = pages;
    for (WiringPage p : pages) {
      offer(p.title(), p.key(), () -> open(p));
    }
    keys.put(KeyCombination.valueOf("Ctrl+Shift+Z"), model::redo);
    keys.put(KeyCombination.valueOf("Ctrl+S"), actions::save);
    keys.put(KeyCombination.valueOf("Ctrl+Shift+S"), actions::saveAs);
    keys.put(KeyCombination.valueOf("Ctrl+Alt+S"), model.file()::saveOver);
    keys.put(KeyCombination.valueOf("Ctrl+O"), actions::open);
    gridPlace.getChildren().add(view);
    panelPlace.getStyleClass().addAll("card", "wiring-panel");
    panelPlace.setFocusTraversable(true);
    panelPlace.setAccessibleText(Texts.of("access.panel"));
    VBox.setVgrow(body, Priority.ALWAYS);
    body.setMinHeight(0);
    tables = Parts.column("wiring-page", tabs, body, told, panelTabs);
    getChildren().setAll(tables);
    grid.tableProperty().addListener(o -> fillTabs());
    grid.chosenProperty().addListener(o -> followPart());
    model.toldProperty().addListener(o -> fitTold());
    model.unsavedProperty().addListener(o -> fillPanelTabs());
    model.file().openedProperty().addListener((Observable o) -> fillPanelTabs());
    model.vehicleProperty().addListener(o -> followPart());
    model.vehicleProperty().addListener(o -> fillPanelTabs());
    model.findings().addListener((ListChangeListener<VehicleCheck.Finding>) c -> fillPanelTabs());
    model.vehicleProperty().addListener(o -> opened());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventHandler(KeyEvent.KEY_PRESSED, this::leftOver);
    // Not while the window is being laid out, when new children would be passed over.
    widthProperty().addListener(o -> Platform.runLater(this::arrange));
    heightProperty().addListener(o -> Platform.runLater(this::arrange));
    em.addListener(o -> arrange());
    arrange();
  }

  private void action(String key, String cap, Runnable action) {
    offer(Texts.of(key), cap, action);
  }

  private void offer(String words, String cap, Runnable action) {
    Runnable afterTyping =
        () -> {
          view.finishTyping();
          panel = panel == Panel.MORE ? Panel.DRAWING : panel;
          backToTable();
          action.run();
        };
    if (keys.put(KeyCombination.valueOf(cap), afterTyping) != null) {
      throw new IllegalArgumentException(words + ": " + cap + " does something else already");
    }
    KeyButton button = new KeyButton(words, cap, afterTyping).styled("wide");
    more.getChildren().add(button);
  }

  // What is shown.

  private boolean narrow() {
    return getWidth() / em.get() < WIDE_LEAST;
  }

  /** Too little room for a panel under the table: it then takes the table's place. */
  private boolean apart() {
    return narrow() || getHeight() / em.get() < HIGH_LEAST;
  }

  private void arrange() {
    body.getChildren().clear();
    boolean apart = apart();
    if (apart) {
      body.getChildren().add(panelAlone ? panelPlace : gridPlace);
      panelPlace.setMinHeight(0);
      panelPlace.setMaxHeight(Double.MAX_VALUE);
      panelPlace.setPrefHeight(Region.USE_COMPUTED_SIZE);
    } else {
      VBox both = Parts.column("wiring-both", gridPlace, panelPlace);
      VBox.setVgrow(gridPlace, Priority.ALWAYS);
      panelPlace.setMinHeight(Region.USE_PREF_SIZE);
      panelPlace.setMaxHeight(Region.USE_PREF_SIZE);
      panelPlace.setPrefHeight(Math.min(15 * em.get(), getHeight() * 0.34));
      body.getChildren().add(both);
    }
    panelPlace
        .getChildren()
        .setAll(
            asking
                .<Node>map(a -> a)
                .orElseGet(
                    () ->
                        switch (panel) {
                          case DRAWING -> drawing;
                          case PART -> {
                            part.show();
                            yield part;
                          }
                          case TODO -> todo;
                          case FILES -> apart ? Parts.scrolling(files) : files;
                          case MORE -> Parts.scrolling(more);
                        }));
    fillTabs();
    fillPanelTabs();
    fitTold();
  }

  /** While it is out of sight the part's form isn't made anew for each row passed. */
  private void followPart() {
    if (part.getParent() != null) {
      part.show();
    }
  }

  private void fillTabs() {
    tabs.getChildren().clear();
    tabs.getChildren().add(Parts.keyCap(Texts.of("wiring.ctrl")));
    Table now = grid.tableProperty().get();
    for (Table table : Table.values()) {
      if (narrow() && Math.abs(table.ordinal() - now.ordinal()) > 1) {
        continue;
      }
      KeyButton tab =
          new KeyButton(
                  Texts.of(table),
                  Integer.toString((table.ordinal() + 1) % 10),
                  () -> toTable(table))
              .styled("page-tab", "wide");
      tab.setFocusTraversable(false);
      if (now == table) {
        tab.getStyleClass().add("picked");
      }
      tabs.getChildren().add(tab);
    }
  }

  private void toTable(Table table) {
    view.finishTyping();
    grid.tableProperty().set(table);
    backToTable();
    view.takeFocus();
  }

  private void fillPanelTabs() {
    panelTabs.getChildren().clear();
    panelTabs.getChildren().add(Parts.keyCap(Texts.of("wiring.alt")));
    for (Panel p : Panel.values()) {
      String words =
          p == Panel.TODO
              ? Texts.of("wiring.panel.todoCount", model.findings().size())
              : Texts.of(p);
      KeyButton tab =
          new KeyButton(words, Integer.toString(p.ordinal() + 1), () -> open(p))
              .styled("page-tab", "wide");
      tab.setFocusTraversable(false);
      if (panel == p && asking.isEmpty() && (!apart() || panelAlone)) {
        tab.getStyleClass().add("picked");
      }
      panelTabs.getChildren().add(tab);
    }
    boolean open = model.vehicleProperty().get().isPresent();
    boolean noFile = model.file().openedProperty().get().isEmpty();
    String how =
        !open
            ? "wiring.state.none"
            : model.file().readOnly().isPresent()
                ? "wiring.state.lookOnly"
                : model.unsavedProperty().get()
                    ? "wiring.state.unsaved"
                    : noFile ? "wiring.state.copy" : "wiring.state.saved";
    String name = model.vehicleProperty().get().map(Vehicle::name).orElse("");
    state.setText(Texts.of(how, name));
    panelTabs.getChildren().add(state);
  }

  /** Where room is short, nothing told takes none. */
  private void fitTold() {
    told.setManaged(!narrow() || !told.getText().isEmpty());
  }

  // Panels.

  private void open(Panel p) {
    view.finishTyping();
    boolean again = panel == p && panelAlone && asking.isEmpty();
    asking = Optional.empty();
    panel = p;
    panelAlone = !again;
    arrange();
    if (again) {
      view.takeFocus();
      return;
    }
    // Where the table has made room nothing else may hold the focus.
    panelPlace.requestFocus();
    switch (p) {
      case DRAWING -> {
        if (!apart()) {
          view.takeFocus();
        }
      }
      case PART -> part.takeFocus();
      case TODO -> todo.takeFocus();
      case FILES -> files.takeFocus();
      case MORE -> more.getChildren().get(0).requestFocus();
    }
  }

  private void ask(Ask question) {
    view.finishTyping();
    AskPanel asked = new AskPanel(question, this::backToTable);
    asking = Optional.of(asked);
    panelAlone = true;
    arrange();
    asked.takeFocus();
  }

  private void backToTable() {
    asking = Optional.empty();
    panelAlone = false;
    arrange();
    view.takeFocus();
  }

  /** Goes to the row of a part that was clicked on the drawing. */
  private void goTo(String id) {
    view.finishTyping();
    grid.go(id);
    backToTable();
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    if (page.isPresent()) {
      page.get().takeFocus();
    } else if (asking.isPresent()) {
      asking.get().takeFocus();
    } else if (panelAlone && apart()) {
      panelPlace.requestFocus();
    } else {
      view.takeFocus();
    }
  }

  /**
   * Goes to a part or circuit, as soon as the vehicle that has it is open here.
   *
   * @param id its id
   * @param task what is to be done there
   */
  public void show(String id, String task) {
    // Another vehicle may well have a part of the same id.
    boolean here =
        !model.file().opening()
            && model
                .vehicleProperty()
                .get()
                .filter(v -> v.part(id).isPresent() || v.circuit(id).isPresent())
                .isPresent();
    if (here) {
      awaited = Optional.empty();
      goTo(id);
      model.tell(Told.Tone.PLAIN, task);
    } else {
      awaited =
          Optional.of(
              () -> {
                String opened = model.toldProperty().get().words();
                goTo(id);
                model.tell(Told.Tone.PLAIN, (task + " " + opened).strip());
              });
    }
  }

  private void opened() {
    Optional<Runnable> go = awaited;
    awaited = Optional.empty();
    go.ifPresent(Runnable::run);
  }

  // Pages.

  /** Opens the page that makes what a new vehicle needs, if there is one. */
  public void beginVehicle() {
    pages.stream()
        .filter(p -> p.needs() == WiringPage.Needs.NOTHING)
        .findFirst()
        .ifPresent(this::open);
  }

  /** Opens a page in place of the tables. */
  private void open(WiringPage next) {
    if (next.needs() != WiringPage.Needs.NOTHING && model.vehicleProperty().get().isEmpty()) {
      model.tell(Told.Tone.PROBLEM, Texts.of("wiring.openFirst"));
      return;
    }
    page = Optional.of(next);
    getChildren().setAll(next.open(new Desk()));
    next.takeFocus();
  }

  private void closePage() {
    page = Optional.empty();
    getChildren().setAll(tables);
    view.takeFocus();
  }

  // Keys.

  private void pressed(KeyEvent e) {
    if (page.isEmpty() && onTables(e)) {
      e.consume();
    }
  }

  private boolean onTables(KeyEvent e) {
    boolean inField =
        asking.isPresent() || e.getTarget() instanceof javafx.scene.control.TextInputControl;
    boolean ofField =
        inField
            && (e.getCode() == KeyCode.DELETE
                || e.getCode() == KeyCode.END
                || (e.getCode() == KeyCode.Z && asking.isPresent()));
    if (!ofField) {
      for (Map.Entry<KeyCombination, Runnable> entry : keys.entrySet()) {
        if (entry.getKey().match(e)) {
          entry.getValue().run();
          return true;
        }
      }
    }
    if (!e.getCode().isDigitKey() || e.isShortcutDown() == e.isAltDown()) {
      return false;
    }
    int digit = KeyNames.digit(e.getCode());
    if (e.isShortcutDown()) {
      toTable(Table.values()[(digit + 9) % 10]);
      return true;
    }
    if (digit >= 1 && digit <= Panel.values().length) {
      open(Panel.values()[digit - 1]);
      return true;
    }
    return false;
  }

  /** Escape that nothing else took brings the table back. */
  private void leftOver(KeyEvent e) {
    if (e.getCode() == KeyCode.ESCAPE) {
      if (page.isPresent()) {
        closePage();
      } else {
        backToTable();
      }
      e.consume();
    }
  }

  /** What pages may do. */
  private final class Desk implements WiringDesk {
    @Override
    public Optional<Vehicle> vehicle() {
      return model.vehicleProperty().get();
    }

    @Override
    public Change make(Edit edit) throws Problem {
      return model.make(edit);
    }

    @Override
    public void begin(Vehicle vehicle) {
      model.file().beginNew(vehicle);
    }

    @Override
    public void close(Optional<String> goTo) {
      closePage();
      goTo.ifPresent(grid::go);
    }

    @Override
    public ReadOnlyDoubleProperty emProperty() {
      return em;
    }

    @Override
    public Worker worker() {
      return model.worker();
    }
  }
}
