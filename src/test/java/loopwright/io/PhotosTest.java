package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import loopwright.casework.CaseStore;
import loopwright.casework.Problem;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.VehicleStore;
import loopwright.evidence.Bench;
import loopwright.io.journal.FileCaseStore;
import loopwright.model.Photo;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PhotosTest {
  private static final byte[] BYTES = {1, 2, 3};

  @TempDir Path folder;

  private static Vehicle with(Vehicle vehicle, Edit edit) throws Problem {
    return edit.make(vehicle).vehicle();
  }

  @Test
  void notesAndPhotosOfPartsAndPointsComeBackFromTheFile() throws Exception {
    List<Photo> photos =
        List.of(
            new Photo("photos/fuse block.jpg", Optional.empty()),
            new Photo("photos/f3-löten.png", Optional.of("load")));
    Vehicle v = with(Bench.vehicle("pumper"), PartEdits.photos("F3", photos));
    v = with(v, PartEdits.note("F3", "replaced twice"));
    Path file = folder.resolve("pumper.json");
    VehicleFile.write(v, file);

    Vehicle read = VehicleFile.read(file).orThrow();
    assertThat(read).isEqualTo(v);
    assertThat(read.requirePart("F3").photos()).isEqualTo(photos);
  }

  @Test
  void aPhotoOfATerminalThatIsNotThereIsFound() throws Exception {
    List<Photo> photos = List.of(new Photo("a.jpg", Optional.of("middle")));
    Vehicle v = with(Bench.vehicle("pumper"), PartEdits.photos("F3", photos));
    assertThat(VehicleCheck.check(v))
        .singleElement()
        .satisfies(f -> assertThat(f.path()).endsWith("photos[0].at"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../secret.jpg",
        "/etc/passwd",
        "a/../../b.png",
        "C:/x.jpg",
        "a\\b.jpg",
        "http://x/y.png",
        "",
        "./a"
      })
  void pathsThatLeadElsewhereAreRefused(String path) {
    assertThat(Photo.fits(path)).isFalse();
    String json =
        Vehicles.small(
            "\"amps\": 10",
            "\"amps\": 10, \"photos\": [{\"file\": \"" + path.replace("\\", "\\\\") + "\"}]");
    assertThat(VehicleFile.read(json, "cart.json").defects()).hasSize(1);
  }

  @Test
  void aPhotoFromElsewhereIsCopiedBesideTheFileAndOneThatIsThereStays() throws Exception {
    Path home = Files.createDirectories(folder.resolve("home"));
    Path other = Files.write(folder.resolve("Fuse block (old).JPG"), new byte[] {1, 2, 3});
    Path same = Files.write(folder.resolve("home/near.png"), new byte[] {4});
    try (VehicleStore.Opened opened =
        new VehicleFiles().create(home.resolve("v.json"), Bench.vehicle("pumper"))) {
      assertThat(opened.attach(same)).isEqualTo("near.png");
      String kept = opened.attach(other);
      assertThat(kept).isEqualTo("photos/Fuse-block-old-.jpg");
      assertThat(Files.readAllBytes(home.resolve(kept))).containsExactly(1, 2, 3);
      assertThat(opened.attach(other)).as("the same photo again").isEqualTo(kept);
      Files.write(other, new byte[] {9});
      assertThat(opened.attach(other)).isEqualTo("photos/Fuse-block-old--2.jpg");

      Path text = Files.writeString(folder.resolve("notes.txt"), "x");
      assertThatThrownBy(() -> opened.attach(text)).hasMessageContaining("a picture");
      assertThatThrownBy(() -> opened.attach(folder.resolve("gone.jpg")))
          .hasMessageContaining("can't be taken");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "масса на кузов.jpg",
        "بطارية.png",
        "電池 左.JPEG",
        "🚒.jpg",
        "बैटरी.bmp",
        "a long story about a lug.jpg"
      })
  void aPhotoOfAnyNameInAnyFolderIsTaken(String name) throws Exception {
    Path deep = folder;
    for (int i = 0; i < 10; i++) {
      deep = deep.resolve("сарай 倉庫 " + "x".repeat(60) + i);
    }
    Path home = Files.createDirectories(deep.resolve("home"));
    String longer = name.startsWith("a") ? name.replace("story", "y".repeat(200)) : name;
    Path photo = Files.write(Files.createDirectories(deep.resolve("in")).resolve(longer), BYTES);
    try (CaseStore.Journal journal = new FileCaseStore(home).create("stud")) {
      String kept = journal.photo(photo);
      assertThat(PhotoFiles.find(home, kept)).isPresent();
      assertThat(home.resolve(kept)).hasBinaryContent(BYTES);
    }
  }

  /** A folder that was unpacked may hold links: none is followed out of it, to read or to write. */
  @Test
  void aLinkOutOfTheFolderIsNotFollowed() throws Exception {
    Path home = Files.createDirectories(folder.resolve("home"));
    Path secret = Files.write(folder.resolve("secret.jpg"), new byte[] {1, 2, 3});
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Files.write(home.resolve("near.jpg"), new byte[] {4});
    try {
      Files.createSymbolicLink(home.resolve("out.jpg"), secret);
      Files.createSymbolicLink(home.resolve("gone.jpg"), folder.resolve("gone"));
      Files.createSymbolicLink(home.resolve("in.jpg"), Path.of("near.jpg"));
      Files.createSymbolicLink(home.resolve("photos"), elsewhere);
      Files.createSymbolicLink(home.resolve("up"), folder);
    } catch (UnsupportedOperationException | IOException e) {
      Assumptions.abort("no links here: " + e.getMessage());
    }
    try (VehicleStore.Opened opened =
        new VehicleFiles().create(home.resolve("v.json"), Bench.vehicle("pumper"))) {
      assertThat(opened.file(photo("out.jpg"))).isEmpty();
      assertThat(opened.file(photo("up/secret.jpg"))).isEmpty();
      assertThat(opened.file(photo("gone.jpg"))).isEmpty();
      assertThat(opened.file(photo("up"))).isEmpty();
      assertThat(opened.file(photo("near.jpg"))).contains(home.resolve("near.jpg").toRealPath());
      assertThat(opened.file(photo("in.jpg"))).contains(home.resolve("near.jpg").toRealPath());
      assertThatThrownBy(() -> opened.attach(secret))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("the folder photos leads elsewhere");
    }
    assertThat(elsewhere).isEmptyDirectory();
    assertThat(new FileCaseStore(home).picture("out.jpg")).isEmpty();
    assertThat(new FileCaseStore(home).picture("../secret.jpg")).isEmpty();
  }

  private static Photo photo(String file) {
    return new Photo(file, Optional.empty());
  }

  @Test
  void unsavedWorkIsKeptUntilDroppedAndNotTakenFromAnotherOpenWindow() throws Exception {
    Vehicle v = Bench.vehicle("tractor");
    UnsavedFiles here = new UnsavedFiles(folder);
    here.keep("/somewhere/tractor.json", v);
    here.keep("/somewhere/tractor.json", with(v, PartEdits.remove("F1")));
    here.keep("pumper", Bench.vehicle("pumper"));
    assertThat(here.kept()).hasSize(2);
    assertThat(here.kept())
        .filteredOn(k -> k.name().endsWith("tractor.json"))
        .singleElement()
        .satisfies(k -> assertThat(k.vehicle().part("F1")).isEmpty());

    // Process 1 runs wherever this test runs; a number beyond all processes does not.
    new UnsavedFiles(folder, 1).keep("truck", Bench.vehicle("truck"));
    new UnsavedFiles(folder, Long.MAX_VALUE / 2).keep("bike", Bench.vehicle("motorcycle"));
    assertThat(here.kept()).extracting(k -> k.name()).contains("bike").doesNotContain("truck");

    here.drop("pumper");
    assertThat(here.kept()).extracting(k -> k.name()).doesNotContain("pumper");
  }

  @Test
  void unsavedWorkThatCannotBeKeptIsToldOnce() throws Exception {
    String name = "7-" + Integer.toHexString("pumper".hashCode()) + ".json";
    Files.createDirectories(folder.resolve(name).resolve("in the way"));
    assertThatThrownBy(() -> new UnsavedFiles(folder, 7).keep("pumper", Bench.vehicle("pumper")))
        .isInstanceOf(Problem.class)
        .message()
        .containsOnlyOnce(name);
  }
}
