package loopwright.io.instrument;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/**
 * Cuts bytes into lines at carriage returns and line feeds, in bounded memory. A line without its
 * end is never handed on: its last digits may be missing. Nor is the first as a whole one, since
 * the connection may have been made in its middle; whoever takes lines is told so. Lines that are
 * too long are cut off, which leaves them too long to be a reading.
 */
final class LineSplitter {
  /** Longest line handed on, in bytes. */
  static final int LONGEST = 256;

  /** Takes a line, without its end. */
  @FunctionalInterface
  interface Taker {
    /**
     * A line.
     *
     * @param whole whether its beginning was seen
     */
    void line(String text, boolean whole);
  }

  private final byte[] line = new byte[LONGEST];
  private int length;
  private boolean whole;

  /** Takes bytes. */
  void add(byte[] bytes, int count, Taker taker) {
    for (int i = 0; i < count; i++) {
      byte b = bytes[i];
      if (b == '\n' || b == '\r') {
        if (length > 0) {
          taker.line(text(), whole);
        }
        length = 0;
        whole = true;
      } else if (length < LONGEST) {
        line[length++] = b;
      }
    }
  }

  /** UTF-8, or else Latin-1, in which older meters write the signs of micro and degree. */
  private String text() {
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(line, 0, length))
          .toString();
    } catch (CharacterCodingException e) {
      return new String(line, 0, length, StandardCharsets.ISO_8859_1);
    }
  }
}
