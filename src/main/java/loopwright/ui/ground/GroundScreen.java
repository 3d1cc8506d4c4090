package loopwright.ui.ground;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.ground.GroundView;
import loopwright.ui.Texts;
import loopwright.ui.find.MeterStatus;
import loopwright.ui.ground.GroundViewModel.Stage;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** All grounds in a list, and beside it what to do now for one of them. */
public final class GroundScreen extends StackPane {
  private static final double WIDE_LEAST = 54;

  /** Style classes that set a card tighter, one after the other. */
  private static final List<String> TIGHTER = List.of("tight-1", "tight-3", "tight-4", "tight-5");

  /** From here on the grounds are chosen by the arrows alone; on to the next goes a button. */
  private static final String BUTTONLESS = "tight-4";

  private final GroundViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final ListView<GroundRow> list = new ListView<>();
  private final Label progress = Parts.text("", "muted");
  private final VBox left = Parts.column("card");
  private final GroundSteps steps = new GroundSteps();
  private final ScrollPane stepsScroll = Parts.scrolling(steps);
  private Optional<KeyButton> choose = Optional.empty();
  private final VBox said = Parts.column("ground-said");
  private final TextField value = new TextField();
  private final TextField leads = new TextField();
  private final TextField across = new TextField();
  private final HBox volts;
  private final HBox ohms;
  private final VBox answer = Parts.column("answer");
  private final FlowPane actions = new FlowPane();
  private final VBox right = Parts.column("card");
  private final HBox page;
  private final Label alone = Parts.text("", "question");

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   */
  public GroundScreen(GroundViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    setId("ground");
    left.getStyleClass().add("ground-list-card");
    right.getStyleClass().addAll("now-card", "ground-now");
    alone.setFocusTraversable(true);
    alone.setAccessibleText(Texts.of("place.prove"));
    list.setId("ground-list");
    list.setFocusTraversable(false);
    list.getStyleClass().add("found-list");
    list.setCellFactory(l -> new FatCell<>(l, GroundScreen::face));
    list.setPlaceholder(Parts.text(Texts.of("ground.none"), "muted"));
    list.setOnMouseClicked(
        e -> {
          GroundRow row = list.getSelectionModel().getSelectedItem();
          if (row != null) {
            model.choose(row.id());
            takeFocus();
          }
        });
    VBox.setVgrow(list, Priority.ALWAYS);
    left.getChildren().addAll(progress, list);
    volts = entry(word("ground.reads"), Parts.field(value, "ground-value", "ground.reads.prompt"));
    ohms =
        entry(
            word("ground.leads"),
            Parts.field(leads, "ground-leads", "ground.leads.prompt"),
            word("ground.across"),
            Parts.field(across, "ground-across", "ground.across.prompt"));
    actions.getStyleClass().add("actions");
    stepsScroll.setMinHeight(0);
    VBox.setVgrow(stepsScroll, Priority.ALWAYS);
    answer.setMinHeight(USE_PREF_SIZE);
    actions.setMinHeight(USE_PREF_SIZE);
    Label told = Parts.told(model.toldProperty());
    told.setId("ground-told");
    said.setId("ground-said");
    MeterStatus meter = MeterStatus.takenByEnter(model.meter(), model::lookAtMeter);
    answer.getChildren().addAll(volts, meter, ohms, told, said);
    right.getChildren().addAll(stepsScroll, answer, actions);
    HBox.setHgrow(right, Priority.ALWAYS);
    page = new HBox(left, right);
    page.getStyleClass().addAll("vehicle-page", "vehicle-body");
    model.stageProperty().addListener(o -> show());
    model.rowsProperty().addListener(o -> rows());
    model.chosenProperty().addListener(o -> mark());
    model.viewProperty().addListener(o -> show());
    model
        .resultProperty()
        .addListener(
            o -> {
              result();
              fit();
            });
    model.detailsProperty().addListener(o -> show());
    model.byOhmsProperty().addListener(o -> byOhms());
    model.toldProperty().addListener(o -> told.setManaged(!told.getText().isEmpty()));
    told.setManaged(false);
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    widthProperty().addListener(o -> arrange());
    heightProperty().addListener(o -> arrange());
    em.addListener(o -> arrange());
    byOhms();
  }

  private static Label word(String key) {
    Label word = Parts.line(Texts.of(key), "step-word");
    word.setMinWidth(USE_PREF_SIZE);
    return word;
  }

  private HBox entry(Node... fields) {
    HBox line = Parts.row("entry-line", fields);
    KeyButton take = new KeyButton(Texts.of("ground.take"), "Enter", this::take).styled("primary");
    take.setMinWidth(USE_PREF_SIZE);
    take.setFocusTraversable(false);
    line.getChildren().add(take);
    return line;
  }

  private void arrange() {
    boolean wide = getWidth() / em.get() >= WIDE_LEAST;
    Parts.shown(left, wide);
    left.setMinWidth(20 * em.get());
    left.setMaxWidth(20 * em.get());
    fit();
  }

  /** Sets what is to be done smaller where the room is short; what still doesn't fit scrolls. */
  private void fit() {
    right.getStyleClass().removeAll(TIGHTER);
    choose.ifPresent(button -> Parts.shown(button, true));
    if (getScene() == null || !getChildren().contains(page)) {
      return;
    }
    for (String tighter : TIGHTER) {
      page.applyCss();
      page.layout();
      if (steps.prefHeight(stepsScroll.getViewportBounds().getWidth())
          <= stepsScroll.getViewportBounds().getHeight()) {
        return;
      }
      right.getStyleClass().add(tighter);
      choose
          .filter(button -> tighter.equals(BUTTONLESS))
          .ifPresent(button -> Parts.shown(button, false));
    }
  }

  // ---- showing -------------------------------------------------------------------------------

  private void show() {
    Stage stage = model.stageProperty().get();
    alone.setText(
        switch (stage) {
          case NO_VEHICLE -> Texts.of("find.noVehicle");
          case WORKING -> Texts.of("ground.working");
          case FAILED -> model.toldProperty().get().words();
          case READY -> "";
        });
    if (stage != Stage.READY) {
      getChildren().setAll(Parts.column("page", alone));
      return;
    }
    if (!getChildren().contains(page)) {
      getChildren().setAll(page);
    }
    Optional<GroundView> view = model.viewProperty().get();
    steps.show(view, model.detailsProperty().get(), model.byOhmsProperty().get());
    stepsScroll.setVvalue(0);
    boolean provable = view.flatMap(GroundView::proof).isPresent();
    volts.setDisable(!provable);
    buttons(view);
    result();
    takeFocus();
    fit();
  }

  private void buttons(Optional<GroundView> view) {
    boolean ohmsNow = model.byOhmsProperty().get();
    actions.getChildren().clear();
    if (view.flatMap(GroundView::proof).filter(GroundView.Proof::greater).isPresent()) {
      action("ground.greater", "G", model::greater);
    }
    action(ohmsNow ? "ground.byVolts" : "ground.byOhms", "O", model::toggleOhms);
    action(
        model.detailsProperty().get() ? "ground.less" : "ground.details",
        "D",
        model::toggleDetails);
    action("ground.next", "N", model::goOn);
    choose = Optional.of(action("ground.choose", "↑ ↓", () -> model.move(1)));
  }

  private KeyButton action(String key, String cap, Runnable action) {
    KeyButton button = new KeyButton(Texts.of(key), cap, action).styled("action", "wide");
    button.setFocusTraversable(false);
    actions.getChildren().add(button);
    return button;
  }

  private void rows() {
    list.getItems().setAll(model.rowsProperty().get());
    progress.setText(model.progress());
    mark();
  }

  private void mark() {
    List<GroundRow> rows = list.getItems();
    for (int i = 0; i < rows.size(); i++) {
      if (Optional.of(rows.get(i).id()).equals(model.chosenProperty().get())) {
        list.getSelectionModel().select(i);
        list.scrollTo(Math.max(0, i - 3));
      }
    }
    value.clear();
    leads.clear();
    across.clear();
  }

  private void result() {
    said.getChildren().clear();
    model
        .resultProperty()
        .get()
        .ifPresent(
            r -> {
              Label words = Parts.text(r.words(), "verdict", "ground-" + style(r.verdict()));
              words.setId("ground-verdict");
              said.getChildren().add(words);
              if (!r.next().isEmpty()) {
                said.getChildren().add(Parts.text(r.next(), "verdict-mode"));
              }
              if (r.verdict() == GroundResult.Verdict.GOOD && !model.byOhmsProperty().get()) {
                said.getChildren().add(Parts.text(Texts.of("ground.enterNext"), "muted"));
                value.clear();
              } else {
                value.selectAll();
              }
            });
  }

  private void byOhms() {
    boolean now = model.byOhmsProperty().get();
    Parts.shown(volts, !now);
    Parts.shown(ohms, now);
    show();
  }

  private static String style(GroundResult.Verdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    if (getScene() == null) {
      return;
    }
    if (model.stageProperty().get() != Stage.READY) {
      alone.requestFocus();
    } else if (model.byOhmsProperty().get()) {
      leads.requestFocus();
    } else if (volts.isDisabled()) {
      list.requestFocus();
    } else {
      value.requestFocus();
    }
  }

  // ---- keys ----------------------------------------------------------------------------------

  private void take() {
    if (model.byOhmsProperty().get()) {
      if (across.getText().isBlank()) {
        across.requestFocus();
      } else {
        model.takeOhms(leads.getText(), across.getText());
      }
    } else if (!value.getText().isBlank()) {
      model.take(value.getText());
    } else if (model.meter().present() && model.resultProperty().get().isEmpty()) {
      model.takeSteady();
    } else {
      model.goOn();
    }
  }

  private void pressed(KeyEvent e) {
    if (model.stageProperty().get() != Stage.READY || e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean handled = true;
    switch (e.getCode()) {
      case ENTER -> take();
      case UP -> model.move(-1);
      case DOWN -> model.move(1);
      case PAGE_DOWN -> stepsScroll.setVvalue(Math.min(1, stepsScroll.getVvalue() + 0.6));
      case PAGE_UP -> stepsScroll.setVvalue(Math.max(0, stepsScroll.getVvalue() - 0.6));
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  /** Letters that no value has act at once, wherever the focus is. */
  private void typed(KeyEvent e) {
    if (model.stageProperty().get() != Stage.READY || e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean inOhms = model.byOhmsProperty().get();
    boolean handled = true;
    switch (e.getCharacter().toLowerCase(Locale.ROOT)) {
      case "g" -> model.greater();
      case "d" -> model.toggleDetails();
      case "n" -> model.goOn();
      // OL is a value of ohms.
      case "o" -> {
        handled = !(inOhms && e.getTarget() == across);
        if (handled) {
          model.toggleOhms();
        }
      }
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  private static HBox face(GroundRow row) {
    GroundMark mark = GroundMark.of(row);
    String state =
        !row.since().isEmpty()
            ? row.since()
            : row.result().map(GroundResult::words).orElse(row.kind());
    HBox line =
        Parts.signed(
            Parts.line(mark.sign(), "ground-mark"), row.title(), Parts.text(state, "muted"));
    line.setAccessibleText(row.title() + ", " + mark.words());
    return line;
  }
}
