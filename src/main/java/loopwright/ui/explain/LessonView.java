package loopwright.ui.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.explain.Explained;
import loopwright.casework.explain.Figure;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** One page: its words, its circuit, what can be moved, and the figures. */
final class LessonView extends StackPane {
  /** Ems that a drawing with its staircase needs to be read. */
  private static final double DRAWING_HEIGHT = 15;

  private final ExplainViewModel model;
  private final Label title = Parts.text("", "page-title");
  private final Label words = Parts.text("", "explain-words");
  private final Label tryThis = Parts.text("", "explain-try");
  private final LoopDrawing drawing = new LoopDrawing();
  private final VBox controls = Parts.column("explain-controls");
  private final ScrollPane scroll;
  private final GridPane figures = new GridPane();
  private final List<StopSlider> sliders = new ArrayList<>();
  private String shown = "";

  /** The focus is wanted before the first page is there. */
  private boolean focusWanted;

  LessonView(ExplainViewModel model, ReadOnlyDoubleProperty em, List<KeyButton> actions) {
    this.model = model;
    title.setId("explain-title");
    words.setId("explain-words");
    tryThis.setId("explain-try");
    drawing.setId("explain-drawing");
    drawing.emProperty().bind(em);
    drawing.foldingProperty().set(LoopLayout.Folding.WHOLE);
    drawing.minHeightProperty().bind(em.multiply(DRAWING_HEIGHT));
    VBox.setVgrow(drawing, Priority.ALWAYS);
    figures.setId("explain-figures");
    figures.getStyleClass().add("explain-figures");
    FlowPane play = new FlowPane(controls, figures);
    play.getStyleClass().add("explain-play");
    FlowPane keys = new FlowPane();
    keys.getStyleClass().add("actions");
    keys.getChildren().addAll(actions);
    Label failure = Parts.text("", "entry-status", "status-problem");
    failure.textProperty().bind(model.failureProperty());
    failure.visibleProperty().bind(model.failureProperty().isNotEmpty());
    failure.managedProperty().bind(failure.visibleProperty());
    Label legend = Parts.text(Texts.of("explain.legend"), "legend");
    scroll =
        Parts.scrolling(
            Parts.column(
                "explain-page", title, words, tryThis, failure, drawing, legend, play, keys));
    scroll.setFitToHeight(true);
    getChildren().add(scroll);
    model.pageProperty().addListener(o -> show());
    show();
  }

  private void show() {
    model.pageProperty().get().ifPresent(this::show);
  }

  private void show(Explained page) {
    boolean another = !page.id().equals(shown);
    shown = page.id();
    title.setText(page.title());
    words.setText(page.words());
    tryThis.setText(Texts.of("explain.try", page.tryThis()));
    drawing.loopProperty().set(page.loop());
    drawing.redProperty().set(Optional.of(page.red()));
    drawing.blackProperty().set(Optional.of(page.black()));
    figures.getChildren().clear();
    for (Figure figure : page.figures()) {
      Label value = Parts.text(figure.text(), "explain-value");
      value.setAccessibleText(Texts.of("explain.figure", figure.name(), figure.text()));
      figures.addRow(figures.getRowCount(), Parts.line(figure.name(), "muted"), value);
    }
    if (another) {
      rebuild(page);
    }
    for (int i = 0; i < sliders.size(); i++) {
      sliders.get(i).show(page.controls().get(i));
    }
    // Where not all has room, what is read first and what follows a move are in sight.
    scroll.setVvalue(another ? scroll.getVmin() : scroll.getVmax());
  }

  private void rebuild(Explained page) {
    boolean focus = focusWanted || sliders.stream().anyMatch(StopSlider::isFocused);
    sliders.clear();
    page.controls().forEach(c -> sliders.add(new StopSlider(c, s -> model.move(c.id(), s))));
    controls.getChildren().setAll(Parts.text(Texts.of("explain.move"), "legend"));
    sliders.forEach(s -> controls.getChildren().add(s.row()));
    if (focus) {
      takeFocus();
    }
  }

  void takeFocus() {
    focusWanted = sliders.isEmpty();
    // Before its first styling a scroll pane doesn't hold its content yet.
    scroll.applyCss();
    sliders.stream().findFirst().ifPresent(StopSlider::requestFocus);
  }

  void nextControl(int by) {
    int at = 0;
    while (at < sliders.size() && !sliders.get(at).isFocused()) {
      at++;
    }
    int next = at == sliders.size() ? 0 : Math.max(0, Math.min(sliders.size() - 1, at + by));
    if (next < sliders.size()) {
      sliders.get(next).requestFocus();
      scroll.setVvalue(scroll.getVmax());
    }
  }
}
