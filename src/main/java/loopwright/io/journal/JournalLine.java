package loopwright.io.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.zip.CRC32;
import loopwright.casework.Problem;
import loopwright.io.FileWords;
import loopwright.io.wire.Fields;
import loopwright.io.wire.Shapes;

/**
 * One line of a journal: <code>{"crc":"1c291ca3","n":1,"v":1,"event":{...}}</code>. The check sum
 * is the CRC-32 (as in zip files) of the line's bytes behind the comma that follows it, line end
 * not counted.
 */
final class JournalLine {
  private static final String HEAD = "{\"crc\":\"";
  private static final int SUM = 8;
  private static final String AFTER = "\",";
  private static final int BODY = HEAD.length() + SUM + AFTER.length();

  private JournalLine() {}

  /** What a line turned out to be. */
  sealed interface Found<E> {
    /** A whole line. */
    record Whole<E>(int number, E event) implements Found<E> {}

    /** A line whose check sum holds, of a version that isn't read here. */
    record OtherVersion<E>(String version) implements Found<E> {}

    /** Anything else. */
    record Broken<E>(String why) implements Found<E> {}
  }

  /** The line's bytes with a line feed at the end. */
  static <E> byte[] write(Contents<E> contents, int number, E event) {
    ObjectNode body = Shapes.JSON.createObjectNode();
    body.put("n", number);
    body.put("v", contents.version(event));
    body.set("event", contents.write(event));
    String rest;
    try {
      rest = Shapes.JSON.writeValueAsString(body).substring(1);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an event could not be written", e);
    }
    byte[] bytes = rest.getBytes(StandardCharsets.UTF_8);
    return (HEAD + sum(bytes, 0, bytes.length) + AFTER + rest + "\n")
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Reads the bytes from one place up to another, line end not included. */
  static <E> Found<E> read(Contents<E> contents, byte[] bytes, int from, int to) {
    if (to - from <= BODY) {
      return new Found.Broken<>(FileWords.say("journal.short"));
    }
    String head = new String(bytes, from, BODY, StandardCharsets.ISO_8859_1);
    if (!head.startsWith(HEAD) || !head.endsWith(AFTER)) {
      return new Found.Broken<>(
          FileWords.say("journal.foreign", contents.named(Contents.Matter.FILE)));
    }
    String told = head.substring(HEAD.length(), HEAD.length() + SUM);
    if (!told.equals(sum(bytes, from + BODY, to))) {
      return new Found.Broken<>(FileWords.say("journal.sum"));
    }
    try {
      JsonNode node =
          Shapes.JSON.readTree(
              "{" + new String(bytes, from + BODY, to - from - BODY, StandardCharsets.UTF_8));
      Fields fields = Fields.ofOwn(node, "");
      JsonNode version = fields.need("v", "the version");
      if (!version.isInt() || version.intValue() < 1 || version.intValue() > contents.latest()) {
        return new Found.OtherVersion<>(Fields.shown(version));
      }
      int number = fields.whole("n", 1, Integer.MAX_VALUE, "the running number");
      E event = contents.read(fields.need("event", "the event"));
      fields.done();
      return new Found.Whole<>(number, event);
    } catch (JsonProcessingException | NumberFormatException e) {
      // An exponent of ten digits is a number to JSON, and none to its reader.
      return new Found.Broken<>(FileWords.say("journal.not-json"));
    } catch (Problem e) {
      return new Found.Broken<>(
          FileWords.say(
              e.value().isEmpty() ? "journal.wanting" : "journal.wrong", e.field(), e.value()));
    }
  }

  private static String sum(byte[] bytes, int from, int to) {
    CRC32 crc = new CRC32();
    crc.update(bytes, from, to - from);
    return String.format(Locale.ROOT, "%08x", crc.getValue());
  }
}
