package loopwright.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.model.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is wrong with a rule's files is said with file and line, all at once. */
class RuleReaderTest {
  private static final String GOOD =
      """
      // title:  Weak light
      // reason: Some of the volts are lost
      //         on the way.
      // source: common practice
      rule "weak-light"
      when
        $r : ReadingFact(kind == CheckKind.LOOK, seen == Seen.DIM)
      then
        insertLogical(new Sense($r.id(), "weak-light", "dim", List.of(name($r.red()))));
      end
      """;

  private static final String DRL = "sense/weak-light/rule.drl";
  private static final String TEXT = "sense/weak-light/text_en.properties";

  private static RuleFiles files(String drl, String texts) {
    return new RuleFiles(new TreeMap<>(Map.of(DRL, drl, TEXT, texts)));
  }

  private static List<RuleDefect> defects(RuleFiles files) {
    try {
      DroolsRuleBook book = new DroolsRuleBook(files, Locale.ENGLISH);
      throw new AssertionError("no defect found in " + book.size() + " rules");
    } catch (RuleBookException e) {
      assertThat(e.defects()).allSatisfy(d -> assertThat(e).hasMessageContaining(d.toString()));
      return e.defects();
    }
  }

  /** Found with generated inputs: each once ended the program. */
  @Test
  void whatIsNestedTooDeepOrVeryLongIsADefect() {
    String deep = GOOD.replace("name($r.red())", "(".repeat(5_000));
    assertThat(defects(files(deep, "dim={0} isn't bright")))
        .extracting(RuleDefect::message)
        .containsExactly("something is nested too deep to be compiled");
    String text = "\"" + "x".repeat(20_000) + "\"";
    String longer = GOOD.replace("name($r.red())", text);
    assertThat(new DroolsRuleBook(files(longer, "dim={0} isn't bright"), Locale.ENGLISH).size())
        .isEqualTo(1);
  }

  /** Found with generated inputs: the compiler's time doubles and more with each. */
  @Test
  @Timeout(30)
  void squareBracketsNestedTooDeepAreADefectBeforeTheyAreCompiled() {
    String deep = GOOD.replace("seen == Seen.DIM", "seen in (" + "[".repeat(70));
    assertThat(defects(files(deep, "dim={0} isn't bright")))
        .extracting(RuleDefect::message)
        .contains("square brackets are nested at most 5 deep");
    String allowed = GOOD.replace("seen == Seen.DIM", "seen in (" + "[".repeat(5));
    assertThat(defects(files(allowed, "dim={0} isn't bright"))).isNotEmpty();
  }

  @Test
  void aSoundRuleIsReadWithItsNote() {
    DroolsRuleBook book = new DroolsRuleBook(files(GOOD, "dim={0} isn't bright"), Locale.ENGLISH);

    assertThat(book.note("weak-light").reason())
        .isEqualTo("Some of the volts are lost on the way.");
    assertThat(book.note("weak-light").title()).isEqualTo("Weak light");
    assertThat(book.ids(Area.SENSE)).containsExactly("weak-light");
    assertThat(book.ids(Area.NEXT)).isEmpty();
    assertThat(book.words("weak-light", "dim", List.of("lamp L1")))
        .isEqualTo("lamp L1 isn't bright");
  }

  @Test
  void aConditionThatDoesNotCompileIsReportedAtItsLine() {
    assertThat(defects(files(GOOD.replace("seen ==", "seeen =="), "dim=x")))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.file()).isEqualTo(DRL);
              assertThat(d.line()).isEqualTo(7);
              assertThat(d.message()).contains("seeen");
            });
  }

  @Test
  void aConclusionThatDoesNotCompileIsReportedInItsFile() {
    assertThat(defects(files(GOOD.replace("$r.red()", "$r.rod()"), "dim=x")))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.file()).isEqualTo(DRL);
              assertThat(d.line()).isBetween(5, 10);
              assertThat(d.message()).contains("rod");
            });
  }

  @Test
  void aRuleThatDoesNotParseIsReportedAtItsLine() {
    assertThat(defects(files(GOOD.replace("seen == Seen.DIM", "seen == "), "dim=x")))
        .anySatisfy(
            d -> {
              assertThat(d.file()).isEqualTo(DRL);
              assertThat(d.line()).isEqualTo(7);
            });
  }

  @Test
  void defectsOfSeveralFilesComeTogether() {
    RuleFiles files =
        files(GOOD.replace("seen ==", "seeen =="), "dim=x")
            .with("sense/other/rule.drl", GOOD.replace("// source: common practice\n", ""))
            .with("elsewhere/third/rule.drl", GOOD);

    assertThat(defects(files))
        .extracting(RuleDefect::file)
        .contains(DRL, "sense/other/rule.drl", "elsewhere/third/rule.drl");
  }

  @Test
  void aRuleUnderAnotherNameThanItsFolderIsReported() {
    assertThat(defects(files(GOOD.replace("rule \"weak-light\"", "rule \"dim-light\""), "dim=x")))
        .contains(new RuleDefect(DRL, 5, "the rule is named \"dim-light\", its folder weak-light"));
  }

  @Test
  void aConclusionUnderAnotherNameIsReported() {
    assertThat(defects(files(GOOD.replace("(), \"weak-light\"", "(), \"other\""), "dim=x")))
        .contains(new RuleDefect(DRL, 9, "the conclusion must name its rule \"weak-light\""));
  }

  @Test
  void wordsThatAreMissingAreReportedWhereTheyAreUsed() {
    assertThat(defects(files(GOOD, "")))
        .containsExactly(
            new RuleDefect(DRL, 9, "the words for 'dim' are missing in text_en.properties"));
  }

  @Test
  void wordsThatNobodyUsesAreReported() {
    assertThat(defects(files(GOOD, "dim=x\nbright=y")))
        .containsExactly(
            new RuleDefect(TEXT, 2, "text 'bright' is used by no conclusion of the rule"));
  }

  @Test
  void aTextWithABrokenArgumentIsReported() {
    assertThat(defects(files(GOOD, "\ndim={0 is weak")))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.file()).isEqualTo(TEXT);
              assertThat(d.line()).isEqualTo(2);
            });
  }

  @ParameterizedTest
  @ValueSource(strings = {"title", "reason", "source"})
  void aHeadThatIsNotCompleteIsReported(String heading) {
    assertThat(defects(files(GOOD.replace("// " + heading + ":", "// note:"), "dim=x")))
        .contains(
            new RuleDefect(DRL, 1, "the head of the file needs a line '// " + heading + ": ...'"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "salience 10",
        "agenda-group \"a\"",
        "no-loop true",
        "lock-on-active true",
        "ruleflow-group \"a\""
      })
  void whatMakesTheOrderOfFiringMatterIsNotAllowed(String attribute) {
    assertThat(defects(files(GOOD.replace("when", attribute + "\nwhen"), "dim=x")))
        .anySatisfy(
            d -> {
              assertThat(d.line()).isEqualTo(6);
              assertThat(d.message()).contains("has no place here");
            });
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "insert(new ClearsNothing(1, \"weak-light\"));",
        "update($r);",
        "delete($r);",
        "modify($r) {}"
      })
  void factsAreNeitherChangedNorInsertedForGood(String statement) {
    assertThat(defects(files(GOOD.replace("\nend", "\n  " + statement + "\nend"), "dim=x")))
        .anySatisfy(
            d -> {
              assertThat(d.file()).isEqualTo(DRL);
              assertThat(d.line()).isEqualTo(10);
              assertThat(d.message()).contains("has no place here");
            });
  }

  @Test
  void aRuleWithoutConclusionIsReported() {
    assertThat(defects(files(GOOD.replaceAll("(?m)^  insertLogical.*\n", ""), "")))
        .contains(new RuleDefect(DRL, 1, "the rule concludes nothing: it has no insertLogical"));
  }

  @Test
  void theSameNameInTwoAreasIsReported() {
    assertThat(
            defects(
                files(GOOD, "dim=x")
                    .with("narrow/weak-light/rule.drl", GOOD)
                    .with("narrow/weak-light/text_en.properties", "dim=x")))
        .containsExactly(new RuleDefect(DRL, 1, "the name is taken already by narrow/weak-light"));
  }

  @Test
  void wordsThatDoNotExistAreAClearError() {
    DroolsRuleBook book = new DroolsRuleBook(files(GOOD, "dim=x"), Locale.ENGLISH);

    assertThatIllegalArgumentException()
        .isThrownBy(() -> book.words("weak-light", "bright", List.of()))
        .withMessage("rule weak-light has no text 'bright'; it has [dim]");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> book.note("no-such"))
        .withMessage("there is no rule 'no-such'");
  }

  @Test
  void anotherLanguageIsUsedAndEnglishWhereItHasNoWords() {
    RuleFiles files =
        files(GOOD, "dim={0} is weak")
            .with("sense/weak-light/text_de.properties", "dim={0} leuchtet schwach");

    assertThat(new DroolsRuleBook(files, Locale.GERMAN).words("weak-light", "dim", List.of("L1")))
        .isEqualTo("L1 leuchtet schwach");
    assertThat(new DroolsRuleBook(files, Locale.FRENCH).words("weak-light", "dim", List.of("L1")))
        .isEqualTo("L1 is weak");
  }

  @Test
  void rulesThatNeverComeToRestAreStoppedAndNamed() {
    String restless =
        GOOD.replace(
                "$r : ReadingFact(kind == CheckKind.LOOK, seen == Seen.DIM)",
                "(ReadingFact(seen == Seen.DIM, $n : id) or Sense(rule == \"weak-light\", $n : reading))")
            .replace("$r.id(), ", "$n + 1, ")
            .replace("List.of(name($r.red()))", "List.of()");
    DroolsRuleBook book = new DroolsRuleBook(files(restless, "dim=x"), Locale.ENGLISH);
    Fact look =
        new Fact.ReadingFact(
            1,
            CheckKind.LOOK,
            "L1",
            "",
            false,
            Fact.ValueClass.SEEN,
            0,
            0,
            Seen.DIM,
            true,
            0,
            0,
            0,
            true,
            true,
            true);

    try (RuleBook.Session session = book.open()) {
      assertThatIllegalStateException()
          .isThrownBy(() -> session.state(List.of(look)))
          .withMessageContaining("weak-light");
    }
  }

  @Test
  void rulesAreReadFromAJarToo(@TempDir Path folder) throws IOException {
    Path jar = folder.resolve("a program.jar");
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream entries = new JarOutputStream(out)) {
      for (Map.Entry<String, String> file : files(GOOD, "dim=x").texts().entrySet()) {
        entries.putNextEntry(new JarEntry("knowledge/rules/" + file.getKey()));
        entries.write(file.getValue().getBytes(StandardCharsets.UTF_8));
        entries.closeEntry();
      }
    }

    RuleFiles read = RuleFiles.inJar(URI.create("jar:" + jar.toUri() + "!/knowledge/rules"));

    assertThat(read).isEqualTo(files(GOOD, "dim=x"));
  }

  @Test
  void aFolderThatIsNotThereIsNamed(@TempDir Path folder) {
    assertThatExceptionOfType(java.io.UncheckedIOException.class)
        .isThrownBy(() -> RuleFiles.inFolder(folder.resolve("nowhere")))
        .withMessageContaining("nowhere");
  }

  @Test
  void defectsAreToldInTheLanguageInUse() {
    String drl = GOOD.replace("rule \"weak-light\"", "rule \"dim-light\"");
    RuleFiles files = files(drl, "dim=x\nother=y").with("elsewhere/third/rule.drl", GOOD);
    Language.use(Language.GERMAN);
    try {
      assertThat(defects(files))
          .extracting(RuleDefect::message)
          .contains(
              "die Regel heißt „dim-light“, ihr Ordner weak-light",
              "kein Schluss der Regel verwendet den Text „other“")
          .anyMatch(m -> m.startsWith("eine Regel liegt in <Bereich>/<Name>, der Bereich eines"))
          .noneMatch(m -> m.contains("the rule"));
      assertThatThrownBy(() -> new DroolsRuleBook(files, Locale.GERMAN))
          .hasMessageStartingWith("die Regeln haben 3 Mängel:");
    } finally {
      Language.use(Language.ENGLISH);
    }
  }
}
