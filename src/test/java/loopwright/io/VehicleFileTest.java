package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VehicleFileTest {
  @TempDir Path folder;

  @Test
  void aVehicleWithEveryKindOfPartSurvivesTheRoundTrip() {
    Vehicle vehicle = Vehicles.allKinds();
    String text = VehicleFile.text(vehicle);
    assertThat(VehicleFile.read(text, "mule.json").orThrow()).isEqualTo(vehicle);
    assertThat(VehicleFile.text(VehicleFile.read(text, "mule.json").orThrow())).isEqualTo(text);
  }

  @Test
  void everyDemoVehicleIsGoodAndSurvivesTheRoundTrip() throws IOException {
    List<Path> files = demoVehicles();
    assertThat(files).isNotEmpty();
    for (Path file : files) {
      Vehicle vehicle = VehicleFile.read(file).orThrow();
      assertThat(VehicleFile.read(VehicleFile.text(vehicle), "again").orThrow())
          .as(file.toString())
          .isEqualTo(vehicle);
    }
  }

  @Test
  void textAndStreamAndFileReadAlike() throws IOException {
    Path file = folder.resolve("cart.json");
    Files.writeString(file, Vehicles.SMALL);
    InputStream in = new ByteArrayInputStream(Vehicles.SMALL.getBytes(StandardCharsets.UTF_8));
    Vehicle vehicle = VehicleFile.read(Vehicles.SMALL, "text").orThrow();
    assertThat(VehicleFile.read(file).orThrow()).isEqualTo(vehicle);
    assertThat(VehicleFile.read(in, "stream").orThrow()).isEqualTo(vehicle);
  }

  @Test
  void allDefectsOfTheFormatAndOfTheModelAreReportedAtOnce() {
    String json =
        Vehicles.small("\"version\": 1", "\"version\": 0")
            .replace("\"amps\": 10", "\"amps\": \"ten\"")
            .replace("\"watts\": 21", "\"watts\": 21, \"colour\": \"white\"")
            .replace("\"metres\": 2}", "\"metres\": -2}")
            .replace("\"from\": \"F1.load\"", "\"from\": \"F1.laod\"")
            .replace("\"id\": \"BODY\", \"kind\": \"body\"", "\"id\": \"G1\", \"kind\": \"body\"")
            .replace("\"closed_in\": [\"on\"]", "\"closed_in\": [\"off\"]")
            .replace("\"metres\": 3}", "\"metres\": NaN}");
    List<Defect> defects = VehicleFile.read(json, "cart.json").defects();
    assertThat(defects.stream().map(d -> d.place().replaceAll(" \\(line.*", "")))
        .containsExactlyInAnyOrder(
            "cart.json, version",
            "cart.json, parts[1].amps",
            "cart.json, parts[3].colour",
            "cart.json, parts[7].metres",
            "cart.json, parts[7].from",
            "cart.json, parts[5].id",
            // Without BODY the strap and the join lead nowhere.
            "cart.json, parts[10].from",
            "cart.json, joins[0][1]",
            "cart.json, parts[8].metres",
            "cart.json, circuits[0].loads[0]");
    assertThat(defects).isSortedAccordingTo((a, b) -> Integer.compare(line(a), line(b)));
  }

  @Test
  void aPartThatCannotBeReadMakesNoFalseDefectsElsewhere() {
    List<Defect> defects = Vehicles.defects("\"kind\": \"fuse\"", "\"kind\": \"fues\"");
    assertThat(defects).hasSize(1);
  }

  @Test
  void aFileThatIsNotThereIsADefect() {
    Defect defect = VehicleFile.read(folder.resolve("none.json")).defects().get(0);
    assertThat(defect.value()).isEqualTo(folder.resolve("none.json").toString());
    assertThat(defect.message()).isEqualTo("file: there is no such file [none.json]");
  }

  @Test
  void aFolderIsNoFile() {
    assertThat(VehicleFile.read(folder).defects()).hasSize(1);
  }

  @Test
  void aFileCutShortAtAnyByteIsRefusedAndNeverCrashes() {
    byte[] whole = Vehicles.SMALL.strip().getBytes(StandardCharsets.UTF_8);
    assertThat(VehicleFile.read(Vehicles.SMALL.strip(), "x").defects()).isEmpty();
    for (int length = 0; length < whole.length; length++) {
      InputStream in = new ByteArrayInputStream(whole, 0, length);
      List<Defect> defects = VehicleFile.read(in, "cart.json").defects();
      assertThat(defects).as("first %d bytes", length).hasSize(1);
      // A number cut right behind its point is no number, which is found before the missing end.
      assertThat(defects.get(0).message())
          .matches("file: (is empty|ends in the middle|is not JSON: .*numeric value).*");
    }
  }

  @Test
  void aCutFileSaysThatTheRestIsMissing() {
    String cut = Vehicles.SMALL.substring(0, Vehicles.SMALL.indexOf("\"joins\""));
    assertThat(VehicleFile.read(cut, "cart.json").defects())
        .extracting(Defect::message)
        .containsExactly("file: ends in the middle; the rest is missing [cart.json (line 17)]");
  }

  @Test
  void bytesThatWereChangedAnywhereNeverCrashTheReader() {
    byte[] whole = Vehicles.ALL_KINDS.getBytes(StandardCharsets.UTF_8);
    Random random = new Random(4711);
    for (int run = 0; run < 3_000; run++) {
      byte[] changed = Arrays.copyOf(whole, whole.length);
      for (int i = 0; i <= random.nextInt(3); i++) {
        changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
      }
      ReadResult<Vehicle> result = VehicleFile.read(new ByteArrayInputStream(changed), "mule.json");
      assertThat(result.found().isPresent()).isEqualTo(result.defects().isEmpty());
    }
  }

  @Test
  void halfACharacterIsRefusedSinceItCouldNotBeSaved() {
    assertThat(Vehicles.defects("\"name\": \"", "\"name\": \"\\ud83d"))
        .extracting(Defect::value)
        .contains("half a character");
    String whole = Vehicles.small("\"name\": \"", "\"name\": \"\\ud83d\\ude92");
    assertThat(VehicleFile.read(whole, "cart.json").orThrow().name()).startsWith("\ud83d\ude92");
  }

  @Test
  void anEmptyFileIsRefused() {
    assertThat(VehicleFile.read("", "cart.json").defects())
        .extracting(Defect::message)
        .containsExactly("file: is empty, must hold a JSON object [cart.json]");
  }

  @Test
  void aFileThatIsNotJsonIsRefusedWithItsLine() {
    Defect defect = VehicleFile.read("volts:\n  12\n", "cart.json").defects().get(0);
    assertThat(defect.limit()).isEqualTo("JSON text");
    assertThat(defect.place()).isEqualTo("cart.json (line 1)");
  }

  @Test
  void bytesThatAreNotTextAreRefused() {
    byte[] bytes = {'{', '"', (byte) 0xC3, (byte) 0x28, '"', ':', '1', '}'};
    assertThat(VehicleFile.read(new ByteArrayInputStream(bytes), "cart.json").defects()).hasSize(1);
  }

  @Test
  void somethingBehindTheEndIsRefused() {
    assertThat(VehicleFile.read(Vehicles.SMALL + "{}", "cart.json").defects())
        .extracting(Defect::limit)
        .containsExactly("one JSON value");
  }

  @Test
  void moreThanTwentyMegabytesAreRefusedUnread() {
    InputStream endless =
        new InputStream() {
          @Override
          public int read() {
            return ' ';
          }

          @Override
          public int read(byte[] into, int from, int count) {
            Arrays.fill(into, from, from + count, (byte) ' ');
            return count;
          }
        };
    assertThat(VehicleFile.read(endless, "cart.json").defects())
        .extracting(Defect::message)
        .containsExactly("file: is larger than 20 MB, which no vehicle needs [cart.json]");
  }

  @Test
  void fiftyLevelsAreReadAndFiftyOneAreRefused() {
    String fifty = nested(49);
    String deeper = nested(50);
    assertThat(VehicleFile.read(fifty, "cart.json").defects())
        .extracting(Defect::object)
        .containsOnly("vehicle");
    assertThat(VehicleFile.read(deeper, "cart.json").defects())
        .extracting(Defect::message)
        .containsExactly("file: is nested more than 50 levels deep [cart.json (line 1)]");
    assertThat(VehicleFile.read(nested(1_000_000), "cart.json").defects()).hasSize(1);
  }

  private static String nested(int lists) {
    return "{\"x\":" + "[".repeat(lists) + "]".repeat(lists) + "}";
  }

  @Test
  void moreThanTwentyThousandPartsAreRefused() {
    String many = "{\"id\": \"B\", \"kind\": \"body\"},\n".repeat(20_000);
    List<Defect> defects = Vehicles.defects("\"parts\": [", "\"parts\": [" + many);
    assertThat(defects)
        .extracting(Defect::message)
        .contains(
            "vehicle: parts has 20011, must be a list of 0 to 20000 [cart.json, parts (line 4)]");
  }

  @Test
  void moreThanAMillionValuesAreRefused() {
    String many = "{\"x\": [" + "0,".repeat(1_000_000) + "0]}";
    assertThat(VehicleFile.read(many, "cart.json").defects())
        .extracting(Defect::limit)
        .contains("at most 1,000,000 values");
  }

  @Test
  void beyondAThousandDefectsTheRestAreCounted() {
    StringBuilder fields = new StringBuilder();
    for (int i = 0; i < 1_500; i++) {
      fields.append("\"zz").append(i).append("\": 0, ");
    }
    List<Defect> defects = Vehicles.defects("\"format\"", fields + "\"format\"");
    assertThat(defects).hasSize(1_001);
    assertThat(defects.get(1_000).message())
        .isEqualTo("file: 500 more defects are not listed [cart.json]");
  }

  @Test
  void aLargeVehicleIsReadWithItsLoopsChecked() {
    String json = Vehicles.rows(300);
    Vehicle vehicle = VehicleFile.read(json, "rows.json").orThrow();
    assertThat(vehicle.circuits()).hasSize(300);
  }

  @Test
  void writingReplacesTheOldFileAndLeavesNothingElse() throws IOException {
    Path file = folder.resolve("cart.json");
    Files.writeString(file, "old");
    Vehicle vehicle = Vehicles.allKinds();
    VehicleFile.write(vehicle, file);
    assertThat(VehicleFile.read(file).orThrow()).isEqualTo(vehicle);
    assertThat(names(folder)).containsExactly("cart.json");
  }

  @Test
  void writingThroughALinkReplacesWhatItPointsTo() throws IOException {
    Path real = folder.resolve("real.json");
    Files.writeString(real, "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.json"), real);
    VehicleFile.write(Vehicles.allKinds(), link);
    assertThat(link).isSymbolicLink();
    assertThat(VehicleFile.read(real).defects()).isEmpty();
  }

  @Test
  void aWriteThatCannotTakeTheNameLeavesWhatWasThere() throws IOException {
    Path taken = Files.createDirectory(folder.resolve("cart.json"));
    Files.writeString(taken.resolve("inside"), "kept");
    assertThatThrownBy(() -> VehicleFile.write(Vehicles.allKinds(), taken))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("vehicle mule cannot be written to " + taken);
    assertThat(taken.resolve("inside")).hasContent("kept");
    assertThat(names(folder)).containsExactly("cart.json");
  }

  @Test
  void aReadOnlyFolderKeepsTheOldFile() throws IOException {
    Path closed = Files.createDirectory(folder.resolve("closed"));
    Path file = closed.resolve("cart.json");
    Files.writeString(file, "old");
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      // An administrator may write everywhere.
      Assumptions.assumeFalse(Files.isWritable(closed));
      assertThatThrownBy(() -> VehicleFile.write(Vehicles.allKinds(), file))
          .isInstanceOf(IOException.class);
      assertThat(file).hasContent("old");
      assertThat(names(closed)).containsExactly("cart.json");
    } finally {
      Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  @Test
  void aReadOnlyFileSystemIsReportedAndKeepsTheOldFile() throws IOException {
    // The running Java's own modules: a file system nobody can write to, not even an administrator.
    Path file =
        FileSystems.getFileSystem(URI.create("jrt:/"))
            .getPath("/modules/java.base/java/lang/Object.class");
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> VehicleFile.write(Vehicles.allKinds(), file))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith("vehicle mule cannot be written to /modules/");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void aFolderThatIsNotThereIsReported() {
    Path file = folder.resolve("none").resolve("cart.json");
    assertThatThrownBy(() -> VehicleFile.write(Vehicles.allKinds(), file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("there is no such folder");
  }

  @Test
  void whoeverReadsWhileAnotherWritesSeesAWholeFile() throws Exception {
    Path file = folder.resolve("cart.json");
    Vehicle one = VehicleFile.read(Vehicles.SMALL, "x").orThrow();
    Vehicle two = Vehicles.allKinds();
    VehicleFile.write(one, file);
    Thread writer =
        new Thread(
            () -> {
              try {
                for (int i = 0; i < 50; i++) {
                  VehicleFile.write(i % 2 == 0 ? two : one, file);
                }
              } catch (IOException e) {
                throw new AssertionError(e);
              }
            });
    writer.start();
    int reads = 0;
    while (writer.isAlive() || reads < 5) {
      assertThat(VehicleFile.read(file).orThrow()).isIn(one, two);
      reads++;
    }
    writer.join();
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  private static int line(Defect defect) {
    return Integer.parseInt(defect.place().replaceAll(".*line (\\d+).*", "$1"));
  }

  static List<Path> demoVehicles() throws IOException {
    try (Stream<Path> list = Files.list(Path.of("demo-data", "vehicles"))) {
      return list.filter(p -> p.toString().endsWith(".json")).sorted().toList();
    }
  }
}
