package loopwright.ui.snapshot;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeoutException;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.PatternWords;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.evidence.Bench;
import loopwright.io.sheet.SheetFiles;
import loopwright.model.Language;
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
import loopwright.ui.ground.GroundPage;
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
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Plays a case in every look and size, takes pictures, and checks that all lies inside. */
@ExtendWith(ApplicationExtension.class)
class ScreensTest {
  private final Basis basis = new Basis(Bench.KNOWLEDGE, PatternWords.inUse());

  private final GroundPage grounds =
      new GroundPage(
          Bench.groundDesk(new Bench.ProofsInMemory()), new FakePreferences(), Runnable::run);
  private Stage stage;

  @Start
  void start(Stage stage) {
    this.stage = stage;
  }

  /**
   * Every size in the paper look, the ends of the scale in the others; or, with {@code
   * -Dscreens=night-100-1280}, those whose name begins so.
   */
  static List<Arguments> looksAndSizes() {
    String wanted = System.getProperty("screens", "");
    List<Arguments> all = new ArrayList<>();
    for (Look look : Look.values()) {
      for (TextSize size : TextSize.values()) {
        for (int width : new int[] {1024, 1280}) {
          boolean ends =
              size == TextSize.NORMAL && width == 1280 || size == TextSize.LARGEST && width == 1024;
          boolean usual = wanted.isEmpty() && (look == Look.PAPER || ends);
          boolean asked = !wanted.isEmpty() && name(look, size, width).startsWith(wanted);
          if (usual || asked) {
            all.add(Arguments.of(look, size, width, width == 1024 ? 700 : 800));
          }
        }
      }
    }
    return all;
  }

  private static String name(Look look, TextSize size, int width) {
    String language = Language.inUse() == Language.ENGLISH ? "" : "-" + Language.inUse().code();
    return look.name().toLowerCase(Locale.ROOT) + "-" + size.percent() + "-" + width + language;
  }

  @ParameterizedTest
  @MethodSource("looksAndSizes")
  void everyScreenLiesInsideTheWindow(Look look, TextSize size, int width, int height) {
    Scene scene = open(look, size, width, height);
    Keyboard keys = new Keyboard(scene);
    String tail = "-" + name(look, size, width);
    boolean all = look == Look.PAPER;

    picture(scene, "01-library" + tail, all);
    keys.press(KeyCode.ENTER);
    picture(scene, "02-vehicle" + tail, true);
    keys.press(KeyCode.ENTER);
    picture(scene, "03-complaint" + tail, true);
    keys.press(KeyCode.ENTER);
    picture(scene, "04-look" + tail, true);
    keys.type("1");
    picture(scene, "05-volts" + tail, all);
    keys.type("12.4v").press(KeyCode.ENTER);
    keys.type("12");
    keys.type(".42v");
    picture(scene, "06-typed" + tail, true);
    keys.press(KeyCode.ESCAPE);
    keys.type("w");
    picture(scene, "07-why" + tail, all);
    keys.type("t");
    picture(scene, "07-tree" + tail, true);
    keys.press(KeyCode.ESCAPE);
    keys.press(KeyCode.ESCAPE).type("i");
    picture(scene, "08-if-not" + tail, all);
    keys.press(KeyCode.ESCAPE).type("c");
    picture(scene, "09-refuse" + tail, all);
    keys.press(KeyCode.ESCAPE).type("a");
    keys.press(KeyCode.ENTER, KeyCode.ENTER);
    picture(scene, "10-own" + tail, all);
    keys.press(KeyCode.ESCAPE, KeyCode.F11);
    picture(scene, "11-drawing" + tail, all);
    keys.press(KeyCode.F11, KeyCode.ESCAPE, KeyCode.F12);
    picture(scene, "12-known" + tail, all);
    keys.press(KeyCode.ESCAPE).type("d");
    picture(scene, "13-done" + tail, all);
    keys.press(KeyCode.ESCAPE);
    keys.type("12.4m").press(KeyCode.ENTER);
    picture(scene, "14-second" + tail, all);
    keys.press(KeyCode.ESCAPE).type("c").type("1");
    keys.type("12.3v").press(KeyCode.ENTER);
    keys.type("0.02v").press(KeyCode.ENTER);
    picture(scene, "15-late" + tail, true);
    keys.type("1.2k").press(KeyCode.ENTER);
    picture(scene, "16-found" + tail, true);
    keys.press(KeyCode.F10);
    picture(scene, "17-put-back" + tail, all);
    keys.press(KeyCode.ESCAPE, KeyCode.ENTER);
    picture(scene, "18-proof" + tail, all);
    keys.type("0.03v").press(KeyCode.ENTER);
    picture(scene, "19-end" + tail, all);
    keys.press(KeyCode.F4);
    picture(scene, "20-cases" + tail, all);
    keys.type("a");
    keys.press(KeyCode.ESCAPE).type("p");
    picture(scene, "20-cases-written" + tail, true);
    keys.press(KeyCode.F1);
    picture(scene, "21-keys" + tail, all);
    keys.press(KeyCode.F5);
    picture(scene, "25-paper" + tail, true);
    keys.press(KeyCode.ENTER, KeyCode.END);
    picture(scene, "26-paper-details" + tail, all);
    keys.type("k");
    keys.press(KeyCode.HOME).type("t");
    picture(scene, "27-paper-hottest" + tail, all);
  }

  @ParameterizedTest
  @MethodSource("looksAndSizes")
  void listsFromASpreadsheetLieInsideTheWindow(Look look, TextSize size, int width, int height) {
    Scene scene = open(look, size, width, height);
    Keyboard keys = new Keyboard(scene);
    String tail = "-" + name(look, size, width);
    boolean all = look == Look.PAPER;
    keys.press(KeyCode.ENTER, KeyCode.F6).control(KeyCode.I);
    picture(scene, "40-sheet" + tail, all);
    String list = "src/test/resources/untidy/17-parts-that-are-not-there-yet.csv";
    WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> ((TextField) scene.lookup("#sheet-path")).setText(list));
    keys.press(KeyCode.ENTER);
    picture(scene, "41-sheet-refused" + tail, true);
    keys.alt(KeyCode.P).press(KeyCode.DOWN);
    picture(scene, "42-sheet-parts" + tail, true);
    keys.press(KeyCode.ESCAPE).control(KeyCode.E);
    picture(scene, "43-list-out" + tail, true);
    keys.press(KeyCode.ESCAPE).control(KeyCode.N);
    picture(scene, "44-new-vehicle" + tail, true);
    keys.press(KeyCode.ENTER);
    picture(scene, "45-needs" + tail, all);
    keys.press(KeyCode.RIGHT);
    picture(scene, "46-needs-answers" + tail, all);
    keys.press(KeyCode.ESCAPE, KeyCode.ESCAPE, KeyCode.ESCAPE).control(KeyCode.K);
    picture(scene, "47-patterns" + tail, all);
    keys.type("2").press(KeyCode.ENTER);
    picture(scene, "48-pattern" + tail, true);
  }

  @ParameterizedTest
  @MethodSource("looksAndSizes")
  void theWiringPlaceLiesInsideTheWindow(Look look, TextSize size, int width, int height) {
    Scene scene = open(look, size, width, height);
    Keyboard keys = new Keyboard(scene);
    String tail = "-" + name(look, size, width);
    boolean all = look == Look.PAPER;

    keys.press(KeyCode.ENTER, KeyCode.F6);
    picture(scene, "30-wiring" + tail, true);
    keys.control(KeyCode.DIGIT2).press(KeyCode.RIGHT, KeyCode.RIGHT).type("ten");
    keys.press(KeyCode.ENTER);
    picture(scene, "31-wiring-wrong" + tail, true);
    keys.press(KeyCode.DELETE).control(KeyCode.DIGIT5).press(KeyCode.DOWN);
    picture(scene, "32-wiring-wires" + tail, all);
    keys.alt(KeyCode.DIGIT1);
    picture(scene, "33-wiring-drawing" + tail, all);
    keys.alt(KeyCode.DIGIT2);
    picture(scene, "34-wiring-part" + tail, all);
    keys.alt(KeyCode.DIGIT3);
    picture(scene, "35-wiring-todo" + tail, true);
    keys.alt(KeyCode.DIGIT4);
    picture(scene, "36-wiring-files" + tail, all);
    keys.alt(KeyCode.DIGIT5);
    picture(scene, "37-wiring-more" + tail, true);
    keys.control(KeyCode.F).type("horn");
    picture(scene, "38-wiring-find" + tail, all);
    keys.press(KeyCode.ESCAPE);
    assertThat(scene.lookup("#grid").isFocused()).isTrue();
  }

  @ParameterizedTest
  @MethodSource("looksAndSizes")
  void groundsLieInsideTheWindow(Look look, TextSize size, int width, int height) {
    Scene scene = open(look, size, width, height);
    Keyboard keys = new Keyboard(scene);
    String tail = "-" + name(look, size, width);
    boolean all = look == Look.PAPER;
    keys.press(KeyCode.ENTER, KeyCode.F7).control(KeyCode.DIGIT2);
    // The window's own vehicle is a sketch that can't be solved.
    WaitForAsyncUtils.waitForAsyncFx(
        60_000,
        () -> {
          grounds.show("pumper", Bench.vehicle("pumper"));
          grounds.opened();
        });
    picture(scene, "50-ground" + tail, true);
    keys.type("0.2").press(KeyCode.ENTER);
    keys.type("V").press(KeyCode.ENTER);
    picture(scene, "51-ground-said" + tail, true);
    keys.type("d");
    picture(scene, "52-ground-details" + tail, all);
    keys.type("o0.3").press(KeyCode.ENTER);
    keys.type("OL").press(KeyCode.ENTER);
    picture(scene, "53-ground-ohms" + tail, all);
  }

  @Test
  void readingsAtOddsAndADeadEndAreToldWithWhatToDo() {
    Scene scene = open(Look.PAPER, TextSize.NORMAL, 1024, 700);
    Keyboard keys = new Keyboard(scene);
    keys.press(KeyCode.ENTER, KeyCode.ENTER, KeyCode.ENTER).type("1");
    keys.type("12.4v").press(KeyCode.ENTER);
    keys.type("a").press(KeyCode.ENTER, KeyCode.ENTER);
    WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> ((TextField) scene.lookup("#own-search")).setText("F3.load"));
    keys.press(KeyCode.ENTER, KeyCode.ENTER).type("0v").press(KeyCode.ENTER);
    picture(scene, "22-odds", true);
    assertThat(((Label) scene.lookup("#odds")).getText()).contains("[2, 3]");
    assertThat(scene.getRoot().lookupAll(".chip.doubted")).hasSize(2);
    assertThat(((Label) scene.lookup("#headline")).getText()).isEqualTo(Texts.of("now.odds"));

    keys.type("d").press(KeyCode.DELETE);
    for (int i = 0; i < 12; i++) {
      keys.type("c").type("1");
    }
    picture(scene, "23-stuck", true);
    assertThat(((Label) scene.lookup("#headline")).getText()).isEqualTo(Texts.of("now.stuck"));
    keys.type("s");
    picture(scene, "24-swap", true);
    keys.type("2");
    assertThat(((Label) scene.lookup("#said")).getText()).contains("no change");
  }

  @Test
  void aPlanWithNothingWrongAndOneThatCanNotBeSolvedSaySo() throws TimeoutException {
    Scene sound =
        open(
            Look.PAPER,
            TextSize.LARGEST,
            1024,
            700,
            FakePlanCheck.finding(
                FakePlanCheck.finding(
                    "K1",
                    Severity.KNOW,
                    "relay K1 has a plain diode across its coil.",
                    "It lets go slowly.",
                    "A resistor instead lets go faster.")));
    Keyboard keys = new Keyboard(sound);
    keys.press(KeyCode.F5);
    picture(sound, "28-paper-no-vehicle", true);
    keys.press(KeyCode.F2);
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    picture(sound, "29-paper-nothing-wrong", true);
    assertThat(((Label) sound.lookup("#paper-verdict")).getText())
        .isEqualTo(Texts.of("paper.verdict.clean"));

    keys.type("k");
    picture(sound, "30-paper-worth-knowing", true);

    Scene unsolved = open(Look.PAPER, TextSize.NORMAL, 1024, 700, FakePlanCheck.unsolved());
    Keyboard again = new Keyboard(unsolved);
    again.takeVehicle();
    again.press(KeyCode.F5);
    picture(unsolved, "31-paper-unsolved", true);
    assertThat(((Label) unsolved.lookup("#paper-verdict")).getText())
        .isEqualTo(Texts.of("paper.verdict.unsolved", 18));
  }

  private Scene open(Look look, TextSize size, int width, int height) {
    return open(look, size, width, height, FakePlanCheck.several());
  }

  private Scene open(Look look, TextSize size, int width, int height, PlanCheck check) {
    return WaitForAsyncUtils.waitForAsyncFx(
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
                      .check(check)
                      .proofs(List.of(grounds))
                      .shelf(new FakeCases().shelfIn(Path.of("files"))));
          window.shell().lookProperty().set(look);
          window.shell().textSizeProperty().set(size);
          Scene scene = new Scene((javafx.scene.layout.BorderPane) window.root(), width, height);
          stage.setScene(scene);
          stage.show();
          return scene;
        });
  }

  private static void picture(Scene scene, String name, boolean wanted) {
    if (wanted) {
      WritableImage image = Snapshots.take(scene, name);
      assertThat(image.getWidth()).isEqualTo(scene.getWidth());
    } else {
      WaitForAsyncUtils.waitForFxEvents(3);
    }
    List<String> outside =
        WaitForAsyncUtils.waitForAsyncFx(10_000, () -> outside(scene, scene.getRoot()));
    assertThat(outside).as(name).isEmpty();
    seenAndReached(scene, name);
  }

  private static void seenAndReached(Scene scene, String name) {
    boolean most = scene.getRoot().getStyleClass().contains(Look.CONTRAST.styleClass());
    Map<String, Set<String>> wrong =
        WaitForAsyncUtils.waitForAsyncFx(
            10_000,
            () ->
                Map.of(
                    "contrast",
                    Contrast.tooLittle(scene, most ? 7 : 4.5, 3),
                    "names",
                    Reach.nameless(scene),
                    "cut off",
                    // German words are longer; what is cut there is named among the known gaps.
                    name.endsWith("-de") ? Set.of() : Reach.cutOff(scene)));
    wrong.forEach((what, found) -> assertThat(found).as(name + ": " + what).isEmpty());
  }

  /** Cards, buttons and the value field that reach over the window's edge. */
  private static List<String> outside(Scene scene, Node node) {
    List<String> found = new ArrayList<>();
    if (!node.isVisible()) {
      return found;
    }
    boolean watched =
        node.getStyleClass().contains("card")
            || node.getStyleClass().contains("key-button")
            || node.getStyleClass().contains("value-field");
    Bounds b = node.localToScene(node.getLayoutBounds());
    if (watched && !inScroller(node)) {
      if (b.getMinX() < -0.5
          || b.getMinY() < -0.5
          || b.getMaxX() > scene.getWidth() + 0.5
          || b.getMaxY() > scene.getHeight() + 0.5) {
        found.add(node.getStyleClass() + " " + b);
      }
    }
    if (node instanceof Pane || node instanceof javafx.scene.layout.Region) {
      for (Node child : ((javafx.scene.Parent) node).getChildrenUnmodifiable()) {
        found.addAll(outside(scene, child));
      }
    }
    return found;
  }

  private static boolean inScroller(Node node) {
    for (Node p = node.getParent(); p != null; p = p.getParent()) {
      if (p instanceof javafx.scene.control.ScrollPane) {
        return true;
      }
    }
    return false;
  }
}
