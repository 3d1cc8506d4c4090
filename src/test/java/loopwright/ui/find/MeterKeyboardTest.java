package loopwright.ui.find;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.io.instrument.Instruments;
import loopwright.io.instrument.SimulatedInstrument;
import loopwright.ui.Preferences;
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

/** A meter's port is typed and its readings are taken, on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class MeterKeyboardTest {
  private final ExecutorService background = Executors.newCachedThreadPool();
  private final FakePreferences preferences = new FakePreferences();
  private final AtomicBoolean moving = new AtomicBoolean(true);
  private final AtomicReference<Double> still = new AtomicReference<>(12.41);
  private final AtomicInteger readings = new AtomicInteger();
  private SimulatedInstrument meter;
  private Stage stage;

  @Start
  void start(Stage stage) throws Exception {
    this.stage = stage;
    meter =
        SimulatedInstrument.scpi(
            c ->
                String.format(
                    Locale.ROOT,
                    "%.2f V\n",
                    moving.get() ? 10 + readings.incrementAndGet() % 3 : still.get()));
    MainWindow window =
        new MainWindow(
            new Fittings(
                    new FakeCaseDesk(50),
                    new FakeVehicleLibrary(),
                    new FakeLoops(),
                    FakeMeters.both(),
                    preferences,
                    background)
                .ownMeters(new Instruments()));
    window.show(stage);
  }

  @AfterEach
  void stop() throws Exception {
    meter.close();
    background.shutdownNow();
  }

  private String text(String id) {
    return stage.getScene().lookup(id) instanceof Label label ? label.getText() : "";
  }

  private boolean focused(String id) {
    return stage.getScene().lookup(id) == stage.getScene().getFocusOwner();
  }

  private String chart() {
    Node chart = stage.getScene().lookup("#log-chart");
    return chart == null ? "" : chart.getAccessibleText();
  }

  private String port() {
    return stage.getScene().lookup("#meter-port") instanceof TextField f ? f.getText() : "";
  }

  @Test
  void aPortIsTypedAndEnterTakesWhatTheMeterSteadilyReads(FxRobot robot) throws Exception {
    robot.type(KeyCode.ENTER);
    until(() -> stage.getScene().lookup("#circuits") != null);
    robot.type(KeyCode.ENTER);
    until(() -> stage.getScene().lookup("#complaint") != null);
    robot.type(KeyCode.TAB);
    until(() -> focused("#meter-port"));
    robot.write("tcp:127.0.0.1:" + meter.port());
    robot.type(KeyCode.LEFT, KeyCode.RIGHT);
    until(() -> port().equals("tcp:127.0.0.1:" + meter.port()));
    robot.type(KeyCode.ENTER);
    until(() -> focused("#complaint-words"));
    assertThat(preferences.read(Preferences.Item.METER_PORT)).contains(port());
    until(() -> text("#meter-status").contains("moves"));

    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 1"));
    robot.type(KeyCode.DIGIT1);
    until(() -> text("#headline").equals("Check 2"));
    until(() -> text("#meter-status").endsWith("moves; hold the leads still"));
    robot.type(KeyCode.ENTER);
    until(() -> text("#entry-status").contains("isn’t steady"));
    moving.set(false);
    until(() -> text("#meter-status").equals("meter: 12.41 V, steady: Enter takes it"));
    robot.type(KeyCode.ENTER);
    until(() -> text("#headline").equals("Check 3"));
    assertThat(text("#said")).contains("12.41 V");

    robot.type(KeyCode.N);
    until(() -> text("#headline").equals("Again and again"));
    still.set(3.2);
    until(() -> chart().contains("2 readings") && chart().contains("3.20 V and 12.41 V"));
    still.set(12.4);
    until(() -> chart().contains("3 readings"));
    assertThat(chart()).contains("It came and went.");
    assertThat(stage.getScene().getRoot().lookupAll(".log-bad")).as("one cross").hasSize(2);
    assertThat(stage.getScene().getRoot().lookupAll(".log-good")).hasSize(2);
    robot.type(KeyCode.ESCAPE);
    until(() -> !text("#headline").equals("Again and again"));
    assertThat(chart()).isEmpty();
  }
}
