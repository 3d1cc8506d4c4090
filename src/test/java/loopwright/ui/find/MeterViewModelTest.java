package loopwright.ui.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import loopwright.casework.feed.MeterState;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.meter.MeterFunction;
import loopwright.ui.Preferences;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeFeed;
import loopwright.ui.fake.FakeFindCase;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicles;
import org.junit.jupiter.api.Test;

class MeterViewModelTest {
  private final FakeFeed feed = new FakeFeed();
  private final FakePreferences preferences = new FakePreferences();
  private final MeterViewModel meter = new MeterViewModel(preferences);

  @Test
  void aPortIsConnectedOnceKeptAndLetGo() {
    meter.through(feed);
    meter.portProperty().set("nonsense");
    assertThat(meter.connect()).isFalse();
    assertThat(meter.problemProperty().get()).contains("tcp:HOST:PORT");
    meter.portProperty().set("tcp:127.0.0.1:5025");
    assertThat(meter.problemProperty().get()).isEmpty();
    assertThat(feed.opened).as("nothing is connected while it is typed").isEmpty();
    assertThat(meter.connect()).isTrue();
    assertThat(meter.connect()).isTrue();
    assertThat(feed.opened).containsExactly("tcp:127.0.0.1:5025");
    assertThat(preferences.read(Preferences.Item.METER_PORT)).contains("tcp:127.0.0.1:5025");
    assertThat(new MeterViewModel(preferences).portProperty().get())
        .isEqualTo("tcp:127.0.0.1:5025");
    meter.portProperty().set("");
    assertThat(meter.connect()).isTrue();
    assertThat(feed.closed).isEqualTo(1);
    assertThat(meter.saidProperty().get()).isEmpty();
  }

  private CaseViewModel aCase() {
    FakeFindCase found = new FakeFindCase(FakeVehicles.pumper(), "Beacon dead");
    return new CaseViewModel(
        found,
        found.view(),
        found.points(),
        found.settings(),
        Optional.empty(),
        meter,
        new Worker(Runnable::run, Runnable::run));
  }

  @Test
  void enterTakesTheSteadyReadingAndNothingElse() {
    meter.through(feed);
    meter.portProperty().set("tcp:127.0.0.1:5025");
    meter.connect();
    CaseViewModel model = aCase();
    model.lookAtMeter();
    assertThat(feed.asked).as("a look needs no meter").isEmpty();
    model.pick(Seen.CLICKS);
    feed.state = new MeterState.Moving("12.41 V");
    model.lookAtMeter();
    assertThat(feed.asked).containsOnly(MeterFunction.VOLTS_DC);
    assertThat(meter.saidProperty().get()).contains("12.41 V, moves");
    model.count();
    assertThat(model.view().readings()).hasSize(1);
    assertThat(model.problemProperty().get()).contains("isn’t steady");
    feed.state = new MeterState.Steady("12.41 V");
    model.lookAtMeter();
    assertThat(meter.steadyProperty().get()).isTrue();
    model.count();
    assertThat(model.view().readings()).hasSize(2);
    assertThat(model.view().readings().get(1).value()).isEqualTo("12.41 V");
    model.count();
    assertThat(model.view().readings()).as("not twice").hasSize(2);
    model.entry().type("12.3 V");
    model.count();
    assertThat(model.view().readings()).as("typing goes on").hasSize(3);
  }

  @Test
  void anOwnMeasurementAsksForItsFunction() {
    meter.through(feed);
    meter.portProperty().set("serial:/dev/ttyUSB0");
    meter.connect();
    CaseViewModel model = aCase();
    model.startOwn();
    model.own().choose(OwnCheckViewModel.KINDS.indexOf(CheckKind.OHMS));
    model.lookAtMeter();
    assertThat(feed.asked).endsWith(MeterFunction.OHMS);
  }

  @Test
  void whatIsPastedIsMadeWhatWouldBeTyped() {
    assertThat(EntryViewModel.pasted("12.4 V")).contains("12.4 V");
    assertThat(EntryViewModel.pasted("+1.2410E+01 VDC")).contains("12.410 V");
    assertThat(EntryViewModel.pasted("12,4V")).contains("12.4 V");
    assertThat(EntryViewModel.pasted("4.70 kOhm")).contains("4.70 kohm");
    assertThat(EntryViewModel.pasted("0L")).contains("OL");
    assertThat(EntryViewModel.pasted("50 Hz")).isEmpty();
    assertThat(EntryViewModel.pasted("1.2.3")).isEmpty();
  }
}
