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

  private static String sheet(String name) {
    URL url = Looks.class.getResource("/loopwright/ui/" + name);
    return Objects.requireNonNull(url, name).toExternalForm();
  }
}
