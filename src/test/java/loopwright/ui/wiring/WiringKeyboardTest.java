package loopwright.ui.wiring;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TableView;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.Problem;
import loopwright.casework.edit.VehicleStore;
import loopwright.evidence.Bench;
import loopwright.io.UnsavedFiles;
import loopwright.io.VehicleFile;
import loopwright.io.VehicleFiles;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A vehicle is worked on by the keyboard alone, over real files. */
@ExtendWith(ApplicationExtension.class)
class WiringKeyboardTest {
  @TempDir Path folder;

  @RegisterExtension final TestWindow window = new TestWindow();
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  /** One vehicle file. */
  private record Shelf(Path file) implements VehicleLibrary {
    @Override
    public List<Entry> entries() {
      return List.of(new Entry(file.toString(), "Pumper", "", VehicleLibrary.Shelf.RECENT));
    }

    @Override
    public Loaded load(String name) {
      return new Loaded.Ready(name, VehicleFile.read(Path.of(name)).orThrow());
    }
  }

  private Path file() {
    return folder.resolve("pumper.json");
  }

  /** The window with the pumper's file opened and the place Wiring shown. */
  private void open() throws Exception {
    VehicleFile.write(Bench.vehicle("pumper"), file());
    scene =
        window.open(
            () ->
                new MainWindow(
                    window
                        .fittings(new Shelf(file()), (v, c) -> Optional.empty())
                        .keeping(TestWindow.keepingIn(folder))),
            1280,
            800);
    keys = new Keyboard(scene);
    keys.takeVehicle();
    keys.press(KeyCode.F6);
    until(() -> scene.lookup("#grid") != null && grid().getItems().size() > 5);
  }

  @SuppressWarnings("unchecked")
  private TableView<GridViewModel.GridRow> grid() {
    return (TableView<GridViewModel.GridRow>) scene.lookup("#grid");
  }

  private String told() {
    return ((Label) scene.lookup("#wiring-told")).getText();
  }

  private String state() {
    return ((Label) scene.lookup("#wiring-state")).getText();
  }

  private Vehicle saved() {
    return VehicleFile.read(file()).orThrow();
  }

  private void save() throws Exception {
    keys.control(KeyCode.S);
    until(() -> state().endsWith(": saved"));
  }

  private static void clipboard(String text) {
    WaitForAsyncUtils.waitForAsyncFx(
        5_000,
        () -> {
          ClipboardContent content = new ClipboardContent();
          content.putString(text);
          return Clipboard.getSystemClipboard().setContent(content);
        });
  }

  private int rowOf(String id) {
    return WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> grid().getItems().stream().map(r -> r.id().orElse("")).toList().indexOf(id));
  }

  /** From wherever the cursor is to a row of the table shown. */
  private void down(String id) {
    keys.control(KeyCode.HOME);
    for (int i = rowOf(id); i > 0; i--) {
      keys.press(KeyCode.DOWN);
    }
  }

  @Test
  void aLampAndItsWiresAreTypedInAndReachTheFile() throws Exception {
    open();
    keys.control(KeyCode.END);
    keys.type("L99").press(KeyCode.TAB).type("step lamp").press(KeyCode.TAB);
    keys.type("lamp").press(KeyCode.TAB);
    assertThat(told()).contains("Watts");
    keys.type("about 5").press(KeyCode.ENTER);
    until(() -> rowOf("L99") >= 0);

    keys.control(KeyCode.DIGIT5).control(KeyCode.END).press(KeyCode.TAB);
    keys.type("F1.load").press(KeyCode.TAB).type("L99.in").press(KeyCode.TAB);
    keys.type("18 awg").press(KeyCode.TAB).type("4-6 ft").press(KeyCode.ENTER);
    keys.control(KeyCode.END).press(KeyCode.TAB);
    keys.type("L99 out").press(KeyCode.TAB).type("G3.lug").press(KeyCode.TAB);
    keys.type("18awg").press(KeyCode.TAB).type("~1,5").press(KeyCode.ENTER);
    keys.control(KeyCode.DIGIT8).control(KeyCode.END).press(KeyCode.TAB);
    keys.type("Step lamp").press(KeyCode.TAB).type("L99").press(KeyCode.ENTER);
    until(() -> scene.getRoot().lookupAll(".piece-id").size() > 5);
    save();

    Vehicle v = saved();
    assertThat(v.requirePart("L99").spec())
        .isEqualTo(new PartSpec.Lamp(Optional.empty(), Estimate.between(3.5, 5, 6.5)));
    List<PartSpec.Wire> wires =
        v.parts().stream()
            .map(p -> p.spec())
            .filter(PartSpec.Wire.class::isInstance)
            .map(PartSpec.Wire.class::cast)
            .filter(w -> w.from().part().equals("L99") || w.to().part().equals("L99"))
            .toList();
    assertThat(wires).hasSize(2);
    assertThat(wires.get(0).metres().limits().orElseThrow().low()).isEqualTo(1.2192);
    assertThat(wires.get(1).from()).isEqualTo(new TerminalRef("L99", "out"));
    assertThat(wires.get(1).metres()).isEqualTo(Estimate.between(1.05, 1.5, 1.95));
    assertThat(v.circuits()).anyMatch(c -> c.name().equals("Step lamp"));
  }

  @Test
  void aBadTextStaysInItsCellAndTheVehicleAsItWas() throws Exception {
    open();
    keys.control(KeyCode.DIGIT2);
    down("F3");
    keys.press(KeyCode.RIGHT, KeyCode.RIGHT).type("ten").press(KeyCode.ENTER);
    assertThat(told()).contains("Amps “ten”").contains("the one number printed on it");
    until(() -> scene.lookup(".cell-bubble").isVisible());
    assertThat(scene.getRoot().lookupAll(".table-cell").stream())
        .anyMatch(
            c -> c instanceof javafx.scene.control.TableCell<?, ?> t && "ten".equals(t.getText()));
    assertThat(state()).doesNotContain("not saved");

    keys.press(KeyCode.ENTER, KeyCode.BACK_SPACE, KeyCode.BACK_SPACE, KeyCode.BACK_SPACE);
    keys.type("7.5").press(KeyCode.ENTER);
    until(() -> state().contains("not saved"));
    save();
    assertThat(saved().requirePart("F3").spec())
        .isEqualTo(new PartSpec.Fuse(7.5, Optional.empty()));
  }

  @Test
  void aBlockWithOneBadCellIsRefusedWholeAndTakenOnceItIsPutRight() throws Exception {
    open();
    keys.control(KeyCode.DIGIT2).control(KeyCode.END).press(KeyCode.HOME);
    int before = grid().getItems().size();
    clipboard("F20\tlocker lamps\t5\nF21\tsiren\tmuch\n");
    keys.control(KeyCode.V);
    assertThat(told()).contains("Nothing was pasted").contains("line 2").contains("much");
    assertThat(grid().getItems()).hasSize(before);

    clipboard("F20\tlocker lamps\t5\r\nF21\tsiren\t10\r\n");
    keys.control(KeyCode.V);
    until(() -> grid().getItems().size() == before + 2);
    down("F20");
    keys.press(KeyCode.RIGHT).shift(KeyCode.DOWN).shift(KeyCode.RIGHT).control(KeyCode.C);
    String copied =
        WaitForAsyncUtils.waitForAsyncFx(5_000, () -> Clipboard.getSystemClipboard().getString());
    assertThat(copied).isEqualTo("locker lamps\t5\nsiren\t10\n");
  }

  @Test
  void aColumnIsFilledDownAndEverythingTakenBackToTheStartAndMadeAgain() throws Exception {
    open();
    Vehicle start = saved();
    keys.control(KeyCode.DIGIT2);
    down("F3");
    keys.press(KeyCode.RIGHT, KeyCode.RIGHT);
    keys.shift(KeyCode.DOWN).shift(KeyCode.DOWN).control(KeyCode.D);
    keys.control(KeyCode.DIGIT6);
    down("G4");
    keys.control(KeyCode.DELETE);
    until(() -> rowOf("G4") < 0);
    keys.control(KeyCode.Z);
    until(() -> rowOf("G4") >= 0);
    keys.control(KeyCode.Z);
    until(() -> state().endsWith(": saved"));
    keys.control(KeyCode.Z);
    assertThat(told()).isEqualTo("Nothing to take back.");
    keys.control(KeyCode.Y).control(KeyCode.Y).control(KeyCode.Y);
    assertThat(told()).isEqualTo("Nothing to make again.");
    keys.control(KeyCode.Z);
    save();
    Vehicle filled = saved();
    for (String id : List.of("F3", "F4", "F5")) {
      assertThat(filled.requirePart(id).spec()).isEqualTo(start.requirePart("F3").spec());
    }
    assertThat(filled.part("G4")).isPresent();
  }

  @Test
  void aPartIsRenamedACircuitDuplicatedAndMovedAndFound() throws Exception {
    open();
    keys.control(KeyCode.F).type("beacon fuse").press(KeyCode.ENTER);
    until(() -> rowOf("F3") >= 0);
    keys.control(KeyCode.R);
    until(() -> scene.lookup("#ask-field") != null);
    keys.type("F33").press(KeyCode.ENTER);
    until(() -> rowOf("F33") >= 0 && rowOf("F3") < 0);

    keys.control(KeyCode.F).type("Beacon").press(KeyCode.ENTER);
    until(() -> rowOf("beacon") >= 0);
    keys.control(KeyCode.T).type("Second beacon").press(KeyCode.ENTER);
    until(() -> grid().getItems().stream().anyMatch(r -> r.cells().contains("Second beacon")));
    assertThat(told()).contains("parts of its own").contains("check that its rating bears both");

    keys.control(KeyCode.M).type("F4").press(KeyCode.ENTER);
    until(() -> told().contains("now feeds it"));
    save();
    Vehicle v = saved();
    assertThat(v.part("F3")).isEmpty();
    assertThat(v.circuits()).anyMatch(c -> c.name().equals("Second beacon"));
  }

  @Test
  void theVehicleIsNamedAndItsSupplyChangedAndTakenBack() throws Exception {
    open();
    keys.control(KeyCode.B);
    until(() -> scene.lookup("#ask-field") != null);
    keys.type("Yard pumper").press(KeyCode.ENTER);
    until(() -> state().startsWith("Yard pumper: "));

    keys.control(KeyCode.G).type("24 v, pos").press(KeyCode.ENTER);
    until(() -> told().contains("for 24 V. Wires stay on the posts they lie on: the positive"));
    save();
    assertThat(saved().systemVolts()).isEqualTo(24);
    assertThat(saved().grounded()).isEqualTo(GroundedPole.POSITIVE);

    keys.control(KeyCode.Z);
    until(() -> told().equals("Taken back: 24 V, positive post grounded"));
    save();
    assertThat(saved()).isEqualTo(Bench.vehicle("pumper").withName("Yard pumper"));
  }

  @Test
  void theSecondWindowIsToldAndItsWorkGoesUnderAnotherName() throws Exception {
    VehicleFile.write(Bench.vehicle("pumper"), file());
    try (VehicleStore.Opened elsewhere = new VehicleFiles().open(file())) {
      assertThat(elsewhere.readOnly()).isEmpty();
      open();
      until(() -> told().startsWith("Look only:"));
      assertThat(state()).contains("look only");
      keys.control(KeyCode.DIGIT2);
      down("F3");
      keys.press(KeyCode.RIGHT).type("lamp fuse").press(KeyCode.ENTER);
      keys.control(KeyCode.S);
      until(() -> scene.lookup("#ask-field") != null);
      keys.type(folder.resolve("mine.json").toString()).press(KeyCode.ENTER);
      until(() -> state().endsWith(": saved"));
    }
    Vehicle mine = VehicleFile.read(folder.resolve("mine.json")).orThrow();
    assertThat(mine.requirePart("F3").name()).isEqualTo("lamp fuse");
    assertThat(saved().requirePart("F3").name()).isEqualTo("beacon fuse");
  }

  @Test
  void aPreviousVersionIsLookedAtBroughtBackAndSaved() throws Exception {
    open();
    Vehicle start = saved();
    keys.control(KeyCode.DIGIT2);
    down("F3");
    keys.press(KeyCode.RIGHT).type("lamp fuse").press(KeyCode.ENTER);
    save();
    keys.alt(KeyCode.DIGIT4);
    until(() -> scene.lookup("#earlier") instanceof ListView<?> l && l.getItems().size() == 1);
    keys.type("l");
    until(() -> told().contains("differs in: F3"));
    keys.press(KeyCode.ENTER);
    until(() -> state().contains("not saved"));
    save();
    assertThat(saved()).isEqualTo(start);
  }

  /** The program ends without a word; what was typed is there again. */
  @Test
  void workThatWasNotSavedComesBack() throws Exception {
    open();
    keys.control(KeyCode.DIGIT2);
    down("F3");
    keys.press(KeyCode.RIGHT).type("lamp fuse").press(KeyCode.ENTER);
    until(() -> copies() == 1);
    assertThat(saved().requirePart("F3").name()).isEqualTo("beacon fuse");

    try (VehicleStore.Opened again = new VehicleFiles().open(file())) {
      assertThat(again.readOnly()).as("the window still holds it").isPresent();
    }
    assertThat(new UnsavedFiles(folder.resolve("unsaved")).kept())
        .singleElement()
        .satisfies(
            k -> {
              assertThat(k.name()).isEqualTo(file().toRealPath().toString());
              assertThat(k.vehicle().requirePart("F3").name()).isEqualTo("lamp fuse");
            });
    save();
    until(() -> copies() == 0);
  }

  private long copies() throws IOException, Problem {
    Path unsaved = folder.resolve("unsaved");
    if (!Files.isDirectory(unsaved)) {
      return 0;
    }
    try (var files = Files.list(unsaved)) {
      return files.filter(f -> f.toString().endsWith(".json")).count();
    }
  }

  @Test
  void whatKeepsItFromBeingSolvedIsListedAndGoneTo() throws Exception {
    open();
    keys.control(KeyCode.DIGIT5);
    down("W9");
    keys.control(KeyCode.DELETE);
    until(() -> ((ListView<?>) todo()).getItems().size() > 0);
    assertThat(((ListView<?>) todo()).getItems().toString()).contains("L5");
    keys.press(KeyCode.ENTER);
    until(() -> !grid().getItems().get(0).id().orElse("").startsWith("W"));
  }

  private javafx.scene.Node todo() {
    if (scene.lookup("#todo-list") == null) {
      keys.alt(KeyCode.DIGIT3);
    }
    return scene.lookup("#todo-list");
  }
}
