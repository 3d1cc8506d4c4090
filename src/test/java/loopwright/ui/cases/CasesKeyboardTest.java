package loopwright.ui.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.ui.ReadyCases;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeCases;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.widget.KeyButton;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The list of cases by keyboard; it is read while the screen is already up. */
@ExtendWith(ApplicationExtension.class)
class CasesKeyboardTest {
  private final List<Runnable> background = new ArrayList<>();
  private final FakeCases cases = new FakeCases();
  private final FakePreferences preferences = new FakePreferences();
  private final List<Boolean> counting = new ArrayList<>();
  private final List<String> opened = new ArrayList<>();
  private CasesViewModel model;
  private CasesScreen screen;

  @Start
  void start(Stage stage) {
    model =
        new CasesViewModel(
            cases.shelfIn(Path.of("files")),
            new OwnRecordSwitch(preferences, counting::add),
            new Worker(background::add, Runnable::run));
    screen =
        new CasesScreen(
            model,
            kept -> opened.add(kept.caseId()),
            (row, photo) -> model.attach(photo),
            List.of(
                new ReadyCases.Entry("one", "First", "pumper", "A story."),
                new ReadyCases.Entry("two", "Second", "pumper", "Another.")),
            entry -> opened.add(entry.id()),
            new ReadOnlyDoubleWrapper(16));
    stage.setScene(new Scene(screen, 800, 600));
    stage.show();
  }

  private void run(FxRobot robot, Runnable what) {
    robot.interact(what);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private String focused() {
    return Optional.ofNullable(screen.getScene().getFocusOwner()).map(Node::getId).orElse("");
  }

  @Test
  void aKeptCaseComesBeforeOneToPractiseOn(FxRobot robot) {
    run(robot, screen::takeFocus);
    assertThat(focused()).isEqualTo("ready");
    run(robot, model::refresh);
    run(robot, () -> background.forEach(Runnable::run));
    assertThat(focused()).isEqualTo("kept");
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(opened).containsExactly("case-2");
  }

  private void read(FxRobot robot) {
    run(robot, screen::takeFocus);
    run(robot, model::refresh);
    finish(robot);
  }

  private void finish(FxRobot robot) {
    run(
        robot,
        () -> {
          List<Runnable> now = List.copyOf(background);
          background.clear();
          now.forEach(Runnable::run);
        });
  }

  private List<String> titles() {
    return model.shown().stream().map(row -> row.caseId() + " " + row.state()).toList();
  }

  private String told() {
    return ((Label) screen.lookup("#cases-told")).getText();
  }

  @Test
  void casesAreLookedForAndThePartsHistoryIsTold(FxRobot robot) {
    read(robot);
    assertThat(titles())
        .containsExactly("case-2 found", "case-1 mended and proven", "case-0 can’t be read");
    robot.push(KeyCode.CONTROL, KeyCode.F);
    run(robot, () -> {});
    robot.write("G4 proven");
    run(robot, () -> {});
    assertThat(titles()).containsExactly("case-1 mended and proven");
    robot.push(KeyCode.CONTROL, KeyCode.F);
    robot.write("G4");
    run(robot, () -> {});
    assertThat(titles()).hasSize(2);
    assertThat(model.shown().get(1).lines())
        .contains(
            "G4 read: 12.7 V",
            "G4 found: ground bolted on paint, 4.5 ohm to 30 kohm",
            "G4 mended",
            "G4 proven by the readings after it");
    robot.push(KeyCode.DOWN).push(KeyCode.DOWN).push(KeyCode.ENTER);
    run(robot, () -> {});
    assertThat(opened).containsExactly("case-1");
    robot.push(KeyCode.CONTROL, KeyCode.F).push(KeyCode.ESCAPE);
    run(robot, () -> {});
    assertThat(titles()).hasSize(3);
    assertThat(focused()).isEqualTo("kept");
  }

  @Test
  void theChosenCaseIsPrintedAndAllShownAreExported(FxRobot robot) {
    read(robot);
    robot.write("p");
    finish(robot);
    assertThat(told()).isEqualTo("Written: " + Path.of("files", "record"));
    robot.write("e");
    finish(robot);
    assertThat(told()).startsWith("2 cases written: ").contains("json").contains("csv");
    assertThat(cases.done)
        .containsExactly("RECORD [case-2]", "JSON [case-2, case-1]", "CSV [case-2, case-1]");
  }

  @Test
  void theOwnRecordIsSwitchedOffAndStaysOff(FxRobot robot) {
    read(robot);
    robot.write("o");
    run(robot, () -> {});
    assertThat(((KeyButton) screen.lookup("#own-record")).getText()).isEqualTo("Own record: no");
    assertThat(told()).startsWith("Failures count as often as the tables say");
    assertThat(counting).containsExactly(true, false);
    new OwnRecordSwitch(preferences, counting::add);
    assertThat(counting).as("found again next time").containsExactly(true, false, false);
  }

  @Test
  void aPhotoIsPutToTheChosenCaseAndAnythingElseIsRefused(FxRobot robot) {
    read(robot);
    robot.write("a");
    run(robot, () -> {});
    assertThat(focused()).isEqualTo("cases-photo");
    robot.write("notes.txt").push(KeyCode.ENTER);
    finish(robot);
    assertThat(told()).contains("notes.txt").contains("a picture");
    assertThat(focused()).isEqualTo("kept");
    robot.write("a");
    robot.write("stud.jpg").push(KeyCode.ENTER);
    finish(robot);
    assertThat(told()).isEqualTo("stud.jpg is kept with the case.");
    assertThat(cases.done).containsExactly("photo stud.jpg to case-2");
    robot.write("a").push(KeyCode.ESCAPE);
    run(robot, () -> {});
    assertThat(focused()).isEqualTo("kept");
  }

  @Test
  void whoeverHasMovedOnAlreadyIsLeftThere(FxRobot robot) {
    run(robot, screen::takeFocus);
    run(robot, model::refresh);
    robot.type(KeyCode.DOWN);
    run(robot, () -> background.forEach(Runnable::run));
    assertThat(focused()).isEqualTo("ready");
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(opened).containsExactly("two");
  }
}
