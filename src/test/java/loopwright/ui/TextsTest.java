package loopwright.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.PartHistory;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.knowledge.Context;
import loopwright.model.GroundedPole;
import loopwright.ui.find.OwnCheckViewModel;
import org.junit.jupiter.api.Test;

class TextsTest {
  private static final Path SOURCES = Path.of("src/main/java/loopwright/ui");
  private static final Pattern KEY = Pattern.compile("\"([a-z]\\w*(?:\\.\\w+)+)\"");

  private static String sources() throws IOException {
    return sources(SOURCES);
  }

  private static String sources(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      StringBuilder all = new StringBuilder();
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        all.append(Files.readString(file));
      }
      return all.toString();
    }
  }

  @Test
  void everyKeyInTheCodeIsInTheBundle() throws IOException {
    ResourceBundle bundle = ResourceBundle.getBundle("loopwright.ui.texts");
    TreeSet<String> missing = new TreeSet<>();
    Matcher keys = KEY.matcher(sources());
    int found = 0;
    while (keys.find()) {
      String key = keys.group(1);
      found++;
      if (!key.endsWith(".css") && !key.equals("loopwright.ui.texts") && !bundle.containsKey(key)) {
        missing.add(key);
      }
    }
    assertThat(found).isGreaterThan(80);
    assertThat(missing).isEmpty();
  }

  @Test
  void everyTextInTheBundleIsUsed() throws IOException {
    String code = sources() + sources(SOURCES.resolveSibling("app"));
    List<String> unused =
        ResourceBundle.getBundle("loopwright.ui.texts").keySet().stream()
            .filter(k -> Character.isLowerCase(k.charAt(0)))
            .filter(k -> !k.startsWith("keys.") && !k.startsWith("own.step."))
            .filter(k -> !k.startsWith("keycap."))
            .filter(k -> !k.endsWith(".brief"))
            .filter(k -> !code.contains("\"" + k + "\""))
            .sorted()
            .toList();
    assertThat(unused).isEmpty();
  }

  @Test
  void everyConstantShownHasItsWords() {
    Stream.of(
            ComplaintKind.values(),
            Seen.values(),
            Warning.values(),
            Context.values(),
            FindCase.Refusal.values(),
            GroundedPole.values(),
            LoopView.Standing.values(),
            CaseView.Status.values(),
            VehicleLibrary.Shelf.values(),
            CaseRecord.CaseState.values(),
            PartHistory.What.values(),
            Look.values(),
            OwnCheckViewModel.KINDS.toArray(Enum<?>[]::new))
        .flatMap(Stream::of)
        .forEach(constant -> assertThat(Texts.of(constant)).isNotBlank());
  }

  @Test
  void noWordsForTheEyeStandInTheCode() throws IOException {
    // A literal with a space and letters is a sentence, unless it is a style or an exception's.
    Matcher literals =
        Pattern.compile("(?:setText|Parts\\.text|Parts\\.line|new Label|setTitle)\\(\"([^\"]+)\"")
            .matcher(sources());
    TreeSet<String> words = new TreeSet<>();
    while (literals.find()) {
      words.add(literals.group(1));
    }
    assertThat(words).isEmpty();
  }
}
