package loopwright.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads JSON text into values with line numbers, within fixed limits, and goes on after every
 * defect that lets it. It binds nothing to classes, so nothing in a file can name one.
 */
final class JsonTree {
  /** Largest file in bytes: 20 MB. */
  static final int MAX_BYTES = 20_000_000;

  /** Deepest nesting of objects and lists. */
  static final int MAX_DEPTH = 50;

  /** Longest text in characters. */
  static final int MAX_TEXT = 10_000;

  /** Most values in one file; a vehicle of 20,000 parts has about 400,000. */
  static final int MAX_VALUES = 1_000_000;

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(MAX_DEPTH)
                  .maxStringLength(MAX_BYTES)
                  .maxNameLength(MAX_TEXT)
                  .maxNumberLength(100)
                  .build())
          // Read so that they can be refused by name and place, with the rest of the file.
          .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
          .build();

  private final DefectList defects;
  private final int length;
  private int values;

  private JsonTree(DefectList defects, int length) {
    this.defects = defects;
    this.length = length;
  }

  /** The bytes of a file, or empty with the reason among the defects. */
  static Optional<byte[]> bytes(Path path, DefectList defects) {
    try (InputStream in = Files.newInputStream(path)) {
      return bytes(in, defects);
    } catch (NoSuchFileException e) {
      add(defects, 0, path.toString(), "file.existing", FileWords.say("file.none"));
    } catch (IOException e) {
      add(defects, 0, path.toString(), "file.readable", FileWords.say("file.unread", reason(e)));
    }
    return Optional.empty();
  }

  /** The bytes of a stream, or empty with the reason among the defects. */
  static Optional<byte[]> bytes(InputStream in, DefectList defects) {
    try {
      byte[] bytes = in.readNBytes(MAX_BYTES + 1);
      if (bytes.length <= MAX_BYTES) {
        return Optional.of(bytes);
      }
      add(defects, 0, FileWords.say("file.larger"), "file.size", FileWords.say("file.size.bad"));
    } catch (IOException e) {
      add(defects, 0, "", "file.readable", FileWords.say("file.unread", reason(e)));
    }
    return Optional.empty();
  }

  /** The value the text holds; empty if it cannot be read to its end. */
  static Optional<JsonValue> parse(byte[] json, DefectList defects) {
    JsonTree tree = new JsonTree(defects, json.length);
    try (JsonParser parser = FACTORY.createParser(json)) {
      return tree.document(parser);
    } catch (IOException e) {
      // Close of an in-memory parser; nothing was lost.
      return Optional.empty();
    }
  }

  private Optional<JsonValue> document(JsonParser parser) {
    try {
      if (parser.nextToken() == null) {
        add(0, FileWords.say("file.no-text"), "json.object", FileWords.say("json.empty"));
        return Optional.empty();
      }
      JsonValue value = value(parser, "");
      if (parser.nextToken() != null) {
        int line = line(parser);
        add(line, parser.currentToken().toString(), "json.one", FileWords.say("json.more"));
        return Optional.empty();
      }
      defects.locate(value);
      return Optional.of(value);
    } catch (StreamConstraintsException e) {
      constraint(e, line(parser));
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? line(parser) : e.getLocation().getLineNr();
      String reason = JsonValue.shorten(String.valueOf(e.getOriginalMessage()));
      boolean atEnd = e.getLocation() != null && e.getLocation().getByteOffset() >= length;
      if (e instanceof JsonEOFException || atEnd) {
        add(line, FileWords.say("file.end"), "json.complete", FileWords.say("json.cut"));
      } else {
        add(line, reason, "json.text", FileWords.say("json.not", reason));
      }
    } catch (TooMuch e) {
      // Already among the defects.
    } catch (IOException e) {
      add(0, JsonValue.shorten(reason(e)), "utf8", FileWords.say("utf8.not", reason(e)));
    }
    return Optional.empty();
  }

  private JsonValue value(JsonParser parser, String path) throws IOException {
    int line = line(parser);
    if (++values > MAX_VALUES) {
      defects.addAt(
          path,
          line,
          FileWords.say("file"),
          FileWords.say("values.more"),
          FileWords.say("values"),
          FileWords.say("values.bad"));
      throw new TooMuch();
    }
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> object(parser, path, line);
      case START_ARRAY -> array(parser, path, line);
      case VALUE_STRING -> new JsonValue.Text(text(parser.getText(), path, line), line);
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(parser, path, line);
      case VALUE_TRUE -> new JsonValue.Flag(true, line);
      case VALUE_FALSE -> new JsonValue.Flag(false, line);
      default -> new JsonValue.Nothing(line);
    };
  }

  private JsonValue object(JsonParser parser, String path, int line) throws IOException {
    Map<String, JsonValue> fields = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String name = parser.currentName();
      int nameLine = line(parser);
      parser.nextToken();
      String at = DefectList.child(path, name);
      JsonValue value = value(parser, at);
      if (fields.putIfAbsent(name, value) != null) {
        defects.addUnnamed(
            at,
            nameLine,
            FileWords.say("field.twice", JsonValue.shorten(name)),
            FileWords.say("field.once"),
            FileWords.say("field.twice.bad", JsonValue.shorten(name)));
      }
    }
    return new JsonValue.Fields(fields, line);
  }

  private JsonValue array(JsonParser parser, String path, int line) throws IOException {
    List<JsonValue> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(parser, DefectList.child(path, items.size())));
    }
    return new JsonValue.Items(items, line);
  }

  private JsonValue number(JsonParser parser, String path, int line) throws IOException {
    String written = parser.getText();
    double value = parser.getDoubleValue();
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      defects.addUnnamed(
          path,
          line,
          JsonValue.shorten(written),
          FileWords.say("finite"),
          ObjectReader.bad(field(path), JsonValue.shorten(written), FileWords.say("finite")));
      return new JsonValue.Nothing(line);
    }
    return new JsonValue.Num(value, written, line);
  }

  private String text(String text, String path, int line) {
    if (text.length() > MAX_TEXT) {
      defects.addUnnamed(
          path,
          line,
          FileWords.say("letters", Integer.toString(text.length())),
          FileWords.say("letters.most"),
          FileWords.say("letters.bad", field(path), Integer.toString(text.length())));
      return text.substring(0, 1);
    }
    if (text.codePoints().anyMatch(JsonTree::half)) {
      // It couldn't be written again, and would become another text.
      defects.addUnnamed(
          path,
          line,
          FileWords.say("half"),
          FileWords.say("half.not"),
          FileWords.say("half.bad", field(path)));
    }
    return text;
  }

  private static boolean half(int codePoint) {
    return codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
  }

  private void constraint(StreamConstraintsException e, int line) {
    String message = e.getOriginalMessage();
    if (message.contains("nesting depth")) {
      String most = Integer.toString(MAX_DEPTH);
      add(line, FileWords.say("depth.more", most), "depth", FileWords.say("depth.bad", most), most);
    } else {
      add(line, JsonValue.shorten(message), "limits", FileWords.say("limits.bad", message));
    }
  }

  private void add(int line, String value, String limit, String what, Object... of) {
    add(defects, line, value, limit, what, of);
  }

  /** Notes what is wrong with the file as a whole; {@code limit} is the key of what it must be. */
  private static void add(
      DefectList defects, int line, String value, String limit, String what, Object... of) {
    defects.addAt("", line, FileWords.say("file"), value, FileWords.say(limit, of), what);
  }

  private static String field(String path) {
    return path.isEmpty() ? FileWords.say("value") : path.substring(path.lastIndexOf('.') + 1);
  }

  private static int line(JsonParser parser) {
    return parser.currentTokenLocation().getLineNr();
  }

  static String reason(IOException e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  /** Ends the reading of a file that is too much; carries nothing, the defect is already listed. */
  private static final class TooMuch extends IOException {
    private static final long serialVersionUID = 1L;
  }
}
