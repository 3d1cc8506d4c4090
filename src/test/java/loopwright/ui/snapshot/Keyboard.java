package loopwright.ui.snapshot;

import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.testfx.util.WaitForAsyncUtils;

/** Keys pressed on a scene, to whatever has the focus. */
public final class Keyboard {
  private final Scene scene;
  private final boolean prompt;

  public Keyboard(Scene scene) {
    this(scene, false);
  }

  private Keyboard(Scene scene, boolean prompt) {
    this.scene = scene;
    this.prompt = prompt;
  }

  /**
   * Keys for a window that does its work at once: it is laid out after each, and not waited for.
   */
  public static Keyboard prompt(Scene scene) {
    return new Keyboard(scene, true);
  }

  /** Types characters one after another. */
  public Keyboard type(String characters) {
    for (char c : characters.toCharArray()) {
      String text = String.valueOf(c);
      KeyCode code =
          Optional.ofNullable(KeyCode.getKeyCode(text.toUpperCase())).orElse(KeyCode.UNDEFINED);
      fire(
          new KeyEvent(KeyEvent.KEY_PRESSED, text, text, code, false, false, false, false),
          new KeyEvent(
              KeyEvent.KEY_TYPED, text, text, KeyCode.UNDEFINED, false, false, false, false),
          new KeyEvent(KeyEvent.KEY_RELEASED, text, text, code, false, false, false, false));
    }
    return this;
  }

  /** Types characters so fast that the window is not drawn in between. */
  public Keyboard typeFast(String characters) {
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          for (char c : characters.toCharArray()) {
            String text = String.valueOf(c);
            KeyCode code =
                Optional.ofNullable(KeyCode.getKeyCode(text.toUpperCase()))
                    .orElse(KeyCode.UNDEFINED);
            for (Event event :
                new Event[] {
                  new KeyEvent(KeyEvent.KEY_PRESSED, text, text, code, false, false, false, false),
                  new KeyEvent(
                      KeyEvent.KEY_TYPED, text, text, KeyCode.UNDEFINED, false, false, false, false)
                }) {
              Node target = Optional.ofNullable(scene.getFocusOwner()).orElse(scene.getRoot());
              Event.fireEvent(target, event);
            }
          }
        });
    return this;
  }

  /** Presses keys one after another. */
  public Keyboard press(KeyCode... codes) {
    for (KeyCode code : codes) {
      fire(
          new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false),
          new KeyEvent(KeyEvent.KEY_RELEASED, "", "", code, false, false, false, false));
    }
    return this;
  }

  /**
   * Takes the vehicle that the window offers. The shelf is read in the background: Enter does
   * nothing until it is there.
   */
  public void takeVehicle() throws TimeoutException {
    TestWindow.until(
        () -> {
          if (scene.lookup("#circuits") == null) {
            press(KeyCode.ENTER);
          }
          return scene.lookup("#circuits") != null;
        });
  }

  /** Presses a key with Alt held. */
  public Keyboard alt(KeyCode code) {
    fire(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, true, false));
    return this;
  }

  /** Presses a key with Ctrl held. */
  public Keyboard control(KeyCode code) {
    fire(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, true, false, false));
    return this;
  }

  /** Presses a key with Shift held. */
  public Keyboard shift(KeyCode code) {
    fire(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, true, false, false, false));
    return this;
  }

  private void fire(Event... events) {
    for (Event event : events) {
      WaitForAsyncUtils.waitForAsyncFx(
          10_000,
          () -> {
            Node target = Optional.ofNullable(scene.getFocusOwner()).orElse(scene.getRoot());
            Event.fireEvent(target, event);
          });
      if (!prompt) {
        WaitForAsyncUtils.waitForFxEvents(2);
      }
    }
    if (prompt) {
      layOut(scene, 1);
    }
  }

  /**
   * Lays out a scene, with what is put off until then.
   *
   * @param times again for what only a layout finds out
   */
  static void layOut(Scene scene, int times) {
    for (int i = 0; i < times; i++) {
      // What was put off may put off more.
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> {});
      WaitForAsyncUtils.waitForAsyncFx(
          10_000,
          () -> {
            scene.getRoot().applyCss();
            scene.getRoot().layout();
          });
    }
  }
}
