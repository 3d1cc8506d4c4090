package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Version 1 is the first version of the vehicle format, so there is no older file yet: the steps
 * are tested with two made up for the test, and a version 1 file is kept that must open for ever.
 */
class VersionStepsTest {
  @TempDir Path folder;

  /** As if version 2 had called {@code colour} so and version 1 {@code color}, and 3 added one. */
  private static final VersionSteps STEPS =
      new VersionSteps(
          "f",
          3,
          Map.of(
              1,
              older -> {
                Map<String, JsonValue> next = new LinkedHashMap<>(older);
                next.put("colour", next.remove("color"));
                return next;
              },
              2,
              older -> {
                Map<String, JsonValue> next = new LinkedHashMap<>(older);
                next.put("loom", new JsonValue.Text("main", 0));
                return next;
              }));

  private static Optional<JsonValue> read(String json, DefectList defects) {
    return JsonTree.parse(json.getBytes(StandardCharsets.UTF_8), defects)
        .flatMap(root -> STEPS.upToDate(root, defects));
  }

  @Test
  void anOlderFileGoesThroughEveryStepInOrder() {
    DefectList defects = new DefectList("old");
    JsonValue.Fields read =
        (JsonValue.Fields)
            read("{\"format\": \"f\", \"version\": 1,\n\"color\": \"red\"}", defects).orElseThrow();
    assertThat(read.values().keySet()).containsExactly("format", "version", "colour", "loom");
    assertThat(read.values().get("version").shown()).isEqualTo("3");
    assertThat(read.values().get("colour")).isEqualTo(new JsonValue.Text("red", 2));
    assertThat(defects.isEmpty()).isTrue();
  }

  @Test
  void aFileOfTheCurrentVersionIsLeftAsItIs() {
    DefectList defects = new DefectList("now");
    JsonValue root =
        JsonTree.parse(
                "{\"format\": \"f\", \"version\": 3}".getBytes(StandardCharsets.UTF_8), defects)
            .orElseThrow();
    assertThat(STEPS.upToDate(root, defects)).contains(root);
  }

  @Test
  void whatNoStepLeadsOnFromIsLeftForTheReaderToRefuse() {
    for (String json :
        List.of(
            "{\"format\": \"f\", \"version\": 0}",
            "{\"format\": \"f\", \"version\": 1.5}",
            "{\"format\": \"f\", \"version\": -1e300}",
            "{\"format\": \"g\", \"version\": 9}",
            "{\"format\": \"f\"}",
            "[]")) {
      DefectList defects = new DefectList("odd");
      assertThat(read(json, defects)).as(json).isPresent();
      assertThat(defects.isEmpty()).as(json).isTrue();
    }
    assertThat(
            VehicleFile.read(Vehicles.small("\"version\": 1", "\"version\": 0"), "old").defects())
        .singleElement()
        .extracting(Defect::message)
        .asString()
        .contains("version is 0, must be 1");
  }

  @Test
  void aNewerFileIsOneClearDefectAndStaysUntouched() throws Exception {
    Path file = folder.resolve("newer.json");
    String json = Vehicles.small("\"version\": 1", "\"version\": 2, \"new_field\": {}");
    Files.writeString(file, json);
    assertThat(VehicleFile.read(file).defects())
        .singleElement()
        .extracting(Defect::message)
        .asString()
        .contains("was written by a newer Loopwright: its version is 2, this one reads up to 1");
    assertThatThrownBy(() -> new VehicleFiles().open(file))
        .hasMessageContaining("newer Loopwright");
    assertThat(Files.readString(file)).isEqualTo(json);
  }

  @Test
  void theKeptFileOfVersionOneStillOpens() throws IOException {
    try (InputStream in = getClass().getResourceAsStream("/vehicle-versions/1.json")) {
      assertThat(VehicleFile.read(in, "1.json").orThrow())
          .isEqualTo(withoutLaterFacts(Vehicles.allKinds()));
    }
  }

  /** What batteries hold and what charges them came after that file was written. */
  private static Vehicle withoutLaterFacts(Vehicle vehicle) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(
        p ->
            p.spec() instanceof PartSpec.Battery b
                ? p.withSpec(new PartSpec.Battery(b.volts(), b.ohms()))
                : p);
    return vehicle.with(parts, vehicle.joins(), vehicle.circuits());
  }
}
