package loopwright.ui.paper;

import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.paper.PaperItem.Named;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** A finding: what it is, what follows, what to do; more once it is opened. */
final class FindingCard extends HBox {
  /** As many other parts as digits can be pressed for. */
  static final int MOST_OTHERS = 9;

  private final PaperItem item;
  private final String severity;
  private final VBox words = Parts.column("finding-words");
  private final Consumer<String> jump;
  private boolean opened;

  /**
   * Makes a card.
   *
   * @param severity how bad it is, in words
   * @param jump goes to a part
   */
  FindingCard(PaperItem item, String severity, Consumer<String> jump) {
    this.item = item;
    this.severity = severity;
    this.jump = jump;
    getStyleClass().addAll("card", "finding");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.LIST_ITEM);
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMinWidth(0);
    getChildren().setAll(SeverityMark.of(item.severity()), words);
    fill();
  }

  PaperItem item() {
    return item;
  }

  void open(boolean now) {
    if (now != opened) {
      opened = now;
      fill();
    }
  }

  void pick(boolean now) {
    getStyleClass().remove("picked");
    if (now) {
      getStyleClass().add("picked");
    }
  }

  private void fill() {
    words.getChildren().setAll(Parts.text(item.says(), "finding-says"));
    if (!item.consequence().isEmpty()) {
      words.getChildren().add(Parts.text(item.consequence(), "finding-follows"));
    }
    if (!item.cure().isEmpty()) {
      words.getChildren().add(Parts.text(Texts.of("paper.do", item.cure()), "finding-cure"));
    }
    if (opened) {
      details();
    }
    setAccessibleText(
        words.getChildren().stream()
            .filter(Label.class::isInstance)
            .map(n -> ((Label) n).getText())
            .collect(Collectors.joining(" ", severity + ": ", "")));
  }

  private void details() {
    if (!item.source().isEmpty()) {
      detail(Texts.of("paper.source", item.source()));
    }
    if (!item.setting().isEmpty()) {
      detail(Texts.of("paper.setting", String.join(", ", item.setting())));
    }
    if (!item.circuits().isEmpty()) {
      detail(
          Texts.of(
              "paper.circuits",
              item.circuits().stream().map(Named::name).collect(Collectors.joining(", "))));
    }
    if (!item.others().isEmpty()) {
      detail(Texts.of("paper.others"));
      FlowPane others = new FlowPane();
      others.getStyleClass().add("actions");
      for (int i = 0; i < Math.min(MOST_OTHERS, item.others().size()); i++) {
        Named other = item.others().get(i);
        others.getChildren().add(button(other, Integer.toString(i + 1)));
      }
      words.getChildren().add(others);
    }
  }

  private Node button(Named other, String key) {
    KeyButton button =
        new KeyButton(other.name(), key, () -> jump.accept(other.id())).styled("action", "wide");
    button.setFocusTraversable(false);
    return button;
  }

  private void detail(String text) {
    words.getChildren().add(Parts.text(text, "finding-detail"));
  }
}
