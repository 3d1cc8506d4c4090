package loopwright.ui.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.sheet.Trailer;
import loopwright.casework.sheet.WireSheet;
import loopwright.io.sheet.SheetFiles;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.ui.Worker;
import loopwright.ui.wiring.Keeping;
import loopwright.ui.wiring.WiringScreen;
import loopwright.ui.wiring.WiringViewModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A wire list taken and given out by keyboard, from the file to one edit that undo takes back. */
@ExtendWith(ApplicationExtension.class)
class SheetKeyboardTest {
  @TempDir private Path folder;
  private final Vehicle trailer = Trailer.vehicle();
  private WiringViewModel wiring;
  private WiringScreen screen;

  @Start
  void start(Stage stage) {
    Worker worker = new Worker(Runnable::run, Runnable::run);
    wiring = new WiringViewModel(Keeping.NOWHERE, worker, (name, vehicle) -> {});
    wiring.takeUp("trailer", trailer);
    screen =
        new WiringScreen(
            wiring,
            new ReadOnlyDoubleWrapper(16).getReadOnlyProperty(),
            List.of(new SheetPage(new SheetFiles()), new ListOutPage(new SheetFiles())));
    stage.setScene(new Scene(screen, 1280, 755));
    stage.show();
  }

  private Vehicle now() {
    return wiring.vehicleProperty().get().orElseThrow();
  }

  private void open(FxRobot robot, String text) throws Exception {
    Path list = Files.writeString(folder.resolve("list.csv"), text);
    robot.interact(screen::takeFocus);
    robot.press(KeyCode.CONTROL).type(KeyCode.I).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(() -> this.<TextField>find("#sheet-path").setText(list.toString()));
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
  }

  @SuppressWarnings("unchecked")
  private <T extends Node> T find(String id) {
    return (T) screen.lookup(id);
  }

  private List<String> tones() {
    return this.<ListView<SheetViewModel.Line>>find("#sheet-lines").getItems().stream()
        .map(l -> l.tone() + " " + l.row())
        .toList();
  }

  @Test
  void aListIsLookedAtTakenByEnterAndTakenBackByOneUndo(FxRobot robot) throws Exception {
    open(robot, "wire,from,to,size,length,colour\nW7,F3.load,L1.in,16 AWG,1 m,blue\nW2,,,,,red\n");
    assertThat(tones()).startsWith("CHANGED 3", "NEW 2");
    assertThat(this.<Label>find("#sheet-counts").getText())
        .isEqualTo("1 new, 1 changed, 0 as they are, 0 rows refused");
    assertThat(now()).as("nothing happens by looking").isEqualTo(trailer);
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(now().part("W7")).isPresent();
    assertThat(((PartSpec.Wire) now().requirePart("W2").spec()).colour()).isEqualTo("red");
    assertThat(screen.lookup("#sheet")).as("back at the tables").isNull();
    assertThat(wiring.toldProperty().get().words()).contains("1 wires new, 1 changed");
    robot.interact(wiring::undo);
    assertThat(now()).isEqualTo(trailer);
  }

  @Test
  void whatIsRefusedIsShownInItsRowAndNothingIsTaken(FxRobot robot) throws Exception {
    open(robot, "wire,from,to,size,length\nW7,F3.load,L1.in,fat,1 m\nW8,F3.load,L1.in,16 AWG,1\n");
    assertThat(tones()).startsWith("REFUSED 2", "NEW 3");
    assertThat(screen.lookupAll(".sheet-cell.refused")).hasSize(1);
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(now()).isEqualTo(trailer);
    assertThat(this.<Label>find("#sheet-problem").getText()).contains("Nothing is taken");
    robot.type(KeyCode.DOWN);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(screen.lookupAll(".sheet-cell")).hasSize(5);
    assertThat(screen.lookupAll(".sheet-cell.refused")).isEmpty();
    robot.type(KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(screen.lookup("#sheet")).isNull();
  }

  @Test
  void aColumnIsTakenOtherwiseByKeyboardAndMissingPartsAreAllowed(FxRobot robot) throws Exception {
    open(robot, "nr;a;to;size;length\nW7;F9.load;S1.in;16 AWG;1 m\n");
    assertThat(tones()).startsWith("REFUSED 2");
    ComboBox<?> from = (ComboBox<?>) List.copyOf(screen.lookupAll(".combo-box")).get(1);
    robot.interact(from::requestFocus);
    for (int i = 0; i < 5; i++) {
      robot.type(KeyCode.DOWN);
    }
    WaitForAsyncUtils.waitForFxEvents();
    ComboBox<?> again = (ComboBox<?>) List.copyOf(screen.lookupAll(".combo-box")).get(1);
    assertThat(again.getValue()).isEqualTo("from");
    assertThat(again.isFocused()).as("the hand stays").isTrue();
    assertThat(tones()).startsWith("REFUSED 2");
    robot.press(KeyCode.ALT).type(KeyCode.P).release(KeyCode.ALT);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(tones()).startsWith("ADDED 2", "NEW 2");
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(now().requirePart("F9").name()).isEqualTo("fuse, guessed");
  }

  @Test
  void aTableIsPastedAndAListGivenOutComesBackUnchanged(FxRobot robot) throws Exception {
    robot.interact(screen::takeFocus);
    robot.press(KeyCode.CONTROL).type(KeyCode.E).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
    Path out = folder.resolve("out.csv");
    robot.interact(() -> this.<TextField>find("#list-out-path").setText(out.toString()));
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(this.<Label>find("#list-out-told").getText()).contains(out.toString());
    assertThat(new SheetFiles().read(out).text()).isEqualTo(WireSheet.text(trailer));
    robot.press(KeyCode.CONTROL).type(KeyCode.C).release(KeyCode.CONTROL);
    robot.interact(
        () ->
            assertThat(Clipboard.getSystemClipboard().getString())
                .startsWith("wire\tkind\tname\t"));
    robot.type(KeyCode.ESCAPE);
    robot.interact(
        () ->
            Clipboard.getSystemClipboard()
                .setContent(Map.of(DataFormat.PLAIN_TEXT, "wire\tcolour\nW2\tplaid\n")));
    robot.press(KeyCode.CONTROL).type(KeyCode.I).release(KeyCode.CONTROL);
    robot.press(KeyCode.CONTROL).type(KeyCode.V).release(KeyCode.CONTROL);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(tones()).startsWith("CHANGED 2");
  }
}
