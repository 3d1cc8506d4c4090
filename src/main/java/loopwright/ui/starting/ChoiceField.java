package loopwright.ui.starting;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import loopwright.casework.pattern.Question.Choice;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** All choices of a question side by side, the one chosen marked. Left, right or a digit choose. */
final class ChoiceField extends FlowPane {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");

  private final List<Choice> choices;
  private final List<Label> labels = new ArrayList<>();
  private final Consumer<String> take;
  private int chosen = -1;

  ChoiceField(String question, List<Choice> choices, Consumer<String> take) {
    this.choices = choices;
    this.take = take;
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.COMBO_BOX);
    setAccessibleHelp(question);
    getStyleClass().add("choice-field");
    // A long choice breaks its line; by itself the pane would ask to be as wide as that.
    setMinWidth(0);
    DoubleBinding room =
        Bindings.createDoubleBinding(
            () -> getWidth() - snappedLeftInset() - snappedRightInset(),
            widthProperty(),
            insetsProperty());
    for (int i = 0; i < choices.size(); i++) {
      int at = i;
      Label label = Parts.text(choices.get(i).words(), "choice");
      label.setOnMouseClicked(
          e -> {
            requestFocus();
            choose(at);
          });
      label.maxWidthProperty().bind(room);
      labels.add(label);
    }
    getChildren().setAll(labels);
    addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
    setOnMouseClicked(e -> requestFocus());
  }

  /** Marks a choice as the one that stands. */
  void show(String id) {
    chosen = -1;
    for (int i = 0; i < choices.size(); i++) {
      boolean stands = choices.get(i).id().equalsIgnoreCase(id);
      chosen = stands ? i : chosen;
      labels.get(i).pseudoClassStateChanged(CHOSEN, stands);
      // Not by colour alone.
      labels
          .get(i)
          .setText(
              Texts.of(
                  stands ? "starting.choice.chosen" : "starting.choice", choices.get(i).words()));
    }
    setAccessibleText(chosen < 0 ? "" : choices.get(chosen).words());
  }

  private void choose(int at) {
    if (at >= 0 && at < choices.size()) {
      show(choices.get(at).id());
      take.accept(choices.get(at).id());
    }
  }

  private void pressed(KeyEvent e) {
    if (e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    if (e.getCode() == KeyCode.RIGHT) {
      choose(Math.min(chosen + 1, choices.size() - 1));
    } else if (e.getCode() == KeyCode.LEFT) {
      choose(Math.max(chosen - 1, 0));
    } else if (e.getCode().isDigitKey()) {
      choose(KeyNames.digit(e.getCode()) - 1);
    } else {
      return;
    }
    e.consume();
  }
}
