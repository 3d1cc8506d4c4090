package loopwright.app;

import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/** The least JavaFX window that one can type into, to hold Loopwright's start against. */
public final class BareWindow {
  private BareWindow() {}

  /** Opens it. */
  public static void main(String[] args) {
    Application.launch(Bare.class, args);
  }

  /** The window. */
  public static final class Bare extends Application {
    @Override
    public void start(Stage stage) {
      stage.setTitle("Bare");
      stage.setScene(new Scene(new VBox(new TextField()), 1280, 800));
      stage.show();
      ReadyToType.then(stage, () -> {});
    }
  }
}
