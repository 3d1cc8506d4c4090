package loopwright.app;

import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.scene.Node;
import javafx.stage.Stage;

/**
 * Tells how long the program took from the start of its process until somebody could type: the
 * window has the focus, something in it would take the next key, and a picture of that was drawn.
 * Only where {@code -Dloopwright.ready=true} asks for it.
 */
final class ReadyToType {

  /** System property that asks for it. */
  static final String PROPERTY = "loopwright.ready";

  /** What the line begins with; milliseconds follow. */
  static final String WORDS = "ready to type after ";

  private ReadyToType() {}

  /** Tells it once of a window that is shown, where it was asked for. */
  static void tell(Stage stage, PrintStream out) {
    if (Boolean.getBoolean(PROPERTY)) {
      new Watch(stage, out).start();
    }
  }

  /** Milliseconds since the process was started; on Linux in steps of ten. */
  private static long sinceStart() {
    Instant start = ProcessHandle.current().info().startInstant().orElseGet(Instant::now);
    return Duration.between(start, Instant.now()).toMillis();
  }

  private static final class Watch extends AnimationTimer {
    private final Stage stage;
    private final PrintStream out;
    private boolean drawn;

    Watch(Stage stage, PrintStream out) {
      this.stage = stage;
      this.out = out;
    }

    @Override
    public void handle(long now) {
      if (drawn) {
        out.println(WORDS + sinceStart() + " ms");
        out.flush();
        stop();
      }
      // What takes keys at the beginning of one pulse has been drawn at the beginning of the next.
      drawn = stage.isFocused() && taker().isPresent();
    }

    private Optional<Node> taker() {
      return Optional.ofNullable(stage.getScene().getFocusOwner()).filter(n -> !n.isDisabled());
    }
  }
}
