package loopwright.ui.snapshot;

import java.util.Objects;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;
import loopwright.ui.Fonts;
import loopwright.ui.Look;

/** One screen on a test's stage, dressed as the window dresses it. */
public final class TestScreen {
  /** Pixels of one em. */
  public static final double EM = 16;

  private TestScreen() {}

  /** Shows a screen; on the window's thread only. */
  public static Scene show(Stage stage, Parent screen) {
    Fonts.load();
    BorderPane root = new BorderPane(screen);
    root.getStyleClass().addAll("window", Look.PAPER.styleClass());
    root.setStyle("-fx-font-size: " + EM + "px;");
    Scene scene = new Scene(root, 1024, 700);
    scene.getStylesheets().addAll(sheet("loopwright.css"), sheet(Look.PAPER.sheet()));
    stage.setScene(scene);
    stage.show();
    return scene;
  }

  private static String sheet(String name) {
    return Objects.requireNonNull(Look.class.getResource("/loopwright/ui/" + name), name)
        .toExternalForm();
  }
}
