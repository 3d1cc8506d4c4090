package loopwright.ui.prove;

import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.prove.ProveView;
import loopwright.ui.Texts;
import loopwright.ui.find.EntryUnit;
import loopwright.ui.find.MeterStatus;
import loopwright.ui.find.ValueField;
import loopwright.ui.prove.CircuitViewModel.Stage;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.widget.StepGrid;
import org.kordamp.ikonli.javafx.FontIcon;

/** What is proven in a list with ticks, and beside it the one thing to do now. */
final class CircuitScreen extends StackPane {
  private static final double WIDE_LEAST = 54;
  private static final double LIST_WIDTH = 19;

  private final CircuitViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final ListView<ProveView.Item> list = new ListView<>();
  private final Label progress = Parts.text("", "side-title");
  private final VBox left = Parts.column("card");
  private final VBox steps = Parts.column("steps");
  private final ScrollPane stepsScroll = Parts.scrolling(steps);
  private final VBox answer = Parts.column("answer");
  private final FlowPane actions = new FlowPane();
  private final Fitted right = new Fitted();
  private final HBox page = new HBox();
  private final Label because = Parts.text("", "because");
  private final Label alone = Parts.text("", "question");
  private final ValueField field;
  private final Label told;
  private final MeterStatus meter;
  private boolean listAlone;

  CircuitScreen(CircuitViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    field = new ValueField(model.entry());
    meter = MeterStatus.takenByEnter(model.meter(), model::lookAtMeter);
    told = Parts.told(model.toldProperty());
    told.setId("prove-told");
    told.visibleProperty().bind(told.managedProperty());
    setId("prove-circuit");
    list.setId("prove-list");
    list.setFocusTraversable(false);
    list.getStyleClass().add("found-list");
    list.setCellFactory(l -> new FatCell<>(l, this::face));
    list.setPlaceholder(Parts.text(Texts.of("vehicle.noCircuits"), "muted"));
    list.setOnMouseClicked(
        e ->
            Optional.ofNullable(list.getSelectionModel().getSelectedItem())
                .ifPresent(i -> model.choose(i.id())));
    VBox.setVgrow(list, Priority.ALWAYS);
    left.getChildren().addAll(progress, list);
    right.setId("prove-now");
    right.getStyleClass().addAll("card", "now-card");
    right.setFocusTraversable(true);
    right.setAccessibleText(Texts.of("place.prove"));
    actions.getStyleClass().add("actions");
    actions.setMinHeight(Region.USE_PREF_SIZE);
    answer.setMinHeight(Region.USE_PREF_SIZE);
    stepsScroll.setMinHeight(0);
    VBox.setVgrow(stepsScroll, Priority.ALWAYS);
    right.getChildren().addAll(stepsScroll, answer, actions);
    HBox.setHgrow(right, Priority.ALWAYS);
    page.getChildren().addAll(left, right);
    page.getStyleClass().addAll("vehicle-page", "vehicle-body");
    alone.setId("prove-alone");
    alone.setFocusTraversable(true);
    alone.setAccessibleText(Texts.of("place.prove"));
    field.setId("prove-value");
    model.stageProperty().addListener(o -> show());
    model.viewProperty().addListener(o -> show());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    widthProperty().addListener(o -> arrange());
    em.addListener(
        o -> {
          // Their marks are as large as the text was when they were made.
          list.refresh();
          arrange();
        });
    show();
  }

  private boolean wide() {
    return getWidth() / em.get() >= WIDE_LEAST;
  }

  private void arrange() {
    left.setMinWidth(LIST_WIDTH * em.get());
    left.setMaxWidth(wide() ? LIST_WIDTH * em.get() : Double.MAX_VALUE);
    HBox.setHgrow(left, wide() ? Priority.NEVER : Priority.ALWAYS);
    Parts.shown(left, wide() || listAlone);
    Parts.shown(right, wide() || !listAlone);
  }

  // ---- showing -------------------------------------------------------------------------------

  private void show() {
    Stage stage = model.stageProperty().get();
    if (stage != Stage.READY) {
      alone.setText(
          switch (stage) {
            case NO_VEHICLE -> Texts.of("find.noVehicle");
            case WORKING -> Texts.of("prove.working");
            case FAILED, READY -> model.toldProperty().get().words();
          });
      getChildren().setAll(Parts.column("page", alone));
      return;
    }
    if (!getChildren().contains(page)) {
      getChildren().setAll(page);
    }
    ProveView view = model.viewProperty().get().orElseThrow();
    rows(view);
    steps.getChildren().clear();
    answer.getChildren().clear();
    actions.getChildren().clear();
    stepsScroll.setVvalue(0);
    view.now().ifPresentOrElse(n -> now(view, n), () -> done(view));
    action("prove.choose", "↑ ↓", () -> model.move(1));
    if (!wide()) {
      action("prove.list", "F12", this::toggleList);
    }
    arrange();
    right.refit();
    takeFocus();
  }

  private void rows(ProveView view) {
    list.getItems().setAll(view.items());
    long proven = view.items().stream().filter(i -> i.state() == ProveView.State.PROVEN).count();
    progress.setText(Texts.of("prove.progress", proven, view.items().size()));
    for (int i = 0; i < view.items().size(); i++) {
      if (view.items().get(i).id().equals(view.chosen())) {
        list.getSelectionModel().select(i);
        list.scrollTo(Math.max(0, i - 3));
      }
    }
  }

  private void header(String headline, ProveView view) {
    Label head = Parts.text(headline, "headline");
    head.setId("prove-headline");
    steps.getChildren().add(head);
    if (!view.missing().isEmpty()) {
      steps.getChildren().add(Parts.text(view.missing(), "odds"));
    }
    if (!view.said().isEmpty()) {
      Label said = Parts.text(view.said(), "said");
      said.setId("prove-said");
      steps.getChildren().add(said);
    }
  }

  private void now(ProveView view, ProveView.Now now) {
    header(Texts.of("prove.step", now.title(), now.number(), now.of()), view);
    if (now.number() == 1) {
      steps.getChildren().add(Parts.text(view.plan(), "because"));
    }
    now.cautions().forEach(c -> steps.getChildren().add(Parts.caution(c)));
    StepGrid grid = new StepGrid();
    Label task = Parts.text(now.task(), "step-value");
    task.setId("prove-task");
    grid.step("prove.do", task);
    if (!now.set().isEmpty()) {
      VBox lines = Parts.column("step-box");
      // Where hands only set up, that is what is to be read from afar.
      String style = now.kind().isEmpty() ? "question" : "step-quiet";
      now.set().forEach(l -> lines.getChildren().add(Parts.text(l, style)));
      grid.step("check.set", lines);
    }
    now.red().ifPresent(p -> grid.point("check.red", Parts.redMark(), p));
    now.black().ifPresent(p -> grid.point("check.black", Parts.blackMark(), p));
    if (!now.meter().isEmpty()) {
      grid.step("check.meter", Parts.text(now.meter(), "step-quiet"));
    }
    steps.getChildren().add(grid);
    if (!now.healthy().isEmpty()) {
      steps
          .getChildren()
          .add(
              Parts.text(
                  (Texts.of("check.healthy", now.healthy()) + ". " + now.otherwise()).strip(),
                  "step-healthy"));
    }
    now.trouble().ifPresent(this::trouble);
    if (model.units().isEmpty()) {
      choices(now);
    } else {
      entry();
    }
    // What the last answer came to stands above already.
    told.managedProperty().bind(told.textProperty().isNotEqualTo(view.said()));
    answer.getChildren().add(told);
    because.setText(now.because());
    answer.getChildren().add(because);
  }

  private void trouble(ProveView.Trouble trouble) {
    Label words = Parts.text(trouble.words(), "odds");
    words.setId("prove-trouble");
    answer.getChildren().add(words);
    if (model.canFind()) {
      KeyButton find =
          new KeyButton(
                  Texts.of(trouble.caseId().isPresent() ? "prove.toCase" : "prove.find"),
                  "F",
                  model::find)
              .styled("primary");
      find.setId("prove-find");
      answer.getChildren().add(find);
    }
    action("prove.again", "N", model::again);
  }

  private void choices(ProveView.Now now) {
    FlowPane row = new FlowPane();
    row.getStyleClass().add("choices");
    for (int i = 0; i < now.choiceWords().size(); i++) {
      int choice = i;
      row.getChildren()
          .add(
              new KeyButton(
                      now.choiceWords().get(i), Integer.toString(i + 1), () -> model.pick(choice))
                  .styled("choice-button"));
    }
    answer.getChildren().add(row);
  }

  private void entry() {
    Label reads = Parts.line(Texts.of("check.reads"), "step-word");
    reads.setMinWidth(Region.USE_PREF_SIZE);
    HBox line = Parts.row("entry-line", reads, field);
    for (EntryUnit unit : model.units()) {
      KeyButton key = field.unitKey(unit, model::unit);
      key.setFocusTraversable(false);
      line.getChildren().add(key);
    }
    answer.getChildren().addAll(line, meter);
  }

  private void done(ProveView view) {
    boolean all = view.items().stream().allMatch(i -> i.state() == ProveView.State.PROVEN);
    String title =
        view.items().stream()
            .filter(i -> i.id().equals(view.chosen()))
            .map(ProveView.Item::title)
            .findFirst()
            .orElse("");
    header(all ? Texts.of("prove.allProven") : Texts.of("prove.proven", title), view);
    if (!all) {
      answer
          .getChildren()
          .add(new KeyButton(Texts.of("prove.next"), "Enter", model::goOn).styled("primary"));
    }
    action("prove.again", "N", model::again);
  }

  private void action(String key, String cap, Runnable action) {
    KeyButton button = new KeyButton(Texts.of(key), cap, action).styled("action", "wide");
    button.setFocusTraversable(false);
    actions.getChildren().add(button);
  }

  /** Puts the focus where hands go on. */
  void takeFocus() {
    if (getScene() == null) {
      return;
    }
    if (model.stageProperty().get() != Stage.READY) {
      alone.requestFocus();
    } else if (listAlone && !wide()) {
      list.requestFocus();
    } else if (field.getScene() != null && !model.units().isEmpty()) {
      field.takeFocus();
    } else {
      right.requestFocus();
    }
  }

  // ---- keys ----------------------------------------------------------------------------------

  private void toggleList() {
    listAlone = !listAlone;
    arrange();
    takeFocus();
  }

  private void pressed(KeyEvent e) {
    if (model.stageProperty().get() != Stage.READY || e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean handled = true;
    switch (e.getCode()) {
      case ENTER -> {
        if (listAlone && !wide()) {
          toggleList();
        } else {
          model.count();
        }
      }
      case UP -> model.move(-1);
      case DOWN -> model.move(1);
      case PAGE_UP -> scroll(-1);
      case PAGE_DOWN -> scroll(1);
      case F12 -> {
        handled = !wide();
        if (handled) {
          toggleList();
        }
      }
      case ESCAPE -> {
        handled = listAlone;
        if (handled) {
          toggleList();
        }
      }
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  private void scroll(int by) {
    stepsScroll.setVvalue(Math.max(0, Math.min(1, stepsScroll.getVvalue() + 0.6 * by)));
  }

  private void typed(KeyEvent e) {
    if (model.stageProperty().get() != Stage.READY
        || e.isShortcutDown()
        || e.isAltDown()
        || e.getCharacter().isEmpty()) {
      return;
    }
    char c = e.getCharacter().toLowerCase(Locale.ROOT).charAt(0);
    if (Character.isLetter(c)) {
      letter(c);
      e.consume();
    } else if (Character.isDigit(c) && model.units().isEmpty()) {
      model.pick(c - '1');
      e.consume();
    } else if (!model.units().isEmpty() && e.getTarget() != field) {
      model.entry().add(c);
      takeFocus();
      e.consume();
    }
  }

  private void letter(char c) {
    for (EntryUnit unit : model.units()) {
      if (unit.key() == c) {
        model.unit(unit);
        return;
      }
    }
    if (c == 'f') {
      model.find();
    } else if (c == 'n') {
      model.again();
    }
  }

  /** Sets what is to be done as large as the room allows; what still doesn't fit scrolls. */
  private final class Fitted extends VBox {
    private static final int REASONLESS = 2;
    private static final int TIGHTEST = 5;
    private double width;
    private double height;

    void refit() {
      width = -1;
      requestLayout();
    }

    @Override
    protected void layoutChildren() {
      if (width != getWidth() || height != getHeight()) {
        width = getWidth();
        height = getHeight();
        for (int level = -1; level <= TIGHTEST; level++) {
          getStyleClass().removeIf(c -> c.startsWith("tight-") || c.equals("roomy"));
          if (level < 0) {
            getStyleClass().add("roomy");
          }
          for (int i = 1; i <= level; i++) {
            getStyleClass().add("tight-" + i);
          }
          // The keys go on.
          Parts.shown(because, level < REASONLESS);
          Parts.shown(actions, level < TIGHTEST);
          applyCss();
          if (needed() <= height) {
            break;
          }
        }
      }
      super.layoutChildren();
    }

    private double needed() {
      double inside = width - snappedLeftInset() - snappedRightInset();
      return snappedTopInset()
          + steps.prefHeight(inside)
          + answer.prefHeight(inside)
          + (actions.isManaged() ? actions.prefHeight(inside) : 0)
          + 2 * getSpacing()
          + snappedBottomInset();
    }
  }

  /** A subject with its mark, and what else there is to say of it. */
  private HBox face(ProveView.Item item) {
    FontIcon mark =
        new FontIcon(
            switch (item.state()) {
              case PROVEN -> "mdi2c-check-bold";
              case FAILED -> "mdi2c-close-thick";
              case CHANGED -> "mdi2a-alert-outline";
              case BEGUN -> "mdi2d-dots-horizontal";
              case OPEN -> "mdi2c-circle-outline";
            });
    mark.getStyleClass().add("tool-icon");
    mark.setStyle(mark.getStyle() + ";-fx-icon-size: " + Math.round(1.2 * em.get()) + "px;");
    VBox words = Parts.column("step-box", Parts.text(item.title()));
    if (!item.note().isEmpty()) {
      words.getChildren().add(Parts.text(item.note(), "muted"));
    }
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    HBox row = Parts.row("pick-line", mark, words);
    row.setAccessibleText(item.title() + ", " + Texts.of(item.state()) + " " + item.note());
    return row;
  }
}
