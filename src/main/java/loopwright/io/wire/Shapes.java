package loopwright.io.wire;

import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** How settings, points, answers and bands look in JSON, both ways. Shared with the journal. */
public final class Shapes {

  /** Deepest nesting read. */
  public static final int DEEPEST = 8;

  /** Largest size of a value, in its own unit: beyond anything that a hand-held meter shows. */
  static final BigDecimal LARGEST = new BigDecimal("1e9");

  private static final int MOST_DECIMALS = 12;
  private static final int LONGEST_VALUE = 40;
  private static final String OVER = "OL";
  private static final String UNDER = "-OL";

  /** Reads strictly and exactly (digits as written); writes plain ASCII on one line. */
  public static final JsonMapper JSON =
      JsonMapper.builder(
              com.fasterxml.jackson.core.JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxNumberLength(60)
                          .build())
                  .build())
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
          .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
          .build();

  private Shapes() {}

  /** A setting as an object. */
  public static ObjectNode setting(Setting setting) {
    ObjectNode node = JSON.createObjectNode();
    ObjectNode positions = node.putObject("positions");
    setting.positions().forEach(positions::put);
    ArrayNode apart = node.putArray("apart");
    setting.apart().forEach(apart::add);
    return node;
  }

  /**
   * Reads a setting; both its fields may be left out.
   *
   * @throws Problem if it has another shape
   */
  public static Setting setting(Fields fields) throws Problem {
    SortedMap<String, String> positions = new TreeMap<>();
    if (fields.has("positions")) {
      String accepted = "an object of position by control, for instance {\"S5\": \"on\"}";
      JsonNode node = fields.need("positions", accepted);
      if (!node.isObject()) {
        throw new Problem(fields.path("positions"), Fields.shown(node), accepted);
      }
      for (Map.Entry<String, JsonNode> entry : node.properties()) {
        String path = fields.path("positions." + Fields.cut(entry.getKey()));
        if (entry.getKey().isEmpty()
            || entry.getKey().codePointCount(0, entry.getKey().length())
                > fields.longest(Fields.NAME)) {
          throw new Problem(path, Fields.cut(entry.getKey()), "the id of a control");
        }
        positions.put(
            entry.getKey(),
            Fields.string(entry.getValue(), path, fields.longest(Fields.NAME), "a position"));
      }
    }
    SortedSet<String> apart =
        fields.has("apart")
            ? names(fields, "apart", "a list of part ids that are unplugged or pulled")
            : new TreeSet<>();
    fields.done();
    return new Setting(positions, apart);
  }

  /**
   * A list of names.
   *
   * @throws Problem if it is missing or something else
   */
  public static SortedSet<String> names(Fields fields, String name, String accepted)
      throws Problem {
    JsonNode node = fields.need(name, accepted);
    if (!node.isArray()) {
      throw new Problem(fields.path(name), Fields.shown(node), accepted);
    }
    SortedSet<String> names = new TreeSet<>();
    for (JsonNode one : node) {
      names.add(Fields.string(one, fields.path(name), fields.longest(Fields.NAME), accepted));
    }
    return names;
  }

  /** A check of the person's own choice as an object. */
  public static ObjectNode check(OwnCheck check) {
    ObjectNode node = JSON.createObjectNode();
    node.put("kind", check.kind().word());
    check.red().ifPresent(p -> node.put("red", p.toString()));
    check.black().ifPresent(p -> node.put("black", p.toString()));
    check.lookAt().ifPresent(p -> node.put("look", p));
    node.set("setting", setting(check.setting()));
    return node;
  }

  /**
   * Reads a check as {@link #check(OwnCheck)} writes it.
   *
   * @throws Problem if it has another shape
   */
  public static OwnCheck check(Fields fields) throws Problem {
    CheckKind kind = word(fields, "kind", CheckKind.values(), CheckKind::word);
    Optional<TerminalRef> red = point(fields, "red");
    Optional<TerminalRef> black = point(fields, "black");
    Optional<String> look = fields.mayName("look", "the id of a part");
    Setting setting = setting(fields.object("setting", "the set-up as an object"));
    fields.done();
    return new OwnCheck(kind, red, black, look, setting);
  }

  /**
   * A probe point, if the field is there.
   *
   * @throws Problem if it is no {@code part.terminal}
   */
  public static Optional<TerminalRef> point(Fields fields, String name) throws Problem {
    String accepted = "a probe point as part.terminal, for instance F3.load";
    Optional<String> text = fields.mayName(name, accepted);
    try {
      return text.map(TerminalRef::parse);
    } catch (IllegalArgumentException e) {
      throw new Problem(fields.path(name), Fields.cut(text.orElse("")), accepted);
    }
  }

  /** An answer's fields: {@code value}, {@code seen} or {@code band}. */
  public static void answer(ObjectNode node, Answer answer) {
    if (answer instanceof Answer.Text text) {
      node.put("value", text.text());
    } else if (answer instanceof Answer.Saw saw) {
      node.put("seen", saw.seen().word());
    } else if (answer instanceof Answer.Within within) {
      node.set("band", band(within.band()));
    }
  }

  /**
   * Reads an answer: exactly one of {@code value} (text with its unit, or a number with {@code
   * unit} beside), {@code seen} and {@code band}.
   *
   * @throws Problem if it has another shape
   */
  public static Answer answer(Fields fields) throws Problem {
    int given = 0;
    for (String way : new String[] {"value", "seen", "band"}) {
      given += fields.has(way) ? 1 : 0;
    }
    if (given != 1) {
      throw new Problem(
          fields.path("value"),
          given == 0 ? "" : "more than one answer",
          "exactly one of value, seen and band");
    }
    if (fields.has("seen")) {
      return new Answer.Saw(word(fields, "seen", Seen.values(), Seen::word));
    }
    if (fields.has("band")) {
      return new Answer.Within(
          band(fields.object("band", "a band as {\"low\": 0, \"high\": 0.1, \"unit\": \"V\"}")));
    }
    JsonNode value = fields.need("value", "a value");
    if (value.isNumber()) {
      BigDecimal number = number(value, fields.path("value"));
      return new Answer.Text(number.toPlainString() + " " + unit(fields));
    }
    String text =
        Fields.string(
            value,
            fields.path("value"),
            fields.longest(LONGEST_VALUE),
            "the display's text with its unit, such as \"12.41 V\" or \"OL\", or a number with"
                + " unit");
    return new Answer.Text(text);
  }

  private static String unit(Fields fields) throws Problem {
    String accepted = "V, mV, ohm, kohm or Mohm";
    String unit = fields.name("unit", accepted);
    switch (unit) {
      case "V", "mV", "ohm", "kohm", "Mohm":
        return unit;
      default:
        throw new Problem(fields.path("unit"), Fields.cut(unit), accepted);
    }
  }

  private static BigDecimal number(JsonNode node, String path) throws Problem {
    BigDecimal number = node.decimalValue();
    // The exponent is looked at first: writing 1e999999999 out in full would fill the memory.
    boolean near =
        number.signum() == 0
            ? Math.abs((long) number.scale()) <= MOST_DECIMALS
            : number.scale() <= MOST_DECIMALS
                && (long) number.precision() - number.scale() <= LARGEST.precision() + 9L
                && number.abs().compareTo(LARGEST) <= 0;
    if (!near) {
      throw new Problem(
          path,
          Fields.shown(node),
          "a number from -1e9 to 1e9 with at most " + MOST_DECIMALS + " decimals");
    }
    return number;
  }

  /** A band as an object; over range is {@code "OL"}. */
  public static ObjectNode band(Band band) {
    ObjectNode node = JSON.createObjectNode();
    limit(node, "low", band.low());
    limit(node, "high", band.high());
    return node.put("unit", band.unit() == Band.Unit.VOLT ? "V" : "ohm");
  }

  /** A number that may be over range. */
  public static void limit(ObjectNode node, String name, double value) {
    if (Double.isInfinite(value)) {
      node.put(name, value > 0 ? OVER : UNDER);
    } else {
      node.put(name, value);
    }
  }

  /**
   * Reads a band.
   *
   * @throws Problem if it has another shape or its limits are the wrong way round
   */
  public static Band band(Fields fields) throws Problem {
    double low = limit(fields, "low");
    double high = limit(fields, "high");
    String accepted = "V or ohm";
    String unit = fields.name("unit", accepted);
    if (!unit.equals("V") && !unit.equals("ohm")) {
      throw new Problem(fields.path("unit"), Fields.cut(unit), accepted);
    }
    fields.done();
    if (!(low <= high)) {
      throw new Problem(
          fields.path("low"), Double.toString(low), "at most the band's high, " + high);
    }
    return new Band(low, high, unit.equals("V") ? Band.Unit.VOLT : Band.Unit.OHM);
  }

  /**
   * A number that may be over range.
   *
   * @throws Problem if it is missing or something else
   */
  public static double limit(Fields fields, String name) throws Problem {
    String accepted = "a number from -1e9 to 1e9, or \"OL\" for over range";
    JsonNode node = fields.need(name, accepted);
    if (node.isTextual() && node.textValue().equals(OVER)) {
      return Double.POSITIVE_INFINITY;
    }
    if (node.isTextual() && node.textValue().equals(UNDER)) {
      return Double.NEGATIVE_INFINITY;
    }
    if (node.isNumber() && node.decimalValue().abs().compareTo(LARGEST) <= 0) {
      return node.doubleValue();
    }
    throw new Problem(fields.path(name), Fields.shown(node), accepted);
  }

  /**
   * A word out of a set.
   *
   * @throws Problem naming all the words there are
   */
  public static <T> T word(Fields fields, String name, T[] values, Function<T, String> word)
      throws Problem {
    String accepted = Arrays.stream(values).map(word).collect(Collectors.joining(", "));
    String text = fields.name(name, "one of " + accepted);
    for (T value : values) {
      if (word.apply(value).equals(text)) {
        return value;
      }
    }
    throw new Problem(fields.path(name), Fields.cut(text), "one of " + accepted);
  }
}
