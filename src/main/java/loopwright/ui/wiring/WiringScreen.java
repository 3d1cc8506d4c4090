package loopwright.ui.wiring;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.edit.Edit;
import loopwright.casework.table.Table;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.Worker;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The Wiring place: tables to type into, or a page in their stead. */
public final class WiringScreen extends StackPane {
  private final WiringViewModel model;
  private final GridViewModel grid;
  private final ReadOnlyDoubleProperty em;
  private final GridView view;
  private final Map<KeyCombination, WiringPage> pages = new LinkedHashMap<>();
  private final Label told = Parts.text("", "entry-status");
  private final FlowPane tabs = new FlowPane();
  private final FlowPane actions = new FlowPane();
  private final VBox tables;
  private Optional<WiringPage> page = Optional.empty();

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
    setId("wiring");
    told.setId("wiring-told");
    tabs.getStyleClass().add("grid-tabs");
    actions.getStyleClass().add("actions");
    for (WiringPage p : pages) {
      this.pages.put(KeyCombination.valueOf(p.key()), p);
      actions.getChildren().add(new KeyButton(p.title(), p.key(), () -> open(p)).styled("action"));
    }
    VBox.setVgrow(view, Priority.ALWAYS);
    tables = Parts.column("vehicle-page", tabs, view, told, actions);
    getChildren().setAll(tables);
    grid.tableProperty().addListener(o -> fillTabs());
    model.toldProperty().addListener(o -> showTold());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (page.isPresent() && e.getCode() == KeyCode.ESCAPE) {
            closePage();
            e.consume();
          }
        });
    fillTabs();
    showTold();
  }

  private void fillTabs() {
    tabs.getChildren().clear();
    for (Table table : Table.values()) {
      KeyButton tab =
          new KeyButton(
                  Texts.of(table),
                  Texts.of("key.ctrl", (table.ordinal() + 1) % 10),
                  () -> grid.tableProperty().set(table))
              .styled("page-tab");
      tab.setFocusTraversable(false);
      if (grid.tableProperty().get() == table) {
        tab.getStyleClass().add("picked");
      }
      tabs.getChildren().add(tab);
    }
  }

  private void showTold() {
    WiringViewModel.Told now = model.toldProperty().get();
    told.setText(now.words());
    told.getStyleClass().removeAll("status-hint", "status-problem");
    told.getStyleClass()
        .add(now.tone() == WiringViewModel.Tone.PROBLEM ? "status-problem" : "status-hint");
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    page.ifPresentOrElse(WiringPage::takeFocus, view::takeFocus);
  }

  /** Opens a page in place of the tables. */
  private void open(WiringPage next) {
    if (next.needs() == WiringPage.Needs.VEHICLE && model.vehicleProperty().get().isEmpty()) {
      model.tell(WiringViewModel.Tone.PROBLEM, Texts.of("wiring.openFirst"));
      return;
    }
    page = Optional.of(next);
    Node node = next.open(new Desk());
    getChildren().setAll(node);
    next.takeFocus();
  }

  private void closePage() {
    page = Optional.empty();
    getChildren().setAll(tables);
    view.takeFocus();
  }

  private void pressed(KeyEvent e) {
    if (page.isEmpty() && onTables(e)) {
      e.consume();
    }
  }

  private boolean onTables(KeyEvent e) {
    for (Map.Entry<KeyCombination, WiringPage> entry : pages.entrySet()) {
      if (entry.getKey().match(e)) {
        open(entry.getValue());
        return true;
      }
    }
    if (!e.isShortcutDown()) {
      return false;
    }
    if (e.getCode().isDigitKey()) {
      int digit = Integer.parseInt(e.getCode().getName().replaceAll("\\D", ""));
      grid.tableProperty().set(Table.values()[(digit + 9) % 10]);
      view.takeFocus();
      return true;
    }
    boolean redo = e.getCode() == KeyCode.Y || (e.getCode() == KeyCode.Z && e.isShiftDown());
    if (redo) {
      view.finishTyping();
      model.redo();
    } else if (e.getCode() == KeyCode.Z) {
      view.finishTyping();
      model.undo();
    } else {
      return false;
    }
    return true;
  }

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
      model.begin(vehicle);
    }

    @Override
    public void close(Optional<String> part) {
      closePage();
      part.ifPresent(grid::go);
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
