package loopwright.ui.find;

import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** Says where the person's own meter is connected. Has its own keys while it is typed in. */
final class MeterPortField extends VBox {
  private final TextField port = new TextField();

  /**
   * Makes it.
   *
   * @param done hands go on elsewhere
   */
  MeterPortField(MeterViewModel meter, Runnable done) {
    getStyleClass().add("meter-port");
    port.setId("meter-port");
    port.getStyleClass().add("search-field");
    port.setPromptText(Texts.of("complaint.portPrompt"));
    port.setAccessibleText(Texts.of("complaint.port"));
    port.textProperty().bindBidirectional(meter.portProperty());
    Label problem = Parts.text("", "entry-status", "status-problem");
    problem.textProperty().bind(meter.problemProperty());
    problem.managedProperty().bind(problem.textProperty().isNotEmpty());
    port.setOnAction(
        e -> {
          if (meter.connect()) {
            done.run();
          }
        });
    port.addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            done.run();
            e.consume();
          }
        });
    getChildren().addAll(port, problem, new MeterStatus(meter, meter::look, said -> said));
  }

  /** Whether this key is typed in the field and means something there. */
  boolean takes(KeyEvent e) {
    return e.getTarget() == port && !e.getCode().isFunctionKey() && !e.isAltDown();
  }
}
