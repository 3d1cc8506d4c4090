package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The JSON Schemas say the same as the readers, as far as a schema can say it. */
class SchemaTest {
  private static final Schema VEHICLE = schema("vehicle-1");

  @Test
  void everyDemoVehicleKeepsTheSchema() throws IOException {
    List<Path> files = VehicleFileTest.demoVehicles();
    assertThat(files).isNotEmpty();
    for (Path file : files) {
      assertThat(errors(VEHICLE, Files.readString(file))).as(file.toString()).isEmpty();
    }
  }

  @Test
  void whatTheWriterWritesKeepsTheSchema() {
    assertThat(errors(VEHICLE, VehicleFile.text(Vehicles.allKinds()))).isEmpty();
  }

  @Test
  void everyFaultTableAndMeterKeepsItsSchema() throws IOException {
    for (Path file : json("faults")) {
      assertThat(errors(schema("faults-1"), Files.readString(file))).as(file.toString()).isEmpty();
    }
    for (Path file : json("meters")) {
      assertThat(errors(schema("meter-1"), Files.readString(file))).as(file.toString()).isEmpty();
    }
  }

  /** What is in the format or not, without regard to the rest of the vehicle. */
  static Stream<Arguments> shapes() {
    return Stream.of(
            bad("\"amps\": 10", "\"amps\": \"ten\""),
            bad("\"amps\": 10", "\"amps\": null"),
            bad("\"amps\": 10", "\"amps\": 0"),
            bad("\"amps\": 10", "\"amps\": 501"),
            bad("\"amps\": 10", "\"amps\": 1e999"),
            bad("\"amps\": 10", "\"amps\": 10, \"ohms\": 0"),
            bad("\"amps\": 10", "\"amps\": 10, \"ohms\": {\"about\": 1, \"low\": 0.5}"),
            bad("\"amps\": 10", "\"amps\": 10, \"ohms\": {\"about\": 1, \"low\": 1, \"hi\": 2}"),
            bad("\"amps\": 10", "\"amps\": 10, \"ohm\": 1"),
            bad("\"amps\": 10", "\"amps\": 10, \"@class\": \"java.lang.ProcessBuilder\""),
            bad(", \"amps\": 10", ""),
            bad("\"kind\": \"fuse\"", "\"kind\": \"fues\""),
            bad("\"id\": \"BODY\", \"kind\": \"body\"", "\"id\": \"BODY\""),
            bad("\"id\": \"F1\", ", ""),
            bad("\"id\": \"cart\"", "\"id\": \"my cart\""),
            bad("\"id\": \"cart\"", "\"id\": \"\""),
            bad("\"name\": \"Cart\"", "\"name\": 7"),
            bad("\"name\": \"Cart\"", "\"name\": \"a\\u0007b\""),
            bad("\"name\": \"Cart\"", "\"name\": \"" + "x".repeat(10_001) + "\""),
            bad("\"name\": \"Cart\"", "\"nam\": \"Cart\""),
            bad("\"version\": 1", "\"version\": 2"),
            bad("\"version\": 1", "\"version\": \"1\""),
            bad("loopwright-vehicle", "other"),
            bad("\"system_volts\": 12", "\"system_volts\": 13"),
            bad("\"grounded\": \"negative\"", "\"grounded\": \"minus\""),
            bad(", \"grounded\": \"negative\"", ""),
            bad("\"12 AWG\"", "\"12 gauge\""),
            bad("\"12 AWG\"", "\"41 AWG\""),
            bad("\"12 AWG\"", "\"5/0 AWG\""),
            bad("\"12 AWG\"", "\"0.04 mm2\""),
            bad("\"12 AWG\"", "\"301 mm2\""),
            bad("\"12 AWG\"", "\"1e1 mm2\""),
            bad("\"metres\": 2", "\"metres\": 0"),
            bad("\"metres\": 2", "\"metres\": -1"),
            bad("\"metres\": 2", "\"metres\": 101"),
            bad("\"to\": \"G1.lug\"", "\"to\": \"G1\""),
            bad("\"to\": \"G1.lug\"", "\"to\": [\"G1.lug\"]"),
            bad("[\"off\", \"on\"]", "[\"on\"]"),
            bad("[\"in\", \"out\"], \"closed_in\"", "[\"in\"], \"closed_in\""),
            bad("\"closed_in\": [\"on\"]", "\"closed_in\": []"),
            bad("\"joins\": [[\"G1.metal\", \"BODY.metal\"]]", "\"joins\": [[\"G1.metal\"]]"),
            bad("\"joins\": [[\"G1.metal\", \"BODY.metal\"]]", "\"joins\": {}"),
            bad("\"loads\": [\"L1\"]", "\"loads\": []"),
            bad("\"loads\": [\"L1\"], ", ""),
            bad("{\"id\": \"lamp\", \"loads\": [\"L1\"], \"on\": {\"S1\": \"on\"}}", ""),
            bad("\"on\": {\"S1\": \"on\"}", "\"on\": {\"S1\": 1}"),
            bad("\"volts\": 12.6", "\"volts\": 126"),
            bad("\"kind\": \"ground\"", "\"kind\": \"ground\", \"swap_minutes\": -1"),
            bad("\"kind\": \"ground\"", "\"kind\": \"ground\", \"access\": {\"lug\": {\"x\": 1}}"),
            bad("\"kind\": \"ground\"", "\"kind\": \"ground\", \"watts\": 1"),
            good("\"name\": \"Cart\"", "\"name\": \"Cart\\n\\tÄ 車\""),
            good("\"id\": \"cart\"", "\"id\": \"Wagen-Ä_1+/#*\""),
            good("\"12 AWG\"", "\"12AWG\""),
            good("\"12 AWG\"", "\"4/0 AWG\""),
            good("\"12 AWG\"", "\"0.05 mm2\""),
            good("\"12 AWG\"", "\"0.35 mm2\""),
            good("\"12 AWG\"", "\"300 mm2\""),
            good("\"amps\": 10", "\"amps\": 7.5"),
            good("\"amps\": 10", "\"amps\": 10, \"ohms\": {\"about\": 1, \"low\": 1, \"high\": 2}"),
            good("\"watts\": 21", "\"watts\": {\"about\": 21, \"low\": 20, \"high\": 22}"),
            good(
                "\"amps\": 10",
                "\"amps\": 10, \"note\": \"n\", \"photos\": [{\"file\": \"photos/a b.jpg\", \"at\": \"load\"}]"),
            bad("\"amps\": 10", "\"amps\": 10, \"photos\": [{\"file\": \"../a.jpg\"}]"),
            bad("\"amps\": 10", "\"amps\": 10, \"photos\": [{\"file\": \"a/./b.jpg\"}]"),
            bad("\"amps\": 10", "\"amps\": 10, \"photos\": [{\"file\": \"C:/b.jpg\"}]"),
            bad("\"amps\": 10", "\"amps\": 10, \"photos\": [{\"at\": \"load\"}]"),
            good("\"version\": 1", "\"version\": 1.0"),
            good("\"kind\": \"ground\"", "\"kind\": \"ground\", \"access\": {\"lug\": {}}"))
        .flatMap(s -> s);
  }

  private static Stream<Arguments> bad(String piece, String by) {
    return Stream.of(Arguments.of("refused", piece, by));
  }

  private static Stream<Arguments> good(String piece, String by) {
    return Stream.of(Arguments.of("accepted", piece, by));
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void readerAndSchemaAgree(String verdict, String piece, String by) {
    String json = Vehicles.small(piece, by);
    List<Defect> defects = VehicleFile.read(json, "cart.json").defects();
    List<Error> errors = errors(VEHICLE, json);
    assertThat(defects.isEmpty()).as("reader: %s", defects).isEqualTo(verdict.equals("accepted"));
    assertThat(errors.isEmpty()).as("schema: %s", errors).isEqualTo(verdict.equals("accepted"));
  }

  @Test
  void aSchemaCannotSeeWhatDependsOnTheRestOfTheVehicle() {
    String json = Vehicles.small("\"from\": \"F1.load\"", "\"from\": \"F1.laod\"");
    assertThat(errors(VEHICLE, json)).isEmpty();
    assertThat(VehicleFile.read(json, "cart.json").defects()).hasSize(1);
  }

  private static List<Error> errors(Schema schema, String json) {
    return schema.validate(json, InputFormat.JSON);
  }

  private static Schema schema(String name) {
    try (InputStream in =
        SchemaTest.class.getResourceAsStream("/schema/" + name + ".schema.json")) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> json(String folder) throws IOException {
    try (Stream<Path> list = Files.list(Path.of("knowledge", folder))) {
      List<Path> files = list.filter(p -> p.toString().endsWith(".json")).sorted().toList();
      assertThat(files).isNotEmpty();
      return files;
    }
  }
}
