package loopwright.app;

import java.io.PrintStream;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.scene.Node;
import javafx.stage.Stage;

/**
 * The moment from which somebody could type: the window has the focus, something in it would take
 * the next key, and a picture of that was drawn. Where {@code -Dloopwright.ready=} says when the
 * program was started, by the system's clock in milliseconds, it tells how long that took. The
 * process's own record of its start won't do: on Linux it can be a second too early, since the
 * system tells in whole seconds when it was booted.
 */
final class ReadyToType {

  /** System property that says when the program was started, and asks to tell. */
  static final String PROPERTY = "loopwright.ready";

  /** What the line begins with; milliseconds follow. */
  static final String WORDS = "ready to type after ";

  private ReadyToType() {}

  /** Does something once a window that is shown has come so far. */
  static void then(Stage stage, Runnable next) {
    new Watch(stage, next).start();
  }

  private static void tell(PrintStream out) {
    Long started = Long.getLong(PROPERTY);
    if (started != null) {
      out.println(WORDS + (System.currentTimeMillis() - started) + " ms");
      out.flush();
    }
  }

  private static final class Watch extends AnimationTimer {
    private final Stage stage;
    private final Runnable next;
    private boolean drawn;

    Watch(Stage stage, Runnable next) {
      this.stage = stage;
      this.next = next;
    }

    @Override
    public void handle(long now) {
      if (drawn) {
        tell(System.out);
        stop();
        next.run();
      }
      // What takes keys at the beginning of one pulse has been drawn at the beginning of the next.
      drawn = stage.isFocused() && taker().isPresent();
    }

    private Optional<Node> taker() {
      return Optional.ofNullable(stage.getScene().getFocusOwner()).filter(n -> !n.isDisabled());
    }
  }
}
