package loopwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every text is there in both languages: nobody reads half of the program in the other one. */
class LanguagesTest {
  private static final Path BUNDLES = Path.of("src/main/resources/loopwright");
  private static final Path RULES = Path.of("knowledge/rules");
  private static final Pattern PLACE = Pattern.compile("\\{(\\d+)(?:,(number|choice)\\b)?");

  /** Texts that are the same in both languages though they hold a word of letters. */
  private static final Path SAME = Path.of("src/test/resources/languages/same-in-german.txt");

  private static final List<Path> WORDLESS =
      Stream.of(
              "model/VehicleCheck.java",
              "model/LoopSearch.java",
              "model/PartKind.java",
              "model/Quantity.java",
              "model/ShortName.java",
              "io",
              "rules/RuleReader.java",
              "rules/RuleDefect.java",
              "app/FolderRules.java",
              "casework/table",
              "casework/sheet",
              "casework/edit",
              "casework/pattern")
          .map(Path.of("src/main/java/loopwright")::resolve)
          .toList();

  private static final Pattern COMMENT = Pattern.compile("/\\*(?s:.*?)\\*/|(?m:^\\s*//.*$)");
  private static final Pattern LITERAL = Pattern.compile("\"(?:[^\"\\\\\\n]|\\\\.)*\"");
  private static final Pattern SENTENCE =
      Pattern.compile("\\p{Ll}{2,} \\p{Ll}{2,}|\\d (?:or|to) \\d");
  private static final Pattern NOT_SAID =
      Pattern.compile(
          "Exception\\(|\\.(?:contains|equals)\\(\"|compile\\(|fields?\\.\\w+\\(|one\\.\\w+\\(");

  /** Pairs of texts by file and key: English, German. */
  private static Map<String, Pair> texts() throws IOException {
    Map<String, Pair> texts = new TreeMap<>();
    for (Path english : english()) {
      Path german = german(english);
      assertThat(german).as("the German of %s", english).exists();
      Properties en = read(english);
      Properties de = read(german);
      assertThat(new TreeSet<>(de.keySet()))
          .as("the keys of %s", german)
          .isEqualTo(new TreeSet<>(en.keySet()));
      for (String key : en.stringPropertyNames()) {
        texts.put(german + ": " + key, new Pair(en.getProperty(key), de.getProperty(key)));
      }
    }
    return texts;
  }

  private record Pair(String english, String german) {}

  private static List<Path> english() throws IOException {
    try (Stream<Path> bundles = Files.walk(BUNDLES);
        Stream<Path> rules = Files.walk(RULES)) {
      return Stream.concat(
              bundles.filter(
                  p -> name(p).endsWith(".properties") && !name(p).matches(".*_\\w\\w\\..*")),
              rules.filter(p -> name(p).equals("text_en.properties")))
          .sorted()
          .toList();
    }
  }

  private static Path german(Path english) {
    return english.resolveSibling(
        name(english).replaceFirst("(_en)?\\.properties$", "_de.properties"));
  }

  private static String name(Path path) {
    return path.getFileName().toString();
  }

  private static Properties read(Path file) throws IOException {
    Properties texts = new Properties();
    try (Reader in = Files.newBufferedReader(file)) {
      texts.load(in);
    }
    return texts;
  }

  @Test
  void everyTextHasItsGerman() throws IOException {
    Set<String> same = Set.copyOf(Files.readAllLines(SAME));
    List<String> bad = new ArrayList<>();
    Map<String, Pair> texts = texts();
    texts.forEach(
        (key, pair) -> {
          if (pair.german().isBlank() != pair.english().isBlank()) {
            bad.add(key + " is empty");
          }
          boolean words = PLACE.matcher(pair.english()).replaceAll("").matches("(?s).*\\p{L}.*");
          if (words && pair.german().equals(pair.english()) && !same.contains(pair.english())) {
            bad.add(key + " is still English: " + pair.english());
          }
        });
    assertThat(bad).isEmpty();
    assertThat(texts).hasSizeGreaterThan(2_000);
  }

  @Test
  void theSameThingsAreFilledIn() throws IOException {
    List<String> bad = new ArrayList<>();
    texts()
        .forEach(
            (key, pair) -> {
              if (!places(pair.english()).equals(places(pair.german()))) {
                bad.add(key + ": " + places(pair.english()) + " but " + places(pair.german()));
              }
            });
    assertThat(bad).isEmpty();
  }

  /** Places to be filled in, with their kinds; how often one stands there is the language's. */
  private static Set<String> places(String text) {
    Set<String> places = new TreeSet<>();
    Matcher m = PLACE.matcher(text);
    while (m.find()) {
      places.add(m.group(1) + (m.group(2) == null ? "" : " " + m.group(2)));
    }
    return places;
  }

  @Test
  void everyGermanTextCanBeFilledIn() throws IOException {
    List<String> bad = new ArrayList<>();
    texts()
        .forEach(
            (key, pair) -> {
              boolean rule = key.contains("text_de");
              String pattern = rule ? pair.german().replace("'", "''") : pair.german();
              if (places(pair.english()).isEmpty() && !key.contains("phrases")) {
                return;
              }
              try {
                Object[] ones = Stream.generate(() -> 1).limit(12).toArray();
                String filled = new MessageFormat(pattern, Locale.GERMAN).format(ones);
                if (filled.contains("{") || filled.contains("'")) {
                  bad.add(key + " reads " + filled);
                }
              } catch (IllegalArgumentException e) {
                bad.add(key + ": " + e.getMessage());
              }
            });
    assertThat(bad).isEmpty();
  }

  /**
   * Rooms whose sentences a person reads hold none of them in Java. Exceptions that no good program
   * throws, what a disk's own words are told by, headings of lists and lines for programs may.
   */
  @Test
  void noSentenceStandsInTheCode() throws IOException {
    List<String> bad = new ArrayList<>();
    for (Path file : WORDLESS.stream().flatMap(LanguagesTest::sources).toList()) {
      String code = COMMENT.matcher(Files.readString(file)).replaceAll("");
      for (String statement : code.split("[;{}]\\s*\\n")) {
        if (!NOT_SAID.matcher(statement).find()) {
          LITERAL
              .matcher(statement)
              .results()
              .map(MatchResult::group)
              .filter(SENTENCE.asPredicate())
              .forEach(s -> bad.add(file + ": " + s));
        }
      }
    }
    assertThat(bad).isEmpty();
  }

  private static Stream<Path> sources(Path below) {
    try (Stream<Path> files = Files.walk(below)) {
      return files
          .filter(f -> name(f).endsWith(".java"))
          .filter(
              f ->
                  !name(f)
                      .matches(
                          "(?:Wire|Pin)Column.java|Headings.java|.*Codec.java|ProofContents.java"))
          .filter(f -> !f.toString().matches(".*[/\\\\]io[/\\\\]wire[/\\\\].*"))
          .toList()
          .stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theListOfSameTextsHoldsNoOthers() throws IOException {
    Set<String> english =
        texts().values().stream()
            .filter(p -> p.english().equals(p.german()))
            .map(Pair::english)
            .collect(Collectors.toSet());
    assertThat(Files.readAllLines(SAME)).allMatch(english::contains);
  }
}
