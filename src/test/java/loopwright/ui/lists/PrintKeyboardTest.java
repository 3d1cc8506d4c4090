package loopwright.ui.lists;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.ui.TextSize;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestWindow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Print and lists by the keyboard alone, from both places that offer it. */
@ExtendWith(ApplicationExtension.class)
class PrintKeyboardTest {
  @TempDir Path folder;

  @RegisterExtension final TestWindow window = new TestWindow();
  private Scene scene;
  private Keyboard keys;

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  /** Writes what was asked for as the text of the file. */
  private static Path write(Prints.Plan plan, Prints.Sheet sheet, Prints.Paper paper, Path into)
      throws IOException {
    return Files.writeString(
        into.resolve(sheet + ".pdf"),
        plan.vehicle().name()
            + plan.circuit().map(c -> " " + c).orElse("")
            + (" " + sheet + " " + paper + " " + plan.hottest()));
  }

  private void open(TextSize size, int width, int height) throws Exception {
    scene =
        window.open(
            () -> {
              MainWindow made =
                  new MainWindow(
                      window
                          .fittings()
                          .pages(List.of(new PrintPage(PrintKeyboardTest::write, folder))));
              made.shell().textSizeProperty().set(size);
              return made;
            },
            width,
            height);
    keys = new Keyboard(scene);
    keys.takeVehicle();
  }

  private String told() {
    return ((Label) scene.lookup("#prints-told")).getText();
  }

  @Test
  void aDigitWritesAFileAndItSaysWhere() throws Exception {
    open(TextSize.NORMAL, 1280, 800);
    keys.control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    keys.type("1");
    Path file = folder.resolve("MAKING.pdf");
    until(() -> told().equals("Making list is in " + file));
    assertThat(Files.readString(file)).endsWith(" MAKING A4 57.0");
    Snapshots.take(scene, "lists-written");
    keys.type("p").type("3");
    until(() -> told().contains("DRAWINGS.pdf"));
    assertThat(Files.readString(folder.resolve("DRAWINGS.pdf"))).endsWith(" DRAWINGS LETTER 57.0");
    keys.type("8");
    until(() -> told().contains("ORDER.pdf"));
    assertThat(Files.readString(folder.resolve("ORDER.pdf"))).contains(" beacon ORDER");
    keys.press(KeyCode.ESCAPE);
    until(() -> scene.lookup("#prints") == null && scene.lookup("#circuits") != null);
  }

  @Test
  void theWiringPlaceOffersItToo() throws Exception {
    open(TextSize.NORMAL, 1280, 800);
    keys.press(KeyCode.F6);
    until(() -> scene.lookup("#grid") != null);
    keys.control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    keys.type("2");
    until(() -> told().contains("LABELS.pdf"));
    keys.press(KeyCode.ESCAPE);
    until(() -> scene.lookup("#grid") != null);
  }

  @Test
  void whatCantBeWrittenIsToldInPlace() throws Exception {
    open(TextSize.NORMAL, 1280, 800);
    keys.control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    WaitForAsyncUtils.waitForAsyncFx(
        5_000,
        () ->
            ((TextField) scene.lookup("#prints-folder"))
                .setText(folder.resolve("nowhere").toString()));
    keys.type("4");
    until(() -> told().startsWith("Paper check wasn\u2019t written: "));
    assertThat(told()).contains("nowhere");
    // Digits in the folder's name are typed, not obeyed.
    WaitForAsyncUtils.waitForAsyncFx(
        5_000,
        () -> {
          scene.lookup("#prints-folder").requestFocus();
          return Optional.empty();
        });
    keys.type("1");
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(told()).startsWith("Paper check");
  }

  @Test
  void itFitsTheSmallestWindowInTheLargestType() throws Exception {
    open(TextSize.values()[TextSize.values().length - 1], 1024, 700);
    Snapshots.take(scene, "lists-vehicle-large");
    inside("#vehicle");
    keys.control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    Snapshots.take(scene, "lists-large");
    inside("#prints");
  }

  private void inside(String id) {
    for (Node button : scene.lookup(id).lookupAll(".key-button")) {
      var bounds = button.localToScene(button.getLayoutBounds());
      assertThat(bounds.getMaxX()).as(id).isLessThanOrEqualTo(1024.5);
      assertThat(bounds.getMaxY()).as(id).isLessThanOrEqualTo(700.5);
    }
  }
}
