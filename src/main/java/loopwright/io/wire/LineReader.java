package loopwright.io.wire;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/**
 * Reads lines of UTF-8 with a longest length, in bounded memory: what exceeds it is read past, so
 * that the line after it is whole again.
 */
public final class LineReader {

  /** Longest line taken, in bytes, its line end not counted. */
  public static final int LONGEST = 65_536;

  private static final int BOM = 0xFEFF;

  private final InputStream in;
  private boolean first = true;

  /** What came next. */
  public sealed interface Next {
    /**
     * A whole line, without its end.
     *
     * @param text the line
     */
    record Line(String text) implements Next {}

    /** A line longer than {@link #LONGEST}; it has been read past. */
    record TooLong() implements Next {}

    /** A line that is not UTF-8 text. */
    record NotText() implements Next {}

    /** There is no more. */
    record End() implements Next {}
  }

  /** Reads from a stream; the stream is not closed here. */
  public LineReader(InputStream in) {
    this.in = new BufferedInputStream(in);
  }

  /**
   * Reads up to the next line feed or the end.
   *
   * @throws IOException if the stream fails
   */
  public Next next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(256);
    boolean any = false;
    boolean tooLong = false;
    while (true) {
      int b = in.read();
      if (b < 0) {
        if (!any) {
          return new Next.End();
        }
        break;
      }
      any = true;
      if (b == '\n') {
        break;
      }
      // One byte more than the longest is held, for the carriage return of a line end.
      if (line.size() <= LONGEST) {
        line.write(b);
      } else {
        tooLong = true;
      }
    }
    byte[] bytes = line.toByteArray();
    int length = bytes.length;
    if (length > 0 && bytes[length - 1] == '\r' && !tooLong) {
      length--;
    }
    if (tooLong || length > LONGEST) {
      first = false;
      return new Next.TooLong();
    }
    try {
      String text =
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, 0, length)).toString();
      if (first && !text.isEmpty() && text.charAt(0) == BOM) {
        text = text.substring(1);
      }
      first = false;
      return new Next.Line(text);
    } catch (CharacterCodingException e) {
      first = false;
      return new Next.NotText();
    }
  }
}
