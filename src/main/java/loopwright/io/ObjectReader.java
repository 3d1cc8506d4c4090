package loopwright.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import loopwright.model.Estimate;
import loopwright.model.Language;
import loopwright.model.Nearest;
import loopwright.model.ShortName;
import loopwright.model.Spread;

/**
 * Takes the fields of one JSON object one by one, and notes what is missing, of the wrong type or
 * unknown. Where a field is bad it answers with a harmless stand-in, so that the rest of the file
 * is looked at too; the file as a whole is then refused.
 */
final class ObjectReader {
  private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x08\\x0B-\\x1F\\x7F]");

  private final Map<String, JsonValue> fields;
  private final String path;
  private final String object;
  private final DefectList defects;
  private final Set<String> known = new LinkedHashSet<>();

  private ObjectReader(
      Map<String, JsonValue> fields, String path, String object, DefectList defects) {
    this.fields = fields;
    this.path = path;
    this.object = object;
    this.defects = defects;
  }

  /** A reader for this value; if it is no object, one for an object without fields. */
  static Optional<ObjectReader> of(
      JsonValue value, String path, String object, DefectList defects) {
    if (value instanceof JsonValue.Fields f) {
      defects.name(path, object);
      return Optional.of(new ObjectReader(f.values(), path, object, defects));
    }
    if (!defects.covers(path)) {
      defects.add(
          path,
          object,
          value.shown(),
          FileWords.say("object"),
          FileWords.say("is", kindOf(value), FileWords.say("braces")));
    }
    return Optional.empty();
  }

  /** The same object under the name a person knows it by. */
  ObjectReader called(String name) {
    defects.name(path, name);
    return onBehalfOf(name);
  }

  /** The same fields, with what is found noted about something else. */
  ObjectReader onBehalfOf(String name) {
    ObjectReader renamed = new ObjectReader(fields, path, name, defects);
    renamed.known.addAll(known);
    return renamed;
  }

  String object() {
    return object;
  }

  String path(String field) {
    return DefectList.child(path, field);
  }

  boolean has(String field) {
    known.add(field);
    return fields.containsKey(field);
  }

  /** The raw value of a field that may be missing. */
  Optional<JsonValue> optional(String field) {
    known.add(field);
    return Optional.ofNullable(fields.get(field));
  }

  /** The raw value of a field that must be there. */
  Optional<JsonValue> required(String field, String limit) {
    Optional<JsonValue> value = optional(field);
    if (value.isEmpty()) {
      missing(field, limit);
    }
    return value;
  }

  /** The text of a field that may be missing. */
  String text(String field, String otherwise) {
    return optional(field).flatMap(v -> textOf(v, path(field), field)).orElse(otherwise);
  }

  /** The text of a field that must be there. */
  Optional<String> text(String field) {
    return required(field, FileWords.say("text")).flatMap(v -> textOf(v, path(field), field));
  }

  /** A name that others refer to. */
  Optional<String> name(String field) {
    return required(field, ShortName.limit()).flatMap(v -> nameOf(v, path(field), field));
  }

  /** A number that must be there. */
  Optional<Double> number(String field) {
    return required(field, FileWords.say("number")).flatMap(v -> numberOf(v, path(field), field));
  }

  /** A number that may be missing. */
  Optional<Double> optionalNumber(String field) {
    return optional(field).flatMap(v -> numberOf(v, path(field), field));
  }

  /** A yes or no that may be missing. */
  boolean flag(String field, boolean otherwise) {
    Optional<JsonValue> value = optional(field);
    if (value.isEmpty()) {
      return otherwise;
    }
    if (value.get() instanceof JsonValue.Flag f) {
      return f.value();
    }
    wrongType(value.get(), path(field), field, FileWords.say("flag"));
    return otherwise;
  }

  /** An estimate that must be there. */
  Optional<Estimate> estimate(String field) {
    return required(field, estimate()).flatMap(v -> estimateOf(v, field));
  }

  /** An estimate that may be missing. */
  Optional<Estimate> optionalEstimate(String field) {
    return optional(field).flatMap(v -> estimateOf(v, field));
  }

  /** One of several words; {@code otherwise} stands for a missing field. */
  <E extends Enum<E>> Optional<E> word(
      String field,
      E[] values,
      java.util.function.Function<E, String> word,
      Optional<E> otherwise) {
    List<String> words = new ArrayList<>();
    for (E e : values) {
      words.add(word.apply(e));
    }
    String limit = oneOf(words);
    Optional<JsonValue> value = otherwise.isPresent() ? optional(field) : required(field, limit);
    if (value.isEmpty()) {
      return otherwise;
    }
    Optional<String> text = textOf(value.get(), path(field), field);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    int at = words.indexOf(text.get());
    if (at >= 0) {
      return Optional.of(values[at]);
    }
    notAmong(path(field), field, text.get(), words);
    return Optional.empty();
  }

  /** Notes a text that is none of the accepted words. */
  void notAmong(String at, String field, String text, List<String> words) {
    String limit = oneOf(words);
    defects.add(
        at,
        object,
        JsonValue.quoted(text),
        limit,
        bad(field, JsonValue.quoted(text), limit) + meant(text, words));
  }

  /** A list that must be there, with at least and at most so many items. */
  List<JsonValue> list(String field, int least, int most) {
    String limit = count(least, most);
    return required(field, limit)
        .map(v -> listOf(v, path(field), field, least, most))
        .orElse(List.of());
  }

  /** A list that may be missing. */
  List<JsonValue> optionalList(String field, int most) {
    return optional(field).map(v -> listOf(v, path(field), field, 0, most)).orElse(List.of());
  }

  /** A list of names that must be there. */
  List<String> names(String field, int least, int most) {
    List<String> names = new ArrayList<>();
    List<JsonValue> items = list(field, least, most);
    for (int i = 0; i < items.size(); i++) {
      String at = DefectList.child(path(field), i);
      nameOf(items.get(i), at, field + "[" + i + "]").ifPresent(names::add);
    }
    return names;
  }

  /** The fields of an object that may be missing. */
  Map<String, JsonValue> map(String field) {
    Optional<JsonValue> value = optional(field);
    if (value.isEmpty()) {
      return Map.of();
    }
    if (value.get() instanceof JsonValue.Fields f) {
      return new LinkedHashMap<>(f.values());
    }
    wrongType(value.get(), path(field), field, FileWords.say("braces"));
    return Map.of();
  }

  /** Notes every field that nobody asked for. */
  void nothingElse() {
    for (String field : fields.keySet()) {
      if (!known.contains(field)) {
        String shown = JsonValue.shorten(field);
        defects.add(
            path(field),
            object,
            FileWords.say("field", shown),
            FileWords.say("fields", String.join(", ", known)),
            FileWords.say("field.unknown", shown) + meant(field, known));
      }
    }
  }

  Optional<String> textOf(JsonValue value, String at, String field) {
    if (!(value instanceof JsonValue.Text t)) {
      wrongType(value, at, field, FileWords.say("text"));
      return Optional.empty();
    }
    if (CONTROL.matcher(t.value()).find()) {
      defects.add(
          at,
          object,
          t.shown(),
          FileWords.say("printable"),
          FileWords.say("printable.bad", field, t.shown()));
      return Optional.empty();
    }
    return Optional.of(t.value());
  }

  Optional<String> nameOf(JsonValue value, String at, String field) {
    Optional<String> text = textOf(value, at, field);
    if (text.isPresent() && !ShortName.fits(text.get())) {
      defects.add(
          at,
          object,
          value.shown(),
          ShortName.limit(),
          bad(field, value.shown(), ShortName.limit()));
      return Optional.empty();
    }
    return text;
  }

  Optional<Double> numberOf(JsonValue value, String at, String field) {
    if (value instanceof JsonValue.Num n) {
      return Optional.of(n.value());
    }
    wrongType(value, at, field, FileWords.say("number"));
    return Optional.empty();
  }

  private Optional<Estimate> estimateOf(JsonValue value, String field) {
    if (value instanceof JsonValue.Num n) {
      return Optional.of(Estimate.of(n.value()));
    }
    return spreadOf(value, path(field), field).map(s -> new Estimate(s.typical(), Optional.of(s)));
  }

  /** Low, about and high of an object; a bare number is all three. */
  Optional<Spread> spreadOf(JsonValue value, String at, String field) {
    if (value instanceof JsonValue.Num n) {
      return Optional.of(Spread.exactly(n.value()));
    }
    if (!(value instanceof JsonValue.Fields f)) {
      wrongType(value, at, field, estimate());
      return Optional.empty();
    }
    ObjectReader inner = new ObjectReader(f.values(), at, object, defects);
    Optional<Double> about = inner.number("about");
    Optional<Double> low = inner.number("low");
    Optional<Double> high = inner.number("high");
    inner.nothingElse();
    if (about.isEmpty() || low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (!(low.get() <= about.get() && about.get() <= high.get())) {
      String shown =
          FileWords.say("spread", plain(low.get()), plain(about.get()), plain(high.get()));
      defects.add(
          at, object, shown, "low <= about <= high", FileWords.say("spread.bad", field, shown));
      return Optional.empty();
    }
    return Optional.of(new Spread(low.get(), about.get(), high.get()));
  }

  private List<JsonValue> listOf(JsonValue value, String at, String field, int least, int most) {
    if (!(value instanceof JsonValue.Items items)) {
      wrongType(value, at, field, FileWords.say("brackets"));
      return List.of();
    }
    int size = items.values().size();
    if (size < least || size > most) {
      String limit = count(least, most);
      defects.add(
          at,
          object,
          FileWords.say("items", Integer.toString(size)),
          limit,
          FileWords.say("items.bad", field, Integer.toString(size), limit));
      return size > most ? List.of() : items.values();
    }
    return items.values();
  }

  private static String count(int least, int most) {
    if (most == Integer.MAX_VALUE) {
      return FileWords.say("list.least", Integer.toString(least));
    }
    return least == most
        ? FileWords.say("list", Integer.toString(least))
        : FileWords.say("list", Language.range(Integer.toString(least), Integer.toString(most)));
  }

  void missing(String field, String limit) {
    defects.add(
        path(field),
        object,
        FileWords.say("missing"),
        limit,
        FileWords.say("field.missing", field, limit));
  }

  void wrongType(JsonValue value, String at, String field, String limit) {
    if (!defects.covers(at)) {
      defects.add(at, object, value.shown(), limit, bad(field, kindOf(value), limit));
    }
  }

  static String kindOf(JsonValue value) {
    return value instanceof JsonValue.Text t ? FileWords.say("the-text", t.shown()) : value.shown();
  }

  /** What an amount with its spread may be. */
  static String estimate() {
    return FileWords.say("estimate");
  }

  static String oneOf(List<String> words) {
    return FileWords.say("one-of", String.join(", ", words));
  }

  /** That a field is something and must be something else. */
  static String bad(String field, String value, String limit) {
    return FileWords.say("bad", field, value, limit);
  }

  static String meant(String word, java.util.Collection<String> known) {
    return Nearest.to(word, known).map(n -> FileWords.say("meant", n)).orElse("");
  }

  /** A number as a person writes it: no trailing {@code .0}. */
  static String plain(double value) {
    String text = Double.toString(value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
