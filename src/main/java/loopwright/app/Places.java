package loopwright.app;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where the program keeps its files, in the platform's usual place. */
final class Places {

  /** System property that puts everything elsewhere, for tests and for a stick in the glove box. */
  static final String HOME = "loopwright.home";

  private Places() {}

  /** The folder of kept cases and settings. */
  static Path data() {
    return data(
        System.getProperty(HOME, ""),
        System.getProperty("os.name", ""),
        System.getProperty("user.home", "."),
        System.getenv());
  }

  static Path data(String home, String os, String user, Map<String, String> environment) {
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
    String xdg = environment.getOrDefault("XDG_DATA_HOME", "");
    // The base directory specification wants absolute paths and tells to ignore others.
    return xdg.startsWith("/")
        ? Path.of(xdg, "loopwright")
        : Path.of(user, ".local", "share", "loopwright");
  }
}
