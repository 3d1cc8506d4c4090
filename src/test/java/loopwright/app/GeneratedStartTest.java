package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.casework.RulesElsewhere;
import loopwright.casework.feed.MeterPort;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.generated.Generated;
import loopwright.ui.Preferences;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.shell.ShellViewModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is read before the first question: spoilt settings, and spoilt rules from elsewhere. */
class GeneratedStartTest {
  private static final Path RULE = Path.of("knowledge", "rules", "after", "lone-diode");

  /** What compiling a rule may allocate, nearly all of it for moments, in bytes. */
  private static final long COMPILED_BYTES = 1L << 30;

  @TempDir Path folder;

  @Test
  void settings() throws IOException {
    Vehicles vehicles = new Vehicles();
    Path file = folder.resolve("settings.properties");
    String usual =
        """
        #Fri May 17 18:04:05 UTC 2024
        look=NIGHT
        text_size=LARGE
        meter=basic
        meter_port=tcp\\:127.0.0.1\\:5025
        vehicle=/home/garage/second\\u0020tractor.json
        own_record=no
        """;
    Generated.run(
        "settings",
        List.of(usual.getBytes(StandardCharsets.UTF_8)),
        bytes -> {
          Files.write(file, bytes);
          KeptPreferences kept = new KeptPreferences(folder);
          assertThat(new ShellViewModel(kept).lookProperty().get()).isNotNull();
          assertThat(new ShellViewModel(kept).textSizeProperty().get()).isNotNull();
          List<VehicleLibrary.Entry> entries = new Library(vehicles, kept).entries();
          assertThat(entries).hasSizeGreaterThanOrEqualTo(Vehicles.DEMO.size());
          for (VehicleLibrary.Entry entry : entries) {
            VehicleLibrary.Loaded loaded = new Library(vehicles, kept).load(entry.name());
            assertThat(loaded instanceof VehicleLibrary.Loaded.Ready)
                .isEqualTo(entry.shelf() == VehicleLibrary.Shelf.DEMO);
          }
          kept.read(Preferences.Item.METER_PORT).ifPresent(GeneratedStartTest::port);
          return kept.read(Preferences.Item.LOOK).isPresent();
        });
  }

  private static void port(String text) {
    try {
      assertThat(MeterPort.parse(MeterPort.parse(text).words())).isEqualTo(MeterPort.parse(text));
    } catch (Problem e) {
      assertThat(e.getMessage()).isNotBlank();
    }
  }

  @Test
  void rules() throws IOException {
    Path rule = Files.createDirectories(folder.resolve("rules/after/lone-diode"));
    Path data = folder.resolve("data");
    for (String name : List.of("rule.drl", "text_en.properties")) {
      Files.copy(RULE.resolve(name), rule.resolve(name));
    }
    for (String name : List.of("rule.drl", "text_en.properties")) {
      byte[] whole = Files.readAllBytes(rule.resolve(name));
      Generated.run(
          "rules " + name,
          Math.max(1, Generated.share() / 2),
          List.of(whole),
          COMPILED_BYTES,
          bytes -> {
            Files.write(rule.resolve(name), bytes);
            Files.deleteIfExists(data.resolve("allowed-rules.txt"));
            return runs(data);
          });
      Files.write(rule.resolve(name), whole);
    }
  }

  private boolean runs(Path data) {
    List<RuleBook> used = new ArrayList<>();
    try {
      FolderRules rules = new FolderRules(folder.resolve("rules"), data, used::add);
      assertThat(rules.rules()).anyMatch(r -> r.own() != RulesElsewhere.Own.MISSING);
      assertThat(rules.allowedBefore()).isFalse();
      rules.take();
      assertThat(rules.allowedBefore()).isTrue();
    } catch (Problem e) {
      assertThat(e.getMessage()).isNotBlank();
      assertThat(used).isEmpty();
      return false;
    }
    assertThat(used).hasSize(1);
    return true;
  }
}
