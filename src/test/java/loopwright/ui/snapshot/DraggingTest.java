package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A page of buttons moved by a pointer, as a finger moves it. */
@ExtendWith(ApplicationExtension.class)
class DraggingTest {
  private final List<Integer> fired = new ArrayList<>();
  private final FxRobot robot = new FxRobot();
  private ScrollPane scroll;
  private VBox page;
  private Slider slider;

  @Start
  void start(Stage stage) {
    slider = new Slider(0, 10, 0);
    page = new VBox(slider);
    for (int i = 0; i < 30; i++) {
      int n = i;
      page.getChildren().add(new KeyButton("Button " + i, "F" + i, () -> fired.add(n)));
    }
    scroll = Parts.scrolling(page);
    TestScreen.show(stage, scroll);
  }

  @Test
  void aDragThatBeginsOnAButtonMovesThePageAndPressesNothing() {
    Node button = page.getChildren().get(8);
    double before = top();
    drag(middle(button), 0, -150);
    assertThat(top()).isEqualTo(before - 150);
    drag(middle(button), 0, 60);
    assertThat(top()).isEqualTo(before - 90);
    drag(middle(button), 0, 400);
    assertThat(top()).as("no farther than its top").isEqualTo(before);
    assertThat(fired).isEmpty();
  }

  @Test
  void aPressThatStraysALittleIsAPress() {
    double before = top();
    drag(middle(page.getChildren().get(8)), 3, 6);
    assertThat(top()).isEqualTo(before);
    assertThat(fired).containsExactly(7);
  }

  @Test
  void aSliderInThePageIsMovedAndNotThePage() {
    double before = top();
    drag(middle(slider.lookup(".thumb")), 200, 80);
    assertThat(slider.getValue()).isPositive();
    assertThat(top()).isEqualTo(before);
  }

  @Test
  void theBarIsDraggedAnywhereInAFingersBreadth() {
    Node thumb = scroll.lookup(".scroll-bar:vertical > .thumb");
    Bounds at = thumb.localToScreen(thumb.getLayoutBounds());
    drag(new Point2D(at.getMinX() + 2, at.getMinY() + 20), 0, 100);
    assertThat(scroll.getVvalue()).isPositive();
    double once = scroll.getVvalue();
    at = thumb.localToScreen(thumb.getLayoutBounds());
    assertThat(at.getWidth()).isGreaterThanOrEqualTo(Parts.FINGER);
    drag(new Point2D(at.getMaxX() - 2, at.getMinY() + 20), 0, 100);
    assertThat(scroll.getVvalue()).isGreaterThan(once);
  }

  private double top() {
    return page.localToScene(0, 0).getY();
  }

  private static Point2D middle(Node node) {
    Bounds b = node.localToScreen(node.getLayoutBounds());
    return new Point2D(b.getCenterX(), b.getCenterY());
  }

  private void drag(Point2D from, double right, double down) {
    robot.moveTo(from).press(MouseButton.PRIMARY);
    for (int i = 1; i <= 4; i++) {
      robot.moveTo(from.add(right * i / 4, down * i / 4));
    }
    robot.release(MouseButton.PRIMARY);
    WaitForAsyncUtils.waitForFxEvents();
  }
}
