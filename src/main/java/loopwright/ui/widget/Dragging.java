package loopwright.ui.widget;

import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TableView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;

/**
 * What a pane scrolls can be dragged, wherever the drag begins. The toolkit's own panning jumps
 * when it begins on a button, and presses that button at its end.
 */
final class Dragging {
  /** Pixels that a press may stray before it is a drag. */
  private static final double STRAY = 10;

  private final ScrollPane pane;
  private boolean ready;
  private boolean dragging;
  private double fromX;
  private double fromY;
  private double fromH;
  private double fromV;

  private Dragging(ScrollPane pane) {
    this.pane = pane;
  }

  /** Lets a pane's content be dragged. */
  static void in(ScrollPane pane) {
    Dragging dragging = new Dragging(pane);
    pane.addEventFilter(MouseEvent.MOUSE_PRESSED, dragging::pressed);
    pane.addEventFilter(MouseEvent.MOUSE_DRAGGED, dragging::dragged);
    pane.addEventFilter(MouseEvent.MOUSE_RELEASED, dragging::heldBack);
    pane.addEventFilter(MouseEvent.MOUSE_CLICKED, dragging::heldBack);
  }

  private void pressed(MouseEvent e) {
    dragging = false;
    // A finger on a screen that tells of fingers is the toolkit's to follow.
    ready =
        e.getButton() == MouseButton.PRIMARY
            && !e.isSynthesized()
            && scrolls(pane)
            && !draggedItself(e.getTarget());
    fromX = e.getSceneX();
    fromY = e.getSceneY();
    fromH = pane.getHvalue();
    fromV = pane.getVvalue();
  }

  private void dragged(MouseEvent e) {
    double right = e.getSceneX() - fromX;
    double down = e.getSceneY() - fromY;
    if (!ready || !dragging && Math.hypot(right, down) < STRAY) {
      return;
    }
    if (!dragging) {
      dragging = true;
      letGo(e.getTarget());
    }
    Bounds all = pane.getContent().getLayoutBounds();
    Bounds seen = pane.getViewportBounds();
    pane.setHvalue(moved(fromH, right, all.getWidth() - seen.getWidth(), pane.getHmax()));
    pane.setVvalue(moved(fromV, down, all.getHeight() - seen.getHeight(), pane.getVmax()));
    e.consume();
  }

  private static double moved(double from, double by, double hidden, double most) {
    return hidden <= 0 ? from : Math.max(0, Math.min(most, from - by / hidden * most));
  }

  /** The end of a drag is no press on what lies there. */
  private void heldBack(MouseEvent e) {
    if (dragging) {
      e.consume();
    }
  }

  private void letGo(Object target) {
    for (Node n = (Node) target; n != pane; n = n.getParent()) {
      if (n instanceof ButtonBase button) {
        button.disarm();
      }
    }
  }

  private boolean draggedItself(Object target) {
    for (Node n = (Node) target; n != pane; n = n.getParent()) {
      if (n instanceof ScrollBar
          || n instanceof Slider
          || n instanceof TextInputControl
          || n instanceof ComboBoxBase
          || n instanceof ListView
          || n instanceof TableView
          || n instanceof ScrollPane inner && scrolls(inner)) {
        return true;
      }
    }
    return false;
  }

  private static boolean scrolls(ScrollPane pane) {
    Bounds all = pane.getContent().getLayoutBounds();
    Bounds seen = pane.getViewportBounds();
    return all.getWidth() > seen.getWidth() + 1 || all.getHeight() > seen.getHeight() + 1;
  }
}
