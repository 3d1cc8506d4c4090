package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import loopwright.ui.Look;
import org.testfx.util.WaitForAsyncUtils;

/**
 * What every screen must be, whatever its look, size and language: inside the window, readable,
 * named for screen readers, whole in its words, and large enough for a finger.
 */
public final class ScreenCheck {
  /** Pixels of the least target (WCAG 2.2, 2.5.5). */
  private static final double FINGER = 44;

  private final Map<String, Map<String, Set<String>>> wrong = new LinkedHashMap<>();

  /** Takes a picture if it is wanted, and notes what is wrong with the scene as it stands. */
  public void look(Scene scene, String name, boolean picture) {
    Keyboard.layOut(scene, 3);
    if (picture) {
      Snapshots.takeSettled(scene, name);
    }
    boolean most = scene.getRoot().getStyleClass().contains(Look.CONTRAST.styleClass());
    Map<String, Set<String>> here =
        WaitForAsyncUtils.waitForAsyncFx(
            10_000,
            () -> {
              Map<String, Set<String>> found = new LinkedHashMap<>();
              found.put("outside", outside(scene));
              found.put("contrast", Contrast.tooLittle(scene, most ? 7 : 4.5, 3));
              found.put("names", Reach.nameless(scene));
              found.put("cut off", Reach.cutOff(scene));
              found.put("too small to press", Reach.tooSmall(scene, FINGER));
              return found;
            });
    here.values().removeIf(Set::isEmpty);
    if (!here.isEmpty()) {
      wrong.put(name, here);
    }
  }

  /** All that was wrong, on whichever screen. */
  public void nothingWrong() {
    List<String> told =
        wrong.entrySet().stream()
            .flatMap(
                screen ->
                    screen.getValue().entrySet().stream()
                        .map(w -> screen.getKey() + ": " + w.getKey() + " " + w.getValue()))
            .toList();
    assertThat(told).as("%s", String.join("\n", told)).isEmpty();
  }

  /** Cards, buttons and the value field that reach over the window's edge. */
  private static Set<String> outside(Scene scene) {
    Set<String> found = new TreeSet<>();
    outside(scene, scene.getRoot(), found);
    return found;
  }

  private static void outside(Scene scene, Node node, Set<String> found) {
    if (!node.isVisible() || node instanceof ScrollPane) {
      return;
    }
    boolean watched =
        node.getStyleClass().contains("card")
            || node.getStyleClass().contains("key-button")
            || node.getStyleClass().contains("value-field");
    Bounds b = node.localToScene(node.getLayoutBounds());
    if (watched
        && (b.getMinX() < -0.5
            || b.getMinY() < -0.5
            || b.getMaxX() > scene.getWidth() + 0.5
            || b.getMaxY() > scene.getHeight() + 0.5)) {
      found.add(node.getStyleClass() + " " + b);
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> outside(scene, child, found));
    }
  }
}
