package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.util.Locale;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.InGerman;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.Desk;
import loopwright.casework.Phrases;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.evidence.Bench;
import loopwright.io.KnowledgeFiles;
import loopwright.model.Vehicle;
import loopwright.rules.DroolsRuleBook;
import loopwright.rules.RuleFiles;
import loopwright.ui.Texts;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.Shed;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** A case over the real search, in German from the complaint to the proof, by keys alone. */
@ExtendWith({InGerman.class, ApplicationExtension.class})
class GermanCaseTest {
  @RegisterExtension final TestWindow window = new TestWindow();

  private final Vehicle tractor = Bench.vehicle("tractor");
  private final RuleBook rules = new DroolsRuleBook(RuleFiles.bundled(), Locale.GERMAN);
  private final OneReadyCase horn = new OneReadyCase("tractor-horn", tractor.name(), desk());

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private CaseDesk desk() {
    return new Desk(
        KnowledgeFiles.readBundled().orThrow(),
        () -> rules,
        new Bench.InMemory(),
        Clock.systemUTC(),
        new Phrases(Locale.GERMAN));
  }

  @Test
  void aCaseIsTypedInGermanWithDecimalCommasToItsProof() throws Exception {
    Scene scene =
        window.open(
            () ->
                new MainWindow(
                    new Fittings(
                            desk(),
                            new Shed(tractor),
                            new FakeLoops(),
                            FakeMeters.both(),
                            new FakePreferences(),
                            window.background())
                        .ready(horn)),
            1280,
            800);
    Keyboard keys = new Keyboard(scene);
    keys.press(KeyCode.F4);
    TestWindow.until(() -> scene.lookup("#ready") != null && scene.lookup("#ready").isFocused());
    keys.press(KeyCode.ENTER);
    TestWindow.until(
        () -> scene.lookup("#case") != null && !TestWindow.text(scene, "#headline").isEmpty());
    assertThat(TestWindow.text(scene, "#headline")).isEqualTo("Prüfung 1");
    Snapshots.take(scene, "german-case-opened");
    int commas = 0;
    for (int n = 0; n < 25 && horn.view().move() != CaseView.Move.END; n++) {
      CaseView view = horn.view();
      if (view.move() == CaseView.Move.REPAIR) {
        TestWindow.until(() -> scene.lookup("#mended") != null);
        Snapshots.take(scene, "german-case-found");
        keys.press(KeyCode.ENTER);
        TestWindow.until(() -> TestWindow.text(scene, "#headline").equals("Reparatur nachweisen"));
        continue;
      }
      CheckView check = view.next().orElseThrow();
      Answer answer = horn.read(check);
      if (answer instanceof Answer.Saw saw) {
        keys.type(Integer.toString(check.choices().indexOf(saw.seen()) + 1));
      } else {
        String typed = OneReadyCase.keysOf(((Answer.Text) answer).text());
        commas += typed.contains(",") ? 1 : 0;
        keys.type(typed);
        TestWindow.until(() -> TestWindow.text(scene, "#entry-status").contains("Enter zählt es"));
        keys.press(KeyCode.ENTER);
      }
      TestWindow.until(() -> horn.view() != view);
    }
    TestWindow.until(() -> TestWindow.text(scene, "#headline").equals(Texts.of("now.end")));
    Snapshots.take(scene, "german-case-proven");
    assertThat(commas).as("readings typed with a comma").isPositive();
    assertThat(horn.view().status()).isEqualTo(CaseView.Status.HEALTHY);
  }
}
