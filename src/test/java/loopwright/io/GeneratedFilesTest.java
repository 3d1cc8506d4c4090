package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import loopwright.casework.ReadyCase;
import loopwright.generated.Generated;
import loopwright.knowledge.FaultMode;
import loopwright.meter.MeterSpec;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Spoilt files: each is refused with its defects, or holds only what can be. */
class GeneratedFilesTest {
  private static final Path KNOWLEDGE = Path.of("knowledge");

  /** Knowledge is read as a folder; the whole of it, which takes long, once in so many inputs. */
  private static final int WHOLE_ONE_IN = 10;

  @TempDir Path folder;

  private static List<byte[]> files(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.toString().endsWith(ending))
          .sorted()
          .map(GeneratedFilesTest::bytes)
          .toList();
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static <T> boolean good(ReadResult<T> result) {
    told(result.defects());
    assertThat(result.found().isPresent()).isEqualTo(result.defects().isEmpty());
    return result.found().isPresent();
  }

  /** A person can read what is told of a defect, however wild the file. */
  private static void told(List<Defect> defects) {
    assertThat(defects).hasSizeLessThanOrEqualTo(DefectList.MOST + 1);
    for (Defect defect : defects) {
      assertThat(defect.message()).isNotBlank().hasSizeLessThan(10_000).doesNotContain("\n");
    }
  }

  @Test
  void vehicles() {
    List<byte[]> seeds =
        Stream.of(Vehicles.ALL_KINDS, Vehicles.SMALL, Vehicles.SMALL)
            .map(v -> v.getBytes(StandardCharsets.UTF_8))
            .toList();
    Generated.run("vehicles", seeds, GeneratedFilesTest::vehicle);
  }

  private static boolean vehicle(byte[] json) {
    ReadResult<Vehicle> draft = VehicleFile.readDraft(json, "spoilt.json");
    if (good(draft)) {
      String text = VehicleFile.text(draft.orThrow());
      byte[] again = text.getBytes(StandardCharsets.UTF_8);
      assertThat(VehicleFile.readDraft(again, "again.json").orThrow()).isEqualTo(draft.orThrow());
    }
    ReadResult<Vehicle> result = VehicleFile.read(new ByteArrayInputStream(json), "spoilt.json");
    if (!good(result)) {
      return false;
    }
    Vehicle vehicle = result.orThrow();
    assertThat(VehicleCheck.check(vehicle)).isEmpty();
    assertThat(VehicleFile.read(VehicleFile.text(vehicle), "again.json").orThrow())
        .isEqualTo(vehicle);
    return true;
  }

  @Test
  void meters() throws IOException {
    Generated.run("meters", files(KNOWLEDGE.resolve("meters"), ".json"), GeneratedFilesTest::meter);
  }

  private interface Reader<T> extends BiFunction<JsonValue, DefectList, Optional<T>> {}

  private static <T> Optional<T> read(byte[] json, Reader<T> reader) {
    DefectList defects = new DefectList("spoilt.json");
    Optional<T> found =
        JsonTree.bytes(new ByteArrayInputStream(json), defects)
            .flatMap(b -> JsonTree.parse(b, defects))
            .flatMap(root -> reader.apply(root, defects));
    told(defects.all());
    return defects.isEmpty() ? found : Optional.empty();
  }

  private static boolean meter(byte[] json) {
    Optional<MeterSpec> found = read(json, MeterFile::read);
    found.ifPresent(
        meter -> {
          List<Double> all = new ArrayList<>();
          Stream.concat(meter.volts().stream(), meter.ohms().stream())
              .forEach(
                  r -> {
                    all.addAll(List.of(r.full(), r.step()));
                    assertThat(r.percent()).matches(p -> p >= 0 && p <= 20);
                    assertThat(r.digits()).matches(d -> d >= 0 && d <= 100);
                  });
          all.addAll(List.of(meter.inputOhms(), meter.testVolts(), meter.testOhms()));
          assertThat(all).allMatch(v -> v > 0 && v <= MeterFile.MOST);
          assertThat(meter.leadOhms().low()).matches(l -> l >= 0);
        });
    return found.isPresent();
  }

  @Test
  void failureModes() throws IOException {
    Generated.run(
        "failure modes", files(KNOWLEDGE.resolve("faults"), ".json"), GeneratedFilesTest::modes);
  }

  private static boolean modes(byte[] json) {
    Optional<FaultFile.Content> found = read(json, FaultFile::read);
    found.ifPresent(
        content -> {
          content.testSlip().ifPresent(s -> assertThat(s).matches(v -> v >= 0 && v < 0.5));
          for (FaultMode mode : content.modes()) {
            assertThat(mode.rates().values()).allMatch(r -> r >= 0 && r <= 1e6);
            assertThat(mode.effects()).isNotEmpty();
            assertThat(mode.source()).isNotBlank();
          }
        });
    return found.isPresent();
  }

  @Test
  void readyCases() throws IOException {
    Generated.run(
        "ready cases",
        files(Path.of("demo-data", "cases"), ".json"),
        json -> {
          String text = new String(json, StandardCharsets.UTF_8);
          ReadResult<ReadyCase> result = ReadyCaseFile.read(text, "spoilt.json");
          if (!good(result)) {
            return false;
          }
          ReadyCase ready = result.orThrow();
          assertThat(ready.truth()).hasSizeBetween(1, 10);
          assertThat(ReadyCaseFile.read(text, "again.json").orThrow()).isEqualTo(ready);
          return true;
        });
  }

  @Test
  void tables() throws IOException {
    Path root = folder.resolve("knowledge");
    for (String part : List.of("faults", "meters", "reference")) {
      Files.createDirectories(root.resolve(part));
      try (Stream<Path> files = Files.list(KNOWLEDGE.resolve(part))) {
        for (Path file : files.toList()) {
          Files.copy(file, root.resolve(part).resolve(file.getFileName()));
        }
      }
    }
    Path reference = root.resolve("reference");
    int share = Generated.share() * (WHOLE_ONE_IN - 1) / WHOLE_ONE_IN;
    List<String> plans =
        List.of(
            "wire-fuse.csv", "pattern-loads.csv", "trailer-sockets.csv", "voltage-drop-limits.csv");
    for (String name : plans) {
      byte[] whole = Files.readAllBytes(reference.resolve(name));
      Generated.run(
          "table " + name,
          Math.max(1, share / plans.size()),
          List.of(whole),
          Generated.MOST_BYTES,
          csv -> {
            Files.write(reference.resolve(name), csv);
            List<Defect> all = new ArrayList<>();
            PlanTables tables = new PlanTables(reference, all);
            tables.wireFuses();
            tables.patternValues();
            told(all);
            return all.isEmpty();
          });
      Files.write(reference.resolve(name), whole);
    }
    for (String name : List.of("typical-values.csv", "fuse.csv")) {
      byte[] whole = Files.readAllBytes(reference.resolve(name));
      Generated.run(
          "table " + name,
          Math.max(1, (Generated.share() - share) / 2),
          List.of(whole),
          Generated.MOST_BYTES,
          csv -> {
            Files.write(reference.resolve(name), csv);
            return good(KnowledgeFiles.read(root));
          });
      Files.write(reference.resolve(name), whole);
    }
  }
}
