package loopwright.ui.shell;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.net.URL;
import java.util.Objects;
import javafx.application.Application;
import javafx.scene.Parent;
import loopwright.ui.Look;

/** Puts the look and the text size that were chosen on all that a window shows. */
final class Looks {
  /** Ems below which everything stands closer. */
  static final double NARROW = 46;

  private Looks() {}

  static void put(Parent root, ShellViewModel shell) {
    Look look = shell.lookProperty().get();
    Application.setUserAgentStylesheet(
        look == Look.NIGHT
            ? new PrimerDark().getUserAgentStylesheet()
            : new PrimerLight().getUserAgentStylesheet());
    root.getStylesheets().setAll(sheet("loopwright.css"), sheet(look.sheet()));
    root.getStyleClass().removeIf(c -> c.startsWith("look-"));
    root.getStyleClass().add(look.styleClass());
    root.setStyle("-fx-font-size: " + shell.textSizeProperty().get().pixels() + "px;");
  }

  /** Lets everything stand closer, or not, by the width in ems. */
  static void fit(Parent root, double ems) {
    root.getStyleClass().remove("narrow");
    if (ems < NARROW) {
      root.getStyleClass().add("narrow");
    }
  }

  private static String sheet(String name) {
    URL url = Looks.class.getResource("/loopwright/ui/" + name);
    return Objects.requireNonNull(url, name).toExternalForm();
  }
}
