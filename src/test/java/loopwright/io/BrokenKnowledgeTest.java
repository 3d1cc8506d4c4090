package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A knowledge folder with something wrong in it is refused with the file and the place. */
class BrokenKnowledgeTest {
  private static final String FAULTS =
      """
      {"format": "loopwright-faults", "version": 1, "modes": [
      {"kinds": ["fuse"], "mode": "extra", "title": "extra",
       "effects": [{"op": "open", "role": "link"}],
       "rates": {"fresh-build": 0.1, "in-service": 0.1, "after-work": 0.1},
       "source": "common practice"}
      ]}
      """;

  @TempDir Path root;

  @BeforeEach
  void copyTheKnowledge() throws IOException {
    for (String folder : List.of("faults", "meters", "reference")) {
      Files.createDirectories(root.resolve(folder));
      try (Stream<Path> files = Files.list(Path.of("knowledge", folder))) {
        for (Path file : files.toList()) {
          Files.copy(file, root.resolve(folder).resolve(file.getFileName()));
        }
      }
    }
  }

  private List<String> messages() {
    return KnowledgeFiles.read(root).defects().stream().map(Defect::message).toList();
  }

  private void extra(String piece, String by) throws IOException {
    assertThat(FAULTS).contains(piece);
    Files.writeString(root.resolve("faults/extra.json"), FAULTS.replace(piece, by));
  }

  private void change(String file, String piece, String by) throws IOException {
    String text = Files.readString(root.resolve(file));
    assertThat(text).contains(piece);
    Files.writeString(root.resolve(file), text.replace(piece, by));
  }

  @Test
  void theCopyItselfIsGoodAndSoIsAFileMore() throws IOException {
    assertThat(messages()).isEmpty();
    extra("extra", "more");
    assertThat(messages()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`\"role\": \"link\"` | `\"role\": \"lnik\"` | `mode extra: role is \"lnik\", but a fuse has"
            + " no such element to open: one of link; did you mean \"link\"?"
            + " [faults/extra.json, modes[0].effects[0].role (line 3)]`",
        "`\"op\": \"open\", ` | `\"op\": \"opne\", ` | `mode extra: op is \"opne\", must be one of"
            + " open, series, ohms, scale, bridge, stuck, reversed, swapped; did you mean \"open\"?"
            + " [faults/extra.json, modes[0].effects[0].op (line 3)]`",
        "`\"op\": \"open\", ` | `` | `mode extra: field \"op\" is missing, must be a text"
            + " [faults/extra.json, modes[0].effects[0].op (line 3)]`",
        "`\"op\": \"open\"` | `\"op\": \"stuck\", \"state\": \"open\"` | `mode extra: role is"
            + " \"link\", but a fuse has no such element to stuck: none for a fuse"
            + " [faults/extra.json, modes[0].effects[0].role (line 3)]`",
        "`\"in-service\": 0.1` | `\"in-service\": 1.1` | `mode extra: rate for in-service is 1.1,"
            + " must be 0 to 1 [faults/extra.json, modes[0].rates.in-service (line 4)]`",
        "`, \"after-work\": 0.1` | `` | `mode extra: field \"after-work\" is missing, must be a"
            + " number [faults/extra.json, modes[0].rates.after-work (line 4)]`",
        "`[\"fuse\"]` | `[\"fuze\"]` | `mode extra: kinds[0] is \"fuze\", must be one of battery,"
            + " wire, strap, fuse, switch, relay, lamp, dual-lamp, led, diode, motor, heater,"
            + " solenoid, horn, electronics, sender, driver, connector, splice, ground, body; did"
            + " you mean \"fuse\"? [faults/extra.json, modes[0].kinds[0] (line 2)]`",
        "`\"common practice\"` | `\" \"` | `mode extra: source is empty, must name a source or say"
            + " common practice [faults/extra.json, modes[0].source (line 5)]`",
        "`\"title\"` | `\"per\": \"metre\", \"title\"` | `mode extra: per is metre, which only wires"
            + " and straps are counted by [faults/extra.json, modes[0].per (line 2)]`",
        "`\"extra\"` | `\"blown\"` | `mode fuse/blown: is described here and in extra.json, must be"
            + " once [faults/fuses.json]`",
        "`loopwright-faults` | `other` | `fault table: format is \"other\", must be"
            + " \"loopwright-faults\" [faults/extra.json, format (line 1)]`",
      })
  void aBrokenFaultFileIsReportedWithFileAndPlace(String piece, String by, String message)
      throws IOException {
    extra(piece, by == null ? "" : by);
    assertThat(messages()).contains(message);
  }

  @Test
  void aCutFaultFileIsReported() throws IOException {
    Files.writeString(root.resolve("faults/extra.json"), FAULTS.substring(0, 100));
    assertThat(messages())
        .containsExactly(
            "file: ends in the middle; the rest is missing [faults/extra.json (line 2)]");
  }

  @Test
  void aRowWithoutASourceIsReportedWithItsLine() throws IOException {
    change(
        "reference/typical-values.csv",
        "0.002,0.008,0.02,60,ohm,\"one closed contact of a sound switch, common practice\"",
        "0.002,0.008,0.02,60,ohm,");
    assertThat(messages())
        .containsExactly(
            "switch ohms: source is \"\", must be a source, or common practice"
                + " [reference/typical-values.csv, source (line "
                + lineOf("switch,ohms")
                + ")]");
  }

  @Test
  void aCellThatIsNoNumberIsReportedWithItsLine() throws IOException {
    change("reference/typical-values.csv", "any,0.002,0.008", "any,0.002,o.oo8");
    assertThat(messages())
        .containsExactly(
            "switch ohms: typical is \"o.oo8\", must be a number"
                + " [reference/typical-values.csv, typical (line "
                + lineOf("switch,ohms")
                + ")]");
  }

  @Test
  void aMissingTableIsReported() throws IOException {
    Files.delete(root.resolve("reference/typical-values.csv"));
    assertThat(messages())
        .containsExactly("file: there is no such file [reference/typical-values.csv]");
  }

  @Test
  void wrongRowsOfThePatternsTablesAreReported() throws IOException {
    change("reference/pattern-loads.csv", "horn,12,3,5,6,A,", "horn,12,3,2,6,A,");
    change("reference/trailer-sockets.csv", "ISO 1724,12,1,L", "ISO 1724,13,1,L");
    change("reference/voltage-drop-limits.csv", "to lamp\",12,0.5,", "to lamp\",12,half,");
    assertThat(messages())
        .containsExactly(
            "horn: typical is \"2\", must be above 0 and between low and high"
                + " [reference/pattern-loads.csv, typical (line 16)]",
            "ISO 1724: system_V is \"13\", must be 6, 12 or 24"
                + " [reference/trailer-sockets.csv, system_V (line 2)]",
            "whole lighting feed, battery positive to lamp: max_drop_V is \"half\", must be a number"
                + " [reference/voltage-drop-limits.csv, max_drop_V (line 47)]");
  }

  @Test
  void aFolderWithoutKnowledgeNamesAllThatIsMissing() {
    assertThat(KnowledgeFiles.read(root.resolve("none")).defects())
        .extracting(Defect::object)
        .containsExactly(
            "folder faults",
            "folder meters",
            "file",
            "file",
            "file",
            "file",
            "file",
            "file",
            "test_slip");
  }

  @Test
  void aMeterWhoseRangesAreOutOfOrderIsReported() throws IOException {
    change("meters/basic.json", "\"full\": 1.999,", "\"full\": 0.1,");
    assertThat(messages())
        .anyMatch(m -> m.contains("meters/basic.json, volts[1].full"))
        .allMatch(m -> m.startsWith("meter basic: "));
  }

  private long lineOf(String start) throws IOException {
    List<String> lines = Files.readAllLines(root.resolve("reference/typical-values.csv"));
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(start)) {
        return i + 1;
      }
    }
    throw new AssertionError(start);
  }
}
