package loopwright.ui.ground;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.feed.MeterState;
import loopwright.casework.prove.ProofEvent;
import loopwright.evidence.Bench;
import loopwright.meter.MeterFunction;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeFeed;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.find.MeterViewModel;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestScreen;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The tractor's grounds, proven on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class GroundKeyboardTest {
  private final ExecutorService background = Executors.newCachedThreadPool();
  private final Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();
  private GroundViewModel model;
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    model =
        new GroundViewModel(
            Bench.groundDesk(proofs),
            new FakePreferences(),
            new Worker(background, Platform::runLater));
    GroundScreen screen = new GroundScreen(model, new ReadOnlyDoubleWrapper(TestScreen.EM));
    scene = TestScreen.show(stage, screen);
  }

  @AfterEach
  void stopBackground() {
    background.shutdownNow();
  }

  private void open(String vehicle) throws TimeoutException {
    keys = new Keyboard(scene);
    Platform.runLater(
        () -> {
          model.show(Bench.vehicle(vehicle));
          model.opened();
        });
    settled();
  }

  private void settled() throws TimeoutException {
    until(() -> model.viewProperty().get().isPresent());
    WaitForAsyncUtils.waitForFxEvents(3);
  }

  private void go(String ground) throws TimeoutException {
    while (!model.chosenProperty().get().orElse("").equals(ground)) {
      String before = model.chosenProperty().get().orElse("");
      keys.press(KeyCode.DOWN);
      assertThat(model.chosenProperty().get().orElse("")).isNotEqualTo(before);
    }
    settled();
  }

  private String text(String id) {
    return scene.lookup(id) instanceof Label label ? label.getText() : "";
  }

  private String said() throws TimeoutException {
    until(() -> scene.lookup("#ground-verdict") != null || !text("#ground-told").isEmpty());
    WaitForAsyncUtils.waitForFxEvents(3);
    return text("#ground-verdict") + text("#ground-told");
  }

  @Test
  void aReadingIsTypedJudgedAndKept() throws TimeoutException {
    open("tractor");
    go("G4");
    Snapshots.take(scene, "ground-proof");
    keys.type("9.1");
    keys.press(KeyCode.ENTER);
    assertThat(said()).contains("with its unit");
    keys.type(" mV");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#ground-verdict") != null);
    assertThat(said()).startsWith("Good: 1.3 to 1.8 mohm; limit 17 mohm");
    Snapshots.take(scene, "ground-good");
    assertThat(proofs.read("tractor").events()).hasSize(1);
    ProofEvent.GroundProved kept = (ProofEvent.GroundProved) proofs.read("tractor").events().get(0);
    assertThat(kept.ground()).isEqualTo("G4");
    assertThat(kept.verdict()).isEqualTo(ProofEvent.Verdict.GOOD);
    // Enter goes on to one that isn't proven.
    keys.press(KeyCode.ENTER);
    until(() -> !model.chosenProperty().get().orElse("").equals("G4"));
  }

  @Test
  void enterTakesWhatTheMeterSteadilyReadsOnce() throws TimeoutException {
    FakeFeed feed = new FakeFeed();
    MeterViewModel meter = new MeterViewModel(new FakePreferences());
    meter.through(feed);
    meter.portProperty().set("tcp:127.0.0.1:5025");
    meter.connect();
    model.readBy(meter);
    open("tractor");
    go("G4");
    feed.state = new MeterState.Moving("0.0091 V");
    keys.press(KeyCode.ENTER);
    assertThat(said()).contains("isn’t steady");
    assertThat(proofs.read("tractor").events()).isEmpty();
    feed.state = new MeterState.Steady("0.0091 V");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#ground-verdict") != null);
    assertThat(said()).startsWith("Good: 1.3 to 1.8 mohm; limit 17 mohm");
    assertThat(feed.asked).containsOnly(MeterFunction.VOLTS_DC);
    assertThat(proofs.read("tractor").events()).hasSize(1);
    keys.press(KeyCode.ENTER);
    until(() -> !model.chosenProperty().get().orElse("").equals("G4"));
  }

  @Test
  void aBadGroundSaysWhatToDoAndAGreaterLoadCanBeAskedFor() throws TimeoutException {
    open("truck");
    go("STR1");
    // 40 mV at the 7 A of the headlamps are 5.7 mohm, limit 2.
    keys.type("40mV");
    keys.press(KeyCode.ENTER);
    assertThat(said()).startsWith("Bad");
    Snapshots.take(scene, "ground-bad");
    double lamps =
        model
            .viewProperty()
            .get()
            .orElseThrow()
            .proof()
            .orElseThrow()
            .set()
            .setting()
            .positions()
            .size();
    keys.type("g");
    settled();
    assertThat(model.viewProperty().get().orElseThrow().proof().orElseThrow().works()).isNotEmpty();
    assertThat(lamps).isPositive();
    assertThat(scene.lookup("#ground-verdict")).isNull();
  }

  @Test
  void ohmsAreJudgedByTheLeadsOwn() throws TimeoutException {
    open("tractor");
    go("G2");
    keys.type("o");
    assertThat(scene.getFocusOwner()).isInstanceOf(TextField.class);
    keys.type("0.3");
    keys.press(KeyCode.ENTER);
    keys.type("OL");
    keys.press(KeyCode.ENTER);
    assertThat(said()).startsWith("Bad");
    keys.type("d");
    WaitForAsyncUtils.waitForFxEvents(3);
    Snapshots.take(scene, "ground-ohms");
  }

  @Test
  void crankingShowsItsCautionsFirst() throws TimeoutException {
    open("pumper");
    go("STR2");
    Snapshots.take(scene, "ground-cranking");
    List<String> cautions =
        model.viewProperty().get().orElseThrow().proof().orElseThrow().cautions();
    assertThat(cautions).anyMatch(c -> c.contains("Out of gear"));
    assertThat(scene.getRoot().lookupAll(".caution")).hasSize(cautions.size());
  }
}
