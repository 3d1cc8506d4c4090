package loopwright.ui.practise;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.LoopView;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.Drilling;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.Progress;
import loopwright.casework.practise.Step;
import loopwright.model.Language;
import loopwright.model.LoadRef;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.practise.PractiseViewModel.Stage;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;
import loopwright.ui.widget.StepGrid;

/** The place Practise: a drill to choose, to play, and what there is to learn from it. */
public final class PractiseScreen extends StackPane {
  private static final int TOLD_STEPS = 6;

  /** Height that a staircase needs under the loop. */
  private static final double STAIRS_EMS = 17;

  private final PractiseViewModel model;
  private final TextField code = new TextField();
  private final TextField expected = new TextField();
  private final LoopDrawing drawing = new LoopDrawing();
  private final StackPane drawingCard = new StackPane(drawing);
  private final Label told;
  private final VBox body = Parts.column("page");
  private final ScrollPane scroll = Parts.scrolling(body);

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   */
  public PractiseScreen(PractiseViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    setId("practise");
    Parts.field(code, "practise-code", "practise.code.prompt");
    Parts.field(expected, "practise-expected", "practise.expected.prompt");
    code.setOnAction(e -> model.begin(code.getText()));
    expected.setOnAction(e -> act());
    drawing.emProperty().bind(em);
    drawing.onClick(c -> model.pick(c.part(), c.points(), c.shift()));
    drawingCard.getStyleClass().addAll("card", "drawing-card");
    drawingCard.setMinWidth(0);
    // In the largest type it leaves half of the room to the words.
    drawingCard
        .minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () ->
                    drawing.loopProperty().get().filter(LoopView::hasStaircase).isPresent()
                        ? Math.min(STAIRS_EMS * em.get(), getHeight() / 2)
                        : USE_COMPUTED_SIZE,
                drawing.loopProperty(),
                em,
                heightProperty()));
    scroll.setFocusTraversable(true);
    scroll.setAccessibleText(Texts.of("place.practise"));
    scroll.setMinHeight(0);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    told = Parts.told(model.toldProperty());
    told.setId("practise-told");
    told.managedProperty().bind(told.textProperty().isNotEmpty());
    getChildren().setAll(new VBox(scroll, drawingCard));
    model.changesProperty().addListener(o -> show());
    model.stageProperty().addListener(o -> takeFocus());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    show();
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    scroll.requestFocus();
  }

  /** The explaining page that belongs to what the hands are about to do. */
  public String explains() {
    if (model.stageProperty().get() != Stage.PLAYING) {
      return "halve";
    }
    return switch (model.doing()) {
      case VOLTS, MILLIVOLTS -> "across";
      case OHMS -> "ohms";
      case DIODE -> "diode";
      case AMPS, LAMP_FOR_FUSE -> "fuse";
      case LOOK, WIGGLE, SWAP, NAME -> "halve";
    };
  }

  // ---- showing -------------------------------------------------------------------------------

  private void show() {
    Stage stage = model.stageProperty().get();
    boolean typing = expected.isFocused() || code.isFocused();
    body.getChildren()
        .setAll(
            switch (stage) {
              case CHOOSE -> choosing();
              case MAKING ->
                  List.of(
                      Parts.text(
                          Texts.of(model.printing() ? "practise.sheet.making" : "practise.making"),
                          "question"));
              case PLAYING -> playing(model.drilling().orElseThrow());
              case DEBRIEF -> debrief(model.debrief().orElseThrow());
            });
    body.getChildren().add(told);
    draw(stage);
    if (typing && stage == Stage.PLAYING && model.working()) {
      takeFocus();
    }
  }

  private void draw(Stage stage) {
    Optional<LoopView> loop =
        switch (stage) {
          case PLAYING -> model.drawn();
          case DEBRIEF ->
              model
                  .debrief()
                  .map(d -> d.own().steps())
                  .filter(steps -> !steps.isEmpty())
                  .map(steps -> steps.get(model.shownStep()).loop());
          default -> Optional.empty();
        };
    boolean leads = stage == Stage.PLAYING && model.doing().leads();
    drawing.redProperty().set(leads ? Optional.of(model.red().ref()) : Optional.empty());
    drawing.blackProperty().set(leads ? Optional.of(model.black().ref()) : Optional.empty());
    drawing
        .markedProperty()
        .set(
            stage == Stage.PLAYING && !leads
                ? Optional.of(LoadRef.parse(model.choice()).part())
                : Optional.empty());
    drawing.loopProperty().set(loop);
    Parts.shown(drawingCard, loop.isPresent());
  }

  private static KeyButton button(String key, String cap, Runnable action) {
    KeyButton button = new KeyButton(Texts.of(key), cap, action).styled("action", "wide");
    button.setFocusTraversable(false);
    return button;
  }

  private static FlowPane actions(List<KeyButton> buttons) {
    FlowPane pane = new FlowPane();
    pane.getStyleClass().add("actions");
    pane.getChildren().setAll(buttons);
    return pane;
  }

  // ---- choosing ------------------------------------------------------------------------------

  private List<Node> choosing() {
    FlowPane levels = actions(List.of());
    for (Level level : model.levels()) {
      KeyButton button =
          new KeyButton(
                  Texts.of(level), Integer.toString(level.ordinal() + 1), () -> model.begin(level))
              .styled("action", "wide");
      button.setFocusTraversable(false);
      levels.getChildren().add(button);
    }
    HBox typed =
        Parts.row(
            "entry-line",
            Parts.line(Texts.of("practise.code"), "step-word"),
            Parts.keyCap("C"),
            code);
    VBox card =
        Parts.column(
            "card",
            Parts.text(Texts.of("practise.title"), "page-title"),
            Parts.text(
                model.vehicleName().isEmpty()
                    ? Texts.of("practise.noVehicle")
                    : Texts.of(
                        model.printing() ? "practise.sheet.choose" : "practise.choose",
                        model.vehicleName()),
                "question"),
            levels,
            typed,
            switches());
    card.getStyleClass().add("practise-choosing");
    return model
        .progress()
        .filter(p -> !p.levels().isEmpty())
        .<List<Node>>map(p -> List.of(card, progress(p)))
        .orElse(List.of(card));
  }

  private FlowPane switches() {
    FlowPane switches = actions(List.of());
    if (!model.printing()) {
      switches.getChildren().add(button(asksKey(), "X", model::toggleAsks));
    }
    if (model.printsSheets()) {
      String key = model.printing() ? "practise.sheet.not" : "practise.sheet";
      switches.getChildren().add(button(key, "P", model::togglePrinting));
    }
    return switches;
  }

  private String asksKey() {
    return model.asksProperty().get() ? "practise.asks.not" : "practise.asks";
  }

  private static VBox progress(Progress progress) {
    VBox lines = Parts.column("card", Parts.line(Texts.of("practise.progress"), "side-title"));
    lines.setId("practise-progress");
    progress.levels().forEach((level, line) -> lines.getChildren().add(line(level, line)));
    lines.getChildren().add(Parts.line(Texts.of("practise.progress.kinds"), "side-title"));
    progress.kinds().forEach((kind, line) -> lines.getChildren().add(line(kind, line)));
    return lines;
  }

  private static Label line(Enum<?> of, Progress.Line line) {
    return Parts.text(
        Texts.of(
            "practise.progress.line",
            Texts.of(of),
            Long.toString(line.lately()),
            line.scores().size()));
  }

  // ---- playing -------------------------------------------------------------------------------

  private List<Node> playing(Drilling drilling) {
    StepGrid grid = new StepGrid();
    FlowPane meters = actions(List.of());
    for (Doing doing : Doing.values()) {
      KeyButton button =
          new KeyButton(Texts.of(doing), doing.key(), () -> model.choose(doing))
              .styled("page-tab", "wide");
      if (doing == model.doing()) {
        button.getStyleClass().add("picked");
      }
      button.setFocusTraversable(false);
      meters.getChildren().add(button);
    }
    grid.step("practise.what", meters);
    grid.step("practise.set", Parts.text(model.settingWords(), "step-value"));
    if (model.doing().leads()) {
      grid.point("practise.red", Parts.redMark(), model.red());
      grid.point("practise.black", Parts.blackMark(), model.black());
    } else {
      String named = String.join(", ", model.namedTitles());
      grid.step("practise.part", Parts.text(model.choiceTitle(), "step-value"));
      if (!named.isEmpty()) {
        grid.step("practise.together", Parts.text(named, "step-value"));
      }
      if (model.saysHow()) {
        String how = model.how().map(k -> Texts.of(k)).orElse(Texts.of("practise.how.unsaid"));
        grid.step("practise.how", Parts.text(how, "step-value"));
      }
    }
    VBox now =
        Parts.column(
            "card",
            Parts.text(
                Texts.of("practise.drill", drilling.code().toString(), drilling.title()),
                "page-title"),
            // Above the steps, as in a case: in the largest type what is below must be scrolled to.
            model.foretelling() ? foretelling() : result(drilling),
            grid);
    if (model.asksProperty().get() && model.doing().expects()) {
      now.getChildren()
          .add(
              Parts.row(
                  "entry-line",
                  Parts.line(Texts.of("practise.expected"), "step-word"),
                  expected,
                  Parts.text(model.expectable(), "muted")));
    }
    now.getChildren().add(keys());
    return List.of(now);
  }

  private VBox result(Drilling drilling) {
    VBox box = Parts.column("answer");
    if (model.working()) {
      box.getChildren().add(Parts.text(Texts.of("practise.reading"), "muted"));
      return box;
    }
    model
        .last()
        .ifPresent(
            s -> {
              Label shown = Parts.text(s.shown().isEmpty() ? s.what() : s.shown(), "verdict");
              shown.setId("practise-shown");
              box.getChildren().add(shown);
              s.told().forEach(t -> box.getChildren().add(Parts.text(t, "verdict-mode")));
            });
    if (drilling.proven()) {
      Label works = Parts.text(Texts.of("practise.works"), "verdict-mode");
      works.setId("practise-works");
      box.getChildren().add(works);
    }
    box.getChildren()
        .add(
            Parts.text(
                Texts.of(
                    "practise.soFar",
                    Language.marked(String.format(Locale.ROOT, "%.1f", drilling.minutes())),
                    drilling.steps().size()),
                "muted"));
    return box;
  }

  /** Of which parts the check will tell, before it is taken. */
  private VBox foretelling() {
    FlowPane parts = actions(List.of());
    List<String> titles = model.askedTitles();
    for (int i = 0; i < titles.size(); i++) {
      int number = i;
      parts
          .getChildren()
          .add(
              choice(
                  titles.get(i),
                  Integer.toString(i + 1),
                  model.foretold(i),
                  () -> model.toggleForetold(number)));
    }
    parts
        .getChildren()
        .add(
            choice(
                Texts.of("practise.foretold.none"),
                "0",
                model.foretoldNone(),
                model::toggleForetoldNone));
    VBox box =
        Parts.column(
            "answer", Parts.text(Texts.of("practise.foretold.question"), "question"), parts);
    box.setId("practise-foretold");
    return box;
  }

  /** A button that is in or out; ticked for eye and ear where it is in. */
  private static KeyButton choice(String text, String cap, boolean in, Runnable action) {
    KeyButton button =
        new KeyButton(in ? Texts.of("practise.foretold.in", text) : text, cap, action)
            .styled("action", "wide");
    if (in) {
      button.getStyleClass().add("picked");
    }
    button.setFocusTraversable(false);
    return button;
  }

  private FlowPane keys() {
    FlowPane keys = actions(List.of());
    boolean name = model.doing() == Doing.NAME;
    keys.getChildren()
        .add(
            new KeyButton(Texts.of(name ? "practise.accuse" : "practise.take"), "Enter", this::act)
                .styled("primary"));
    keys.getChildren()
        .add(
            button(
                model.doing().leads() ? "practise.moveRed" : "practise.movePart",
                "← →",
                () -> model.move(1)));
    if (model.doing().leads()) {
      keys.getChildren().add(button("practise.moveBlack", "Shift ← →", () -> model.moveBlack(1)));
    }
    if (name) {
      keys.getChildren().add(button("practise.more", "+", model::toggleNamed));
      if (model.saysHow()) {
        keys.getChildren().add(button("practise.how.next", "K", model::nextHow));
      }
    }
    keys.getChildren().add(button("practise.switches", "S", model::nextSetting));
    keys.getChildren().add(button("practise.battery", "B", model::toggleBattery));
    keys.getChildren().add(button("practise.pull", "P", model::togglePulled));
    keys.getChildren().add(button("practise.fuse", "U", model::newMeterFuse));
    keys.getChildren().add(button("practise.end", "E", model::end));
    keys.getChildren().forEach(k -> k.setFocusTraversable(false));
    return keys;
  }

  /** What is expected, and what it will tell, is asked for first, if that was wished. */
  private void act() {
    boolean asks = model.asksProperty().get() && model.doing().expects();
    if (asks && !expected.isFocused() && !model.foretelling()) {
      expected.clear();
      expected.requestFocus();
      return;
    }
    if (asks && !model.foretelling() && !model.understands(expected.getText())) {
      return;
    }
    boolean first = asks && !model.foretelling() && model.startForetelling();
    if (!first) {
      model.act(expected.getText());
    }
    takeFocus();
  }

  // ---- the debrief ---------------------------------------------------------------------------

  private List<Node> debrief(Debrief debrief) {
    VBox sum =
        Parts.column(
            "card",
            Parts.text(
                Texts.of("practise.drill", debrief.code().toString(), debrief.title()),
                "page-title"));
    Label score =
        Parts.text(Texts.of("practise.score", Integer.toString(debrief.score())), "verdict");
    score.setId("practise-score");
    sum.getChildren().add(score);
    debrief.truth().forEach(t -> sum.getChildren().add(Parts.text(t, "verdict-mode")));
    debrief.summary().forEach(t -> sum.getChildren().add(Parts.text(t)));
    sum.getChildren()
        .add(
            actions(
                List.of(
                    button("practise.again", "A", model::again),
                    button("practise.another", "N", model::leave))));
    VBox way = Parts.column("card", Parts.line(Texts.of("practise.ownWay"), "side-title"));
    way.setId("practise-way");
    List<Step> steps = debrief.own().steps();
    int from = Math.max(0, Math.min(model.shownStep() - 2, steps.size() - TOLD_STEPS));
    for (int i = from; i < Math.min(steps.size(), from + TOLD_STEPS); i++) {
      way.getChildren().add(step(steps.get(i), i == model.shownStep()));
    }
    way.getChildren()
        .add(actions(List.of(button("practise.steps", "↑ ↓", () -> model.moveStep(1)))));
    VBox best = Parts.column("card", Parts.line(Texts.of("practise.bestWay"), "side-title"));
    debrief.best().steps().forEach(s -> best.getChildren().add(Parts.text(line(s))));
    return List.of(sum, way, best);
  }

  private static VBox step(Step step, boolean shown) {
    VBox box = Parts.column("step-box", Parts.text(line(step), shown ? "step-value" : "muted"));
    if (shown) {
      step.told().forEach(t -> box.getChildren().add(Parts.text(t)));
      step.review().forEach(t -> box.getChildren().add(Parts.text(t)));
    }
    return box;
  }

  private static String line(Step step) {
    return step.shown().isEmpty()
        ? Texts.of("practise.step", Integer.toString(step.number()), step.what())
        : Texts.of(
            "practise.step.shown", Integer.toString(step.number()), step.what(), step.shown());
  }

  // ---- keys ----------------------------------------------------------------------------------

  private void pressed(KeyEvent e) {
    if (e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean typing = code.isFocused() || expected.isFocused();
    if (typing) {
      if (e.getCode() == KeyCode.ESCAPE) {
        takeFocus();
        e.consume();
      }
      return;
    }
    boolean handled =
        switch (model.stageProperty().get()) {
          case CHOOSE -> choosing(e.getCode());
          case MAKING -> false;
          case PLAYING -> playing(e);
          case DEBRIEF -> debriefed(e.getCode());
        };
    if (handled) {
      e.consume();
    }
  }

  private boolean choosing(KeyCode key) {
    if (key == KeyCode.X) {
      model.toggleAsks();
    } else if (key == KeyCode.P) {
      model.togglePrinting();
    } else if (key == KeyCode.C) {
      code.requestFocus();
    } else if (key.isDigitKey()) {
      int number = KeyNames.digit(key) - 1;
      if (number < 0 || number >= Level.values().length) {
        return false;
      }
      model.begin(Level.values()[number]);
    } else {
      return false;
    }
    return true;
  }

  /** The keys while it is asked what the check will tell; the others wait. */
  private boolean foretelling(KeyCode key) {
    if (key == KeyCode.ENTER) {
      act();
    } else if (key == KeyCode.ESCAPE) {
      model.leaveForetelling();
    } else if (key.isDigitKey() && KeyNames.digit(key) == 0) {
      model.toggleForetoldNone();
    } else if (key.isDigitKey()) {
      model.toggleForetold(KeyNames.digit(key) - 1);
    } else {
      return !key.isFunctionKey();
    }
    return true;
  }

  private boolean playing(KeyEvent e) {
    if (model.foretelling()) {
      return foretelling(e.getCode());
    }
    for (Doing doing : Doing.values()) {
      if (doing.key().equals(e.getCode().getName())) {
        model.choose(doing);
        return true;
      }
    }
    switch (e.getCode()) {
      case LEFT, RIGHT -> {
        int by = e.getCode() == KeyCode.LEFT ? -1 : 1;
        if (e.isShiftDown()) {
          model.moveBlack(by);
        } else {
          model.move(by);
        }
      }
      case ENTER -> act();
      case PLUS, ADD, SPACE -> model.toggleNamed();
      case S -> model.nextSetting();
      case B -> model.toggleBattery();
      case P -> model.togglePulled();
      case K -> model.nextHow();
      case U -> model.newMeterFuse();
      case E -> model.end();
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean debriefed(KeyCode key) {
    switch (key) {
      case UP -> model.moveStep(-1);
      case DOWN -> model.moveStep(1);
      case A -> model.again();
      case N, ENTER -> model.leave();
      default -> {
        return false;
      }
    }
    return true;
  }
}
