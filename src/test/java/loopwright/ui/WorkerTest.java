package loopwright.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.Test;

class WorkerTest {
  private final Queue<Runnable> background = new ArrayDeque<>();
  private final List<String> done = new ArrayList<>();
  private final Worker worker = new Worker(background::add, Runnable::run);

  private void run(String name) {
    worker.run(() -> name, done::add, e -> done.add(name + " failed"));
  }

  private void finish() {
    while (!background.isEmpty()) {
      background.remove().run();
    }
  }

  @Test
  void idleWorkWaitsUntilAllElseIsDoneAndIsDoneOnce() {
    worker.whenIdle(goOn -> done.add("idle " + goOn.getAsBoolean()));
    run("first");
    run("second");
    assertThat(worker.pendingProperty().get()).as("idle work isn't counted").isEqualTo(2);
    finish();
    run("third");
    finish();
    assertThat(done).containsExactly("first", "second", "idle true", "third");
  }

  @Test
  void whatInterruptsIdleWorkComesFirstAndTheIdleWorkIsBegunAgain() {
    List<Boolean> asked = new ArrayList<>();
    worker.whenIdle(
        goOn -> {
          if (asked.isEmpty()) {
            run("urgent");
          }
          asked.add(goOn.getAsBoolean());
        });
    finish();
    assertThat(asked).containsExactly(false, true);
    assertThat(done).containsExactly("urgent");
  }

  @Test
  void otherIdleWorkTakesItsPlaceAndAFailingOneHarmsNothing() {
    worker.whenIdle(
        goOn -> {
          worker.whenIdle(next -> done.add("newer"));
          done.add("older " + goOn.getAsBoolean());
        });
    finish();
    assertThat(done).containsExactly("older false", "newer");
    worker.whenIdle(
        goOn -> {
          throw new IllegalStateException("a defect");
        });
    finish();
    run("after");
    finish();
    assertThat(done).endsWith("after");
  }

  @Test
  void forgottenIdleWorkIsNotDone() {
    worker.whenIdle(goOn -> done.add("idle"));
    worker.neverIdle();
    finish();
    assertThat(done).isEmpty();
  }
}
