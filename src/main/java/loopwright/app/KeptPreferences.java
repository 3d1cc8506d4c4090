package loopwright.app;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.Properties;
import loopwright.ui.Preferences;

/** Settings in a small file beside the cases. What can't be written is simply not kept. */
final class KeptPreferences implements Preferences {
  private final Path file;
  private final Properties values = new Properties();

  KeptPreferences(Path data) {
    this.file = data.resolve("settings.properties");
    if (Files.isReadable(file)) {
      try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
        values.load(in);
      } catch (IOException | IllegalArgumentException e) {
        values.clear();
      }
    }
  }

  @Override
  public synchronized Optional<String> read(Item item) {
    return Optional.ofNullable(values.getProperty(item.name().toLowerCase(java.util.Locale.ROOT)));
  }

  @Override
  public synchronized void keep(Item item, String value) {
    values.setProperty(item.name().toLowerCase(java.util.Locale.ROOT), value);
    Path fresh = file.resolveSibling("settings.new");
    try {
      Files.createDirectories(file.getParent());
      try (Writer out = Files.newBufferedWriter(fresh, StandardCharsets.UTF_8)) {
        values.store(out, null);
      }
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      // A look or a text size is not worth stopping anybody at a dead circuit.
      System.err.println("settings not kept in " + file + ": " + e.getMessage());
    }
  }
}
