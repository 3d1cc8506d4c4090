package loopwright.io;

import java.util.List;
import java.util.Map;

/** A JSON value together with the line it begins on. */
sealed interface JsonValue {

  /** Line in the file, from 1. */
  int line();

  /** What a person would call it and, where it is short, the value itself. */
  String shown();

  record Text(String value, int line) implements JsonValue {
    @Override
    public String shown() {
      return quoted(value);
    }
  }

  /** A number; {@code written} is its spelling in the file. */
  record Num(double value, String written, int line) implements JsonValue {
    @Override
    public String shown() {
      return shorten(written);
    }
  }

  record Flag(boolean value, int line) implements JsonValue {
    @Override
    public String shown() {
      return Boolean.toString(value);
    }
  }

  record Nothing(int line) implements JsonValue {
    @Override
    public String shown() {
      return "null";
    }
  }

  record Items(List<JsonValue> values, int line) implements JsonValue {
    @Override
    public String shown() {
      return FileWords.say("list", Integer.toString(values.size()));
    }
  }

  record Fields(Map<String, JsonValue> values, int line) implements JsonValue {
    @Override
    public String shown() {
      return FileWords.say("object");
    }
  }

  /** A text in quotes, shortened. */
  static String quoted(String text) {
    return FileWords.say("quoted", shorten(text));
  }

  /** At most 60 characters, without line breaks. */
  static String shorten(String text) {
    String line = text.replaceAll("\\p{Cc}", "?");
    return line.length() <= 60 ? line : line.substring(0, 57) + "...";
  }
}
