package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.io.VehicleFile;
import loopwright.model.GroundedPole;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewAndAddCommandTest {
  @TempDir private Path folder;

  private Vehicle read(Path file) {
    return VehicleFile.read(file).orThrow();
  }

  @Test
  void theQuestionsOfANewVehicleAreAskedAndItIsWritten() {
    Path file = folder.resolve("moped.json");
    TestWorld world =
        new TestWorld(
            new MemoryStore(),
            // kind by number, name, volts, a slip, grounded, key, back, sizes
            "2",
            "moped",
            "6",
            "7",
            "positive",
            "none",
            "",
            "awg",
            // not the usual circuits, but a lamp by its number
            "no",
            "1",
            "licence lamp",
            "back",
            "plate lamp",
            "",
            "bright",
            "5 W",
            "",
            "none",
            "2",
            "",
            "");
    assertThat(world.run("new", file.toString())).as(world.errText()).isZero();
    assertThat(world.outText())
        .contains("What kind of vehicle")
        .contains("'7' isn't understood: one of negative, positive.")
        .contains("'bright' isn't understood: a number of W")
        .contains("plate lamp fuse F2")
        .contains("because")
        .contains("Saved: ");
    Vehicle vehicle = read(file);
    assertThat(vehicle.name()).isEqualTo("moped");
    assertThat(vehicle.systemVolts()).isEqualTo(6);
    assertThat(vehicle.grounded()).isEqualTo(GroundedPole.POSITIVE);
    assertThat(vehicle.circuit("plate-lamp")).isPresent();
  }

  @Test
  void answersComeFromAFileAndACircuitIsAdded() throws IOException {
    Path answers = folder.resolve("answers.txt");
    Files.writeString(
        answers,
        """
        # the village's second tractor
        kind = tractor
        name = second tractor
        add = horn
        to-load = 1,5
        add = lamp-relay
        name = plough lamp
        count = 1
        """);
    Path file = folder.resolve("tractor.json");
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("new", file.toString(), "--answers", answers.toString()))
        .as(world.errText())
        .isZero();
    Vehicle vehicle = read(file);
    assertThat(vehicle.circuits()).extracting(c -> c.name()).containsExactly("Horn", "Plough lamp");
    TestWorld again = new TestWorld(new MemoryStore());
    again.vehicle = vehicle;
    assertThat(
            again.run("add", "pumper", "flasher", "--set", "to-rear=3", "--save", file.toString()))
        .as(again.errText())
        .isZero();
    assertThat(again.outText()).contains("flasher unit FU1").contains("Saved: ");
    assertThat(read(file).circuit("left-turn-signal")).isPresent();
    // The file as it was is kept.
    assertThat(Files.list(folder).count()).isGreaterThan(2);
  }

  @Test
  void aNameThatNoFileCouldHoldIsRefused() {
    Path file = folder.resolve("truck.json");
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("new", file.toString(), "--usual", "--set", "name=hose\u000btruck"))
        .isEqualTo(2);
    assertThat(world.errText()).contains("without control characters");
    assertThat(file).doesNotExist();
  }

  @Test
  void nothingIsWrittenWithoutSaveAndPatternsAreListed() {
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("add", "pumper")).isZero();
    assertThat(world.outText()).contains("lamp-relay").contains("Trailer socket");
    TestWorld other = new TestWorld(new MemoryStore());
    assertThat(other.run("add", "pumper", "horn", "--usual")).isZero();
    assertThat(other.outText()).contains("horn relay").contains("nothing is written yet");
  }

  @Test
  void aCircuitThatIsTooMuchForTheMainFuseIsTold() {
    Path file = folder.resolve("truck.json");
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run("new", file.toString(), "--usual")).as(world.errText()).isZero();
    TestWorld large = new TestWorld(new MemoryStore());
    large.vehicle = read(file);
    assertThat(
            large.run(
                "add",
                "pumper",
                "lamp-relay",
                "--usual",
                "--set",
                "count=4",
                "--set",
                "power=60 W"))
        .as(large.errText())
        .isZero();
    assertThat(large.outText().replaceAll("\\s+", " "))
        .contains("What was there before is not enough now:")
        .containsPattern("main fuse F1[^.]* carries [0-9.]+ A at work");
  }

  @Test
  void slipsAreToldAndNothingIsWritten() throws IOException {
    Path file = folder.resolve("x.json");
    assertThat(said("new", file.toString(), "--usual", "--set", "volts=48"))
        .contains("volts '48': one of 6, 12, 24.");
    assertThat(said("new", file.toString(), "--usual", "--set", "wheels=4"))
        .contains("wheels")
        .contains("one of its questions");
    assertThat(said("add", "pumper", "teapot")).contains("no pattern 'teapot'");
    assertThat(said("add", "pumper", "horn", "--set", "power=300"))
        .contains("power '300': 0.01 to 25 A");
    assertThat(said("new", file.toString())).contains("Stopped; nothing is written.");
    Path answers = folder.resolve("a.txt");
    Files.writeString(answers, "kind = car\nvolts 12\n");
    assertThat(said("new", file.toString(), "--answers", answers.toString()))
        .contains("a.txt, line 2")
        .contains("question = answer");
    assertThat(file).doesNotExist();
    Files.writeString(file, "{}");
    assertThat(said("new", file.toString())).contains("there is something of this name already");
  }

  private static String said(String... args) {
    TestWorld world = new TestWorld(new MemoryStore());
    assertThat(world.run(args)).isEqualTo(ExitCode.USAGE.number());
    return world.errText().replaceAll("\\s+", " ");
  }
}
