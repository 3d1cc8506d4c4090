package loopwright.ui.explain;

import static loopwright.ui.snapshot.TestWindow.text;
import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeoutException;
import javafx.scene.AccessibleRole;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.Slider;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.Phrases;
import loopwright.casework.explain.ExplainDesk;
import loopwright.evidence.Bench;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The explaining pages by the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class ExplainKeyboardTest {
  private static final ExplainDesk DESK =
      new ExplainDesk(Bench.KNOWLEDGE, new Phrases(Locale.ENGLISH));

  @RegisterExtension private final TestWindow window = new TestWindow();
  private MainWindow shown;
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private void open(int width, int height) throws TimeoutException {
    scene =
        window.open(
            () -> {
              shown =
                  new MainWindow(
                      window
                          .fittings()
                          .proofs(List.of(window.grounds()))
                          .practise(TestWindow.drills())
                          .explain(DESK));
              return shown;
            },
            width,
            height);
    keys = new Keyboard(scene);
    keys.takeVehicle();
  }

  private void untilTitle(String title) throws TimeoutException {
    until(() -> text(scene, "#explain-title").equals(title));
  }

  @Test
  void f1OpensThePageOfThePlace() throws TimeoutException {
    open(1280, 800);
    f1Opens("Why a loop", () -> keys.press(KeyCode.F2));
    f1Opens("Why a loop", () -> keys.press(KeyCode.F3));
    f1Opens("Loaded and unloaded", () -> keys.press(KeyCode.F4));
    f1Opens("Where to measure next", () -> keys.shift(KeyCode.F4));
    f1Opens("Why a fuse blows", () -> keys.press(KeyCode.F5));
    f1Opens("Relays and their terminal numbers", () -> keys.press(KeyCode.F6));
    f1Opens("Grounds and milliohms", () -> keys.press(KeyCode.F7));
  }

  private void f1Opens(String title, Runnable place) throws TimeoutException {
    place.run();
    keys.press(KeyCode.F1);
    untilTitle(title);
    keys.press(KeyCode.F1);
    until(() -> scene.lookup("#keys") != null);
    keys.press(KeyCode.F1);
    until(() -> scene.lookup("#keys") == null && scene.lookup("#explain") == null);
  }

  @Test
  void f1InACaseOpensThePageOfTheCheck() throws TimeoutException {
    open(1280, 800);
    keys.press(KeyCode.ENTER, KeyCode.ENTER);
    until(() -> text(scene, "#headline").equals("Check 1"));
    keys.type("1");
    until(() -> text(scene, "#headline").equals("Check 2"));
    keys.press(KeyCode.F1);
    untilTitle("Volts to ground and volts across");
    keys.press(KeyCode.ESCAPE);
    until(() -> text(scene, "#headline").equals("Check 2"));
  }

  @Test
  void aControlIsMovedAndTheFiguresFollow() throws TimeoutException {
    open(1280, 800);
    keys.press(KeyCode.F5, KeyCode.F1);
    untilTitle("Why a fuse blows");
    assertThat(scene.getFocusOwner().getId()).isEqualTo("explain-loads");
    until(() -> figure("Fuse").equals("whole"));
    keys.press(KeyCode.RIGHT, KeyCode.RIGHT);
    until(() -> figure("Fuse").equals("blown"));
    keys.press(KeyCode.LEFT);
    until(() -> figure("Fuse").equals("whole"));
    keys.press(KeyCode.DOWN);
    assertThat(scene.getFocusOwner().getId()).isEqualTo("explain-chafe");
    keys.press(KeyCode.END);
    until(() -> figure("Fuse").equals("blown"));
    assertThat(text(scene, "#explain-words")).contains("blown");
    assertThat(scene.getFocusOwner().getAccessibleText())
        .isEqualTo("Wire chafed, ohms to metal: 100 mohm");
    keys.press(KeyCode.PAGE_DOWN);
    untilTitle("Relays and their terminal numbers");
    assertThat(scene.getFocusOwner().getId()).isEqualTo("explain-switch");
    keys.press(KeyCode.PAGE_UP);
    untilTitle("Why a fuse blows");
    until(() -> figure("Fuse").equals("whole"));
  }

  private String figure(String name) {
    return scene.lookup("#explain-figures").lookupAll(".explain-value").stream()
        .map(Label.class::cast)
        .filter(l -> l.getAccessibleText().startsWith(name + ": "))
        .map(Labeled::getText)
        .findFirst()
        .orElse("");
  }

  @Test
  void aPageIsFoundByAWordOfTheTrade() throws TimeoutException {
    open(1280, 800);
    keys.press(KeyCode.F1);
    untilTitle("Why a loop");
    keys.control(KeyCode.F).type("phantom");
    untilTitle("Ghost volts");
    keys.press(KeyCode.ENTER);
    until(() -> scene.getFocusOwner() instanceof Slider);
    assertThat(scene.getFocusOwner().getAccessibleRole()).isEqualTo(AccessibleRole.SLIDER);
  }
}
