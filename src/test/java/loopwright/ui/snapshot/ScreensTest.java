package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.PatternWords;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.evidence.Bench;
import loopwright.io.sheet.SheetFiles;
import loopwright.ui.Look;
import loopwright.ui.TextSize;
import loopwright.ui.Texts;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakeCases;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePlanCheck;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicleLibrary;
import loopwright.ui.paper.PlanCheck;
import loopwright.ui.sheet.ListOutPage;
import loopwright.ui.sheet.SheetPage;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.starting.AddCircuitPage;
import loopwright.ui.starting.NewVehiclePage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Plays a case and wires a vehicle in every look and size, takes pictures, and checks each. */
@ExtendWith(ApplicationExtension.class)
class ScreensTest {
  private final Basis basis = new Basis(Bench.KNOWLEDGE, PatternWords.inUse());

  private Stage stage;
  private Scene scene;
  private Keyboard keys;
  private String tail = "";
  private boolean pictured;
  private final ScreenCheck check = new ScreenCheck();

  @Start
  void start(Stage stage) {
    this.stage = stage;
  }

  @ParameterizedTest
  @MethodSource("loopwright.ui.snapshot.Dress#all")
  void everyScreenCanBeReadReachedAndPressed(Dress dress) {
    open(dress);
    aCase();
    theWiring();
    lists();
    check.nothingWrong();
  }

  private void aCase() {
    look("01-library");
    keys.press(KeyCode.ENTER);
    look("02-vehicle");
    keys.press(KeyCode.ENTER);
    look("03-complaint");
    keys.press(KeyCode.ENTER);
    look("04-look");
    keys.type("1");
    look("05-volts");
    keys.type("12.4v").press(KeyCode.ENTER);
    keys.type("12");
    keys.type(".42v");
    look("06-typed");
    keys.press(KeyCode.ESCAPE);
    keys.type("w");
    look("07-why");
    keys.type("t");
    look("07-tree");
    keys.press(KeyCode.ESCAPE);
    keys.press(KeyCode.ESCAPE).type("i");
    look("08-if-not");
    keys.press(KeyCode.ESCAPE).type("y");
    look("08-your-turn");
    keys.press(KeyCode.ENTER, KeyCode.ENTER, KeyCode.ENTER);
    keys.type("F3.load").press(KeyCode.ENTER).type("BATT.neg").press(KeyCode.ENTER);
    look("08-your-proposal");
    keys.press(KeyCode.ENTER);
    look("08-compared");
    assertThat(scene.lookup("#verdict")).isNotNull();
    keys.type("2y").type("c");
    look("09-refuse");
    keys.press(KeyCode.ESCAPE).type("a");
    keys.press(KeyCode.ENTER, KeyCode.ENTER);
    look("10-own");
    keys.press(KeyCode.ESCAPE, KeyCode.F11);
    look("11-drawing");
    keys.press(KeyCode.F11, KeyCode.ESCAPE, KeyCode.F12);
    look("12-known");
    keys.press(KeyCode.ESCAPE).type("d");
    look("13-done");
    keys.press(KeyCode.ESCAPE);
    keys.type("12.4m").press(KeyCode.ENTER);
    look("14-second");
    keys.press(KeyCode.ESCAPE).type("c").type("1");
    keys.type("12.3v").press(KeyCode.ENTER);
    keys.type("0.02v").press(KeyCode.ENTER);
    look("15-late");
    keys.type("n").type("0.02v").press(KeyCode.ENTER).type("0.05v").press(KeyCode.ENTER);
    look("15-again-and-again");
    assertThat(scene.lookup("#log-chart")).isNotNull();
    keys.press(KeyCode.ESCAPE).type("h");
    look("15-warn");
    keys.type("1");
    look("15-make-safe");
    keys.press(KeyCode.ENTER).type("g");
    keys.type("1.2k").press(KeyCode.ENTER);
    look("16-found");
    keys.press(KeyCode.F10);
    look("17-put-back");
    keys.press(KeyCode.ESCAPE, KeyCode.ENTER);
    look("18-proof");
    keys.type("0.03v").press(KeyCode.ENTER);
    look("19-end");
    keys.press(KeyCode.F4);
    look("20-cases");
    keys.type("a");
    keys.press(KeyCode.ESCAPE).type("p");
    look("20-cases-written");
    keys.press(KeyCode.F1);
    look("21-keys");
    keys.press(KeyCode.F5);
    look("25-paper");
    keys.press(KeyCode.ENTER, KeyCode.END);
    look("26-paper-details");
    keys.type("k");
    keys.press(KeyCode.HOME).type("t");
    look("27-paper-hottest");
  }

  private void theWiring() {
    keys.press(KeyCode.F6);
    look("30-wiring");
    keys.control(KeyCode.DIGIT2).press(KeyCode.RIGHT, KeyCode.RIGHT).type("ten");
    keys.press(KeyCode.ENTER);
    look("31-wiring-wrong");
    keys.press(KeyCode.DELETE).control(KeyCode.DIGIT5).press(KeyCode.DOWN);
    look("32-wiring-wires");
    keys.alt(KeyCode.DIGIT1);
    look("33-wiring-drawing");
    keys.alt(KeyCode.DIGIT2);
    look("34-wiring-part");
    keys.alt(KeyCode.DIGIT3);
    look("35-wiring-todo");
    keys.alt(KeyCode.DIGIT4);
    look("36-wiring-files");
    keys.alt(KeyCode.DIGIT5);
    look("37-wiring-more");
    keys.control(KeyCode.F).type("horn");
    look("38-wiring-find");
    keys.press(KeyCode.ESCAPE);
    assertThat(scene.lookup("#grid").isFocused()).isTrue();
    keys.control(KeyCode.R);
    look("39-wiring-ask");
    keys.press(KeyCode.ESCAPE);
  }

  private void lists() {
    keys.control(KeyCode.I);
    look("40-sheet");
    String list = "src/test/resources/untidy/17-parts-that-are-not-there-yet.csv";
    WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> ((TextField) scene.lookup("#sheet-path")).setText(list));
    keys.press(KeyCode.ENTER);
    look("41-sheet-refused");
    keys.alt(KeyCode.P).press(KeyCode.DOWN);
    look("42-sheet-parts");
    keys.press(KeyCode.ESCAPE).control(KeyCode.E);
    look("43-list-out");
    keys.press(KeyCode.ESCAPE).control(KeyCode.N);
    look("44-new-vehicle");
    keys.press(KeyCode.ENTER);
    look("45-needs");
    keys.press(KeyCode.RIGHT);
    look("46-needs-answers");
    keys.press(KeyCode.ESCAPE, KeyCode.ESCAPE, KeyCode.ESCAPE).control(KeyCode.K);
    look("47-patterns");
    keys.type("2").press(KeyCode.ENTER);
    look("48-pattern");
  }

  @Test
  void readingsAtOddsAndADeadEndAreToldWithWhatToDo() {
    open(new Dress(Look.PAPER, TextSize.NORMAL, 1024));
    keys.press(KeyCode.ENTER, KeyCode.ENTER, KeyCode.ENTER).type("1");
    keys.type("12.4v").press(KeyCode.ENTER);
    keys.type("a").press(KeyCode.ENTER, KeyCode.ENTER);
    WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> ((TextField) scene.lookup("#own-search")).setText("F3.load"));
    keys.press(KeyCode.ENTER, KeyCode.ENTER).type("0v").press(KeyCode.ENTER);
    look("22-odds");
    assertThat(((Label) scene.lookup("#odds")).getText()).contains("[2, 3]");
    assertThat(scene.getRoot().lookupAll(".chip.doubted")).hasSize(2);
    assertThat(((Label) scene.lookup("#headline")).getText()).isEqualTo(Texts.of("now.odds"));

    keys.type("d").press(KeyCode.DELETE);
    for (int i = 0; i < 12; i++) {
      keys.type("c").type("1");
    }
    look("23-stuck");
    assertThat(((Label) scene.lookup("#headline")).getText()).isEqualTo(Texts.of("now.stuck"));
    keys.type("s");
    look("24-swap");
    keys.type("2");
    assertThat(((Label) scene.lookup("#said")).getText()).contains("no change");
    check.nothingWrong();
  }

  @Test
  void aPlanWithNothingWrongAndOneThatCanNotBeSolvedSaySo() throws TimeoutException {
    open(
        new Dress(Look.PAPER, TextSize.LARGEST, 1024),
        FakePlanCheck.finding(
            FakePlanCheck.finding(
                "K1",
                Severity.KNOW,
                "relay K1 has a plain diode across its coil.",
                "It lets go slowly.",
                "A resistor instead lets go faster.")));
    keys.press(KeyCode.F5);
    look("28-paper-no-vehicle");
    keys.press(KeyCode.F2);
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    look("29-paper-nothing-wrong");
    assertThat(((Label) scene.lookup("#paper-verdict")).getText())
        .isEqualTo(Texts.of("paper.verdict.clean"));

    keys.type("k");
    look("30-paper-worth-knowing");

    open(new Dress(Look.PAPER, TextSize.NORMAL, 1024), FakePlanCheck.unsolved());
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    look("31-paper-unsolved");
    assertThat(((Label) scene.lookup("#paper-verdict")).getText())
        .isEqualTo(Texts.of("paper.verdict.unsolved", 18));
    check.nothingWrong();
  }

  private void open(Dress dress) {
    open(dress, FakePlanCheck.several());
  }

  private void open(Dress dress, PlanCheck plans) {
    tail = "-" + dress;
    pictured = dress.pictured();
    scene =
        WaitForAsyncUtils.waitForAsyncFx(
            20_000,
            () -> {
              MainWindow window =
                  new MainWindow(
                      new Fittings(
                              new FakeCaseDesk(),
                              new FakeVehicleLibrary(),
                              new FakeLoops(),
                              FakeMeters.both(),
                              new FakePreferences(),
                              Runnable::run)
                          .pages(
                              List.of(
                                  new NewVehiclePage(basis, (v, c) -> Optional.empty()),
                                  new AddCircuitPage(basis, (v, c) -> Optional.empty()),
                                  new SheetPage(new SheetFiles()),
                                  new ListOutPage(new SheetFiles())))
                          .check(plans)
                          .shelf(new FakeCases().shelfIn(Path.of("files"))));
              window.shell().lookProperty().set(dress.look());
              window.shell().textSizeProperty().set(dress.size());
              Scene made = new Scene(window.root(), dress.width(), dress.height());
              stage.setScene(made);
              stage.show();
              return made;
            });
    keys = Keyboard.prompt(scene);
  }

  private void look(String name) {
    check.look(scene, name + tail, pictured);
  }
}
