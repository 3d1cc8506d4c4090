package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.knowledge.PatternValues;
import loopwright.model.GroundedPole;
import loopwright.model.WireSize;

/** The few questions about a vehicle itself, and what vehicles of its kind usually need. */
public final class NewVehicleForm {
  private static final List<String> KINDS =
      List.of("car", "motorcycle", "tractor", "race", "off-road", "other");

  /** Any volts: no question here is about what a load takes. */
  private static final int ANY_VOLTS = 12;

  private NewVehicleForm() {}

  /** The questions. The kind of vehicle changes what is usual for the rest. */
  public static Questionnaire questionnaire(Basis basis) {
    return new Questionnaire() {
      @Override
      public List<Question> questions(Map<String, String> given) {
        return NewVehicleForm.questions(basis, given);
      }

      @Override
      public void check(Question question, String answer) throws Problem {
        Answers.fitting(question, answer, ANY_VOLTS);
      }
    };
  }

  private static List<Question> questions(Basis basis, Map<String, String> given) {
    List<Question> all = new ArrayList<>();
    all.add(choice(basis, "kind", KINDS, "car", ""));
    String kind = kind(given);
    all.add(
        new Question(
            "name",
            basis.words().say("new.q.name"),
            new Question.Form.Words(60),
            basis.words().say("new.name." + kind),
            ""));
    all.add(choice(basis, "volts", List.of("6", "12", "24"), "12", PatternValues.COMMON_PRACTICE));
    all.add(
        choice(
            basis,
            "grounded",
            Stream.of(GroundedPole.values()).map(GroundedPole::word).toList(),
            GroundedPole.NEGATIVE.word(),
            PatternValues.COMMON_PRACTICE));
    all.add(
        choice(
            basis,
            "key",
            Stream.of(NewVehicle.Key.values()).map(NewVehicle.Key::word).toList(),
            key(kind).word(),
            PatternValues.COMMON_PRACTICE));
    all.add(
        choice(
            basis,
            "back",
            Stream.of(NewVehicle.Return.values()).map(NewVehicle.Return::word).toList(),
            back(kind).word(),
            PatternValues.COMMON_PRACTICE));
    all.add(choice(basis, "sizes", List.of("mm2", "awg"), "mm2", ""));
    return all;
  }

  private static Question choice(
      Basis basis, String id, List<String> choices, String usual, String source) {
    return new Question(
        id,
        basis.words().say("new.q." + id),
        new Question.Form.OneOf(
            choices.stream()
                .map(c -> new Question.Choice(c, basis.words().say("new.choice." + c)))
                .toList()),
        usual,
        source);
  }

  private static String kind(Map<String, String> given) {
    String kind = given.getOrDefault("kind", "").strip().toLowerCase(Locale.ROOT);
    return KINDS.contains(kind) ? kind : KINDS.get(0);
  }

  private static NewVehicle.Key key(String kind) {
    return switch (kind) {
      case "car", "off-road" -> NewVehicle.Key.RELAY;
      default -> NewVehicle.Key.SWITCH;
    };
  }

  private static NewVehicle.Return back(String kind) {
    return switch (kind) {
      case "motorcycle", "race" -> NewVehicle.Return.BLOCK;
      default -> NewVehicle.Return.BODY;
    };
  }

  /**
   * The vehicle that the answers describe.
   *
   * @throws Problem if one doesn't fit, or answers what isn't asked
   */
  public static NewVehicle vehicle(
      Basis basis, Map<String, String> given, List<NewVehicle.Row> rows) throws Problem {
    Answers a = Answers.of("new", questions(basis, given), given, ANY_VOLTS);
    return new NewVehicle(
        a.words("name"),
        Integer.parseInt(a.words("volts")),
        one(GroundedPole.values(), GroundedPole::word, a.words("grounded")),
        one(NewVehicle.Key.values(), NewVehicle.Key::word, a.words("key")),
        one(NewVehicle.Return.values(), NewVehicle.Return::word, a.words("back")),
        a.is("sizes", "awg") ? WireSize.Unit.AWG : WireSize.Unit.MM2,
        rows);
  }

  private static <T> T one(T[] all, java.util.function.Function<T, String> word, String wanted) {
    return Stream.of(all).filter(t -> word.apply(t).equals(wanted)).findFirst().orElseThrow();
  }

  /** What a vehicle of this kind usually needs, to begin with. */
  public static List<NewVehicle.Row> suggested(Basis basis, Map<String, String> given) {
    String tail = basis.words().say("row.tail");
    NewVehicle.Row tails =
        row("lamp-switch", "name", tail, "power", "5 W", "count", "2", "feed", "hot");
    return switch (kind(given)) {
      case "car" ->
          List.of(
              row("headlamps"),
              tails,
              row("brake-turn"),
              row("horn"),
              motor(basis, "row.wiper", "motor"),
              motor(basis, "row.blower", "heater"),
              row("fan-driver"),
              row("fuel-pump"),
              row("starter"));
      case "motorcycle" ->
          List.of(
              row("headlamps", "count", "1", "relays", "no", "feed", "key", "to-load", "1 m"),
              row(
                  "lamp-switch",
                  "name",
                  tail,
                  "power",
                  "5 W",
                  "switched",
                  "none",
                  "to-load",
                  "1.5 m"),
              brake(basis, "1"),
              row("flasher", "to-front", "1 m", "to-rear", "1.5 m"),
              row("horn", "to-load", "0.8 m", "to-button", "0.8 m"),
              ignition(basis),
              row("starter", "by", "button", "to-starter", "0.6 m", "engine-ground", "0.5 m"));
      case "tractor" ->
          List.of(
              row("headlamps"),
              tails,
              row("lamp-switch", "name", basis.words().say("row.flood")),
              row("flasher"),
              row("horn"),
              row("starter", "clutch", "no"));
      case "race" ->
          List.of(
              ignition(basis),
              row("lamp-switch", "name", basis.words().say("row.pump"), "kind", "motor"),
              row("fan-driver"),
              row("lamp-switch", "name", basis.words().say("row.rain"), "power", "21 W"),
              brake(basis, "2"),
              row("starter", "by", "button", "clutch", "no", "neutral", "no"));
      case "off-road" ->
          List.of(
              row("lamp-relay", "name", basis.words().say("row.bar")),
              tails,
              brake(basis, "2"),
              row("horn"),
              row("fan-driver"),
              row("fuel-pump"),
              row("starter", "by", "button"));
      default -> List.of();
    };
  }

  private static NewVehicle.Row motor(Basis basis, String name, String kind) {
    return row("lamp-switch", "name", basis.words().say(name), "kind", kind, "to-load", "1.5 m");
  }

  private static NewVehicle.Row ignition(Basis basis) {
    return row(
        "lamp-switch",
        "name",
        basis.words().say("row.ignition"),
        "kind",
        "electronics",
        "to-load",
        "1 m");
  }

  private static NewVehicle.Row brake(Basis basis, String count) {
    return row(
        "lamp-switch",
        "name",
        basis.words().say("row.brake"),
        "power",
        "21 W",
        "count",
        count,
        "switched",
        "pedal");
  }

  private static NewVehicle.Row row(String pattern, String... answers) {
    Map<String, String> all = new LinkedHashMap<>();
    for (int i = 0; i < answers.length; i += 2) {
      all.put(answers[i], answers[i + 1]);
    }
    return new NewVehicle.Row(pattern, all);
  }

  /** What a row is called: the name given to its circuit, or its pattern's usual one. */
  public static String name(NewVehicle.Row row, Basis basis) {
    return Optional.ofNullable(row.answers().get("name"))
        .orElseGet(() -> basis.words().say(row.pattern() + ".name"));
  }
}
