package loopwright.app;

import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;

/** The desktop window. */
public class LoopwrightApp extends Application {
  @Override
  public void start(Stage stage) {
    stage.setTitle("Loopwright");
    stage.setScene(new Scene(new StackPane(), 1200, 800));
    stage.show();
  }
}
