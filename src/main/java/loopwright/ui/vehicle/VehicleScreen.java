package loopwright.ui.vehicle;

import java.io.File;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.ui.Texts;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.Worker;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.ReadingDesk;
import loopwright.ui.wiring.WiringPage;

/** The vehicle: its circuits, its parts, the loop of the chosen circuit. */
public final class VehicleScreen extends StackPane {
  private static final double WIDE_LEAST = 46;

  private final VehicleViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final ListView<VehicleLibrary.Entry> library = new ListView<>();
  private final VBox defects = Parts.column("defects");
  private final VBox choose;
  private final ListView<Circuit> circuits = new ListView<>();
  private final TableView<Part> parts = new TableView<>();
  private final TextField filter = new TextField();
  private final LoopDrawing drawing = new LoopDrawing();
  private final Label about = Parts.text("", "case-title");
  private final BiConsumer<VehicleViewModel.Named, Circuit> wrong;
  private final List<WiringPage> pages;
  private final Worker worker;
  private final HBox body = new HBox();
  private final VBox left;
  private final VBox right;
  private final VBox loaded;
  private Optional<WiringPage> page = Optional.empty();

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   * @param wrong what happens when something is wrong with a circuit
   * @param pages what else can be done with the vehicle shown, each with its key
   * @param worker runs what pages do
   */
  public VehicleScreen(
      VehicleViewModel model,
      ReadOnlyDoubleProperty em,
      BiConsumer<VehicleViewModel.Named, Circuit> wrong,
      List<WiringPage> pages,
      Worker worker) {
    this.model = model;
    this.em = em;
    this.wrong = wrong;
    this.pages = pages;
    this.worker = worker;
    setId("vehicle");
    this.choose = choose();
    this.left = left();
    this.right = right();
    this.loaded = loaded();
    model.choosingProperty().addListener(o -> show());
    model.vehicleProperty().addListener(o -> show());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    widthProperty().addListener(o -> arrange());
    em.addListener(o -> arrange());
    show();
  }

  private VBox choose() {
    library.setItems(model.entries());
    library.setId("library");
    library.getStyleClass().add("fat-list");
    library.setCellFactory(
        list ->
            new FatCell<>(
                list, e -> Parts.entry(e.title(), Texts.of(e.shelf()), List.of(e.detail()))));
    library.setAccessibleText(Texts.of("vehicle.choose"));
    library.getSelectionModel().select(model.entryProperty().get());
    library
        .getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (o, was, is) -> {
              if (is.intValue() >= 0) {
                model.entryProperty().set(is.intValue());
              }
            });
    model
        .entryProperty()
        .addListener((o, was, is) -> library.getSelectionModel().select(is.intValue()));
    library.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            model.loadMarked();
          }
        });
    VBox.setVgrow(library, Priority.ALWAYS);
    model.defects().addListener((ListChangeListener<String>) c -> showDefects());
    KeyButton open =
        new KeyButton(Texts.of("vehicle.open"), "Enter", model::loadMarked).styled("primary");
    KeyButton file =
        new KeyButton(Texts.of("vehicle.file"), "Ctrl+O", this::chooseFile).styled("action");
    return Parts.column(
        "page",
        Parts.text(Texts.of("vehicle.choose"), "page-title"),
        defects,
        library,
        Parts.row("primary-row", open, file));
  }

  private void showDefects() {
    defects.getChildren().clear();
    if (!model.defects().isEmpty()) {
      defects.getChildren().add(Parts.text(Texts.of("vehicle.defects"), "question"));
      model
          .defects()
          .forEach(d -> defects.getChildren().add(Parts.text(d, "status-problem", "entry-status")));
    }
  }

  private VBox left() {
    circuits.setId("circuits");
    circuits.getStyleClass().add("fat-list");
    circuits.setCellFactory(list -> FatCell.words(list, Circuit::name));
    circuits.setPlaceholder(Parts.text(Texts.of("vehicle.noCircuits"), "muted"));
    circuits.setAccessibleText(Texts.of("vehicle.circuits"));
    circuits
        .getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (o, was, is) -> {
              if (is.intValue() >= 0) {
                model.circuitProperty().set(is.intValue());
              }
            });
    model
        .circuitProperty()
        .addListener((o, was, is) -> circuits.getSelectionModel().select(is.intValue()));
    VBox.setVgrow(circuits, Priority.ALWAYS);
    KeyButton button =
        new KeyButton(Texts.of("vehicle.wrong"), "Enter", this::somethingWrong).styled("primary");
    button.setId("something-wrong");
    button.setWrapText(true);
    button.setMaxWidth(Double.MAX_VALUE);
    button.setMinHeight(Region.USE_PREF_SIZE);
    VBox box =
        Parts.column(
            "vehicle-left",
            Parts.row(
                "choice-head",
                Parts.line(Texts.of("vehicle.circuits"), "side-title"),
                Parts.keyCap("↑ ↓")),
            circuits,
            button);
    box.getStyleClass().add("card");
    return box;
  }

  private VBox right() {
    drawing.emProperty().bind(em);
    drawing.setId("vehicle-drawing");
    model.loopProperty().addListener((o, was, is) -> drawing.loopProperty().set(is));
    Label waiting = Parts.line("", "muted");
    waiting
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model.loopProperty().get().isPresent()
                        ? ""
                        : Texts.of(
                            model.busyProperty().get() ? "vehicle.laying" : "vehicle.noLoop"),
                model.loopProperty(),
                model.busyProperty()));
    StackPane stack = new StackPane(drawing, waiting);
    VBox.setVgrow(stack, Priority.ALWAYS);
    VBox drawingCard = Parts.column("card", stack);
    drawingCard.getStyleClass().add("vehicle-drawing-card");
    filter.setId("part-filter");
    filter.setPromptText(Texts.of("vehicle.filter"));
    filter.setAccessibleText(Texts.of("vehicle.filter"));
    filter.getStyleClass().add("search-field");
    filter.textProperty().bindBidirectional(model.filterProperty());
    HBox.setHgrow(filter, Priority.ALWAYS);
    parts.setId("parts");
    parts.setItems(model.parts());
    parts.setAccessibleText(Texts.of("vehicle.parts"));
    parts.setPlaceholder(Parts.text(Texts.of("vehicle.noParts"), "muted"));
    parts.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_LAST_COLUMN);
    column("vehicle.column.id", 4, Part::id);
    column("vehicle.column.name", 10, Part::name);
    column("vehicle.column.label", 4.5, Part::label);
    column("vehicle.column.what", 14, PartWords::of);
    column("vehicle.column.where", 8, Part::where);
    VBox.setVgrow(parts, Priority.ALWAYS);
    VBox table =
        Parts.column(
            "card",
            Parts.row(
                "choice-head",
                Parts.line(Texts.of("vehicle.parts"), "side-title"),
                Parts.keyCap("Ctrl+F"),
                filter),
            parts);
    table.getStyleClass().add("vehicle-parts-card");
    VBox.setVgrow(table, Priority.ALWAYS);
    return Parts.column("vehicle-right", drawingCard, table);
  }

  private void column(String key, double ems, Function<Part, String> value) {
    TableColumn<Part, String> column = new TableColumn<>(Texts.of(key));
    column.setCellValueFactory(cell -> new ReadOnlyStringWrapper(value.apply(cell.getValue())));
    column.setSortable(true);
    column.setPrefWidth(ems * em.get());
    em.addListener(o -> column.setPrefWidth(ems * em.get()));
    parts.getColumns().add(column);
  }

  private VBox loaded() {
    about.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(about, Priority.ALWAYS);
    KeyButton another =
        new KeyButton(Texts.of("vehicle.another"), "F11", model::chooseAnother).styled("action");
    another.setMinWidth(Region.USE_PREF_SIZE);
    body.getStyleClass().add("vehicle-body");
    VBox.setVgrow(body, Priority.ALWAYS);
    HBox.setHgrow(right, Priority.ALWAYS);
    body.getChildren().addAll(left, right);
    HBox head = Parts.row("page-head", about);
    for (WiringPage p : pages) {
      KeyButton button = new KeyButton(p.title(), p.key(), () -> open(p)).styled("action");
      button.setMinWidth(Region.USE_PREF_SIZE);
      head.getChildren().add(button);
    }
    head.getChildren().add(another);
    return Parts.column("vehicle-page", head, body);
  }

  private void arrange() {
    boolean wide = getWidth() / em.get() >= WIDE_LEAST;
    Parts.shown(right, wide);
    HBox.setHgrow(left, wide ? Priority.NEVER : Priority.ALWAYS);
    left.setMaxWidth(wide ? Region.USE_PREF_SIZE : Double.MAX_VALUE);
  }

  private void show() {
    boolean choosing = model.choosingProperty().get() || model.vehicleProperty().get().isEmpty();
    if (!choosing) {
      VehicleViewModel.Named named = model.vehicleProperty().get().orElseThrow();
      about.setText(
          Texts.of(
              "vehicle.about",
              named.vehicle().name(),
              Integer.toString(named.vehicle().systemVolts()),
              Texts.of(named.vehicle().grounded()),
              Integer.toString(named.vehicle().parts().size())));
      circuits.getItems().setAll(model.circuits());
      circuits.getSelectionModel().select(model.circuitProperty().get());
    }
    page = Optional.empty();
    getChildren().setAll(choosing ? choose : loaded);
    takeFocus();
  }

  /** Opens a page in place of the vehicle, which it only reads. */
  private void open(WiringPage next) {
    model
        .vehicleProperty()
        .get()
        .ifPresent(
            named -> {
              page = Optional.of(next);
              getChildren()
                  .setAll(
                      next.open(
                          new ReadingDesk(
                              named.vehicle(),
                              model.chosenCircuit().map(Circuit::id),
                              Optional.empty(),
                              em,
                              worker,
                              this::show)));
              next.takeFocus();
            });
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    if (getScene() == null) {
      return;
    }
    if (page.isPresent()) {
      page.get().takeFocus();
    } else if (model.choosingProperty().get()) {
      library.requestFocus();
    } else {
      circuits.requestFocus();
    }
  }

  private void somethingWrong() {
    model
        .vehicleProperty()
        .get()
        .ifPresent(named -> model.chosenCircuit().ifPresent(c -> wrong.accept(named, c)));
  }

  private void chooseFile() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Texts.of("vehicle.file"));
    Optional.ofNullable(chooser.showOpenDialog(getScene().getWindow()))
        .map(File::getPath)
        .ifPresent(path -> model.load(path, () -> {}));
  }

  private void pressed(KeyEvent e) {
    if (page.isPresent()) {
      return;
    }
    boolean choosing = model.choosingProperty().get();
    Optional<WiringPage> asked =
        pages.stream().filter(p -> KeyCombination.valueOf(p.key()).match(e)).findFirst();
    if (asked.isPresent()) {
      if (!choosing) {
        open(asked.get());
      }
      e.consume();
      return;
    }
    boolean handled = true;
    switch (e.getCode()) {
      case ENTER -> {
        if (e.getTarget() instanceof javafx.scene.control.ButtonBase button) {
          button.fire();
        } else if (choosing) {
          model.loadMarked();
        } else {
          somethingWrong();
        }
      }
      case ESCAPE -> {
        if (choosing) {
          model.backToVehicle();
        } else {
          filter.clear();
          takeFocus();
        }
      }
      case F11 -> model.chooseAnother();
      case F -> {
        handled = e.isShortcutDown();
        if (handled) {
          filter.requestFocus();
        }
      }
      case O -> {
        handled = e.isShortcutDown();
        if (handled) {
          chooseFile();
        }
      }
      case UP, DOWN -> {
        handled = !choosing && e.getTarget() instanceof TextInputControl;
        if (handled) {
          model.moveCircuit(e.getCode() == KeyCode.UP ? -1 : 1);
        }
      }
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }
}
