package loopwright.io.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import loopwright.casework.Problem;
import loopwright.generated.Generated;
import org.junit.jupiter.api.Test;

/** Spoilt journals: what is read of them is what was written, and no more. */
class GeneratedJournalsTest {
  private static final Pattern LINE = Pattern.compile("(?m)^\\{\"crc\":\"[^\"]{8}\",(.*)$");

  @Test
  void cases() {
    spoilt("case journals", new CaseContents(), FileCaseStoreTest.everyKind());
  }

  @Test
  void proofs() {
    spoilt("proof journals", new ProofContents(), FileProofStoreTest.everyKind());
  }

  private static <E> void spoilt(String name, Contents<E> contents, List<E> events) {
    byte[] whole = journal(contents, events);
    Set<E> written = new HashSet<>(events);
    int half = Math.max(1, Generated.share() / 2);
    Generated.run(
        name,
        half,
        List.of(whole),
        Generated.MOST_BYTES,
        bytes -> {
          List<E> read = read(contents, bytes);
          assertThat(written).as("nothing is made up").containsAll(read);
          return !read.isEmpty();
        });
    // The same with check sums that hold, as somebody might write who wants to be read.
    Generated.run(
        name + " stamped anew",
        half,
        List.of(whole),
        Generated.MOST_BYTES,
        bytes -> {
          List<E> read = read(contents, stamped(bytes));
          assertThat(read(contents, journal(contents, read))).isEqualTo(read);
          return !read.isEmpty();
        });
  }

  private static <E> byte[] journal(Contents<E> contents, List<E> events) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int number = 0;
    for (E event : events) {
      bytes.writeBytes(JournalLine.write(contents, ++number, event));
    }
    return bytes.toByteArray();
  }

  private static <E> List<E> read(Contents<E> contents, byte[] bytes) {
    if (bytes.length == 0) {
      return List.of();
    }
    try {
      Recovered<E> recovered = Recovered.from(contents, "spoilt", bytes);
      assertThat(recovered.keep()).isBetween(0, bytes.length);
      assertThat(recovered.missing()).doesNotContain("\n");
      return new ArrayList<>(recovered.events());
    } catch (Problem e) {
      assertThat(e.getMessage()).isNotBlank().hasSizeLessThan(20_000);
      return List.of();
    }
  }

  private static byte[] stamped(byte[] bytes) {
    Matcher line = LINE.matcher(new String(bytes, StandardCharsets.ISO_8859_1));
    String anew =
        line.replaceAll(
            m -> {
              CRC32 crc = new CRC32();
              crc.update(m.group(1).getBytes(StandardCharsets.ISO_8859_1));
              String sum = String.format(Locale.ROOT, "%08x", crc.getValue());
              return Matcher.quoteReplacement("{\"crc\":\"" + sum + "\"," + m.group(1));
            });
    return anew.getBytes(StandardCharsets.ISO_8859_1);
  }
}
