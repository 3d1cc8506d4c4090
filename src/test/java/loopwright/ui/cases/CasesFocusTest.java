package loopwright.ui.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.ui.ReadyCases;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeCaseDesk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Where hands go on in the list of cases, which is read while the screen is already up. */
@ExtendWith(ApplicationExtension.class)
class CasesFocusTest {
  private final List<Runnable> background = new ArrayList<>();
  private final List<String> opened = new ArrayList<>();
  private CasesViewModel model;
  private CasesScreen screen;

  @Start
  void start(Stage stage) {
    model = new CasesViewModel(new FakeCaseDesk(0), new Worker(background::add, Runnable::run));
    screen =
        new CasesScreen(
            model,
            kept -> opened.add(kept.caseId()),
            List.of(
                new ReadyCases.Entry("one", "First", "pumper", "A story."),
                new ReadyCases.Entry("two", "Second", "pumper", "Another.")),
            entry -> opened.add(entry.id()));
    stage.setScene(new Scene(screen, 800, 600));
    stage.show();
  }

  private void run(FxRobot robot, Runnable what) {
    robot.interact(what);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private String focused() {
    return Optional.ofNullable(screen.getScene().getFocusOwner()).map(Node::getId).orElse("");
  }

  @Test
  void aKeptCaseComesBeforeOneToPractiseOn(FxRobot robot) {
    run(robot, screen::takeFocus);
    assertThat(focused()).isEqualTo("ready");
    run(robot, model::refresh);
    run(robot, () -> background.forEach(Runnable::run));
    assertThat(focused()).isEqualTo("kept");
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(opened).containsExactly("case-2");
  }

  @Test
  void whoeverHasMovedOnAlreadyIsLeftThere(FxRobot robot) {
    run(robot, screen::takeFocus);
    run(robot, model::refresh);
    robot.type(KeyCode.DOWN);
    run(robot, () -> background.forEach(Runnable::run));
    assertThat(focused()).isEqualTo("ready");
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(opened).containsExactly("two");
  }
}
