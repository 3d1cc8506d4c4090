package loopwright.io;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.knowledge.Context;
import loopwright.knowledge.Effect;
import loopwright.knowledge.FaultMode;
import loopwright.knowledge.Provocation;
import loopwright.model.Language;
import loopwright.model.PartKind;
import loopwright.model.Spread;

/**
 * Reads tables of failure modes: JSON, format {@code loopwright-faults}, version 1, described by
 * {@code schema/faults-1.schema.json}.
 */
final class FaultFile {
  static final String FORMAT = "loopwright-faults";

  private static final Set<String> NO_ELEMENTS = Set.of();

  /** The terminals a bridge may start at or a change-over may name; others' names vary. */
  private static final Map<PartKind, List<String>> TERMINALS =
      Map.ofEntries(
          Map.entry(PartKind.WIRE, List.of("from", "to")),
          Map.entry(PartKind.STRAP, List.of("from", "to")),
          Map.entry(PartKind.BATTERY, List.of("pos", "neg")),
          Map.entry(PartKind.FUSE, List.of("feed", "load")),
          Map.entry(PartKind.RELAY, List.of("86", "85", "30", "87", "87a")),
          Map.entry(PartKind.LAMP, List.of("in", "out")),
          Map.entry(PartKind.DUAL_LAMP, List.of("common")),
          Map.entry(PartKind.LED, List.of("in", "out")),
          Map.entry(PartKind.DIODE, List.of("anode", "cathode")),
          Map.entry(PartKind.MOTOR, List.of("in", "out")),
          Map.entry(PartKind.HEATER, List.of("in", "out")),
          Map.entry(PartKind.SOLENOID, List.of("in", "out")),
          Map.entry(PartKind.HORN, List.of("in", "out")),
          Map.entry(PartKind.ELECTRONICS, List.of("in", "out")),
          Map.entry(PartKind.SENDER, List.of("in", "out")),
          Map.entry(PartKind.DRIVER, List.of("out", "ground")),
          Map.entry(PartKind.GROUND, List.of("lug", "metal")),
          Map.entry(PartKind.BODY, List.of("metal")));

  /** What one file holds. */
  record Content(List<FaultMode> modes, Optional<Double> testSlip) {}

  private final DefectList defects;

  private FaultFile(DefectList defects) {
    this.defects = defects;
  }

  static Optional<Content> read(JsonValue root, DefectList defects) {
    return ObjectReader.of(root, "", FileWords.say("faults"), defects)
        .map(in -> new FaultFile(defects).content(in));
  }

  private Content content(ObjectReader in) {
    KnowledgeFiles.formatAndVersion(in, FORMAT, defects);
    in.text("note", "");
    Optional<Double> slip = in.optionalNumber("test_slip");
    slip.filter(s -> !(s >= 0 && s < 0.5))
        .ifPresent(
            s ->
                defects.add(
                    in.path("test_slip"),
                    in.object(),
                    ObjectReader.plain(s),
                    FileWords.say("slip"),
                    ObjectReader.bad("test_slip", ObjectReader.plain(s), FileWords.say("slip"))));
    if (slip.isPresent()) {
      in.text("test_slip_source");
    } else {
      in.text("test_slip_source", "");
    }
    List<JsonValue> values = in.list("modes", 0, 1_000);
    List<FaultMode> modes = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String path = DefectList.child("modes", i);
      ObjectReader.of(values.get(i), path, path, defects).ifPresent(m -> mode(m, path, modes));
    }
    in.nothingElse();
    return new Content(modes, slip);
  }

  private void mode(ObjectReader raw, String path, List<FaultMode> into) {
    Optional<String> mode = raw.name("mode");
    ObjectReader in = raw.called(mode.map(m -> FileWords.say("mode", m)).orElse(path));
    List<PartKind> kinds = kinds(in);
    Optional<String> title = in.text("title");
    String translated = in.text("title_de", "");
    List<JsonValue> values = in.list("effects", 1, 10);
    List<Effect> effects = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String at = DefectList.child(in.path("effects"), i);
      ObjectReader.of(values.get(i), at, in.object(), defects)
          .flatMap(e -> effect(e, kinds))
          .ifPresent(effects::add);
    }
    Optional<FaultMode.Per> per =
        in.word(
            "per", FaultMode.Per.values(), FaultMode.Per::word, Optional.of(FaultMode.Per.PART));
    per.filter(p -> p == FaultMode.Per.METRE && !onlyWires(kinds))
        .ifPresent(
            p ->
                defects.add(
                    in.path("per"),
                    in.object(),
                    "metre",
                    FileWords.say("per"),
                    FileWords.say("per.metre")));
    Map<Context, Double> rates = rates(in);
    Optional<FaultMode.Condition> when =
        in.word(
            "when",
            FaultMode.Condition.values(),
            FaultMode.Condition::word,
            Optional.of(FaultMode.Condition.ALWAYS));
    boolean visible = in.flag("visible", false);
    boolean stays = in.flag("stays", false);
    Map<Provocation, Double> shows = shows(in);
    Optional<String> source = in.text("source");
    source
        .filter(String::isBlank)
        .ifPresent(
            s ->
                defects.add(
                    in.path("source"),
                    in.object(),
                    "\"\"",
                    FileWords.say("source"),
                    FileWords.say("source.none")));
    in.nothingElse();
    if (defects.touches(path) || mode.isEmpty() || title.isEmpty()) {
      return;
    }
    for (PartKind kind : kinds) {
      into.add(
          new FaultMode(
              kind,
              mode.get(),
              InGerman.or(translated, title.get()),
              effects,
              per.orElseThrow(),
              rates,
              when.orElseThrow(),
              visible,
              stays,
              shows,
              source.orElseThrow()));
    }
  }

  private static boolean onlyWires(List<PartKind> kinds) {
    return kinds.stream().allMatch(k -> k == PartKind.WIRE || k == PartKind.STRAP);
  }

  private List<PartKind> kinds(ObjectReader in) {
    Map<String, PartKind> byWord = new HashMap<>();
    List<String> words = new ArrayList<>();
    for (PartKind kind : PartKind.values()) {
      byWord.put(kind.word(), kind);
      words.add(kind.word());
    }
    List<PartKind> kinds = new ArrayList<>();
    List<JsonValue> values = in.list("kinds", 1, words.size());
    for (int i = 0; i < values.size(); i++) {
      String at = DefectList.child(in.path("kinds"), i);
      String field = "kinds[" + i + "]";
      Optional<String> word = in.textOf(values.get(i), at, field);
      if (word.isPresent() && !byWord.containsKey(word.get())) {
        in.notAmong(at, field, word.get(), words);
      } else {
        word.map(byWord::get).ifPresent(kinds::add);
      }
    }
    return kinds;
  }

  private Map<Context, Double> rates(ObjectReader in) {
    Map<Context, Double> rates = new EnumMap<>(Context.class);
    in.required("rates", FileWords.say("rates"))
        .flatMap(v -> ObjectReader.of(v, in.path("rates"), in.object(), defects))
        .ifPresent(
            r -> {
              for (Context context : Context.values()) {
                r.number(context.word())
                    .ifPresent(
                        rate -> {
                          rates.put(context, rate);
                          chance(
                              r, in, context.word(), FileWords.say("rate", context.word()), rate);
                        });
              }
              r.nothingElse();
            });
    return rates;
  }

  private Map<Provocation, Double> shows(ObjectReader in) {
    Map<Provocation, Double> shows = new EnumMap<>(Provocation.class);
    in.optional("shows")
        .flatMap(v -> ObjectReader.of(v, in.path("shows"), in.object(), defects))
        .ifPresent(
            r -> {
              for (Provocation way : Provocation.values()) {
                r.optionalNumber(way.word())
                    .ifPresent(
                        chance -> {
                          shows.put(way, chance);
                          chance(r, in, way.word(), FileWords.say("chance", way.word()), chance);
                        });
              }
              r.nothingElse();
            });
    return shows;
  }

  private void chance(ObjectReader r, ObjectReader in, String field, String what, double chance) {
    if (!(chance >= 0 && chance <= 1)) {
      defects.add(
          r.path(field),
          in.object(),
          ObjectReader.plain(chance),
          Language.range("0", "1"),
          ObjectReader.bad(what, ObjectReader.plain(chance), Language.range("0", "1")));
    }
  }

  private Optional<Effect> effect(ObjectReader in, List<PartKind> kinds) {
    List<String> ops =
        List.of("open", "series", "ohms", "scale", "bridge", "stuck", "reversed", "swapped");
    Optional<String> op = in.text("op");
    if (op.isEmpty()) {
      return Optional.empty();
    }
    Optional<Effect> effect =
        switch (op.get()) {
          case "open" -> role(in, kinds, op.get()).map(Effect.Open::new);
          case "series" -> series(in, kinds);
          case "ohms" -> {
            Optional<String> role = role(in, kinds, op.get());
            Optional<Spread> ohms = spread(in, "ohms");
            yield role.isPresent() && ohms.isPresent()
                ? Optional.of(new Effect.Ohms(role.get(), ohms.get()))
                : Optional.empty();
          }
          case "scale" -> {
            Optional<String> role = role(in, kinds, op.get());
            Optional<Spread> factor = spread(in, "factor");
            yield role.isPresent() && factor.isPresent()
                ? Optional.of(new Effect.Scale(role.get(), factor.get()))
                : Optional.empty();
          }
          case "bridge" -> bridge(in, kinds);
          case "stuck" -> stuck(in, kinds);
          case "reversed" -> role(in, kinds, op.get()).map(Effect.Reversed::new);
          case "swapped" -> {
            Optional<String> one = terminal(in, "terminal", kinds);
            Optional<String> two = terminal(in, "other_terminal", kinds);
            yield one.isPresent() && two.isPresent()
                ? Optional.of(new Effect.Swapped(one.get(), two.get()))
                : Optional.empty();
          }
          default -> {
            in.notAmong(in.path("op"), "op", op.get(), ops);
            yield Optional.empty();
          }
        };
    if (ops.contains(op.get())) {
      in.nothingElse();
    }
    return effect;
  }

  private Optional<Effect> series(ObjectReader in, List<PartKind> kinds) {
    Optional<String> role = role(in, kinds, "series");
    Optional<Double> low = in.number("low_ohms");
    Optional<Double> high = in.number("high_ohms");
    if (role.isEmpty() || low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (!(low.get() > 0 && low.get() < high.get() && high.get() <= 1e7)) {
      String shown =
          Language.range(ObjectReader.plain(low.get()), ObjectReader.plain(high.get()))
              + " "
              + Language.ohm("");
      String limit = FileWords.say("series.limit");
      defects.add(
          in.path("low_ohms"),
          in.object(),
          shown,
          limit,
          ObjectReader.bad(FileWords.say("series"), shown, limit));
      return Optional.empty();
    }
    return Optional.of(new Effect.Series(role.get(), low.get(), high.get()));
  }

  private Optional<Effect> bridge(ObjectReader in, List<PartKind> kinds) {
    Optional<String> terminal = terminal(in, "terminal", kinds);
    Optional<Effect.Target> target =
        in.word(
            "target",
            Effect.Target.values(),
            t -> t.name().toLowerCase(java.util.Locale.ROOT),
            Optional.empty());
    Optional<String> other =
        target.filter(t -> t == Effect.Target.TERMINAL).isPresent()
            ? terminal(in, "other_terminal", kinds)
            : Optional.of("");
    if (target.filter(t -> t == Effect.Target.NEIGHBOUR).isPresent() && !onlyWires(kinds)) {
      defects.add(
          in.path("target"),
          in.object(),
          "neighbour",
          FileWords.say("target"),
          FileWords.say("target.neighbour"));
    }
    Optional<Spread> ohms = spread(in, "ohms");
    if (terminal.isEmpty() || target.isEmpty() || other.isEmpty() || ohms.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Effect.Bridge(terminal.get(), target.get(), other.get(), ohms.get()));
  }

  /** A contact or output sticks open or closed; a motor's winding sticks by standing still. */
  private Optional<Effect> stuck(ObjectReader in, List<PartKind> kinds) {
    Optional<String> role = role(in, kinds, "stuck");
    Optional<String> state = in.text("state");
    if (role.isEmpty() || state.isEmpty()) {
      return Optional.empty();
    }
    List<String> states =
        role.get().equals("winding") ? List.of("stalled") : List.of("open", "closed");
    if (!states.contains(state.get())) {
      in.notAmong(in.path("state"), "state", state.get(), states);
      return Optional.empty();
    }
    return Optional.of(new Effect.Stuck(role.get(), state.get().equals("closed")));
  }

  private Optional<Spread> spread(ObjectReader in, String field) {
    Optional<Spread> spread =
        in.required(field, ObjectReader.estimate())
            .flatMap(v -> in.spreadOf(v, in.path(field), field));
    if (spread.isPresent() && !(spread.get().low() > 0)) {
      String shown = ObjectReader.plain(spread.get().low());
      defects.add(
          in.path(field),
          in.object(),
          shown,
          FileWords.say("above", "0"),
          ObjectReader.bad(field, shown, FileWords.say("above", "0")));
      return Optional.empty();
    }
    return spread;
  }

  private Optional<String> terminal(ObjectReader in, String field, List<PartKind> kinds) {
    Optional<String> terminal = in.text(field);
    for (PartKind kind : kinds) {
      List<String> known = TERMINALS.getOrDefault(kind, List.of());
      if (terminal.isPresent() && !known.contains(terminal.get())) {
        unknown(in, field, "terminal", terminal.get(), kind, known);
        return Optional.empty();
      }
    }
    return terminal;
  }

  private Optional<String> role(ObjectReader in, List<PartKind> kinds, String op) {
    Optional<String> role = in.text("role");
    for (PartKind kind : kinds) {
      Set<String> known = roles(kind, op);
      if (role.isPresent() && !known.contains(role.get())) {
        unknown(
            in,
            "role",
            FileWords.say("element", op),
            role.get(),
            kind,
            known.stream().sorted().toList());
        return Optional.empty();
      }
    }
    return role;
  }

  private void unknown(
      ObjectReader in, String field, String what, String value, PartKind kind, List<String> known) {
    String limit = known.isEmpty() ? FileWords.say("none", kind.said()) : ObjectReader.oneOf(known);
    defects.add(
        in.path(field),
        in.object(),
        JsonValue.quoted(value),
        limit,
        FileWords.say("kind.lacks", field, JsonValue.shorten(value), kind.said(), what, limit)
            + ObjectReader.meant(value, known));
  }

  /** The elements of a kind that an effect can be done to. */
  static Set<String> roles(PartKind kind, String op) {
    return switch (op) {
      case "open", "series" -> elements(kind);
      case "ohms" -> minus(elements(kind), "cell");
      case "scale" ->
          switch (kind) {
            case BATTERY, FUSE, LAMP, DUAL_LAMP -> minus(elements(kind), "common");
            case MOTOR, HEATER, SOLENOID, HORN, ELECTRONICS, SENDER -> elements(kind);
            default -> NO_ELEMENTS;
          };
      case "stuck" ->
          switch (kind) {
            case SWITCH, DRIVER -> elements(kind);
            case RELAY -> Set.of("contact:87", "contact:87a", "contact:*");
            case MOTOR -> Set.of("winding");
            default -> NO_ELEMENTS;
          };
      case "reversed" ->
          switch (kind) {
            case LED, DIODE -> Set.of("junction");
            case RELAY -> Set.of("suppressor");
            default -> NO_ELEMENTS;
          };
      default -> NO_ELEMENTS;
    };
  }

  private static Set<String> elements(PartKind kind) {
    return switch (kind) {
      case BATTERY -> Set.of("cell");
      case WIRE, STRAP -> Set.of("conductor");
      case FUSE -> Set.of("link");
      case SWITCH -> Set.of("contact:*");
      case RELAY -> Set.of("coil", "contact:87", "contact:87a", "contact:*", "suppressor");
      case LAMP -> Set.of("filament");
      case DUAL_LAMP -> Set.of("filament:*", "common");
      case LED, DIODE -> Set.of("junction");
      case MOTOR, HEATER, SOLENOID, HORN, ELECTRONICS -> Set.of("winding");
      case SENDER -> Set.of("element");
      case DRIVER -> Set.of("output");
      case CONNECTOR -> Set.of("cavity:*");
      case SPLICE -> Set.of("leg:*");
      case GROUND -> Set.of("joint");
      case BODY -> NO_ELEMENTS;
    };
  }

  private static Set<String> minus(Set<String> all, String one) {
    return all.stream()
        .filter(r -> !r.equals(one))
        .collect(java.util.stream.Collectors.toUnmodifiableSet());
  }
}
