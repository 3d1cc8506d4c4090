package loopwright.ui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeoutException;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import loopwright.casework.Problem;
import loopwright.casework.RulesElsewhere;
import loopwright.ui.Preferences;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.shell.RulesViewModel.Stage;
import loopwright.ui.snapshot.Dress;
import loopwright.ui.snapshot.ScreenCheck;
import loopwright.ui.widget.KeyButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Rules from elsewhere are asked about in the window, by keyboard; no is the default. */
@ExtendWith(ApplicationExtension.class)
class RulesKeyboardTest {
  private final List<Runnable> background = new ArrayList<>();
  private final List<String> done = new ArrayList<>();
  private final Rules rules = new Rules();
  private javafx.stage.Stage stage;
  private RulesViewModel model;

  /** Rules by hand: what was done with them is noted. */
  private final class Rules implements RulesElsewhere {
    private boolean allowed;
    private boolean broken;

    @Override
    public List<Rule> rules() {
      List<Rule> rules = new ArrayList<>();
      rules.add(new Rule("sense/ghost-volts", "Another ghost\u001b[2J", Own.CHANGED));
      rules.add(new Rule("after/magic-\u202ewand", "x".repeat(200), Own.NEW));
      rules.add(new Rule("caution/crank-and-rest", "Crank and rest", Own.MISSING));
      for (int i = 0; i < 200; i++) {
        rules.add(new Rule("after/own-" + i, "Own", Own.SAME));
      }
      return rules;
    }

    @Override
    public String fingerprint() {
      return "00c0ffee".repeat(8);
    }

    @Override
    public boolean allowedBefore() {
      return allowed;
    }

    @Override
    public void take() throws Problem {
      done.add("taken");
      if (broken) {
        throw new Problem("--rules", "folder", "rules without defects: ghost-volts, line 3");
      }
    }
  }

  @Start
  void start(javafx.stage.Stage stage) {
    this.stage = stage;
  }

  @AfterEach
  void giveUpTheSize() {
    Dress.off(stage);
  }

  private void ask(FxRobot robot) {
    ask(robot, new FakePreferences());
  }

  private void ask(FxRobot robot, FakePreferences preferences) {
    robot.interact(
        () -> {
          model =
              new RulesViewModel(
                  rules, new Worker(background::add, Runnable::run), () -> done.add("opened"));
          RulesWindow.ask(stage, model, "/media/stick/rules", preferences);
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void finish(FxRobot robot) {
    List<Runnable> now = List.copyOf(background);
    background.clear();
    robot.interact(() -> now.forEach(Runnable::run));
    WaitForAsyncUtils.waitForFxEvents();
  }

  private void press(FxRobot robot, KeyCode code) {
    robot.type(code);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private String own() {
    return ((KeyButton) stage.getScene().lookup("#rules-own")).getText();
  }

  @ParameterizedTest
  @EnumSource(names = {"ENTER", "ESCAPE", "N"})
  void noIsTheDefaultAndNothingOfThemRuns(KeyCode no, FxRobot robot) {
    ask(robot);
    assertThat(stage.getScene().getFocusOwner().getId()).isEqualTo("rules-own");
    press(robot, no);
    finish(robot);
    assertThat(done).containsExactly("opened");
  }

  @Test
  void whatDiffersIsListedInWordsThatCanDoNoHarm(FxRobot robot) {
    ask(robot);
    ListView<?> list = (ListView<?>) stage.getScene().lookup("#rules-list");
    assertThat(list.getItems())
        .hasSize(3)
        .extracting(Object::toString)
        .allMatch(row -> row.length() < 100 && !row.matches(".*[\\p{Cc}\\p{Cf}].*"))
        .anyMatch(row -> row.equals("changed  sense/ghost-volts: Another ghost?[2J"));
    press(robot, KeyCode.DOWN);
    press(robot, KeyCode.DOWN);
    assertThat(list.getSelectionModel().getSelectedIndex()).isEqualTo(1);
    assertThat(done).isEmpty();
  }

  @Test
  void theQuestionCanBeReadReachedAndPressed(FxRobot robot) throws TimeoutException {
    ScreenCheck check = new ScreenCheck();
    for (Dress dress : Dress.all()) {
      FakePreferences preferences = new FakePreferences();
      preferences.keep(Preferences.Item.LOOK, dress.look().name());
      preferences.keep(Preferences.Item.TEXT_SIZE, dress.size().name());
      ask(robot, preferences);
      dress.size(stage);
      check.look(stage.getScene(), "rules-from-elsewhere-" + dress, dress.pictured());
    }
    check.nothingWrong();
  }

  @Test
  void yesTakesThemAndThenOpensTheProgram(FxRobot robot) {
    ask(robot);
    press(robot, KeyCode.Y);
    assertThat(model.stageProperty().get()).isEqualTo(Stage.TAKING);
    assertThat(own()).isEqualTo("Reading the rules …");
    press(robot, KeyCode.ENTER);
    press(robot, KeyCode.Y);
    assertThat(done).as("still being read").isEmpty();
    finish(robot);
    assertThat(done).containsExactly("taken", "opened");
  }

  @Test
  void rulesThatCannotRunAreToldAndTheProgramsOwnRun(FxRobot robot) {
    rules.broken = true;
    ask(robot);
    press(robot, KeyCode.Y);
    finish(robot);
    assertThat(((Label) stage.getScene().lookup("#rules-told")).getText())
        .contains("ghost-volts, line 3");
    press(robot, KeyCode.Y);
    finish(robot);
    assertThat(own()).isEqualTo("Go on with the program’s own");
    press(robot, KeyCode.ENTER);
    assertThat(done).containsExactly("taken", "opened");
  }

  @Test
  void rulesThatWereAllowedBeforeAreNotAskedAboutAgain(FxRobot robot) {
    rules.allowed = true;
    ask(robot);
    finish(robot);
    assertThat(done).containsExactly("taken", "opened");
  }
}
