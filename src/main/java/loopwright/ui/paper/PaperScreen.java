package loopwright.ui.paper;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.animation.PauseTransition;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import loopwright.casework.PaperDesk;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.ui.Texts;
import loopwright.ui.Worker;
import loopwright.ui.paper.PaperViewModel.Stage;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.ReadingDesk;
import loopwright.ui.wiring.WiringPage;

/** The Paper check place: the verdict, the findings, the way to mend the chosen one. */
public final class PaperScreen extends StackPane {
  /** A check that is done sooner says nothing of itself. */
  private static final Duration NOTICEABLE = Duration.millis(500);

  private static final double WIDE_LEAST = 46;
  private static final double HIGH_LEAST = 40;
  private static final double DRAWING_HEIGHT = 12.5;
  private static final List<String> ACTIONS =
      List.of("paper.mend", "paper.details", "paper.drawing", "paper.toHottest", "paper.toFilter");

  private final PaperViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final BiConsumer<String, String> mend;
  private final List<WiringPage> pages;
  private final Worker worker;
  private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  private final PauseTransition noticed = new PauseTransition(NOTICEABLE);
  private final Label verdict = Parts.text("", "verdict");
  private final Label working = Parts.text("", "status-echo", "entry-status");
  private final Label change = Parts.text("", "said");
  private final Label extent = Parts.text("", "muted");
  private final Label problem = Parts.text("", "entry-status", "status-problem");
  private final TextField hottest = new TextField();
  private final TextField filter = new TextField();
  private final FindingList list;
  private final FindingDrawing drawing;
  private final VBox body = new VBox();
  private final FlowPane actions = new FlowPane();
  private final HBox tools;
  private final KeyButton mendButton;
  private final VBox loaded;
  private final VBox nothing;
  private boolean toolsAsked;
  private boolean drawingAsked;
  private Optional<WiringPage> page = Optional.empty();

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   * @param mend goes to a part or circuit in the tables; gets its id and what is to be done there
   * @param pages what else can be done with the vehicle shown, each with its key
   * @param worker runs what pages do
   */
  public PaperScreen(
      PaperViewModel model,
      ReadOnlyDoubleProperty em,
      BiConsumer<String, String> mend,
      List<WiringPage> pages,
      Worker worker) {
    this.model = model;
    this.em = em;
    this.mend = mend;
    this.pages = pages;
    this.worker = worker;
    setId("paper");
    verdict.setId("paper-verdict");
    working.setId("paper-working");
    change.setId("paper-change");
    problem.setId("paper-problem");
    extent.setId("paper-extent");
    list = new FindingList(model, stale, (item, part) -> mend.accept(part, model.task()));
    mendButton = new KeyButton(Texts.of("paper.mend"), "M", this::mendChosen).styled("primary");
    mendButton.setId("paper-mend");
    drawing = new FindingDrawing(model, em);
    tools = tools();
    loaded = loaded();
    nothing = Parts.column("page", Parts.text(Texts.of("find.noVehicle"), "question"));
    nothing.setFocusTraversable(true);
    nothing.setAccessibleText(Texts.of("find.noVehicle"));
    noticed.setOnFinished(e -> stale.set(model.checkingProperty().get()));
    model.checkingProperty().addListener(o -> checking());
    stale.addListener(o -> show());
    model.rulesAwaitedProperty().addListener(o -> show());
    model.stageProperty().addListener(o -> show());
    model.verdictProperty().addListener(o -> show());
    model.changeProperty().addListener(o -> show());
    model.failureProperty().addListener(o -> show());
    model.hottestProblemProperty().addListener(o -> show());
    model.groupsProperty().addListener(o -> show());
    model.chosenProperty().addListener(o -> show());
    model.loopProperty().addListener(o -> arrange());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    // Another vehicle may be there when one comes back.
    sceneProperty().addListener(o -> leavePage());
    widthProperty().addListener(o -> arrange());
    heightProperty().addListener(o -> arrange());
    em.addListener(o -> arrange());
    show();
  }

  private VBox loaded() {
    HBox.setHgrow(verdict, Priority.ALWAYS);
    verdict.setMaxWidth(Double.MAX_VALUE);
    HBox head = Parts.row("paper-head", verdict, working);
    VBox.setVgrow(list, Priority.ALWAYS);
    body.getStyleClass().add("vehicle-body");
    body.getChildren().addAll(list, drawing);
    VBox.setVgrow(body, Priority.ALWAYS);
    actions.getStyleClass().add("actions");
    actions
        .getChildren()
        .addAll(
            mendButton,
            action("paper.details", "Enter", model::toggleDetails),
            action("paper.drawing", "F11", this::toggleDrawing),
            action("paper.toHottest", "T", () -> askFor(hottest)),
            action("paper.toFilter", "Ctrl+F", () -> askFor(filter)));
    for (WiringPage p : pages) {
      actions
          .getChildren()
          .add(new KeyButton(p.title(), p.key(), () -> open(p)).styled("action", "wide"));
    }
    return Parts.column("vehicle-page", head, change, extent, problem, tools, body, actions);
  }

  /** Opens a page in place of the check, whose vehicle it only reads. */
  private void open(WiringPage next) {
    model
        .vehicle()
        .ifPresent(
            vehicle -> {
              page = Optional.of(next);
              getChildren()
                  .setAll(
                      next.open(
                          new ReadingDesk(
                              vehicle,
                              Optional.empty(),
                              Optional.of(model.hottest()),
                              em,
                              worker,
                              this::leavePage)));
              next.takeFocus();
            });
  }

  private void leavePage() {
    page = Optional.empty();
    show();
    takeFocus();
  }

  private static KeyButton action(String key, String cap, Runnable action) {
    return new KeyButton(Texts.of(key), cap, action).styled("action", "wide");
  }

  private HBox tools() {
    hottest.setId("paper-hottest");
    hottest.getStyleClass().addAll("search-field", "paper-degrees");
    hottest.setText(degrees(model.hottest()));
    hottest.setAccessibleText(hottestWords());
    filter.setId("paper-filter");
    filter.getStyleClass().add("search-field");
    filter.setPromptText(Texts.of("paper.filter"));
    filter.setAccessibleText(Texts.of("paper.filter"));
    filter.textProperty().bindBidirectional(model.filterProperty());
    HBox.setHgrow(filter, Priority.ALWAYS);
    hottest
        .focusedProperty()
        .addListener(
            (o, was, is) -> {
              if (!is) {
                model.takeHottest(hottest.getText());
              }
            });
    Label words = Parts.text(hottestWords(), "muted");
    return Parts.row("paper-tools", hottest, words, filter);
  }

  private static String hottestWords() {
    return Texts.of(
        "paper.hottest",
        degrees(PaperDesk.USUAL_SURROUNDINGS),
        degrees(PaperDesk.COLDEST_SURROUNDINGS),
        degrees(PaperDesk.HOTTEST_SURROUNDINGS),
        Units.inUse().degreeUnit(Language.inUse().locale()));
  }

  private static String degrees(double value) {
    return Units.inUse().degrees(value);
  }

  private void checking() {
    if (model.checkingProperty().get()) {
      noticed.playFromStart();
    } else {
      noticed.stop();
      stale.set(false);
    }
  }

  private void arrange() {
    boolean wide = getWidth() / em.get() >= WIDE_LEAST;
    for (int i = 0; i < ACTIONS.size(); i++) {
      String key = ACTIONS.get(i);
      ((KeyButton) actions.getChildren().get(i)).setText(Texts.of(wide ? key : key + ".brief"));
    }
    boolean both = getHeight() / em.get() >= HIGH_LEAST;
    boolean cards = !model.shown().isEmpty();
    Parts.shown(actions.getChildren().get(ACTIONS.indexOf("paper.drawing")), !both);
    Parts.shown(drawing, cards && (both || drawingAsked));
    Parts.shown(list, both || !drawing.isVisible());
    // Without a drawing only its sentence takes room.
    double high =
        model.loopProperty().get().isPresent() ? DRAWING_HEIGHT * em.get() : Region.USE_PREF_SIZE;
    drawing.setMinHeight(high);
    drawing.setMaxHeight(both ? high : Double.MAX_VALUE);
    VBox.setVgrow(drawing, both ? Priority.NEVER : Priority.ALWAYS);
    Parts.shown(extent, !extent.getText().isEmpty() && (wide || model.shown().isEmpty()));
    Parts.shown(
        tools,
        toolsAsked
            || !model.filterProperty().get().isEmpty()
            || !model.hottestProblemProperty().get().isEmpty());
  }

  private void show() {
    Stage stage = model.stageProperty().get();
    Node wanted = stage == Stage.NO_VEHICLE ? nothing : loaded;
    if (page.isEmpty() && !getChildren().contains(wanted)) {
      getChildren().setAll(wanted);
    }
    String failure = model.failureProperty().get();
    boolean first = stage == Stage.FIRST_CHECK;
    verdict.setText(
        !failure.isEmpty()
            ? failure
            : first ? Texts.of("paper.first") : model.verdictProperty().get());
    boolean rules = model.rulesAwaitedProperty().get() && model.checkingProperty().get();
    working.setText(stale.get() ? Texts.of(rules ? "paper.rulesAwaited" : "paper.checking") : "");
    Parts.shown(working, stale.get());
    change.setText(model.changeProperty().get());
    Parts.shown(change, !change.getText().isEmpty());
    boolean filtered =
        model.groupsProperty().get().isEmpty() && !model.filterProperty().get().isBlank();
    problem.setText(
        filtered ? Texts.of("paper.filter.none") : model.hottestProblemProperty().get());
    Parts.shown(problem, !problem.getText().isEmpty());
    extent.setText(model.extent());
    mendButton.setDisable(model.target().isEmpty());
    arrange();
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    if (getScene() == null) {
      return;
    }
    if (page.isPresent()) {
      page.get().takeFocus();
    } else if (model.stageProperty().get() == Stage.NO_VEHICLE) {
      nothing.requestFocus();
    } else {
      list.takeFocus();
    }
  }

  private void toggleDrawing() {
    drawingAsked = !drawingAsked;
    arrange();
    takeFocus();
  }

  private void askFor(TextField field) {
    toolsAsked = true;
    arrange();
    field.requestFocus();
    field.selectAll();
  }

  private void leaveTools() {
    toolsAsked = false;
    arrange();
    takeFocus();
  }

  private void mendChosen() {
    model.target().ifPresent(to -> mend.accept(to, model.task()));
  }

  /**
   * Letters and digits act when they are typed, not when they are pressed: else they would still be
   * typed into the field or table that they lead to.
   */
  private void typed(KeyEvent e) {
    boolean elsewhere = page.isPresent() || e.getTarget() instanceof TextInputControl;
    if (elsewhere || e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    String letter = e.getCharacter().toLowerCase(Locale.ROOT);
    switch (letter) {
      case "m" -> mendChosen();
      case "k" -> model.toggleKnow();
      case "t" -> askFor(hottest);
      default -> {
        if (letter.matches("[1-9]")) {
          mendOther(Integer.parseInt(letter));
        }
      }
    }
  }

  private void pressed(KeyEvent e) {
    if (page.isPresent()) {
      return;
    }
    Optional<WiringPage> asked =
        pages.stream().filter(p -> KeyCombination.valueOf(p.key()).match(e)).findFirst();
    asked.ifPresent(this::open);
    if (asked.isPresent()
        || (e.getTarget() instanceof TextInputControl ? whileTyping(e) : onFindings(e))) {
      e.consume();
    }
  }

  private boolean whileTyping(KeyEvent e) {
    boolean degrees = e.getTarget() == hottest;
    switch (e.getCode()) {
      case ENTER -> {
        if (!degrees || model.takeHottest(hottest.getText())) {
          leaveTools();
        }
      }
      case ESCAPE -> {
        if (degrees) {
          hottest.setText(degrees(model.hottest()));
        } else {
          filter.clear();
        }
        leaveTools();
      }
      case UP -> model.move(-1);
      case DOWN -> model.move(1);
      default -> {
        return search(e);
      }
    }
    return true;
  }

  private boolean search(KeyEvent e) {
    boolean asked = e.getCode() == KeyCode.F && e.isShortcutDown();
    if (asked) {
      askFor(filter);
    }
    return asked;
  }

  private boolean onFindings(KeyEvent e) {
    if (e.isShortcutDown() || e.isAltDown()) {
      return search(e);
    }
    switch (e.getCode()) {
      case UP -> model.move(-1);
      case DOWN -> model.move(1);
      case HOME -> model.move(-model.shown().size());
      case END -> model.move(model.shown().size());
      case F11 -> toggleDrawing();
      case ENTER -> {
        if (e.getTarget() instanceof ButtonBase button) {
          button.fire();
        } else {
          model.toggleDetails();
        }
      }
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Goes to one of the other parts that the opened card names. */
  private void mendOther(int number) {
    model
        .chosenProperty()
        .get()
        .filter(i -> model.openedProperty().get().contains(i.key()))
        .filter(i -> number <= i.others().size())
        .ifPresent(i -> mend.accept(i.others().get(number - 1).id(), model.task()));
  }
}
