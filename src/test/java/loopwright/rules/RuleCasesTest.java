package loopwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.rules.RuleCases.RuleCase;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every case of every rule folder, run with all rules together. */
class RuleCasesTest {
  private static DroolsRuleBook book;

  @BeforeAll
  static void compile() {
    book = new DroolsRuleBook(RuleFiles.inFolder(RuleCases.FOLDER), Locale.ENGLISH);
  }

  @TestFactory
  Stream<DynamicTest> everyFolderHasCasesOfBothKinds() {
    return RuleCases.folders().stream()
        .map(
            folder ->
                DynamicTest.dynamicTest(
                    folder.toString(),
                    () -> {
                      assertThat(folder.resolve("rule.drl")).exists();
                      assertThat(RuleCases.firing(folder)).as("cases that fire").isNotEmpty();
                      assertThat(RuleCases.silent(folder)).as("cases that don't").isNotEmpty();
                      assertThat(RuleCases.firing(folder))
                          .allSatisfy(c -> assertThat(c.expected()).isNotEmpty());
                    }));
  }

  @TestFactory
  Stream<DynamicTest> firingCasesConcludeWhatTheySay() {
    return tests(RuleCases::firing, RuleCasesTest::fires);
  }

  @TestFactory
  Stream<DynamicTest> silentCasesConcludeNothing() {
    return tests(
        RuleCases::silent, c -> assertThat(conclusions(c)).as("what the rule says").isEmpty());
  }

  @Test
  void thereAreAtLeastFortyRulesAndTheBookKnowsThemAll() {
    assertThat(book.size()).isGreaterThanOrEqualTo(40).isEqualTo(RuleCases.folders().size());
    Collection<String> ids = new TreeSet<>();
    for (Area area : Area.values()) {
      assertThat(book.ids(area)).as(area.word()).isNotEmpty();
      ids.addAll(book.ids(area));
    }
    assertThat(ids).hasSize(book.size());
  }

  @Test
  void everyRuleSaysTitleReasonAndSource() {
    for (Path folder : RuleCases.folders()) {
      RuleBook.RuleNote note = book.note(folder.getFileName().toString());
      assertThat(note.area()).isEqualTo(folder.getParent().getFileName().toString());
      assertThat(note.title()).isNotBlank();
      assertThat(note.reason()).isNotBlank();
      assertThat(note.source()).isNotBlank();
    }
  }

  /** The tables of failure modes and the advice must not drift apart. */
  @TestFactory
  Stream<DynamicTest> everyFailureModeOfTheTablesHasAdviceOfItsOwn() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Fact.Isolated isolated : RuleCases.modesOfTheTables()) {
      tests.add(
          DynamicTest.dynamicTest(
              isolated.kind().word() + " " + isolated.suspect().mode(),
              () -> {
                try (RuleBook.Session session = book.open()) {
                  session.state(List.of(isolated));
                  List<Conclusion.Advice> advice =
                      session.conclusions().stream()
                          .filter(Conclusion.Advice.class::isInstance)
                          .map(Conclusion.Advice.class::cast)
                          .toList();
                  assertThat(advice)
                      .extracting(Conclusion.Advice::stage)
                      .contains(Conclusion.Stage.values());
                  assertThat(advice)
                      .filteredOn(a -> a.stage() == Conclusion.Stage.REPAIR)
                      .singleElement()
                      .extracting(Conclusion.Advice::rule)
                      .isNotEqualTo("any-other-failure");
                }
              }));
    }
    assertThat(tests).hasSizeGreaterThan(40);
    return tests.stream();
  }

  @Test
  void theBundledRulesAreTheSame() {
    assertThat(RuleFiles.bundled()).isEqualTo(RuleFiles.inFolder(RuleCases.FOLDER));
  }

  private static Stream<DynamicTest> tests(
      java.util.function.Function<Path, List<RuleCase>> cases,
      java.util.function.Consumer<RuleCase> check) {
    return RuleCases.folders().stream()
        .filter(f -> Files.exists(f.resolve("cases.json")))
        .flatMap(f -> cases.apply(f).stream())
        .map(c -> DynamicTest.dynamicTest(c.rule() + ": " + c.name(), () -> check.accept(c)));
  }

  private static void fires(RuleCase each) {
    List<Conclusion> left = new ArrayList<>(conclusions(each));
    assertThat(left).as("conclusions of " + each.rule()).hasSameSizeAs(each.expected());
    for (JsonNode expected : each.expected()) {
      Conclusion found = left.stream().filter(c -> matches(c, expected)).findFirst().orElse(null);
      assertThat(found).as("%s among %s", expected, left).isNotNull();
      left.remove(found);
    }
  }

  /** What the rule under test concludes; on the way every conclusion is put into words. */
  private static List<Conclusion> conclusions(RuleCase each) {
    try (RuleBook.Session session = book.open()) {
      session.state(each.facts());
      session.conclusions().forEach(RuleCasesTest::hasWords);
      return session.conclusions().stream().filter(c -> c.rule().equals(each.rule())).toList();
    }
  }

  private static void hasWords(Conclusion conclusion) {
    if (conclusion instanceof Conclusion.AllowedBy) {
      return;
    }
    String key = (String) field(conclusion, "key");
    @SuppressWarnings("unchecked")
    List<Object> args = (List<Object>) field(conclusion, "args");
    assertThat(book.words(conclusion.rule(), key, args))
        .as("%s", conclusion)
        .isNotBlank()
        .doesNotContain("{", "}");
    if (conclusion instanceof Conclusion.Finding f) {
      for (String other : List.of(f.consequence(), f.cure())) {
        assertThat(book.words(f.rule(), other, f.args())).isNotBlank().doesNotContain("{", "}");
      }
    }
  }

  private static boolean matches(Conclusion conclusion, JsonNode expected) {
    if (!conclusion.getClass().getSimpleName().equals(expected.path("conclusion").asText())) {
      return false;
    }
    return StreamSupport.stream(((Iterable<String>) expected::fieldNames).spliterator(), false)
        .filter(name -> !"conclusion".equals(name))
        .allMatch(name -> text(field(conclusion, name)).equals(text(expected.get(name))));
  }

  private static String text(Object value) {
    if (value instanceof JsonNode node) {
      if (node.isArray()) {
        Collection<String> items = new TreeSet<>();
        node.forEach(n -> items.add(n.asText()));
        return items.toString();
      }
      return node.asText();
    } else if (value instanceof Collection<?> items) {
      Collection<String> words = new TreeSet<>();
      items.forEach(i -> words.add(i.toString()));
      return words.toString();
    }
    return String.valueOf(value);
  }

  private static Object field(Conclusion conclusion, String name) {
    try {
      for (RecordComponent component : conclusion.getClass().getRecordComponents()) {
        if (component.getName().equals(name)) {
          return component.getAccessor().invoke(conclusion);
        }
      }
    } catch (ReflectiveOperationException e) {
      throw new AssertionError(e);
    }
    throw new AssertionError(conclusion + " has no " + name);
  }
}
