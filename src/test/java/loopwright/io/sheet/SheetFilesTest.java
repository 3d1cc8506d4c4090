package loopwright.io.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.casework.Problem;
import loopwright.casework.sheet.SheetStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lists in the encodings spreadsheets write. */
class SheetFilesTest {
  private static final String TEXT = "wire;colour;size\nW7;grün;1,5 mm²\n";

  @TempDir private Path folder;
  private final SheetFiles files = new SheetFiles();

  private Path file(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("list.csv"), bytes);
  }

  @ParameterizedTest
  @CsvSource({"UTF-8", "UTF-16LE", "UTF-16BE"})
  void unicodeIsReadWithAndWithoutItsMark(String charset) throws Exception {
    for (String mark : new String[] {"", "\uFEFF"}) {
      SheetStore.Read read = files.read(file((mark + TEXT).getBytes(Charset.forName(charset))));
      assertThat(read.text()).isEqualTo(TEXT);
      assertThat(read.remark()).isEmpty();
      assertThat(read.name()).isEqualTo("list.csv");
    }
  }

  @Test
  void whatIsNoUnicodeIsTakenAsWindows1252AndSaid() throws Exception {
    SheetStore.Read read = files.read(file(TEXT.getBytes(Charset.forName("windows-1252"))));
    assertThat(read.text()).isEqualTo(TEXT);
    assertThat(read.remark().orElseThrow()).contains("list.csv").contains("Windows-1252");
  }

  @Test
  void whatIsNoTextIsRefused() throws IOException {
    Path workbook = file(new byte[] {'P', 'K', 3, 4, 0, 0});
    assertThatThrownBy(() -> files.read(workbook))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("save the one table as CSV");
    Path odd = file(new byte[] {'a', (byte) 0x81, 'b'});
    assertThatThrownBy(() -> files.read(odd)).hasMessageContaining("no text that is known");
    assertThatThrownBy(() -> files.read(folder)).hasMessageContaining("it is a folder");
    assertThatThrownBy(() -> files.read(folder.resolve("none.csv")))
        .hasMessageContaining("no such file");
    Path large = file(new byte[20_000_001]);
    assertThatThrownBy(() -> files.read(large)).hasMessageContaining("larger than 20 MB");
  }

  @Test
  void whatIsWrittenIsReadBackAndBearsAMark() throws Exception {
    Path out = folder.resolve("out.csv");
    files.write(out, TEXT);
    assertThat(files.read(out).text()).isEqualTo(TEXT);
    assertThat(Files.readString(out, StandardCharsets.UTF_8)).startsWith("\uFEFF");
    assertThatThrownBy(() -> files.write(folder.resolve("no/where.csv"), TEXT))
        .isInstanceOf(Problem.class);
  }
}
