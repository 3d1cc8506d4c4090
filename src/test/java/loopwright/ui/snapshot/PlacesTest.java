package loopwright.ui.snapshot;

import static loopwright.ui.snapshot.TestWindow.text;
import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.Slider;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.Phrases;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Level;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakeCases;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.Shed;
import loopwright.ui.lists.PrintPage;
import loopwright.ui.practise.PractiseSource;
import loopwright.ui.shell.MainWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/**
 * The places that work something out of a real vehicle: gone through once in one window, which is
 * looked at in every look and size wherever it stops.
 */
@ExtendWith(ApplicationExtension.class)
class PlacesTest {
  @RegisterExtension final TestWindow window = new TestWindow();

  private final ScreenCheck check = new ScreenCheck();
  private Stage stage;
  private MainWindow shown;
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    this.stage = stage;
    window.on(stage);
  }

  @AfterEach
  void giveUpTheSize() {
    Dress.off(stage);
  }

  @Test
  void everyPlaceCanBeReadReachedAndPressed() throws TimeoutException {
    ExplainDesk lessons = new ExplainDesk(Bench.KNOWLEDGE, Phrases.inUse());
    open(lessons);
    home();
    printing();
    proving();
    grounds();
    practising();
    explaining(lessons);
    check.nothingWrong();
  }

  private void open(ExplainDesk lessons) {
    Vehicle tractor = Bench.vehicle("tractor");
    PractiseSource drills =
        new PractiseSource(
            Bench.practiseDesk(new Bench.DrillsInMemory()),
            List.of("motorcycle"),
            name -> Optional.of(Bench.vehicle(name)),
            Optional.of(sheet -> Path.of(sheet.code() + ".pdf")));
    scene =
        window.open(
            () -> {
              shown =
                  new MainWindow(
                      window
                          .fittings(new Shed(tractor), new FakeLoops())
                          .shelf(new FakeCases().shelfIn(Path.of("files")))
                          .ready(
                              new OneReadyCase("tractor-horn", tractor.name(), new FakeCaseDesk()))
                          .pages(
                              List.of(
                                  new PrintPage(
                                      (plan, sheet, paper, into) -> into, Path.of("files"))))
                          .proofs(List.of(TestPages.proving(window), window.grounds()))
                          .practise(drills)
                          .explain(lessons)
                          .startScreen());
              return shown;
            },
            1280,
            800);
    keys = Keyboard.prompt(scene);
  }

  private void home() throws TimeoutException {
    until(() -> text(scene, "#home-vehicle").contains(Bench.vehicle("tractor").name()));
    until(() -> !((ListView<?>) scene.lookup("#home-recents")).getItems().isEmpty());
    look("60-start");
    keys.press(KeyCode.F4);
    until(() -> scene.lookup("#ready") != null);
    look("61-cases-ready");
    Dress.NARROWEST.on(shown, stage);
    assertThat(scene.lookup("#ready").isVisible()).isFalse();
    keys.press(KeyCode.END, KeyCode.DOWN);
    assertThat(scene.lookup("#ready").isFocused()).isTrue();
    assertThat(scene.lookup("#kept").isVisible()).isFalse();
    look("61-cases-to-practise");
    Dress.NARROWEST.on(shown, stage);
    keys.press(KeyCode.UP);
    assertThat(scene.lookup("#kept").isFocused()).isTrue();
    assertThat(scene.lookup("#ready").isVisible()).isFalse();
  }

  private void printing() throws TimeoutException {
    keys.press(KeyCode.F2).control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    look("62-print");
    keys.press(KeyCode.ESCAPE);
  }

  private void proving() throws TimeoutException {
    keys.press(KeyCode.F7);
    until(() -> scene.lookup("#prove-headline") != null);
    look("63-prove");
    String first = text(scene, "#prove-headline");
    keys.type("1");
    until(() -> !text(scene, "#prove-headline").equals(first));
    look("64-prove-reads");
    keys.type("5v").press(KeyCode.ENTER);
    until(() -> scene.lookup("#prove-trouble") != null);
    look("65-prove-wrong");
    Dress.NARROWEST.on(shown, stage);
    keys.press(KeyCode.F12);
    assertThat(scene.lookup("#prove-now").isVisible()).isFalse();
    look("66-prove-list");
    Dress.NARROWEST.on(shown, stage);
    keys.press(KeyCode.ESCAPE);
  }

  private void grounds() throws TimeoutException {
    keys.control(KeyCode.DIGIT2);
    until(() -> scene.lookup("#ground-title") != null);
    look("50-ground");
    keys.type("0.2").press(KeyCode.ENTER);
    keys.type("V").press(KeyCode.ENTER);
    until(() -> scene.lookup("#ground-verdict") != null);
    look("51-ground-said");
    keys.type("d");
    look("52-ground-details");
    keys.type("o0.3").press(KeyCode.ENTER);
    keys.type("OL").press(KeyCode.ENTER);
    look("53-ground-ohms");
  }

  private void practising() throws TimeoutException {
    keys.shift(KeyCode.F4);
    until(() -> scene.lookup("#practise .actions .key-button") != null);
    look("70-practise");
    keys.press(KeyCode.P);
    look("71-practise-class-sheet");
    keys.press(KeyCode.P, KeyCode.X, KeyCode.C);
    keys.type(new DrillCode(Level.DEAD_LAMP, 1, 7, "").toString()).press(KeyCode.ENTER);
    until(() -> scene.lookup("#practise .step-grid") != null);
    look("72-practise-playing");
    keys.press(KeyCode.ENTER);
    look("73-practise-expected");
    keys.type("12-13").press(KeyCode.ENTER, KeyCode.DIGIT1);
    look("74-practise-foretold");
    keys.press(KeyCode.ENTER);
    until(() -> scene.lookup("#practise-shown") != null);
    look("74-practise-read");
    keys.press(KeyCode.N);
    look("75-practise-name");
    keys.press(KeyCode.ENTER);
    until(
        () ->
            scene.lookup("#practise").lookupAll(".muted").stream()
                .noneMatch(l -> ((Label) l).getText().equals(Texts.of("practise.reading"))));
    keys.press(KeyCode.E);
    until(() -> scene.lookup("#practise-score") != null);
    look("76-practise-debrief");
    keys.press(KeyCode.N);
    until(() -> scene.lookup("#practise-progress") != null);
    look("77-practise-progress");
  }

  private void explaining(ExplainDesk lessons) throws TimeoutException {
    keys.press(KeyCode.F2, KeyCode.F1);
    for (ExplainDesk.Entry page : lessons.find("")) {
      until(() -> text(scene, "#explain-title").equals(page.title()));
      assertThat(scene.getFocusOwner()).as(page.id()).isInstanceOf(Slider.class);
      look("80-explain-" + page.id());
      keys.press(KeyCode.PAGE_DOWN);
    }
    keys.control(KeyCode.F);
    look("81-explain-search");
    keys.press(KeyCode.F1);
    look("82-keys");
  }

  private void look(String name) throws TimeoutException {
    for (Dress dress : Dress.all()) {
      dress.on(shown, stage);
      assertThat(scene.getWidth()).isEqualTo(dress.width());
      check.look(scene, name + "-" + dress, dress.pictured());
    }
  }
}
