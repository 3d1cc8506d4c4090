package loopwright.app;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;
import loopwright.io.OutFile;
import loopwright.ui.Preferences;

/** Settings in a small file. What can't be written is simply not kept. */
final class KeptPreferences implements Preferences {
  private final Path file;
  private final Properties values = new Properties();

  KeptPreferences(Path folder) {
    this.file = folder.resolve("settings.properties");
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
    try {
      Files.createDirectories(file.getParent());
      StringWriter out = new StringWriter();
      values.store(out, null);
      OutFile.write(file, "settings", out.toString().getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      // A look or a text size is not worth stopping anybody at a dead circuit.
      System.err.println("not kept: " + e.getMessage());
    }
  }
}
