package loopwright.io.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineReaderTest {
  private static List<LineReader.Next> all(byte[] bytes) throws IOException {
    LineReader reader = new LineReader(new ByteArrayInputStream(bytes));
    List<LineReader.Next> found = new ArrayList<>();
    LineReader.Next next = reader.next();
    while (!(next instanceof LineReader.Next.End)) {
      found.add(next);
      next = reader.next();
    }
    return found;
  }

  private static List<LineReader.Next> all(String text) throws IOException {
    return all(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void linesEndWithLineFeedCarriageReturnOrTheEnd() throws IOException {
    assertThat(all("a\nb\r\n\nc"))
        .containsExactly(
            new LineReader.Next.Line("a"),
            new LineReader.Next.Line("b"),
            new LineReader.Next.Line(""),
            new LineReader.Next.Line("c"));
    assertThat(all("")).isEmpty();
  }

  @Test
  void theLongestLineIsTakenAndOneByteMoreIsNot() throws IOException {
    String longest = "x".repeat(LineReader.LONGEST);
    assertThat(all(longest + "\r\n" + longest + "y\nnext"))
        .containsExactly(
            new LineReader.Next.Line(longest),
            new LineReader.Next.TooLong(),
            new LineReader.Next.Line("next"));
    assertThat(all(longest + "yz\r\nnext").get(1)).isEqualTo(new LineReader.Next.Line("next"));
  }

  @Test
  void bytesThatAreNoUtf8SpoilTheirOwnLineOnly() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(new byte[] {'a', (byte) 0xC3, '\n', (byte) 0xFF, (byte) 0xFE, 0, '\n'});
    bytes.write("\u03a9\n".getBytes(StandardCharsets.UTF_8));
    assertThat(all(bytes.toByteArray()))
        .containsExactly(
            new LineReader.Next.NotText(),
            new LineReader.Next.NotText(),
            new LineReader.Next.Line("\u03a9"));
  }

  @Test
  void aByteOrderMarkBeforeTheFirstLineIsNoPartOfIt() throws IOException {
    assertThat(all("\ufeffa\n\ufeffb"))
        .containsExactly(new LineReader.Next.Line("a"), new LineReader.Next.Line("\ufeffb"));
  }
}
