package loopwright.ui.home;

import static loopwright.ui.snapshot.TestWindow.text;
import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeoutException;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.PatternWords;
import loopwright.evidence.Bench;
import loopwright.ui.cases.CaseShelf;
import loopwright.ui.fake.FakeCases;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.shell.ShellViewModel.Place;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestPages;
import loopwright.ui.snapshot.TestWindow;
import loopwright.ui.starting.NewVehiclePage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The start screen by the keyboard alone: from each thing somebody came for, and back. */
@ExtendWith(ApplicationExtension.class)
class HomeKeyboardTest {
  @RegisterExtension private final TestWindow window = new TestWindow();
  private MainWindow shown;
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private void open(CaseShelf shelf) throws TimeoutException {
    scene =
        window.open(
            () -> {
              shown =
                  new MainWindow(
                      window
                          .fittings()
                          .shelf(shelf)
                          .pages(
                              List.of(
                                  new NewVehiclePage(
                                      new Basis(Bench.KNOWLEDGE, new PatternWords(Locale.ENGLISH)),
                                      new FakeLoops())))
                          .proofs(List.of(TestPages.proving(window), window.grounds()))
                          .practise(TestWindow.drills())
                          .startScreen());
              return shown;
            },
            1024,
            700);
    keys = new Keyboard(scene);
    until(() -> text(scene, "#home-vehicle").contains("Light pumper"));
  }

  private Place place() {
    return shown.shell().placeProperty().get();
  }

  @Test
  void oneKeyLeadsToEachThing() throws TimeoutException {
    open(CaseShelf.EMPTY);
    assertThat(place()).isEqualTo(Place.HOME);
    assertThat(text(scene, "#home-vehicle"))
        .isEqualTo("At hand: Light pumper (demo vehicle, invented)");
    Node last = scene.lookup("#home-own");
    assertThat(last.localToScene(last.getLayoutBounds()).getMaxY()).isLessThan(500);
    keys.shift(KeyCode.F2);
    assertThat(scene.getFocusOwner().getId()).isEqualTo("home-dead");
    leads(KeyCode.DIGIT1, Place.FIND, "#complaint-words");
    leads(KeyCode.DIGIT2, Place.PAPER, "#paper");
    leads(KeyCode.DIGIT3, Place.PROVE, "#prove");
    leads(KeyCode.DIGIT4, Place.PROVE, "#ground");
    leads(KeyCode.DIGIT5, Place.PRACTISE, "#practise");
    leads(KeyCode.DIGIT6, Place.WIRING, "#new-vehicle");
    leads(KeyCode.V, Place.VEHICLE, "#library");
    // The arrows go from thing to thing, Enter takes it.
    keys.press(KeyCode.DOWN, KeyCode.ENTER);
    assertThat(place()).isNotEqualTo(Place.HOME);
  }

  private void leads(KeyCode key, Place to, String there) throws TimeoutException {
    keys.press(key);
    until(() -> place() == to);
    assertThat(scene.lookup(there)).as("%s", key).isNotNull();
    keys.shift(KeyCode.F2);
    until(() -> place() == Place.HOME);
  }

  @Test
  void whatIsNotFinishedIsGoneOnWithFirst() throws TimeoutException {
    open(new FakeCases().shelfIn(Path.of("files")));
    until(() -> scene.getFocusOwner().getId().equals("home-recents"));
    var list = (ListView<?>) scene.lookup("#home-recents");
    assertThat(list.getItems().stream().map(r -> ((Recent) r).state()))
        .containsExactly("found", "mended and proven", "vehicle");
    Snapshots.take(scene, "home-recents");
    keys.press(KeyCode.DOWN, KeyCode.DOWN, KeyCode.UP, KeyCode.UP, KeyCode.ENTER);
    until(() -> place() == Place.FIND);
  }
}
