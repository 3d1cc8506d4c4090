package loopwright.ui.ground;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import loopwright.evidence.Bench;
import loopwright.ui.Told;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakePreferences;
import org.junit.jupiter.api.Test;

/** The view model alone, with work that is done when the test says so. */
class GroundViewModelTest {
  private final Deque<Runnable> work = new ArrayDeque<>();
  private final GroundViewModel model =
      new GroundViewModel(
          Bench.groundDesk(new Bench.ProofsInMemory()),
          new FakePreferences(),
          new Worker(work::add, Runnable::run));

  private void all() {
    while (!work.isEmpty()) {
      work.poll().run();
    }
  }

  private void open() {
    model.show(Bench.vehicle("tractor"));
    model.opened();
    all();
    model.choose("G4");
    all();
  }

  @Test
  void aRefusalIsTold() {
    open();
    model.take("9.1");
    all();
    assertThat(model.toldProperty().get().words()).contains("with its unit");
    assertThat(model.resultProperty().get()).isEmpty();
  }

  @Test
  void aRefusalThatComesAfterTheNextReadingWasTypedIsNotTold() {
    open();
    model.take("9.1");
    model.take("9.1 mV");
    all();
    assertThat(model.toldProperty().get()).isEqualTo(Told.NOTHING);
    assertThat(model.resultProperty().get()).isPresent();
  }
}
