package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.Problem;
import loopwright.casework.edit.VehicleStore;
import loopwright.casework.edit.VehicleStore.Opened;
import loopwright.io.SafeFile.Step;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class VehicleFilesTest {
  @TempDir Path folder;

  private final VehicleStore store = new VehicleFiles();
  private Path file;

  @BeforeEach
  void aFile() throws IOException {
    file = folder.resolve("cart.json");
    Files.writeString(file, VehicleFile.text(noted("start")));
  }

  private static Vehicle noted(String note) {
    Vehicle v = VehicleFile.read(Vehicles.SMALL, "cart").orThrow();
    return new Vehicle(
        v.id(), v.name(), v.systemVolts(), v.grounded(), v.parts(), v.joins(), v.circuits(), note);
  }

  /** A vehicle that can be written and doesn't hold together: it has no parts at all. */
  private static Vehicle broken(String note) {
    Vehicle v = noted(note);
    return new Vehicle(
        v.id(), v.name(), 12, v.grounded(), List.of(), List.of(), v.circuits(), note);
  }

  private String noteOnDisk() {
    return VehicleFile.read(file).orThrow().note();
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  // Saving and previous versions.

  @Test
  void everySaveKeepsWhatWasThereBefore() throws Exception {
    try (Opened opened = store.open(file)) {
      assertThat(opened.readOnly()).isEmpty();
      opened.save(noted("one"));
      opened.save(noted("two"));
      assertThat(noteOnDisk()).isEqualTo("two");
      assertThat(opened.versions()).extracting(VehicleStore.Version::number).containsExactly(2, 1);
      assertThat(opened.look(opened.versions().get(0)).note()).isEqualTo("one");
      opened.save(opened.look(opened.versions().get(1)));
      assertThat(opened.vehicle().note()).isEqualTo("start");
      assertThat(noteOnDisk()).isEqualTo("start");
      assertThat(opened.look(opened.versions().get(0)).note()).isEqualTo("two");
    }
  }

  @Test
  void savingTheSameAgainKeepsNoCopy() throws Exception {
    try (Opened opened = store.open(file)) {
      opened.save(opened.vehicle());
      assertThat(opened.versions()).isEmpty();
    }
  }

  @Test
  void oldVersionsGoButTheNewestGoodOneStays() throws Exception {
    try (Opened opened = store.open(file)) {
      opened.save(noted("last good"));
      for (int i = 0; i < 2 * PreviousVersions.KEPT; i++) {
        opened.save(broken("broken " + i));
      }
      List<VehicleStore.Version> versions = opened.versions();
      assertThat(versions).hasSize(PreviousVersions.KEPT + 1);
      assertThat(opened.look(versions.get(PreviousVersions.KEPT)).note()).isEqualTo("last good");
      opened.save(opened.look(versions.get(PreviousVersions.KEPT)));
      assertThat(opened.vehicle().note()).isEqualTo("last good");
      assertThat(noteOnDisk()).isEqualTo("last good");
    }
  }

  @Test
  void aVehicleThatDoesNotHoldTogetherYetIsSavedAndOpenedAgain() throws Exception {
    try (Opened opened = store.open(file)) {
      opened.save(broken("half drawn"));
    }
    assertThat(VehicleFile.read(file).defects()).isNotEmpty();
    try (Opened opened = store.open(file)) {
      assertThat(opened.vehicle()).isEqualTo(broken("half drawn"));
    }
  }

  @Test
  void aDeletedFileIsWrittenAgain() throws Exception {
    try (Opened opened = store.open(file)) {
      Files.delete(file);
      opened.save(noted("again"));
      assertThat(noteOnDisk()).isEqualTo("again");
    }
  }

  // Someone else changes the file.

  @Test
  void aFileChangedByOthersIsNotWrittenOver() throws Exception {
    try (Opened opened = store.open(file)) {
      Files.writeString(file, VehicleFile.text(noted("other")));
      assertThatThrownBy(() -> opened.save(noted("mine")))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("changed by someone else");
      assertThat(noteOnDisk()).isEqualTo("other");
      opened.saveOver(noted("mine"));
      assertThat(noteOnDisk()).isEqualTo("mine");
      assertThat(opened.look(opened.versions().get(0)).note()).isEqualTo("other");
      opened.save(noted("more"));
    }
  }

  // The disk fails, or the power goes.

  /** The program ends here: nothing after it is done, nothing is tidied up. */
  private static final class PowerCut extends Error {
    private static final long serialVersionUID = 1L;
  }

  /** Lets the nth step of a kind be the last. */
  private static SafeFile.Watch at(Step step, int nth, Throwable end) {
    int[] seen = {0};
    return (s, f) -> {
      if (s == step && ++seen[0] == nth) {
        if (end instanceof IOException e) {
          throw e;
        }
        throw (Error) end;
      }
    };
  }

  @ParameterizedTest
  @EnumSource(Step.class)
  void aPowerCutAtAnyStepLeavesTheOldOrTheNewVehicle(Step step) throws Exception {
    for (int i = 0; i < PreviousVersions.KEPT + 1; i++) {
      // So many that the next save has one to delete.
      try (Opened opened = store.open(file)) {
        opened.save(noted("before " + i));
      }
    }
    String before = noteOnDisk();
    int cuts = 0;
    for (int nth = 1; nth <= 2; nth++) {
      Opened opened = new VehicleFiles(at(step, nth, new PowerCut())).open(file);
      String last = noteOnDisk();
      try {
        opened.save(noted("after " + nth));
      } catch (PowerCut e) {
        cuts++;
      } finally {
        // Stands for the system, which gives the lock back.
        opened.close();
      }
      assertThat(noteOnDisk()).isIn(last, "after " + nth);
    }
    assertThat(cuts).isPositive();
    try (Opened opened = store.open(file)) {
      assertThat(names()).noneMatch(n -> n.startsWith(".cart.json.") && n.endsWith(".new"));
      opened.save(noted("end"));
      assertThat(noteOnDisk()).isEqualTo("end");
      assertThat(opened.versions()).hasSize(PreviousVersions.KEPT);
      for (VehicleStore.Version version : opened.versions()) {
        assertThat(opened.look(version)).isNotNull();
      }
      assertThat(opened.versions().stream().map(v -> note(opened, v))).contains(before);
    }
  }

  private static String note(Opened opened, VehicleStore.Version version) {
    try {
      return opened.look(version).note();
    } catch (Problem e) {
      throw new AssertionError(e);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Step.class,
      names = {"MAKE", "FILL", "FORCE", "MOVE"})
  void aFullDiskIsToldAndNothingIsLost(Step step) throws Exception {
    for (int nth = 1; nth <= 2; nth++) {
      IOException full = new IOException("No space left on device");
      try (Opened opened = new VehicleFiles(at(step, nth, full)).open(file)) {
        assertThatThrownBy(() -> opened.save(noted("lost")))
            .isInstanceOf(Problem.class)
            .hasMessageContaining("the disk is full")
            .hasMessageContaining("still there");
        assertThat(noteOnDisk()).isEqualTo("start");
        assertThat(names()).noneMatch(n -> n.endsWith(".new"));
        assertThat(opened.vehicle().note()).isEqualTo("start");
        opened.save(opened.vehicle());
      }
    }
  }

  @Test
  void aFolderThatCannotBeWrittenToIsToldInWords() throws Exception {
    for (IOException refusal :
        List.of(
            new AccessDeniedException(file.toString()),
            new FileSystemException(file.toString(), null, "Read-only file system"))) {
      try (Opened opened = new VehicleFiles(at(Step.MAKE, 1, refusal)).open(file)) {
        assertThatThrownBy(() -> opened.save(noted("lost")))
            .isInstanceOf(Problem.class)
            .message()
            .containsAnyOf("this user may not write there", "the disk is read-only");
      }
    }
    assertThat(noteOnDisk()).isEqualTo("start");
  }

  @Test
  void aProgramKilledWhileItSavesLosesNothing() throws Exception {
    for (int kill = 0; kill < 3; kill++) {
      Process other = start(Saver.class);
      assertThat(other.getInputStream().read()).isEqualTo('s');
      Thread.sleep(40 + 35 * kill);
      other.destroyForcibly().waitFor();
      assertThat(noteOnDisk()).matches("start|save \\d+");
      try (Opened opened = store.open(file)) {
        assertThat(opened.readOnly()).isEmpty();
        assertThat(opened.versions()).isNotEmpty();
        for (VehicleStore.Version version : opened.versions()) {
          assertThat(opened.look(version).note()).matches("start|save \\d+|mine");
        }
        opened.save(noted("start"));
      }
    }
  }

  // Two at once.

  @Test
  void theSecondWindowIsToldAndMayLook() throws Exception {
    try (Opened first = store.open(file);
        Opened second = store.open(file)) {
      assertThat(second.readOnly().orElseThrow()).contains("open in another window since");
      assertThat(second.vehicle()).isEqualTo(first.vehicle());
      assertThatThrownBy(() -> second.save(noted("second")))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("another window")
          .hasMessageContaining("under another name");
      second.close();
      first.save(noted("first"));
      assertThat(noteOnDisk()).isEqualTo("first");
      try (Opened third = store.open(file)) {
        assertThat(third.readOnly()).as("the second gave back nothing").isPresent();
      }
    }
    try (Opened again = store.open(file)) {
      assertThat(again.readOnly()).isEmpty();
    }
  }

  @Test
  void theSecondProgramIsToldWhoHasItUntilThatOneIsGone() throws Exception {
    Process other = start(Holder.class);
    try {
      assertThat(other.getInputStream().read()).isEqualTo('h');
      try (Opened second = store.open(file)) {
        assertThat(second.readOnly().orElseThrow())
            .contains("open in another program since")
            .contains("process " + other.pid());
      }
    } finally {
      other.destroyForcibly().waitFor();
    }
    try (Opened opened = store.open(file)) {
      assertThat(opened.readOnly()).as("a killed program holds nothing").isEmpty();
      opened.save(noted("mine"));
    }
  }

  private Process start(Class<?> main) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            main.getName(),
            file.toString())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }

  /** The other program: opens the vehicle and holds it until it is ended. */
  static final class Holder {
    private Holder() {}

    public static void main(String[] args) throws Exception {
      try (Opened opened = new VehicleFiles().open(Path.of(args[0]))) {
        System.out.print(opened.readOnly().isEmpty() ? "h" : "r");
        System.out.flush();
        Thread.sleep(60_000);
      }
    }
  }

  /** The other program: saves without end until it is killed. */
  static final class Saver {
    private Saver() {}

    public static void main(String[] args) throws Exception {
      try (Opened opened = new VehicleFiles().open(Path.of(args[0]))) {
        for (int i = 0; ; i++) {
          opened.save(noted("save " + i));
          if (i == 0) {
            System.out.print("s");
            System.out.flush();
          }
        }
      }
    }
  }

  // Names and links.

  @Test
  void namesWithUmlautsAndSpacesWork() throws Exception {
    Path named = folder.resolve("L\u00f6schfahrzeug Gr\u00fcn (alt).json");
    try (Opened opened = store.create(named, noted("one"))) {
      opened.save(noted("two"));
      assertThat(opened.look(opened.versions().get(0)).note()).isEqualTo("one");
    }
    assertThat(VehicleFile.read(named).orThrow().note()).isEqualTo("two");
  }

  @Test
  void aNewFileNeverTakesTheNameOfAnother() throws Exception {
    assertThatThrownBy(() -> store.create(file, noted("new")))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("something of this name already");
    Path dangling = Files.createSymbolicLink(folder.resolve("link"), folder.resolve("nowhere"));
    assertThatThrownBy(() -> store.create(dangling, noted("new"))).isInstanceOf(Problem.class);
    assertThatThrownBy(() -> store.create(folder.resolve("no/such.json"), noted("new")))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("no such folder");
    assertThat(noteOnDisk()).isEqualTo("start");
  }

  @Test
  void aLinkStaysALinkAndIsTheSameFile() throws Exception {
    Path away = Files.createDirectory(folder.resolve("away"));
    Path link = Files.createSymbolicLink(away.resolve("linked.json"), file);
    try (Opened opened = store.open(link);
        Opened second = store.open(file)) {
      assertThat(second.readOnly()).isPresent();
      opened.save(noted("through the link"));
    }
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(noteOnDisk()).isEqualTo("through the link");
    assertThat(names()).contains("cart.json.previous-1");
  }

  @Test
  void permissionsStay() throws Exception {
    if (!Files.getFileStore(file).supportsFileAttributeView("posix")) {
      return;
    }
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
    try (Opened opened = store.open(file)) {
      opened.save(noted("one"));
    }
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-r-----");
  }

  @Test
  void whatCannotBeOpenedIsToldAndHoldsNoLock() throws Exception {
    assertThatThrownBy(() -> store.open(folder.resolve("none.json")))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("no such file");
    assertThatThrownBy(() -> store.open(folder))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("a folder");
    Path torn = folder.resolve("torn.json");
    Files.write(torn, "{\"format\": ".getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> store.open(torn)).hasMessageContaining("can't be read");
    Files.writeString(torn, VehicleFile.text(noted("whole")));
    try (Opened opened = store.open(torn)) {
      assertThat(opened.readOnly()).isEqualTo(Optional.empty());
    }
  }
}
