package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.event.Event;
import javafx.event.EventType;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.shape.Rectangle;
import javafx.stage.Stage;
import loopwright.casework.CircuitLoops;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.drawing.LoopPlan;
import loopwright.ui.drawing.LoopPlan.Box;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Presses on, beside and between the pieces of every loop of the demo vehicles. */
@ExtendWith(ApplicationExtension.class)
class PressTest {
  /** Pixels at the normal size of text. */
  private static final double BESIDE = 20;

  private static final double REACH = 22;

  private LoopDrawing drawing;
  private final List<String> taken = new ArrayList<>();
  private Scene scene;
  private Node canvas;
  private Rectangle frame;
  private double scale;

  @Start
  void start(Stage stage) {
    drawing = new LoopDrawing();
    scene = TestScreen.show(stage, drawing);
    drawing.onPiece(taken::add);
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 200})
  void aPressTakesTheNearestPieceWithinAFingersBreadth(int percent) {
    scale = percent / 100.0;
    int beside = 0;
    int between = 0;
    for (LoopView loop : loops()) {
      for (LoopLayout.Folding folding : LoopLayout.Folding.values()) {
        LoopPlan plan = shown(loop, folding);
        int[] presses =
            WaitForAsyncUtils.waitForAsyncFx(
                60_000, () -> new int[] {besideEachPiece(plan), everywhere(plan)});
        beside += presses[0];
        between += presses[1];
      }
    }
    assertThat(beside).as("presses beside a piece").isGreaterThan(500);
    assertThat(between).as("presses anywhere").isGreaterThan(10_000);
  }

  private static List<LoopView> loops() {
    return Bench.vehicles().stream().map(Bench::vehicle).flatMap(PressTest::loopsOf).toList();
  }

  private static Stream<LoopView> loopsOf(Vehicle vehicle) {
    CircuitLoops loops =
        new CircuitLoops(
            vehicle, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), Phrases.inUse());
    return vehicle.circuits().stream().map(Circuit::id).flatMap(id -> loops.loop(id).stream());
  }

  private LoopPlan shown(LoopView loop, LoopLayout.Folding folding) {
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          drawing.emProperty().set(TestScreen.EM * scale);
          drawing.foldingProperty().set(folding);
          drawing.loopProperty().set(Optional.of(loop));
        });
    Keyboard.layOut(scene, 2);
    canvas = drawing.lookup(".loop-canvas");
    frame = (Rectangle) drawing.lookup(".piece-aimed");
    return drawing.planProperty().get().orElseThrow();
  }

  /** Presses that lie off a piece's side where nothing else is nearer. */
  private int besideEachPiece(LoopPlan plan) {
    int presses = 0;
    double off = BESIDE * scale;
    for (LoopPlan.Piece piece : plan.allPieces().toList()) {
      Box c = pixels(piece.cell());
      double middle = c.y() + c.height() / 2;
      double[][] places = {
        {c.x() - off, middle},
        {c.right() + off, middle},
        {c.centreX(), c.y() - off},
        {c.centreX(), c.bottom() + off}
      };
      for (double[] at : places) {
        if (onDrawing(plan, at[0], at[1]) && nearest(plan, at[0], at[1], 1).equals(List.of(c))) {
          assertThat(pressed(at[0], at[1])).containsExactly(piece.view().part());
          presses++;
        }
      }
    }
    return presses;
  }

  /** Presses all over the drawing, but for those that lie as near to one piece as to another. */
  private int everywhere(LoopPlan plan) {
    int presses = 0;
    double step = 23 * scale;
    for (double x = 1; onDrawing(plan, x, 1); x += step) {
      for (double y = 1; onDrawing(plan, x, y); y += step) {
        List<Box> nearest = nearest(plan, x, y, 0.5);
        if (nearest.size() > 1 || Math.abs(distanceToAll(plan, x, y) - REACH * scale) < 0.5) {
          continue;
        }
        List<String> expected =
            plan.allPieces()
                .filter(p -> nearest.contains(pixels(p.cell())))
                .map(p -> p.view().part())
                .toList();
        assertThat(pressed(x, y)).as("at %s, %s", x, y).isEqualTo(expected);
        presses++;
      }
    }
    return presses;
  }

  private boolean onDrawing(LoopPlan plan, double x, double y) {
    return x >= 0 && y >= 0 && x < plan.width() * em() && y < plan.height() * em();
  }

  private double em() {
    return TestScreen.EM * scale;
  }

  private Box pixels(Box b) {
    return new Box(b.x() * em(), b.y() * em(), b.width() * em(), b.height() * em());
  }

  private Stream<Box> cells(LoopPlan plan) {
    return Stream.concat(
            plan.allPieces().map(LoopPlan.Piece::cell),
            plan.folds().stream().map(LoopPlan.Fold::cell))
        .map(this::pixels);
  }

  /** What lies within a finger's reach and is nearest, with all that is hardly farther off. */
  private List<Box> nearest(LoopPlan plan, double x, double y, double slack) {
    double least = distanceToAll(plan, x, y);
    return cells(plan)
        .filter(c -> away(c, x, y) <= REACH * scale && away(c, x, y) <= least + slack)
        .toList();
  }

  private double distanceToAll(LoopPlan plan, double x, double y) {
    return cells(plan).mapToDouble(c -> away(c, x, y)).min().orElseThrow();
  }

  private static double away(Box c, double x, double y) {
    double nearestX = Math.min(Math.max(x, c.x()), c.right());
    double nearestY = Math.min(Math.max(y, c.y()), c.bottom());
    return Math.sqrt((x - nearestX) * (x - nearestX) + (y - nearestY) * (y - nearestY));
  }

  /** What a press takes, which the frame has shown before. */
  private List<String> pressed(double x, double y) {
    taken.clear();
    Event.fireEvent(canvas, mouse(MouseEvent.MOUSE_MOVED, x, y));
    Event.fireEvent(canvas, mouse(MouseEvent.MOUSE_CLICKED, x, y));
    assertThat(frame.isVisible()).isEqualTo(!taken.isEmpty());
    if (frame.isVisible()) {
      double middleX = frame.getX() + frame.getWidth() / 2;
      double middleY = frame.getY() + frame.getHeight() / 2;
      assertThat(
              drawing.planProperty().get().stream()
                  .flatMap(LoopPlan::allPieces)
                  .filter(p -> away(pixels(p.cell()), middleX, middleY) == 0)
                  .map(p -> p.view().part()))
          .containsExactlyElementsOf(taken);
    }
    return List.copyOf(taken);
  }

  private MouseEvent mouse(EventType<MouseEvent> type, double x, double y) {
    Point2D at = canvas.localToScene(x, y);
    return new MouseEvent(
        type,
        at.getX(),
        at.getY(),
        at.getX(),
        at.getY(),
        MouseButton.PRIMARY,
        1,
        false,
        false,
        false,
        false,
        true,
        false,
        false,
        true,
        false,
        true,
        null);
  }
}
