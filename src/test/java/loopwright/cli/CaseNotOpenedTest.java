package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.io.journal.FileCaseStore;
import loopwright.model.Language;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A case that can't be opened ends with its own code, and names the same field to programs. */
class CaseNotOpenedTest {
  @TempDir Path folder;

  @AfterEach
  void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

  @ParameterizedTest
  @CsvSource({
    "ENGLISH, nothing, case, case 'nothing': no case of this id",
    "GERMAN, nothing, case, Fall „nothing“: nichts mit dieser Kennung",
    "ENGLISH, no/id, case, case 'no/id': a case id",
    "GERMAN, no/id, case, Fall „no/id“: eine Kennung",
    "ENGLISH, torn, case, case 'torn': the case file's first entry",
    "GERMAN, torn, case, Fall „torn“: der erste Eintrag",
    "ENGLISH, taken, case file, case file '",
    "GERMAN, taken, case file, Falldatei „"
  })
  void aCaseTakenUp(Language language, String id, String field, String words) throws IOException {
    Path cases = Files.createDirectories(folder.resolve("cases"));
    Files.writeString(cases.resolve("torn.case.jsonl"), "neither a line nor json\n");
    Files.createDirectories(cases.resolve("taken.case.jsonl"));
    fails(language, cases, field, words, "--resume", id);
  }

  @ParameterizedTest
  @CsvSource({"ENGLISH, cases folder '", "GERMAN, Ordner der Fälle „"})
  void aCaseThatCanNotBeKept(Language language, String words) throws IOException {
    Path cases = Files.writeString(folder.resolve("file"), "").resolve("cases");
    fails(language, cases, "cases folder", words, "--complaint", "beacon dead");
  }

  private static void fails(
      Language language, Path cases, String field, String words, String option, String value) {
    Language.use(language);
    TestWorld person = new TestWorld(new FileCaseStore(cases));
    assertThat(person.run("find", "pumper", option, value)).isEqualTo(ExitCode.CASE.number());
    assertThat(person.errText()).contains(words);
    TestWorld program = new TestWorld(new FileCaseStore(cases));
    assertThat(program.run("find", "pumper", option, value, "--jsonl"))
        .isEqualTo(ExitCode.CASE.number());
    assertThat(program.outText()).contains("\"field\":\"" + field + "\"");
  }
}
