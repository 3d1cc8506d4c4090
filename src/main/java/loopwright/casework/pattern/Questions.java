package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.knowledge.PatternValues;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.TerminalRef;
import loopwright.model.Units;
import loopwright.model.Vehicle;

/** The questions of one pattern being put together, which may depend on answers given so far. */
final class Questions {
  /** Answer for a ground point that is yet to be made. */
  static final String NEW = "new";

  static final String HOT = "hot";
  static final String KEY = "key";
  static final String YES = "yes";
  static final String NO = "no";

  private static final int LONGEST_NAME = 40;
  private static final String COMMON = PatternValues.COMMON_PRACTICE;

  private final String pattern;
  private final Vehicle vehicle;
  private final Existing existing;
  private final Basis basis;
  private final Map<String, String> given;
  private final List<Question> questions = new ArrayList<>();

  Questions(String pattern, Vehicle vehicle, Basis basis, Map<String, String> given) {
    this.pattern = pattern;
    this.vehicle = vehicle;
    this.existing = new Existing(vehicle);
    this.basis = basis;
    this.given = given;
  }

  List<Question> all() {
    return List.copyOf(questions);
  }

  Existing existing() {
    return existing;
  }

  private void add(String id, Question.Form form, String usual, String source) {
    String unit = basis.words().say("length." + Units.inUse().lengthUnit());
    String text = basis.words().first(pattern + ".q." + id, "q." + id, unit);
    questions.add(new Question(id, text, form, usual, source));
  }

  /** Words of the bundle. */
  String say(String key) {
    return basis.words().say(key);
  }

  /** What the circuit is called. */
  void name() {
    add("name", new Question.Form.Words(LONGEST_NAME), basis.words().say(pattern + ".name"), "");
  }

  /** A short text. */
  void words(String id, String usual) {
    add(id, new Question.Form.Words(2 * LONGEST_NAME), usual, "");
  }

  /** A length in metres; asked for in the unit preferred. */
  void metres(String id, double usual) {
    Units units = Units.inUse();
    String shown = units.feet() ? units.length(usual, 1) : Answers.number(usual);
    add(id, new Question.Form.Length(0.1, 30), shown, COMMON);
  }

  /** How many. */
  void count(String id, int low, int high, int usual) {
    add(id, new Question.Form.Number("", low, high), Integer.toString(usual), "");
  }

  /** What a load takes, usual as in the table. */
  void power(String id, String load, double mostAmps) {
    PatternValues.Load usual = basis.knowledge().patternValues().load(load, vehicle.systemVolts());
    add(
        id,
        new Question.Form.Power(usual.unit(), 0.01, mostAmps),
        Answers.number(usual.amount().typical()) + " " + usual.unit(),
        usual.source());
  }

  /** Yes or no. */
  void yes(String id, boolean usual) {
    choice(id, List.of(YES, NO), usual ? YES : NO, COMMON);
  }

  /** One of several, with words from the bundle. */
  void choice(String id, List<String> choices, String usual, String source) {
    List<Question.Choice> all =
        choices.stream()
            .map(
                c ->
                    new Question.Choice(
                        c, basis.words().first(pattern + ".choice." + c, "choice." + c)))
            .toList();
    add(id, new Question.Form.OneOf(all), usual, source);
  }

  /** Where it is fed from; not asked where there is but one answer. */
  void feed(String usual) {
    feed("feed", usual);
  }

  /** Where relay coils are fed from. */
  void coilFeed() {
    feed("coil-feed", KEY);
  }

  private void feed(String id, String usual) {
    if (existing.keyed().isPresent()) {
      choice(id, List.of(KEY, HOT), usual, COMMON);
    } else {
      choice(id, List.of(HOT), HOT, "");
    }
  }

  /** Where the ground wire goes: a new point on the body, or one there is. */
  void ground(String id) {
    ground(id, grounds().keySet().iterator().next());
  }

  /** Where the coil's ground wire goes: an existing point, since it carries next to nothing. */
  void coilGround() {
    String usual =
        grounds().keySet().stream()
            .filter(g -> !g.equals(NEW) && hasRoom(g))
            .reduce((first, second) -> first.equals(firstGround()) ? second : first)
            .orElse(NEW);
    ground("coil-ground", usual);
  }

  private void ground(String id, String usual) {
    List<Question.Choice> all = new ArrayList<>();
    grounds().forEach((ground, words) -> all.add(new Question.Choice(ground, words)));
    add(id, new Question.Form.OneOf(all), usual, COMMON);
  }

  private boolean hasRoom(String ground) {
    return vehicle.requirePart(ground).kind() != PartKind.GROUND
        || Existing.hasRoom(vehicle.parts(), new TerminalRef(ground, "lug"));
  }

  private String firstGround() {
    return existing.grounds().isEmpty() ? "" : existing.grounds().get(0).id();
  }

  private Map<String, String> grounds() {
    Map<String, String> choices = new LinkedHashMap<>();
    Optional<Part> block =
        existing.grounds().stream().filter(p -> p.kind() == PartKind.SPLICE).findFirst();
    if (existing.body().isPresent() && block.isEmpty()) {
      choices.put(NEW, basis.words().say("choice.new"));
    }
    block.ifPresent(b -> choices.put(b.id(), b.title()));
    existing.grounds().forEach(g -> choices.putIfAbsent(g.id(), g.title()));
    if (existing.body().isPresent()) {
      choices.putIfAbsent(NEW, basis.words().say("choice.new"));
    }
    if (choices.isEmpty()) {
      choices.put(vehicle.battery().id(), vehicle.battery().title());
    }
    return choices;
  }

  /** A circuit of the vehicle, or none. */
  void circuit(String id, List<String> hints) {
    List<Question.Choice> all = new ArrayList<>();
    String usual = NO;
    for (Circuit circuit : vehicle.circuits()) {
      all.add(new Question.Choice(circuit.id(), circuit.name()));
      if (usual.equals(NO) && hints.stream().allMatch(circuit.id()::contains)) {
        usual = circuit.id();
      }
    }
    all.add(new Question.Choice(NO, basis.words().say("choice.none")));
    add(id, new Question.Form.OneOf(all), usual, "");
  }

  /** Whether the answer given so far, or the usual one, is this choice. */
  boolean is(String id, String choice) {
    return choice.equalsIgnoreCase(answer(id));
  }

  /** The answer given so far, or the usual one. */
  String answer(String id) {
    String answer = given.getOrDefault(id, "").strip();
    return answer.isEmpty()
        ? questions.stream()
            .filter(q -> q.id().equals(id))
            .map(Question::usual)
            .findFirst()
            .orElse("")
        : answer;
  }
}
