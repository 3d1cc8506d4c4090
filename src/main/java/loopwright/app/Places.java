package loopwright.app;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/**
 * Where the program keeps its files, in the platform's usual place.
 *
 * @param home where everything is wanted, or nothing
 * @param os the system's name
 * @param user the user's own folder
 * @param environment the variables of the process
 */
record Places(String home, String os, String user, Map<String, String> environment) {

  /** System property that puts everything elsewhere, for tests and for a stick in the glove box. */
  static final String HOME = "loopwright.home";

  /** The places of this machine and user. */
  static Places here() {
    return new Places(
        System.getProperty(HOME, ""),
        System.getProperty("os.name", ""),
        System.getProperty("user.home", "."),
        System.getenv());
  }

  /** The folder of kept cases, proofs and work that isn't saved yet. */
  static Path data() {
    return here().dataFolder();
  }

  /** The folder of settings; on Linux not that of the cases. */
  static Path settings() {
    return here().settingsFolder();
  }

  Path dataFolder() {
    return folder("XDG_DATA_HOME", ".local/share");
  }

  Path settingsFolder() {
    return folder("XDG_CONFIG_HOME", ".config");
  }

  /** Variable and usual place of the XDG base directory specification, which holds on Linux. */
  private Path folder(String variable, String usual) {
    if (!home.isEmpty()) {
      return Path.of(home);
    }
    String name = os.toLowerCase(Locale.ROOT);
    if (name.contains("win")) {
      return Path.of(environment.getOrDefault("APPDATA", user)).resolve("Loopwright");
    }
    if (name.contains("mac")) {
      return Path.of(user, "Library", "Application Support", "Loopwright");
    }
    String xdg = environment.getOrDefault(variable, "");
    // The specification wants absolute paths and tells to ignore others.
    return xdg.startsWith("/") ? Path.of(xdg, "loopwright") : Path.of(user, usual, "loopwright");
  }
}
