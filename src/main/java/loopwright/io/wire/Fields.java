package loopwright.io.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;

/**
 * Takes an object apart field by field, strictly: a wrong type, a missing field and, at the end, a
 * field nobody asked for are problems that name the field by its path.
 */
public final class Fields {
  private static final int SHOWN = 80;

  /** Longest name of a part, point, check or mode, in characters. */
  public static final int NAME = 80;

  private final ObjectNode node;
  private final String path;
  private final int longest;
  private final Set<String> known = new LinkedHashSet<>();

  private Fields(ObjectNode node, String path, int longest) {
    this.node = node;
    this.path = path;
    this.longest = longest;
  }

  /**
   * Takes an object.
   *
   * @param path its own path with a dot behind, or empty for the whole line
   * @throws Problem if it is no object
   */
  public static Fields of(JsonNode node, String path) throws Problem {
    return of(node, path, NAME);
  }

  /**
   * Takes an object of our own writing, whose strings may have any length: what was accepted once
   * must be readable again.
   *
   * @throws Problem if it is no object
   */
  public static Fields ofOwn(JsonNode node, String path) throws Problem {
    return of(node, path, Integer.MAX_VALUE);
  }

  private static Fields of(JsonNode node, String path, int longest) throws Problem {
    if (node instanceof ObjectNode object) {
      return new Fields(object, path, longest);
    }
    throw new Problem(
        path.isEmpty() ? "line" : path.substring(0, path.length() - 1),
        shown(node),
        "a JSON object in braces");
  }

  /** Longest string taken where the object comes from outside: the given one; else any. */
  int longest(int outside) {
    return longest == Integer.MAX_VALUE ? longest : outside;
  }

  /** Whether the object has the field. */
  public boolean has(String name) {
    return node.has(name);
  }

  /** The field's path for messages. */
  public String path(String name) {
    return path + name;
  }

  /** The raw field. */
  public Optional<JsonNode> raw(String name) {
    known.add(name);
    return Optional.ofNullable(node.get(name));
  }

  /**
   * The raw field.
   *
   * @throws Problem if it is missing
   */
  public JsonNode need(String name, String accepted) throws Problem {
    return raw(name).orElseThrow(() -> new Problem(path(name), "", accepted));
  }

  /**
   * A string of 1 to {@link #NAME} characters; of any length in an object of our own.
   *
   * @throws Problem if it is missing or something else
   */
  public String name(String name, String accepted) throws Problem {
    return string(need(name, accepted), path(name), longest, accepted);
  }

  /**
   * The same, if there is one.
   *
   * @throws Problem if it is something else
   */
  public Optional<String> mayName(String name, String accepted) throws Problem {
    Optional<JsonNode> raw = raw(name);
    return raw.isEmpty()
        ? Optional.empty()
        : Optional.of(string(raw.get(), path(name), longest, accepted));
  }

  /**
   * A whole number within limits.
   *
   * @throws Problem if it is missing, something else or outside
   */
  public int whole(String name, int low, int high, String accepted) throws Problem {
    JsonNode raw = need(name, accepted);
    if (raw.isNumber()) {
      BigDecimal value = raw.decimalValue();
      if (value.compareTo(BigDecimal.valueOf(low)) >= 0
          && value.compareTo(BigDecimal.valueOf(high)) <= 0
          && fitsWhole(value)) {
        return value.intValue();
      }
    }
    throw new Problem(path(name), shown(raw), accepted);
  }

  /**
   * A boolean.
   *
   * @throws Problem if it is missing or something else
   */
  public boolean flag(String name, String accepted) throws Problem {
    JsonNode raw = need(name, accepted);
    if (!raw.isBoolean()) {
      throw new Problem(path(name), shown(raw), accepted);
    }
    return raw.booleanValue();
  }

  /**
   * An object.
   *
   * @throws Problem if it is missing or something else
   */
  public Fields object(String name, String accepted) throws Problem {
    JsonNode raw = need(name, accepted);
    if (raw instanceof ObjectNode object) {
      return new Fields(object, path(name) + ".", longest);
    }
    throw new Problem(path(name), shown(raw), accepted);
  }

  /**
   * Ends the taking apart.
   *
   * @throws Problem naming the first field that was not asked for
   */
  public void done() throws Problem {
    Iterator<String> names = node.fieldNames();
    while (names.hasNext()) {
      String name = names.next();
      if (!known.contains(name)) {
        throw new Problem(
            cut(path(name)),
            shown(node.get(name)),
            "no such field here; there are " + String.join(", ", known));
      }
    }
  }

  /** Whether a value within a range of int has no fraction; safe for any exponent. */
  private static boolean fitsWhole(BigDecimal value) {
    return value.signum() == 0 || value.stripTrailingZeros().scale() <= 0;
  }

  /**
   * A string of 1 to so many characters; without an upper limit it may be empty as well.
   *
   * @throws Problem if it is something else
   */
  public static String string(JsonNode node, String path, int longest, String accepted)
      throws Problem {
    if (node.isTextual()) {
      String text = node.textValue();
      int length = text.codePointCount(0, text.length());
      int shortest = longest == Integer.MAX_VALUE ? 0 : 1;
      if (length >= shortest && length <= longest) {
        return text;
      }
    }
    throw new Problem(path, shown(node), accepted);
  }

  /** A value as messages show it: cut short, without control characters. */
  public static String shown(JsonNode node) {
    return cut(node.isTextual() ? node.textValue() : node.toString());
  }

  /** Text as messages show it: cut short, without control characters. */
  public static String cut(String text) {
    String plain = text.length() > 4 * SHOWN ? text.substring(0, 4 * SHOWN) : text;
    plain = plain.replaceAll("\\p{Cc}", "?");
    return plain.length() <= SHOWN ? plain : plain.substring(0, SHOWN) + "...";
  }
}
