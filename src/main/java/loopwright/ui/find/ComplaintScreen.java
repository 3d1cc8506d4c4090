package loopwright.ui.find;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** Says what is wrong: typed in words, or chosen. */
final class ComplaintScreen extends VBox {
  private final ComplaintViewModel model;
  private final FindViewModel find;
  private final TextField words = new TextField();
  private final ListView<Circuit> circuits = new ListView<>();
  private final FlowPane kinds = new FlowPane();
  private final FlowPane contexts = new FlowPane();
  private final FlowPane meters = new FlowPane();
  private final MeterPortField port;
  private final Label summary = Parts.text("", "complaint-summary");
  private final Label problem = Parts.text("", "entry-status", "status-problem");

  ComplaintScreen(FindViewModel find) {
    this.find = find;
    this.model = find.complaint();
    this.port = new MeterPortField(model.ownMeter(), this::takeFocus);
    setId("complaint");
    getStyleClass().addAll("page", "complaint");
    words.setId("complaint-words");
    words.getStyleClass().addAll("value-field", "complaint-words");
    words.setPromptText(Texts.of("complaint.prompt"));
    words.setAccessibleText(Texts.of("complaint.title"));
    words.textProperty().bindBidirectional(model.wordsProperty());
    circuits.setItems(model.circuits());
    circuits.getStyleClass().add("fat-list");
    circuits.setCellFactory(list -> FatCell.words(list, Circuit::name));
    circuits.setFocusTraversable(false);
    circuits.setPlaceholder(Parts.text(Texts.of("vehicle.noCircuits"), "muted"));
    circuits.setAccessibleText(Texts.of("complaint.circuit"));
    circuits
        .getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (o, was, is) -> {
              if (is.intValue() >= 0) {
                model.circuitProperty().set(is.intValue());
              }
            });
    model.circuitProperty().addListener(o -> mark());
    model.circuits().addListener((javafx.collections.ListChangeListener<Circuit>) c -> mark());
    for (FlowPane pane : new FlowPane[] {kinds, contexts, meters}) {
      pane.getStyleClass().add("choices");
      // A long choice breaks its line; by itself the pane would ask to be as wide as that.
      pane.setMinWidth(0);
    }
    summary.setId("complaint-summary");
    VBox left = Parts.column("complaint-left", heading("complaint.circuit", "↑ ↓"), circuits);
    VBox.setVgrow(circuits, Priority.ALWAYS);
    VBox right =
        Parts.column(
            "complaint-right",
            heading("complaint.kind", "← →"),
            kinds,
            heading("complaint.context", CaseActions.KNOWN),
            contexts,
            heading("complaint.meter", CaseActions.METER),
            meters,
            heading("complaint.port", "Tab"),
            port);
    HBox.setHgrow(right, Priority.ALWAYS);
    javafx.scene.control.ScrollPane rightScroll = Parts.scrolling(right);
    HBox.setHgrow(rightScroll, Priority.ALWAYS);
    HBox columns = new HBox(left, rightScroll);
    columns.getStyleClass().add("complaint-columns");
    VBox.setVgrow(columns, Priority.ALWAYS);
    KeyButton open =
        new KeyButton(Texts.of("complaint.open"), CaseActions.COUNT, find::open).styled("primary");
    open.setId("open-case");
    HBox.setHgrow(summary, Priority.ALWAYS);
    summary.setMaxWidth(Double.MAX_VALUE);
    problem.managedProperty().bind(problem.textProperty().isNotEmpty());
    getChildren()
        .addAll(
            Parts.text(Texts.of("complaint.title"), "page-title"),
            words,
            problem,
            columns,
            Parts.row("primary-row", summary, open));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    model.kindProperty().addListener(o -> rebuild());
    model.contextProperty().addListener(o -> rebuild());
    model.meterProperty().addListener(o -> rebuild());
    model.problemProperty().addListener(o -> showProblem());
    find.problemProperty().addListener(o -> showProblem());
    rebuild();
    mark();
  }

  void takeFocus() {
    words.requestFocus();
    words.end();
  }

  private void showProblem() {
    problem.setText(
        model.problemProperty().get().isEmpty()
            ? find.problemProperty().get()
            : model.problemProperty().get());
  }

  private static HBox heading(String key, String cap) {
    return Parts.row("choice-head", Parts.text(Texts.of(key), "side-title"), Parts.keyCap(cap));
  }

  private void mark() {
    circuits.getSelectionModel().select(model.circuitProperty().get());
    circuits.scrollTo(Math.max(0, model.circuitProperty().get() - 2));
    summarise();
  }

  private void summarise() {
    summary.setText(model.chosen().map(this::summary).orElse(""));
  }

  private String summary(Circuit circuit) {
    ComplaintKind kind = model.kindProperty().get();
    // Nobody knows yet whose doing a flat battery is.
    return kind == ComplaintKind.DRAINS_BATTERY
        ? Texts.of("complaint.summaryDrain")
        : Texts.of("complaint.summary", circuit.name(), Texts.of(kind));
  }

  private void rebuild() {
    kinds.getChildren().clear();
    int i = 1;
    for (ComplaintKind kind : ComplaintKind.values()) {
      kinds
          .getChildren()
          .add(
              option(
                  kinds,
                  Texts.of(kind),
                  Texts.of("key.alt", Integer.toString(i++)),
                  kind == model.kindProperty().get(),
                  () -> model.kindProperty().set(kind)));
    }
    contexts.getChildren().clear();
    for (Context context : Context.values()) {
      contexts
          .getChildren()
          .add(
              option(
                  contexts,
                  Texts.of(context),
                  "",
                  context == model.contextProperty().get(),
                  () -> model.contextProperty().set(context)));
    }
    meters.getChildren().clear();
    for (MeterSpec meter : model.meters()) {
      meters
          .getChildren()
          .add(
              option(
                  meters,
                  meter.name(),
                  "",
                  meter.equals(model.meterProperty().get()),
                  () -> model.meterProperty().set(meter)));
    }
    summarise();
  }

  private Button option(FlowPane among, String text, String cap, boolean chosen, Runnable action) {
    Button button =
        cap.isEmpty() ? new Button(text) : new KeyButton(text, cap, action).styled("option");
    if (cap.isEmpty()) {
      button.setOnAction(e -> action.run());
      button.getStyleClass().addAll("option", "key-button");
    }
    button.setFocusTraversable(false);
    button.setWrapText(true);
    button.maxWidthProperty().bind(among.widthProperty());
    if (chosen) {
      button.getStyleClass().add("picked");
      button.setAccessibleText(Texts.of("access.chosen", text));
    }
    return button;
  }

  private void pressed(KeyEvent e) {
    if (port.takes(e)) {
      return;
    }
    if (e.isAltDown() && e.getCode().isDigitKey()) {
      int i = KeyNames.digit(e.getCode()) - 1;
      if (i >= 0 && i < ComplaintKind.values().length) {
        model.kindProperty().set(ComplaintKind.values()[i]);
      }
      e.consume();
      return;
    }
    boolean handled = true;
    switch (e.getCode()) {
      case UP -> model.moveCircuit(-1);
      case DOWN -> model.moveCircuit(1);
      case LEFT -> moveKind(-1);
      case RIGHT -> moveKind(1);
      case F12 -> {
        Context[] all = Context.values();
        model
            .contextProperty()
            .set(all[(model.contextProperty().get().ordinal() + 1) % all.length]);
      }
      case F10 -> {
        int i = model.meters().indexOf(model.meterProperty().get());
        model.meterProperty().set(model.meters().get((i + 1) % model.meters().size()));
      }
      case ENTER -> find.open();
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  private void moveKind(int by) {
    ComplaintKind[] all = ComplaintKind.values();
    int i = Math.floorMod(model.kindProperty().get().ordinal() + by, all.length);
    model.kindProperty().set(all[i]);
  }
}
