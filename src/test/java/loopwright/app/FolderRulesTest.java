package loopwright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.RulesElsewhere.Own;
import loopwright.casework.RulesElsewhere.Rule;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.model.Language;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderRulesTest {
  @TempDir Path folder;
  private Path rules;
  private final List<RuleBook> used = new ArrayList<>();

  /** A copy of the program's own rules: one changed, one added, one left out. */
  @BeforeEach
  void copy() throws IOException {
    rules = folder.resolve("rules");
    Path own = Path.of("knowledge", "rules");
    try (Stream<Path> files = Files.walk(own)) {
      for (Path file : files.toList()) {
        Path to = rules.resolve(own.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(to);
        } else {
          Files.copy(file, to);
        }
      }
    }
    Path ghost = rules.resolve("sense/ghost-volts");
    Path drl = ghost.resolve("rule.drl");
    String text = Files.readString(drl);
    Files.writeString(drl, text.replace("A ghost voltage", "Another ghost"));
    Path added = Files.createDirectories(rules.resolve("sense/second-ghost"));
    Files.writeString(
        added.resolve("rule.drl"), text.replace("\"ghost-volts\"", "\"second-ghost\""));
    Files.copy(ghost.resolve("text_en.properties"), added.resolve("text_en.properties"));
    Files.delete(rules.resolve("caution/crank-and-rest/rule.drl"));
    for (String language : List.of("en", "de")) {
      Files.delete(rules.resolve("caution/crank-and-rest/text_" + language + ".properties"));
    }
  }

  private FolderRules read() throws Problem {
    return new FolderRules(rules, folder.resolve("data"), used::add);
  }

  @Test
  void whatIsDifferentIsToldAndNothingIsRun() throws Problem {
    assertThat(read().rules())
        .filteredOn(r -> r.own() != Own.SAME)
        .containsExactlyInAnyOrder(
            new Rule("sense/ghost-volts", "Another ghost", Own.CHANGED),
            new Rule("sense/second-ghost", "A ghost voltage", Own.NEW),
            new Rule("caution/crank-and-rest", title("caution/crank-and-rest"), Own.MISSING));
    assertThat(read().allowedBefore()).isFalse();
    assertThat(used).isEmpty();
  }

  private static String title(String path) {
    try {
      String text = Files.readString(Path.of("knowledge", "rules", path, "rule.drl"));
      return text.lines().findFirst().orElseThrow().replaceFirst("// title:\\s*", "");
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void whatWasAllowedIsRememberedUntilAnyByteOfItChanges() throws Exception {
    FolderRules first = read();
    // What is shown is what is run, even if the folder changes behind it.
    Files.writeString(rules.resolve("sense/second-ghost/rule.drl"), "no rule");
    first.take();
    assertThat(used).singleElement().matches(b -> b.size() > 10);
    assertThat(first.allowedBefore()).isTrue();
    assertThat(read().allowedBefore()).isFalse();
    assertThatThrownBy(() -> read().take())
        .isInstanceOf(Problem.class)
        .hasMessageContaining("sense/second-ghost/rule.drl");
    assertThat(used).hasSize(1);
  }

  @Test
  void whatIsNoFolderOfRulesIsTold() throws IOException {
    assertThatThrownBy(() -> new FolderRules(folder.resolve("nil"), folder, used::add))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("--rules");
    Path empty = Files.createDirectory(folder.resolve("empty"));
    assertThatThrownBy(() -> new FolderRules(empty, folder, used::add))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("a folder that holds rules");
    Language.use(Language.GERMAN);
    try {
      assertThatThrownBy(() -> new FolderRules(empty, folder, used::add))
          .hasMessageContaining("ein Ordner, der Regeln enthält");
      assertThatThrownBy(() -> new FolderRules(folder.resolve("nil"), folder, used::add))
          .hasMessageContaining("ein lesbarer Ordner mit Regeln");
    } finally {
      Language.use(Language.ENGLISH);
    }
    Files.write(empty.resolve("big.drl"), new byte[50_001]);
    assertThatThrownBy(() -> new FolderRules(empty, folder, used::add)).isInstanceOf(Problem.class);
  }
}
