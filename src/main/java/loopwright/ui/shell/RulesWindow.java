package loopwright.ui.shell;

import java.util.Objects;
import javafx.scene.Scene;
import javafx.stage.Stage;
import loopwright.ui.Fonts;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;

/** The window before it opens, where it was started with rules from elsewhere. */
public final class RulesWindow {
  private RulesWindow() {}

  /**
   * Asks on a stage, in the look that was chosen.
   *
   * @param folder where the rules lie
   */
  public static void ask(Stage stage, RulesViewModel model, String folder, Preferences kept) {
    Fonts.load();
    ShellViewModel shell = new ShellViewModel(kept);
    RulesScreen screen = new RulesScreen(model, folder);
    screen.setId("window");
    screen.getStyleClass().addAll("window", shell.lookProperty().get().styleClass());
    screen
        .getStylesheets()
        .setAll(sheet("loopwright.css"), sheet(shell.lookProperty().get().sheet()));
    screen.setStyle("-fx-font-size: " + shell.textSizeProperty().get().pixels() + "px;");
    stage.setTitle(Texts.of("window.title"));
    stage.setScene(new Scene(screen, 1280, 800));
    stage.show();
    screen.takeFocus();
  }

  private static String sheet(String name) {
    return Objects.requireNonNull(MainWindow.class.getResource("/loopwright/ui/" + name), name)
        .toExternalForm();
  }
}
