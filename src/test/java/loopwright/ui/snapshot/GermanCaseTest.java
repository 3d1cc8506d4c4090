package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.Desk;
import loopwright.casework.FindCase;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.evidence.Bench;
import loopwright.io.ReadyCaseFile;
import loopwright.model.Language;
import loopwright.model.Vehicle;
import loopwright.rules.DroolsRuleBook;
import loopwright.rules.RuleFiles;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.Shed;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** A case over the real search, in German from the complaint to the proof, by keys alone. */
@ExtendWith(ApplicationExtension.class)
class GermanCaseTest {
  @RegisterExtension final TestWindow window = new TestWindow();

  private final Vehicle tractor = Bench.vehicle("tractor");
  private final RuleBook rules = new DroolsRuleBook(RuleFiles.bundled(), Locale.GERMAN);
  private final AtomicReference<FindCase> opened = new AtomicReference<>();
  private final AtomicReference<SimulatedMeter> meter = new AtomicReference<>();

  @BeforeAll
  static void inGerman() {
    Language.use(Language.GERMAN);
  }

  @AfterAll
  static void backToEnglish() {
    Language.use(Language.ENGLISH);
  }

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  /** The horn of the tractor, ready to practise on. */
  private final class Horn implements ReadyCases {
    private final ReadyCase horn =
        ReadyCaseFile.readBundled().orThrow().stream()
            .filter(c -> c.id().equals("tractor-horn"))
            .findFirst()
            .orElseThrow();

    @Override
    public List<Entry> entries() {
      return List.of(new Entry(horn.id(), horn.title(), tractor.name(), horn.story()));
    }

    @Override
    public Opened open(String id, Vehicle vehicle, CaseDesk.Progress progress) throws Problem {
      SimulatedMeter simulated = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, horn, 1);
      meter.set(simulated);
      CaseDesk.NewCase newCase =
          new CaseDesk.NewCase(
              vehicle,
              horn.vehicle(),
              horn.circuit(),
              Optional.empty(),
              horn.kind(),
              horn.context(),
              horn.meter());
      opened.set(simulated.following(desk().open(newCase, progress)));
      return new Opened(opened.get(), simulated::read);
    }
  }

  private CaseDesk desk() {
    return new Desk(
        Bench.KNOWLEDGE,
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
                        .ready(new Horn())),
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
    for (int n = 0; n < 25 && opened.get().view().move() != CaseView.Move.END; n++) {
      CaseView view = opened.get().view();
      if (view.move() == CaseView.Move.REPAIR) {
        TestWindow.until(() -> scene.lookup("#mended") != null);
        Snapshots.take(scene, "german-case-found");
        keys.press(KeyCode.ENTER);
        TestWindow.until(() -> TestWindow.text(scene, "#headline").equals("Reparatur nachweisen"));
        continue;
      }
      CheckView check = view.next().orElseThrow();
      Answer answer = meter.get().read(check);
      if (answer instanceof Answer.Saw saw) {
        keys.type(Integer.toString(check.choices().indexOf(saw.seen()) + 1));
      } else {
        String typed = keysOf(((Answer.Text) answer).text());
        commas += typed.contains(",") ? 1 : 0;
        keys.type(typed);
        TestWindow.until(() -> TestWindow.text(scene, "#entry-status").contains("Enter zählt es"));
        keys.press(KeyCode.ENTER);
      }
      TestWindow.until(() -> opened.get().view() != view);
    }
    TestWindow.until(() -> TestWindow.text(scene, "#headline").equals(Texts.of("now.end")));
    Snapshots.take(scene, "german-case-proven");
    assertThat(commas).as("readings typed with a comma").isPositive();
    assertThat(opened.get().view().status()).isEqualTo(CaseView.Status.HEALTHY);
  }

  /** What is pressed for a display such as {@code 12.31 V}. */
  private static String keysOf(String display) {
    return display.equals("OL")
        ? "l"
        : display.replace(" ", "").replace("ohm", "o").replace('.', ',').toLowerCase(Locale.ROOT);
  }
}
