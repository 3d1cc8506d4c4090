package loopwright.ui.paper;

import static loopwright.ui.snapshot.TestWindow.until;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanWatch;
import loopwright.evidence.Bench;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakePlanCheck;
import loopwright.ui.fake.Shed;
import loopwright.ui.lists.PrintPage;
import loopwright.ui.lists.Prints;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.snapshot.Keyboard;
import loopwright.ui.snapshot.Snapshots;
import loopwright.ui.snapshot.TestWindow;
import loopwright.ui.wiring.GridViewModel.GridRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The pumper with two mistakes in it, checked by the real rules, mended on the keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class PaperKeyboardTest {
  @RegisterExtension final TestWindow window = new TestWindow();
  private Scene scene;
  private Keyboard keys;
  private volatile String written = "";

  @Start
  void start(Stage stage) {
    window.on(stage);
  }

  private static Vehicle change(Vehicle vehicle, String part, PartSpec spec) {
    List<Part> parts = new ArrayList<>(vehicle.parts());
    parts.replaceAll(p -> p.id().equals(part) ? p.withSpec(spec) : p);
    return vehicle.with(parts, vehicle.joins(), vehicle.circuits());
  }

  /** The beacon's fuse is far too big, the floodlights' feed far too thin. */
  private static Vehicle broken() {
    Vehicle pumper = Bench.vehicle("pumper");
    PartSpec.Wire feed = (PartSpec.Wire) pumper.requirePart("W75").spec();
    return change(
        change(pumper, "F3", new PartSpec.Fuse(40, Optional.empty())),
        "W75",
        new PartSpec.Wire(
            feed.kind(),
            feed.from(),
            feed.to(),
            WireSize.parse("22 AWG"),
            feed.metres(),
            feed.endOhms(),
            feed.colour(),
            feed.loom()));
  }

  private void open(Vehicle vehicle, PlanCheck check) {
    open(List.of(vehicle), check);
  }

  private void open(List<Vehicle> vehicles, PlanCheck check) {
    scene =
        window.open(
            () ->
                new MainWindow(
                    window
                        .fittings(new Shed(vehicles), new FakeLoops())
                        .pages(List.of(new PrintPage(this::write, Path.of("prints"))))
                        .check(check)),
            1280,
            800);
    keys = new Keyboard(scene);
  }

  private Path write(Prints.Plan plan, Prints.Sheet sheet, Prints.Paper paper, Path folder) {
    written = plan.vehicle().name() + " " + sheet + " at " + plan.hottest();
    return folder.resolve("pumper-check.pdf");
  }

  private String text(String id) {
    return TestWindow.text(scene, id);
  }

  private List<String> cards() {
    return scene.getRoot().lookupAll(".finding").stream().map(Node::getAccessibleText).toList();
  }

  private String focused() {
    return scene.getFocusOwner() instanceof FindingCard card
        ? card.item().target().orElse("")
        : String.valueOf(scene.getFocusOwner());
  }

  private String rowInWiring() {
    TableView<?> grid = (TableView<?>) scene.lookup("#grid");
    int row = grid.getSelectionModel().getSelectedIndex();
    return ((GridRow) grid.getItems().get(row)).id().orElse("");
  }

  /** The real rules. */
  private static final class Real implements PlanCheck {
    private final PlanWatch watch = Bench.paperDesk().watch();

    @Override
    public PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
      return watch.check(vehicle, hottest, stale);
    }

    @Override
    public boolean ready() {
      return true;
    }
  }

  @Test
  void mendingOnAnotherVehicleKeepsWhatIsUnsavedOfTheFirst() throws Exception {
    Vehicle pumper = Bench.vehicle("pumper");
    open(List.of(pumper, broken().withName("Yard pumper")), new Real());
    keys.takeVehicle();
    keys.press(KeyCode.F6);
    until(() -> text("#wiring-state").startsWith(pumper.name()));
    keys.control(KeyCode.DIGIT2);
    keys.press(KeyCode.RIGHT).type("odd fuse").press(KeyCode.ENTER);
    until(() -> text("#wiring-state").contains("not saved"));

    keys.press(KeyCode.F2, KeyCode.F11, KeyCode.DOWN);
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    until(() -> text("#paper-verdict").contains("can burn"));
    for (int i = 0; i < cards().size() && !focused().equals("W75"); i++) {
      keys.press(KeyCode.DOWN);
    }
    keys.type("m");
    until(() -> text("#wiring-state").startsWith("Yard pumper"));
    assertThat(rowInWiring()).isEqualTo("W75");
    assertThat(text("#wiring-told"))
        .contains("F5: back to the check.")
        .endsWith(
            "What isn’t saved of "
                + pumper.name()
                + " is kept, and comes back when it is opened again.");
  }

  @Test
  void twoMistakesAreWalkedJumpedToAndOneIsMended() throws Exception {
    open(broken(), new Real());
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    until(() -> text("#paper-verdict").contains("can burn"));
    Snapshots.take(scene, "paper-two-mistakes");
    int before = cards().size();
    assertThat(before).isGreaterThanOrEqualTo(2);
    assertThat(cards()).anyMatch(c -> c.contains("beacon fuse F3"));
    assertThat(cards()).anyMatch(c -> c.contains("W75"));
    String first = focused();
    keys.press(KeyCode.ENTER);
    until(() -> !scene.getRoot().lookupAll(".finding-detail").isEmpty());
    keys.press(KeyCode.ENTER, KeyCode.END);
    assertThat(focused()).isNotEqualTo(first);
    keys.press(KeyCode.HOME);
    assertThat(focused()).isEqualTo(first);

    for (int i = 0; i < before && !focused().equals("W75"); i++) {
      keys.press(KeyCode.DOWN);
    }
    assertThat(focused()).isEqualTo("W75");
    keys.type("m");
    until(() -> scene.lookup("#grid") != null && rowInWiring().equals("W75"));
    assertThat(text("#wiring-told")).endsWith("F5: back to the check.");
    Snapshots.take(scene, "paper-mending");
    assertThat(scene.lookup("#cell-editor")).as("M isn't typed into the table").isNull();
    keys.press(KeyCode.HOME);
    TableView<?> grid = (TableView<?>) scene.lookup("#grid");
    for (int i = 0; i < grid.getColumns().size() && !column(grid).startsWith("Size"); i++) {
      keys.press(KeyCode.RIGHT);
    }
    keys.type("10 AWG").press(KeyCode.ENTER);
    keys.press(KeyCode.F5);
    until(() -> text("#paper-change").contains("fewer"));
    Snapshots.take(scene, "paper-one-less");
    assertThat(cards()).hasSizeLessThan(before).noneMatch(c -> c.contains(" W75 lies"));
    assertThat(text("#paper-change")).contains("W75");
  }

  private static String column(TableView<?> grid) {
    return grid.getSelectionModel().getSelectedCells().get(0).getTableColumn().getText();
  }

  @Test
  void theCheckIsPrintedForTheSurroundingsItWasMadeFor() throws Exception {
    Vehicle pumper = Bench.vehicle("pumper");
    open(pumper, FakePlanCheck.several());
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    until(() -> text("#paper-verdict").contains("can burn"));
    keys.type("t");
    WaitForAsyncUtils.waitForAsyncFx(
        5_000, () -> ((TextField) scene.lookup("#paper-hottest")).setText("70"));
    keys.press(KeyCode.ENTER);
    until(() -> text("#paper-extent").contains("air of 70 C"));
    Snapshots.take(scene, "paper-hotter");
    String chosen = focused();
    keys.control(KeyCode.P);
    until(() -> scene.lookup("#prints") != null);
    keys.press(KeyCode.ENTER);
    until(() -> text("#prints-told").startsWith("Paper check is in "));
    Snapshots.take(scene, "paper-printed");
    assertThat(written).isEqualTo(pumper.name() + " CHECK at 70.0");
    // Letters of the check do nothing here.
    keys.type("m");
    assertThat(scene.lookup("#prints")).isNotNull();
    keys.press(KeyCode.ESCAPE);
    until(() -> scene.lookup("#prints") == null);
    assertThat(focused()).isEqualTo(chosen);
    keys.control(KeyCode.P);
    keys.press(KeyCode.F2, KeyCode.F5);
    until(() -> scene.lookup("#findings") != null);
    assertThat(scene.lookup("#prints")).as("who comes back sees the check").isNull();
  }

  @Test
  void surroundingsThatCanNotBeAreToldInPlaceAndEscapeLeavesThemAsTheyWere() throws Exception {
    open(Bench.vehicle("pumper"), FakePlanCheck.finding());
    keys.takeVehicle();
    keys.press(KeyCode.F5);
    until(() -> text("#paper-verdict").equals("Nothing wrong"));
    Snapshots.take(scene, "paper-nothing-wrong");
    keys.type("t");
    TextField field = (TextField) scene.lookup("#paper-hottest");
    assertThat(field.isFocused()).isTrue();
    WaitForAsyncUtils.waitForAsyncFx(5_000, () -> field.setText("95"));
    keys.press(KeyCode.ENTER);
    assertThat(text("#paper-problem")).contains("95").contains("-40 to 79");
    Snapshots.take(scene, "paper-bad-surroundings");
    keys.press(KeyCode.ESCAPE);
    assertThat(field.getText()).isEqualTo("57");
    assertThat(text("#paper-problem")).isEmpty();
  }
}
