package loopwright.ui.starting;

import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.pattern.Added;
import loopwright.casework.pattern.Outcome;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.widget.Parts;

/** What would be added: how much, the drawing, each part with its value and source. */
final class PreviewPane extends VBox {
  private final Label count = Parts.text("", "preview-count");
  private final LoopDrawing drawing = new LoopDrawing();
  private final VBox list = Parts.column("preview-list");

  PreviewPane(PreviewMaker maker, ReadOnlyDoubleProperty em) {
    getStyleClass().addAll("card", "preview-pane");
    setId("preview");
    count.setId("preview-count");
    drawing.emProperty().bind(em);
    drawing.getStyleClass().add("preview-drawing");
    drawing.managedProperty().bind(drawing.visibleProperty());
    var scroll = Parts.scrolling(list);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().setAll(count, drawing, scroll);
    maker.previewProperty().addListener((o, was, is) -> show(is));
    show(maker.previewProperty().get());
  }

  private void show(Preview preview) {
    list.getChildren().clear();
    drawing.loopProperty().set(preview.loop());
    drawing.setVisible(preview.loop().isPresent());
    Optional<Outcome> outcome = preview.outcome();
    count.getStyleClass().remove("status-problem");
    if (outcome.isEmpty()) {
      count.setText(
          preview.problem().isEmpty()
              ? Texts.of("starting.working")
              : Texts.of("starting.accepted", preview.problem()));
      if (!preview.problem().isEmpty()) {
        count.getStyleClass().add("status-problem");
      }
      return;
    }
    count.setText(
        Texts.of("starting.count", outcome.get().added().size(), outcome.get().circuits().size()));
    outcome.get().told().forEach(t -> list.getChildren().add(Parts.text(t, "preview-told")));
    for (Added added : outcome.get().added()) {
      list.getChildren()
          .add(
              Parts.column(
                  "preview-part",
                  Parts.text(
                      Texts.of("starting.part", added.title(), added.value()), "preview-title"),
                  Parts.text(added.source(), "form-source")));
    }
  }
}
