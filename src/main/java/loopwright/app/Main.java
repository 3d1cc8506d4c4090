package loopwright.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.application.Application;
import loopwright.cli.Cli;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.ui.Preferences;

/**
 * Starts Loopwright: without arguments, or with {@code --rules FOLDER} alone, the window, with
 * others a command. It does not extend {@link Application} itself, because Java refuses to launch
 * such a class when JavaFX is on the class path.
 */
public final class Main {
  private static final String RULES = "--rules=";

  private Main() {}

  /** Starts the window or a command. */
  public static void main(String[] args) {
    Preferences kept = new KeptPreferences(Places.settings());
    Language.use(language(kept, Locale.getDefault()));
    Units.use(units(kept, Locale.getDefault()));
    if (args.length > 0 && rules(List.of(args)).isEmpty()) {
      System.exit(Cli.run(args, new Terminal()));
    }
    LoopwrightApp.open(args);
  }

  /** The language that was chosen, else the system's. */
  static Language language(Preferences preferences, Locale system) {
    return preferences
        .read(Preferences.Item.LANGUAGE)
        .flatMap(Language::of)
        .orElseGet(() -> Language.of(system));
  }

  /** The units that were chosen, else what is usual where the system stands. */
  static Units units(Preferences preferences, Locale system) {
    Units usual = Units.of(system);
    return preferences.read(Preferences.Item.UNITS).flatMap(usual::with).orElse(usual);
  }

  /**
   * The folder of {@code --rules FOLDER}, where nothing else is asked for. Read here, so that no
   * command loads the window's classes.
   */
  static Optional<Path> rules(List<String> arguments) {
    String all = String.join("=", arguments);
    return arguments.size() <= 2 && all.startsWith(RULES) && all.length() > RULES.length()
        ? Optional.of(Path.of(all.substring(RULES.length())))
        : Optional.empty();
  }
}
