package loopwright.rules;

import java.io.IOException;
import java.io.StringReader;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.diagnosis.rulebook.RuleBook.RuleNote;

/**
 * Reads rule folders and looks for what the compiler can't know: who says it, which texts it needs,
 * and that conclusions are drawn in the one way that lets them be taken back.
 */
final class RuleReader {
  private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final Pattern RULE = Pattern.compile("(?m)^rule\\s+\"([^\"]*)\"");
  private static final Pattern TEXT_FILE = Pattern.compile("text_([a-z]{2,3})\\.properties");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*+)\"");
  private static final Pattern INSERT = Pattern.compile("insertLogical\\s*\\(");
  private static final Pattern NOT_ALLOWED =
      Pattern.compile(
          "\\b(package|import|global|function|query|declare|salience|agenda-group|"
              + "ruleflow-group|activation-group|no-loop|lock-on-active|update|modify|delete|"
              + "retract|insert)\\b(?=\\s*[\"(\\w{])");

  /** Square brackets within each other. */
  private static final int DEEPEST = 5;

  private final RuleFiles files;
  private final List<RuleDefect> defects = new ArrayList<>();

  RuleReader(RuleFiles files) {
    this.files = files;
  }

  /** Everything found wrong so far. */
  List<RuleDefect> defects() {
    return defects;
  }

  /** The rules by id, those with defects left out. */
  SortedMap<String, RuleFolder> read() {
    SortedMap<String, Map<String, String>> folders = new TreeMap<>();
    files
        .texts()
        .forEach(
            (path, text) -> {
              int slash = path.lastIndexOf('/');
              String folder = slash < 0 ? "" : path.substring(0, slash);
              folders
                  .computeIfAbsent(folder, f -> new TreeMap<>())
                  .put(path.substring(slash + 1), text);
            });
    SortedMap<String, RuleFolder> rules = new TreeMap<>();
    folders.forEach((folder, texts) -> readFolder(folder, texts, rules));
    return rules;
  }

  private void readFolder(
      String path, Map<String, String> texts, SortedMap<String, RuleFolder> rules) {
    int before = defects.size();
    String file = path.isEmpty() ? "rule.drl" : path + "/rule.drl";
    String[] names = path.split("/", -1);
    Optional<Area> area = names.length == 2 ? Area.ofWord(names[0]) : Optional.empty();
    if (area.isEmpty() || !SLUG.matcher(names[1]).matches()) {
      defect(
          file,
          1,
          RuleDefect.say(
              "place", Stream.of(Area.values()).map(Area::word).collect(Collectors.joining(", "))));
      return;
    }
    String slug = names[1];
    String drl = texts.get("rule.drl");
    if (drl == null) {
      defect(file, 1, RuleDefect.say("no-rule"));
      return;
    }
    if (rules.containsKey(slug)) {
      defect(file, 1, RuleDefect.say("name-taken", rules.get(slug).path()));
    }
    RuleNote note = readNote(file, slug, area.get(), drl);
    Map<String, Map<String, String>> byLanguage = readTexts(path, texts);
    checkRule(file, slug, drl, byLanguage);
    if (defects.size() == before) {
      rules.put(slug, new RuleFolder(path, note, drl, byLanguage));
    }
  }

  private RuleNote readNote(String file, String slug, Area area, String drl) {
    Map<Heading, String> found = new EnumMap<>(Heading.class);
    Optional<Heading> open = Optional.empty();
    for (String line : drl.lines().toList()) {
      if (!line.startsWith("//")) {
        break;
      }
      String words = line.substring(2).strip();
      Optional<Heading> start = Heading.of(words);
      if (start.isPresent()) {
        open = start;
        words = words.substring(words.indexOf(':') + 1).strip();
      }
      String more = words;
      open.ifPresent(h -> found.merge(h, more, (a, b) -> a + " " + b));
    }
    for (Heading heading : Heading.values()) {
      if (found.getOrDefault(heading, "").isBlank()) {
        defect(file, 1, RuleDefect.say("head", "// " + heading.word() + ": ..."));
      }
    }
    return new RuleNote(
        slug,
        area.word(),
        found.getOrDefault(Heading.TITLE, ""),
        found.getOrDefault(Heading.REASON, ""),
        found.getOrDefault(Heading.SOURCE, ""));
  }

  private Map<String, Map<String, String>> readTexts(String path, Map<String, String> texts) {
    Map<String, Map<String, String>> byLanguage = new HashMap<>();
    texts.forEach(
        (name, text) -> {
          Matcher matcher = TEXT_FILE.matcher(name);
          if (matcher.matches()) {
            byLanguage.put(matcher.group(1), readTexts(path + "/" + name, text));
          } else if (!"rule.drl".equals(name)) {
            defect(path + "/" + name, 1, RuleDefect.say("other-file"));
          }
        });
    return byLanguage;
  }

  private Map<String, String> readTexts(String file, String text) {
    Properties properties = new Properties();
    try {
      properties.load(new StringReader(text));
    } catch (IOException | IllegalArgumentException e) {
      defect(file, 1, RuleDefect.say("no-texts", e.getMessage()));
      return Map.of();
    }
    Map<String, String> texts = new LinkedHashMap<>();
    for (String key : properties.stringPropertyNames()) {
      String pattern = properties.getProperty(key);
      try {
        format(pattern, Locale.ROOT);
      } catch (IllegalArgumentException e) {
        defect(file, lineOfKey(text, key), RuleDefect.say("text", key, e.getMessage()));
      }
      texts.put(key, pattern);
    }
    return texts;
  }

  /** A pattern in which an apostrophe is an apostrophe. */
  static MessageFormat format(String pattern, Locale locale) {
    return new MessageFormat(pattern.replace("'", "''"), locale);
  }

  private void checkRule(
      String file, String slug, String drl, Map<String, Map<String, String>> texts) {
    String code = withoutComments(drl);
    Matcher rule = RULE.matcher(code);
    int count = 0;
    while (rule.find()) {
      count++;
      if (!rule.group(1).equals(slug)) {
        defect(file, line(code, rule.start()), RuleDefect.say("named", rule.group(1), slug));
      }
    }
    if (count != 1) {
      defect(file, 1, RuleDefect.say("one-rule", count));
    }
    String unquoted = blankLiterals(code);
    Matcher word = NOT_ALLOWED.matcher(unquoted);
    while (word.find()) {
      defect(file, line(code, word.start()), RuleDefect.say("not-allowed", word.group(1)));
    }
    checkDepth(file, unquoted);
    Set<String> used = new HashSet<>();
    Matcher insert = INSERT.matcher(unquoted);
    boolean concludes = false;
    while (insert.find()) {
      concludes = true;
      checkConclusion(file, slug, code, unquoted, insert.start(), texts, used);
    }
    if (!concludes) {
      defect(file, 1, RuleDefect.say("concludes-nothing"));
    }
    Map<String, String> english = texts.getOrDefault("en", Map.of());
    for (String key : english.keySet()) {
      if (!used.contains(key)) {
        defect(
            folderOf(file) + "/text_en.properties",
            lineOfKey(files.texts().get(folderOf(file) + "/text_en.properties"), key),
            RuleDefect.say("unused", key));
      }
    }
  }

  /** The compiler tries square brackets in two ways at each depth: thirty take it hours. */
  private void checkDepth(String file, String unquoted) {
    int depth = 0;
    for (int i = 0; i < unquoted.length(); i++) {
      char c = unquoted.charAt(i);
      depth += c == '[' ? 1 : c == ']' ? -1 : 0;
      if (depth > DEEPEST) {
        defect(file, line(unquoted, i), RuleDefect.say("deep", DEEPEST));
        return;
      }
    }
  }

  /**
   * Within a conclusion the texts that stand before its list of arguments are the rule's id and the
   * keys of its words.
   */
  private void checkConclusion(
      String file,
      String slug,
      String code,
      String unquoted,
      int start,
      Map<String, Map<String, String>> texts,
      Set<String> used) {
    int end = unquoted.indexOf(';', start);
    end = end < 0 ? code.length() : end;
    int arguments = unquoted.indexOf("List.of(", start);
    int keysEnd = arguments < 0 || arguments > end ? end : arguments;
    boolean named = false;
    Matcher literal = LITERAL.matcher(code.substring(start, keysEnd));
    while (literal.find()) {
      String word = literal.group(1);
      if (word.isEmpty()) {
        continue;
      }
      if (word.equals(slug) && !named) {
        named = true;
        continue;
      }
      used.add(word);
      if (!texts.getOrDefault("en", Map.of()).containsKey(word)) {
        defect(file, line(code, start + literal.start()), RuleDefect.say("no-words", word));
      }
    }
    if (!named) {
      defect(file, line(code, start), RuleDefect.say("unnamed", slug));
    }
  }

  private void defect(String file, int line, String message) {
    defects.add(new RuleDefect(file, line, message));
  }

  private static String folderOf(String file) {
    return file.substring(0, file.lastIndexOf('/'));
  }

  /** The text with comments and nothing else blanked out, so that lines stay where they are. */
  private static String withoutComments(String drl) {
    StringBuilder code = new StringBuilder(drl.length());
    for (String line : drl.split("\n", -1)) {
      int comment = blankLiterals(line).indexOf("//");
      code.append(comment < 0 ? line : line.substring(0, comment)).append('\n');
    }
    return code.toString();
  }

  private static String blankLiterals(String code) {
    return LITERAL
        .matcher(code)
        .replaceAll(m -> Matcher.quoteReplacement("\"" + " ".repeat(m.group(1).length()) + "\""));
  }

  private static int line(String text, int at) {
    return 1 + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
  }

  private static int lineOfKey(String text, String key) {
    int line = 1;
    for (String each : text.split("\n", -1)) {
      if (each.strip().startsWith(key)) {
        return line;
      }
      line++;
    }
    return 1;
  }

  /** What the head of a rule says. */
  private enum Heading {
    TITLE,
    REASON,
    SOURCE;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static Optional<Heading> of(String line) {
      for (Heading heading : values()) {
        if (line.startsWith(heading.word() + ":")) {
          return Optional.of(heading);
        }
      }
      return Optional.empty();
    }
  }
}
