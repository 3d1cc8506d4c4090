package loopwright.dist;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Window;
import loopwright.app.Main;

/**
 * Opens the window without a display, goes through its places and ends, so that the Java machine
 * can note which classes that takes.
 */
public final class Rehearsal {
  private static final List<KeyCode> PLACES =
      List.of(KeyCode.ENTER, KeyCode.F3, KeyCode.F4, KeyCode.F6, KeyCode.F2);

  private Rehearsal() {}

  /** Ends by itself. */
  public static void main(String[] args) throws Exception {
    Thread hand = new Thread(Rehearsal::play, "hand");
    hand.setDaemon(true);
    hand.start();
    Main.main(new String[0]);
  }

  private static void play() {
    try {
      Scene scene = null;
      while (scene == null) {
        TimeUnit.MILLISECONDS.sleep(200);
        scene = shown();
      }
      for (KeyCode key : PLACES) {
        Scene window = scene;
        TimeUnit.MILLISECONDS.sleep(500);
        Platform.runLater(() -> press(window, key));
      }
      TimeUnit.MILLISECONDS.sleep(500);
      Platform.exit();
    } catch (Exception e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private static Scene shown() throws Exception {
    CompletableFuture<Scene> found = new CompletableFuture<>();
    try {
      Platform.runLater(
          () ->
              found.complete(
                  Window.getWindows().stream()
                      .filter(w -> w.isShowing() && w.getScene().getFocusOwner() != null)
                      .map(Window::getScene)
                      .findFirst()
                      .orElse(null)));
    } catch (IllegalStateException e) {
      return null; // The toolkit hasn't started yet.
    }
    return found.get(60, TimeUnit.SECONDS);
  }

  private static void press(Scene scene, KeyCode key) {
    Node target = scene.getFocusOwner() == null ? scene.getRoot() : scene.getFocusOwner();
    Event.fireEvent(
        target, new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false));
  }
}
