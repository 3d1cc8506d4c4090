package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.ui.Preferences.Item;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptPreferencesTest {
  @TempDir Path folder;

  @Test
  void whatIsKeptIsThereNextTimeAndNothingElseIsLeftBehind() {
    Path data = folder.resolve("a").resolve("b");
    new KeptPreferences(data).keep(Item.LOOK, "NIGHT");
    new KeptPreferences(data)
        .keep(Item.VEHICLE, "/garage/\u0442\u0440\u0430\u043a\u0442\u043e\u0440.json");
    KeptPreferences again = new KeptPreferences(data);
    assertThat(again.read(Item.LOOK)).contains("NIGHT");
    assertThat(again.read(Item.VEHICLE))
        .contains("/garage/\u0442\u0440\u0430\u043a\u0442\u043e\u0440.json");
    assertThat(data).isDirectoryNotContaining(f -> !f.endsWith("settings.properties"));
  }

  /** Where nothing can be written the program goes on with what was chosen. */
  @Test
  void whatCannotBeWrittenHoldsUntilTheProgramEnds() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "x");
    KeptPreferences kept = new KeptPreferences(file);
    kept.keep(Item.LOOK, "NIGHT");
    assertThat(kept.read(Item.LOOK)).contains("NIGHT");
    assertThat(file).hasContent("x");
    assertThat(new KeptPreferences(file).read(Item.LOOK)).isEmpty();
  }
}
