package loopwright.rules;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.Fact.ValueClass;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;

/** Reads the {@code cases.json} that lies beside each rule. */
final class RuleCases {
  static final Path FOLDER = Path.of("knowledge", "rules");

  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * One case.
   *
   * @param rule id of the rule it belongs to
   * @param name what it shows
   * @param facts what is stated
   * @param expected what the rule concludes, each with the fields that matter; none: it is silent
   */
  record RuleCase(String rule, String name, List<Fact> facts, List<JsonNode> expected) {
    RuleCase {
      facts = List.copyOf(facts);
      expected = List.copyOf(expected);
    }
  }

  private RuleCases() {}

  /** The folders of rules, {@code area/name}. */
  static List<Path> folders() {
    try (Stream<Path> paths = Files.walk(FOLDER, 2)) {
      return paths
          .filter(p -> Files.isDirectory(p) && FOLDER.relativize(p).getNameCount() == 2)
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<RuleCase> firing(Path folder) {
    return cases(folder, "fires");
  }

  static List<RuleCase> silent(Path folder) {
    return cases(folder, "silent");
  }

  /** All facts of all cases, for tests that mix them. */
  static List<Fact> allFacts() {
    Set<Fact> facts = new HashSet<>();
    List<Fact> ordered = new ArrayList<>();
    for (Path folder : folders()) {
      for (String kind : List.of("fires", "silent")) {
        for (RuleCase each : cases(folder, kind)) {
          for (Fact fact : each.facts()) {
            if (facts.add(fact)) {
              ordered.add(fact);
            }
          }
        }
      }
    }
    return ordered;
  }

  /** Every failure mode of the tables in {@code knowledge/faults}, as if a case had ended on it. */
  static List<Fact.Isolated> modesOfTheTables() throws IOException {
    List<Fact.Isolated> modes = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("knowledge", "faults"))) {
      for (Path file : files.sorted().toList()) {
        for (JsonNode mode : JSON.readTree(Files.readString(file)).path("modes")) {
          for (JsonNode word : mode.path("kinds")) {
            PartKind kind =
                Stream.of(PartKind.values())
                    .filter(k -> k.word().equals(word.asText()))
                    .findFirst()
                    .orElseThrow();
            modes.add(new Fact.Isolated(new SuspectId("X1", mode.path("mode").asText()), kind));
          }
        }
      }
    }
    return modes;
  }

  private static List<RuleCase> cases(Path folder, String kind) {
    List<RuleCase> cases = new ArrayList<>();
    Path file = folder.resolve("cases.json");
    try {
      for (JsonNode node : JSON.readTree(Files.readString(file)).path(kind)) {
        List<Fact> facts = new ArrayList<>();
        node.path("facts").forEach(f -> facts.add(fact(f)));
        List<JsonNode> expected = new ArrayList<>();
        node.path("expect").forEach(expected::add);
        cases.add(
            new RuleCase(
                folder.getFileName().toString(), node.path("name").asText(), facts, expected));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(file.toString(), e);
    }
    return cases;
  }

  private static Fact fact(JsonNode n) {
    return switch (n.path("fact").asText()) {
      case "CaseFact" ->
          new Fact.CaseFact(
              ComplaintKind.valueOf(n.path("complaint").asText("DEAD")),
              Context.valueOf(n.path("context").asText("IN_SERVICE")),
              n.path("systemVolts").asInt(12),
              n.path("positiveGround").asBoolean(false),
              n.path("healthySourceVolts").asDouble(12.3),
              n.path("warning").asText(""));
      case "Piece" -> {
        PartKind kind = PartKind.valueOf(n.path("kind").asText());
        String id = n.path("id").asText();
        yield new Fact.Piece(
            id, kind, n.path("title").asText(kind.word() + " " + id), words(n.path("hazards")));
      }
      case "ReadingFact" -> reading(n);
      case "Margin" ->
          new Fact.Margin(
              suspect(n.path("suspect").asText()),
              numbers(n.path("readings")),
              Fact.Standing.valueOf(n.path("standing").asText("OUT")),
              n.path("direct").asBoolean(false));
      case "Suspected" ->
          new Fact.Suspected(
              suspect(n.path("id").asText()),
              PartKind.valueOf(n.path("kind").asText()),
              n.path("belief").asDouble(0.1),
              n.path("lone").asBoolean(false));
      case "Conflict" -> new Fact.Conflict(numbers(n.path("readings")));
      case "CheckIdea" ->
          new Fact.CheckIdea(
              n.path("id").asText("c1"),
              CheckKind.valueOf(n.path("kind").asText()),
              n.path("red").asText("F3"),
              n.path("black").asText("BATT"),
              n.path("powered").asBoolean(true),
              n.path("isolated").asBoolean(true),
              n.path("loadOn").asBoolean(true),
              n.path("provenDead").asBoolean(true),
              n.path("reachable").asBoolean(true),
              n.path("minutes").asDouble(1),
              n.path("cranks").asBoolean(false),
              n.path("bridges").asBoolean(false),
              n.path("inHand").asBoolean(false));
      case "Isolated" ->
          new Fact.Isolated(
              suspect(n.path("suspect").asText()), PartKind.valueOf(n.path("kind").asText()));
      case "BlownFuse" ->
          new Fact.BlownFuse(n.path("fuse").asText(), n.path("shortExcluded").asBoolean());
      case "PlanFigure" ->
          new Fact.PlanFigure(
              n.path("id").asInt(1),
              n.path("part").asText(),
              PartKind.valueOf(n.path("kind").asText()),
              n.path("figure").asText(),
              n.path("value").asDouble(),
              n.path("limit").asDouble(),
              texts(n.path("with")),
              said(n.path("said")));
      default -> throw new IllegalArgumentException("no such fact: " + n);
    };
  }

  private static Fact.ReadingFact reading(JsonNode n) {
    boolean seen = n.has("seen");
    boolean over = "OL".equals(n.path("value").asText());
    return new Fact.ReadingFact(
        n.path("id").asInt(1),
        CheckKind.valueOf(n.path("kind").asText("VOLTS")),
        n.path("red").asText("F3"),
        n.path("black").asText("BATT"),
        n.path("blackIsPost").asBoolean(true),
        seen ? ValueClass.SEEN : over ? ValueClass.OVER_RANGE : ValueClass.NUMBER,
        over ? 0 : n.path("value").asDouble(0),
        n.path("error").asDouble(0.1),
        seen ? Seen.valueOf(n.path("seen").asText()) : null,
        n.path("powered").asBoolean(true),
        n.path("healthyLow").asDouble(12.2),
        n.path("healthyHigh").asDouble(12.8),
        n.path("sourceOhms").asDouble(0.1),
        n.path("loadOn").asBoolean(true),
        n.path("explained").asBoolean(true),
        n.path("whole").asBoolean(true));
  }

  static SuspectId suspect(String text) {
    int slash = text.indexOf('/');
    return new SuspectId(text.substring(0, slash), text.substring(slash + 1));
  }

  private static List<String> texts(JsonNode n) {
    List<String> texts = new ArrayList<>();
    n.forEach(w -> texts.add(w.asText()));
    return texts;
  }

  private static List<Object> said(JsonNode n) {
    List<Object> said = new ArrayList<>();
    n.forEach(w -> said.add(w.isNumber() ? (Object) w.asDouble() : w.asText()));
    return said;
  }

  private static Set<String> words(JsonNode n) {
    Set<String> words = new TreeSet<>();
    n.forEach(w -> words.add(w.asText()));
    return words;
  }

  private static Set<Integer> numbers(JsonNode n) {
    if (n.isMissingNode()) {
      return Set.of(1);
    }
    Set<Integer> numbers = new TreeSet<>();
    n.forEach(i -> numbers.add(i.asInt()));
    return numbers;
  }
}
