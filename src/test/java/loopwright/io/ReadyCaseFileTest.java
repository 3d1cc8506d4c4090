package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import loopwright.casework.ReadyCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ready-made cases: those that come with the program, the schema, and broken ones. */
class ReadyCaseFileTest {
  private static final Path CASES = Path.of("demo-data", "cases");
  private static final String GOOD =
      """
      {
        "format": "loopwright-demo-case", "version": 1,
        "id": "dark-shed", "title": "The lamp is dark", "vehicle": "pumper",
        "complaint": "locker dead", "circuit": "locker", "kind": "dead",
        "context": "in-service", "story": "It went out one night.",
        "truth": [{"part": "G4", "mode": "on-paint", "ohms": 12}],
        "meter": "basic"
      }
      """;

  private static final Schema SCHEMA = schema();

  @TempDir Path folder;

  private static Schema schema() {
    try (InputStream in =
        ReadyCaseFileTest.class.getResourceAsStream("/schema/ready-case-1.schema.json")) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(in);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<Error> errors(String json) {
    return SCHEMA.validate(json, InputFormat.JSON);
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> list = Files.list(CASES)) {
      return list.sorted().toList();
    }
  }

  @Test
  void everyCaseThatComesWithTheProgramKeepsTheSchemaAndIsRead() throws IOException {
    List<Path> files = files();
    assertThat(files).hasSizeGreaterThan(20).allMatch(f -> f.toString().endsWith(".json"));
    for (Path file : files) {
      assertThat(errors(Files.readString(file))).as(file.toString()).isEmpty();
    }
    List<ReadyCase> read = ReadyCaseFile.readFolder(CASES).orThrow();
    assertThat(read).hasSameSizeAs(files);
    assertThat(read).extracting(ReadyCase::id).doesNotHaveDuplicates();
    assertThat(read).allSatisfy(c -> assertThat(c.story()).isNotBlank());
    assertThat(ReadyCaseFile.readBundled().orThrow()).isEqualTo(read);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "version | \"version\": 1 | \"version\": 2",
        "format | loopwright-demo-case | loopwright-vehicle",
        "id | \"dark-shed\" | \"dark shed\"",
        "kind | \"kind\": \"dead\" | \"kind\": \"gone\"",
        "context | \"in-service\" | \"in-use\"",
        "story | \"story\": \"It went out one night.\", | \"title2\": \"x\",",
        "story | \"It went out one night.\" | 7",
        "truth[0].ohms | \"ohms\": 12 | \"ohms\": -1",
        "truth[0].ohms | \"ohms\": 12 | \"ohms\": \"12\"",
        "truth[0].part | \"part\": \"G4\", | ",
        "truth[0].part | \"part\": \"G4\" | \"part\": \"G 4\"",
        "truth | [{\"part\": \"G4\", \"mode\": \"on-paint\", \"ohms\": 12}] | []",
        "meter | \"meter\": \"basic\" | \"meter\": []",
        "hint | \"meter\": \"basic\" | \"meter\": \"basic\", \"hint\": \"G4\""
      })
  void aBrokenCaseIsNamedWithItsPlaceAndTheSchemaRefusesItToo(
      String place, String piece, String by) {
    assertThat(GOOD).contains(piece);
    String json = GOOD.replace(piece, by == null ? "" : by);
    List<Defect> defects = ReadyCaseFile.read(json, "cases/dark-shed.json").defects();
    assertThat(defects).as(json).isNotEmpty();
    assertThat(defects)
        .anySatisfy(d -> assertThat(d.toString()).contains("cases/dark-shed.json").contains(place));
    assertThat(errors(json)).as(json).isNotEmpty();
  }

  @Test
  void aWholeCaseIsTakenByReaderAndSchema() {
    assertThat(ReadyCaseFile.read(GOOD, "good").orThrow().story())
        .isEqualTo("It went out one night.");
    assertThat(errors(GOOD)).isEmpty();
  }

  @Test
  void aFolderWithABrokenCaseNamesTheFileAndTheLine() throws IOException {
    Files.writeString(folder.resolve("good.json"), GOOD);
    Files.writeString(folder.resolve("bad.json"), GOOD.replace("\"ohms\": 12", "\"ohms\": -12"));
    Files.writeString(folder.resolve("torn.json"), GOOD.substring(0, 100));
    List<Defect> defects = ReadyCaseFile.readFolder(folder).defects();
    assertThat(defects).extracting(Defect::toString).hasSize(2);
    assertThat(defects.get(0).toString()).contains("cases/bad.json").contains("-12").contains("6");
    assertThat(defects.get(1).toString()).contains("cases/torn.json");
  }

  @Test
  void twoCasesOfOneNameAreRefused() throws IOException {
    Files.writeString(folder.resolve("a.json"), GOOD);
    Files.writeString(folder.resolve("b.json"), GOOD);
    assertThat(ReadyCaseFile.readFolder(folder).defects())
        .singleElement()
        .satisfies(d -> assertThat(d.toString()).contains("cases/b.json").contains("dark-shed"));
  }
}
