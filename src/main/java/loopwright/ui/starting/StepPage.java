package loopwright.ui.starting;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** A page with its title, what is on it, and what Enter and Escape do. */
final class StepPage extends VBox {

  /**
   * Makes the page.
   *
   * @param keys what other keys do
   */
  StepPage(String title, Node body, KeyButton enter, Optional<KeyButton> escape, String keys) {
    getStyleClass().add("page");
    HBox foot = Parts.row("primary-row", enter);
    // Where there is little room the words about other keys break, not those of the buttons.
    enter.setMinWidth(Region.USE_PREF_SIZE);
    escape.ifPresent(
        button -> {
          button.setMinWidth(Region.USE_PREF_SIZE);
          foot.getChildren().add(button);
        });
    foot.getChildren().add(Parts.text(keys, "legend"));
    VBox.setVgrow(body, Priority.ALWAYS);
    getChildren().setAll(Parts.text(title, "page-title"), body, foot);
    addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            enter.fire();
            e.consume();
          } else if (e.getCode() == KeyCode.ESCAPE && escape.isPresent()) {
            escape.get().fire();
            e.consume();
          }
        });
  }
}
