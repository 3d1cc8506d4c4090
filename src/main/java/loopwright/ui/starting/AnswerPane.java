package loopwright.ui.starting;

import java.util.Map;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.Pattern;
import loopwright.model.Vehicle;

/** A pattern's questions with the preview beside them. */
final class AnswerPane extends HBox {
  private final FormPane fields;
  private final FormViewModel form;

  /**
   * Makes the pane.
   *
   * @param vehicle the vehicle it would go into
   * @param given answers to begin with
   */
  AnswerPane(
      Pattern pattern,
      Vehicle vehicle,
      Basis basis,
      Map<String, String> given,
      PreviewMaker maker,
      ReadOnlyDoubleProperty em) {
    getStyleClass().add("answer-pane");
    form = new FormViewModel(pattern.questionnaire(vehicle, basis), given);
    fields = new FormPane(form);
    PreviewPane preview = new PreviewPane(maker, em);
    beside(this, fields, preview);
    Runnable ask =
        () -> {
          Map<String, String> answers = form.given();
          maker.ask(() -> pattern.plan(vehicle, basis, answers));
        };
    form.onChange(ask);
    ask.run();
  }

  /** Lays what is answered beside what comes of it, two fifths to three. */
  static void beside(HBox pane, Region left, Region right) {
    left.minWidthProperty().bind(pane.widthProperty().multiply(0.4));
    left.prefWidthProperty().bind(pane.widthProperty().multiply(0.4));
    left.setMaxHeight(Double.MAX_VALUE);
    right.setMaxHeight(Double.MAX_VALUE);
    right.setMinWidth(0);
    right.setPrefWidth(0);
    HBox.setHgrow(right, Priority.ALWAYS);
    pane.getChildren().setAll(left, right);
  }

  FormViewModel form() {
    return form;
  }

  void takeFocus() {
    fields.takeFocus();
  }
}
