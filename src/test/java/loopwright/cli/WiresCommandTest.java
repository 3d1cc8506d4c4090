package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import loopwright.io.VehicleFile;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WiresCommandTest {
  @TempDir private Path folder;
  private final TestWorld world = new TestWorld(new MemoryStore());
  private Path list;
  private Path saved;

  @BeforeEach
  void places() {
    list = folder.resolve("list.csv");
    saved = folder.resolve("out.json");
  }

  private static String printed() {
    TestWorld fresh = new TestWorld(new MemoryStore());
    assertThat(fresh.run("wires", "pumper")).isZero();
    assertThat(fresh.errText()).isEmpty();
    return fresh.outText();
  }

  private int take(String text, String... more) throws IOException {
    Files.writeString(list, text);
    String[] args = new String[4 + more.length];
    args[0] = "wires";
    args[1] = "pumper";
    args[2] = "--in";
    args[3] = list.toString();
    System.arraycopy(more, 0, args, 4, more.length);
    return world.run(args);
  }

  @Test
  void theListIsPrintedAndTakenBack() throws IOException {
    assertThat(take(printed())).isZero();
    assertThat(world.outText()).contains("0 new, 0 changed").contains("has all of this already");
  }

  @Test
  void nothingIsWrittenWithoutSave() throws IOException {
    assertThat(take(changedColour())).isZero();
    assertThat(world.outText()).contains("-> plaid").contains("nothing is written yet");
    assertThat(saved).doesNotExist();
  }

  @Test
  void aGoodListIsSaved() throws IOException {
    assertThat(take(changedColour(), "--save", saved.toString())).isZero();
    Vehicle after = VehicleFile.read(saved).orThrow();
    assertThat(after.parts())
        .filteredOn(p -> p.spec() instanceof PartSpec.Wire w && w.colour().equals("plaid"))
        .hasSize(1);
    assertThat(world.outText()).contains("Saved:");
  }

  @Test
  void aListWithADefectIsNotSaved() throws IOException {
    String text = "wire,colour,size\n" + firstWire() + ",plaid,thick\n";
    assertThat(take(text, "--save", saved.toString())).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText())
        .contains("Nothing is taken over")
        .contains("line 2, column 3 (size)");
    assertThat(saved).doesNotExist();
  }

  @Test
  void aMovedWireThatOpensACircuitIsNotSaved() throws IOException {
    Vehicle pumper = Shed.pumper();
    String wire =
        pumper.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Wire w && w.from().equals(pumper.feedPost()))
            .findFirst()
            .orElseThrow()
            .id();
    String text = "wire,from\n" + wire + "," + pumper.groundedPost() + "\n";
    assertThat(take(text, "--save", saved.toString())).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText()).contains("no longer holds together");
    assertThat(saved).doesNotExist();
  }

  @Test
  void columnsAreOverruledByHeadingOrNumber() throws IOException {
    String text = "a,b\n" + firstWire() + ",plaid\n";
    assertThat(take(text, "--column", "wire=a", "--column", "colour=2")).isZero();
    assertThat(world.outText()).contains("1 a = wire, 2 b = colour").contains("1 changed");
  }

  @Test
  void anUnknownColumnIsTold() throws IOException {
    assertThat(take("a,b\n1,2\n", "--column", "wire=c")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("no column 'c', but a, b");
    assertThat(take("a,b\n1,2\n", "--column", "shape=a")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("say one of wire, kind, name");
  }

  @Test
  void saveAndColumnWantAList() {
    assertThat(world.run("wires", "pumper", "--save", saved.toString()))
        .isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("--in");
    TestWorld other = new TestWorld(new MemoryStore());
    assertThat(other.run("wires", "pumper", "--column", "wire=a"))
        .isEqualTo(ExitCode.USAGE.number());
    assertThat(other.errText()).contains("--in");
  }

  @Test
  void anUnknownVehicleIsTold() {
    assertThat(world.run("wires", "lorry")).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.errText()).contains("lorry");
    assertThat(world.outText()).isEmpty();
  }

  @Test
  void pinoutsAreComparedAndTheirDifferencesListed() throws IOException {
    world.vehicle = VehicleFile.read(Path.of("demo-data", "vehicles", "tractor.json")).orThrow();
    assertThat(world.run("wires", "pumper", "--pins")).isZero();
    String pins = world.outText();
    assertThat(pins).startsWith("connector,cavity,wire in,wire out,colour");
    assertThat(take(pins, "--pins")).isZero();
    String less = pins.substring(0, pins.lastIndexOf('\n', pins.length() - 2) + 1);
    assertThat(take(less, "--pins")).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText()).contains("Pins that differ: 1").contains("is not in the list");
  }

  @Test
  void oneConnectorsPinoutIsPrintedAndTaken() throws IOException {
    world.vehicle = VehicleFile.read(Path.of("demo-data", "vehicles", "tractor.json")).orThrow();
    String connector =
        world.vehicle.parts().stream()
            .filter(p -> p.spec() instanceof PartSpec.Connector)
            .findFirst()
            .orElseThrow()
            .id();
    assertThat(world.run("wires", "pumper", "--connector", connector)).isZero();
    String pins = world.outText();
    assertThat(pins.lines().skip(1)).allMatch(l -> l.startsWith(connector + ","));
    assertThat(take(pins, "--connector", connector, "--save", saved.toString())).isZero();
    assertThat(VehicleFile.read(saved).orThrow()).isEqualTo(world.vehicle);
    assertThat(world.run("wires", "pumper", "--connector", "C99"))
        .isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("--connector C99").contains(connector);
  }

  @Test
  void partsThatAreNotThereComeOnlyWhereThatIsAllowed() throws IOException {
    String text = "wire,from,to,size\nNW1,NF1.load,NL1.in,16 AWG\n";
    assertThat(take(text)).isEqualTo(ExitCode.VEHICLE.number());
    assertThat(world.outText()).contains("there is no part NF1");
    text = "wire,from,to,size\nNW1,F91.load,HORN91.in,16 AWG\n";
    take(text, "--allow", "parts,lengths");
    assertThat(world.outText())
        .contains("F91: added as a fuse of 10 A")
        .contains("a guess by its name")
        .contains("HORN91: added as a horn");
    assertThat(take(text, "--allow", "everything")).isEqualTo(ExitCode.USAGE.number());
    assertThat(world.errText()).contains("say parts, lengths or merged");
  }

  private static String firstWire() {
    return Shed.pumper().parts().stream()
        .filter(p -> p.spec() instanceof PartSpec.Wire)
        .findFirst()
        .orElseThrow()
        .id();
  }

  private static String changedColour() {
    return "wire,colour\n" + firstWire() + ",plaid\n";
  }
}
