package loopwright.ui.find;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicleLibrary;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A whole case, from the vehicle to the proven repair, played on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class KeyboardCaseTest {
  private final ExecutorService background = Executors.newCachedThreadPool();
  private final FakeCaseDesk desk = new FakeCaseDesk(200);
  private Stage stage;

  @Start
  void start(Stage stage) {
    this.stage = stage;
    MainWindow window =
        new MainWindow(
            new Fittings(
                desk,
                new FakeVehicleLibrary(),
                new FakeLoops(),
                FakeMeters.both(),
                new FakePreferences(),
                background));
    window.show(stage);
  }

  @AfterEach
  void stopBackground() {
    background.shutdownNow();
  }

  private String text(String id) {
    return stage.getScene().lookup(id) instanceof Label label ? label.getText() : "";
  }

  private String field() {
    return stage.getScene().lookup("#value") instanceof TextField f ? f.getText() : "";
  }

  private boolean treeShown() {
    Node tree = stage.getScene().lookup("#tree");
    return tree != null && tree.isVisible();
  }

  private boolean fieldHasFocus() {
    return stage.getScene().lookup("#value") == stage.getScene().getFocusOwner();
  }

  private void openBeacon(FxRobot robot) throws Exception {
    robot.type(KeyCode.ENTER);
    until(() -> stage.getScene().lookup("#circuits") != null);
    robot.type(KeyCode.ENTER);
    until(() -> stage.getScene().lookup("#complaint") != null);
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 1"));
  }

  private void value(FxRobot robot, KeyCode... keys) throws Exception {
    String before = text("#headline");
    robot.type(keys);
    WaitForAsyncUtils.waitForFxEvents();
    robot.type(KeyCode.ENTER);
    until(() -> !text("#headline").equals(before));
  }

  @Test
  void aCaseIsPlayedFromTheVehicleToTheProof(FxRobot robot) throws Exception {
    openBeacon(robot);
    assertThat(desk.opened()).hasSize(1);

    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
    assertThat(fieldHasFocus()).isTrue();

    robot.type(KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.PERIOD, KeyCode.DIGIT4, KeyCode.V);
    until(() -> field().equals("12.4 V"));
    until(() -> text("#entry-status").startsWith("12.4 V"));
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 3"));
    assertThat(text("#said")).contains("12.4 V");

    robot.type(KeyCode.W);
    until(() -> stage.getScene().lookup(".outcome") != null);
    robot.type(KeyCode.ESCAPE);
    until(() -> stage.getScene().lookup(".outcome") == null);

    robot.type(KeyCode.T);
    until(() -> treeShown());
    until(() -> text(".tree-next").startsWith("Then: "));
    robot.type(KeyCode.DOWN, KeyCode.DIGIT5);
    assertThat(field()).as("no key reaches what lies under the tree").isEmpty();
    robot.type(KeyCode.ESCAPE);
    until(() -> !treeShown());
    assertThat(fieldHasFocus()).isTrue();

    robot.type(KeyCode.F12);
    until(() -> stage.getScene().lookup(".if-not-lines .side-line") != null);
    robot.type(KeyCode.ESCAPE);
    until(() -> stage.getScene().lookup(".if-not-lines") == null);

    robot.type(KeyCode.C);
    until(() -> stage.getScene().lookup(".choice-button") != null);
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 4"));

    value(robot, KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.PERIOD, KeyCode.DIGIT3, KeyCode.V);
    robot.type(KeyCode.DOWN, KeyCode.RIGHT, KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 6"));

    robot.type(KeyCode.DIGIT1, KeyCode.PERIOD, KeyCode.DIGIT2, KeyCode.K, KeyCode.ENTER);
    until(() -> text("#verdict").contains("G4"));

    robot.type(KeyCode.F10);
    until(() -> text("#headline").startsWith("Before the end"));
    robot.type(KeyCode.ESCAPE);
    until(() -> text("#verdict").contains("G4"));

    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Prove the repair"));
    // It wasn't mended after all, and then it is.
    robot.type(KeyCode.D, KeyCode.DELETE);
    until(() -> text("#verdict").contains("G4"));
    assertThat(text("#said")).contains("taken back");
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Prove the repair"));
    robot.type(KeyCode.DIGIT3, KeyCode.DIGIT0, KeyCode.M, KeyCode.ENTER);
    until(() -> text("#headline").equals("Closed"));

    robot.type(KeyCode.F3);
    until(() -> stage.getScene().lookup("#complaint") != null);
  }

  @Test
  void aReadingIsCorrectedAndTakenBack(FxRobot robot) throws Exception {
    openBeacon(robot);
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
    value(robot, KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.PERIOD, KeyCode.DIGIT4, KeyCode.V);

    robot.type(KeyCode.E);
    until(() -> field().equals("12.4 V"));
    robot.type(KeyCode.BACK_SPACE, KeyCode.BACK_SPACE, KeyCode.DIGIT1, KeyCode.V);
    until(() -> field().equals("12.1 V"));
    robot.type(KeyCode.ENTER);
    until(() -> text("#said").contains("12.1 V"));

    robot.type(KeyCode.D, KeyCode.DELETE);
    until(() -> text("#said").contains("taken back"));
    until(() -> stage.getScene().lookup("#done").lookupAll(".chip").size() == 1);
  }

  @Test
  void theOnlyReadingOfWhatIsReadAgainIsTakenBackAndTheCheckIsAskedOnceMore(FxRobot robot)
      throws Exception {
    openBeacon(robot);
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
    robot.type(KeyCode.N);
    until(() -> text("#headline").equals("Again and again"));
    robot.type(KeyCode.DELETE);
    until(() -> text("#headline").equals("Check 1"));
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
  }

  @Test
  void smokeIsTwoKeysAndTheScreenSaysToIsolateTheBattery(FxRobot robot) throws Exception {
    openBeacon(robot);
    robot.type(KeyCode.H, KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Stop"));
    assertThat(stage.getScene().lookup("#make-safe").lookupAll(".make-safe-line"))
        .singleElement()
        .satisfies(l -> assertThat(((Label) l).getText()).startsWith("Isolate the battery"));
    assertThat(stage.getScene().lookup("#value")).isNull();
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("No check left"));
    robot.type(KeyCode.G);
    until(() -> text("#headline").equals("Check 1"));
  }

  @Test
  void aMeasurementOfOnesOwnIsTaken(FxRobot robot) throws Exception {
    openBeacon(robot);
    robot.type(KeyCode.A);
    until(() -> stage.getScene().lookup("#own-found") != null);
    robot.type(KeyCode.ENTER, KeyCode.ENTER);
    robot.write("g4.lug");
    robot.type(KeyCode.ENTER, KeyCode.ENTER);
    until(this::fieldHasFocus);
    robot.type(KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.V, KeyCode.ENTER);
    until(() -> text("#said").startsWith("12 V at G4.lug"));
  }

  @Test
  void aSecondLookIsAskedInPlace(FxRobot robot) throws Exception {
    openBeacon(robot);
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
    robot.type(KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.M, KeyCode.ENTER);
    until(() -> text("#entry-status").startsWith("Look again"));
    assertThat(text("#headline")).isEqualTo("Check 2");
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 3"));
  }

  @Test
  void lookAndTextSizeChangeOnTheirKeys(FxRobot robot) throws Exception {
    List<String> classes = stage.getScene().getRoot().getStyleClass();
    assertThat(classes).contains("look-paper");
    robot.type(KeyCode.F9);
    until(() -> classes.contains("look-night"));
    robot.type(KeyCode.F8);
    until(() -> stage.getScene().getRoot().getStyle().contains("20.0px"));
    robot.type(KeyCode.F1);
    until(() -> stage.getScene().lookup("#keys") != null);
    robot.type(KeyCode.ESCAPE);
    until(() -> stage.getScene().lookup("#library") != null);
  }
}
