package loopwright.ui.shell;

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
    RulesScreen screen = new RulesScreen(model, folder);
    screen.setId("window");
    screen.getStyleClass().add("window");
    ShellViewModel shell = new ShellViewModel(kept);
    Looks.put(screen, shell);
    screen
        .widthProperty()
        .addListener(
            (o, was, is) -> Looks.fit(screen, is.doubleValue() / shell.emProperty().get()));
    stage.setTitle(Texts.of("window.title"));
    stage.setScene(new Scene(screen, 1280, 800));
    stage.show();
    screen.takeFocus();
  }
}
