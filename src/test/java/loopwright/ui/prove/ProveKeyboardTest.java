package loopwright.ui.prove;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.CaseDesk;
import loopwright.casework.feed.MeterState;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProveView;
import loopwright.evidence.Bench;
import loopwright.meter.MeterFunction;
import loopwright.ui.Look;
import loopwright.ui.Preferences;
import loopwright.ui.TextSize;
import loopwright.ui.fake.FakeFeed;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.Shed;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestPages;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** A vehicle's first power on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class ProveKeyboardTest {
  @RegisterExtension final TestWindow window = new TestWindow();
  private final Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();
  private final CaseDesk desk = Bench.desk();
  private Optional<String> port = Optional.empty();
  private final FakeFeed feed = new FakeFeed();
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private void open(String vehicle, Look look, TextSize size, int width, int height)
      throws Exception {
    FakePreferences preferences = new FakePreferences();
    port.ifPresent(p -> preferences.keep(Preferences.Item.METER_PORT, p));
    scene =
        window.open(
            () -> {
              MainWindow made =
                  new MainWindow(
                      new Fittings(
                              desk,
                              new Shed(Bench.vehicle(vehicle)),
                              new FakeLoops(),
                              FakeMeters.both(),
                              preferences,
                              window.background())
                          .ownMeters(feed)
                          .proofs(List.of(TestPages.proving(window, desk, proofs))));
              made.shell().lookProperty().set(look);
              made.shell().textSizeProperty().set(size);
              return made;
            },
            width,
            height);
    keys = new Keyboard(scene);
    keys.takeVehicle();
    keys.press(KeyCode.F7);
    until(() -> scene.lookup("#prove-headline") != null);
  }

  private String text(String id) {
    return TestWindow.text(scene, id);
  }

  /** Types an answer and waits for the next step. */
  private void answer(String typed) throws Exception {
    String before = text("#prove-headline");
    keys.type(typed);
    if (!typed.matches("[123]")) {
      keys.press(KeyCode.ENTER);
    }
    until(() -> !text("#prove-headline").equals(before));
  }

  private ProveView.State state(String title) {
    ListView<?> list = (ListView<?>) scene.lookup("#prove-list");
    return list.getItems().stream()
        .map(ProveView.Item.class::cast)
        .filter(i -> i.title().equals(title))
        .findFirst()
        .orElseThrow()
        .state();
  }

  private void supply() throws Exception {
    answer("1");
    answer("0.00v");
    answer("l");
    for (int metal = 0; metal < 3; metal++) {
      answer("0v");
      answer("0.3o");
    }
    answer("1");
    answer("-6.3v");
    answer("-6.31v");
  }

  @Test
  void enterTakesWhatTheMeterSteadilyReads() throws Exception {
    port = Optional.of("tcp:127.0.0.1:5025");
    open("tractor", Look.PAPER, TextSize.NORMAL, 1280, 800);
    answer("1");
    keys.press(KeyCode.ENTER);
    assertThat(text("#prove-told")).contains("isn’t steady");
    feed.state = new MeterState.Steady("0.00 V");
    answer("");
    assertThat(text("#prove-headline")).isEqualTo("Battery and grounds: 3 of 12");
    assertThat(feed.asked).contains(MeterFunction.VOLTS_DC);
    answer("l");
    assertThat(text("#prove-headline")).isEqualTo("Battery and grounds: 4 of 12");
  }

  @Test
  void aCircuitIsProvenAndAFaultGoesToItsCaseWithTheReadings() throws Exception {
    open("tractor", Look.PAPER, TextSize.NORMAL, 1280, 800);
    assertThat(text("#prove-headline")).isEqualTo("Battery and grounds: 1 of 12");
    Snapshots.take(scene, "50-prove-first");
    supply();
    assertThat(state("Battery and grounds")).isEqualTo(ProveView.State.PROVEN);
    assertThat(text("#prove-headline")).startsWith("Oil").endsWith("1 of 10");

    answer("1");
    answer("0v");
    Snapshots.take(scene, "51-prove-ohms");
    answer("l");
    Snapshots.take(scene, "52-prove-fit");
    answer("1");
    answer("3");
    answer("0v");
    answer("-6.3v");
    answer("1");
    answer("20m");
    answer("5m");
    assertThat(text("#prove-said")).endsWith("is proven.");

    answer("1");
    answer("0v");
    keys.type("0.2o");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#prove-trouble") != null);
    assertThat(text("#prove-trouble")).startsWith("0.2 ohm; healthy is");
    Snapshots.take(scene, "53-prove-wrong");
    keys.type("f");
    until(() -> scene.lookup("#headline") != null);
    assertThat(scene.lookup("#done").lookupAll(".chip")).hasSize(2);
    keys.press(KeyCode.F7);
    until(() -> state("Tail lamp") == ProveView.State.FAILED);
    Snapshots.take(scene, "54-prove-failed");
    assertThat(proofs.read("tractor").events())
        .filteredOn(ProofEvent.Failed.class::isInstance)
        .hasSize(1);
    // Once it is mended it is proven again from the start.
    keys.type("n");
    until(() -> text("#prove-headline").equals("Tail lamp: 1 of 9"));
  }

  @Test
  void itGoesOnWhereItWasLeft() throws Exception {
    open("tractor", Look.PAPER, TextSize.NORMAL, 1280, 800);
    answer("1");
    answer("0.00v");
    open("tractor", Look.NIGHT, TextSize.LARGEST, 1024, 700);
    assertThat(text("#prove-headline")).isEqualTo("Battery and grounds: 3 of 12");
    Snapshots.take(scene, "55-prove-largest");
    keys.press(KeyCode.F12);
    Snapshots.take(scene, "56-prove-list-largest");
    keys.press(KeyCode.ENTER);
    assertThat(scene.lookup("#prove-now").isVisible()).isTrue();
  }
}
