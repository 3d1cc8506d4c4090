package loopwright.ui.starting;

import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import loopwright.casework.Problem;
import loopwright.casework.edit.Change;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.Pattern;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.wiring.WiringDesk;
import loopwright.ui.wiring.WiringPage;

/** Adds a circuit by pattern: pick one, answer, look, Enter. */
public final class AddCircuitPage implements WiringPage {
  private final Basis basis;
  private final LoopSource loops;
  private Runnable focus = () -> {};

  /**
   * Makes the page.
   *
   * @param loops draws what would come out
   */
  public AddCircuitPage(Basis basis, LoopSource loops) {
    this.basis = basis;
    this.loops = loops;
  }

  @Override
  public String title() {
    return Texts.of("starting.add.title");
  }

  @Override
  public String key() {
    return "Ctrl+K";
  }

  @Override
  public Needs needs() {
    return Needs.VEHICLE;
  }

  @Override
  public Node open(WiringDesk desk) {
    StackPane page = new StackPane();
    page.setId("add-circuit");
    pick(page, desk);
    return page;
  }

  @Override
  public void takeFocus() {
    focus.run();
  }

  private void pick(StackPane page, WiringDesk desk) {
    PatternPicker picker = new PatternPicker(basis, pattern -> answer(page, desk, pattern));
    page.getChildren().setAll(picker);
    focus = picker::takeFocus;
    focus.run();
  }

  private void answer(StackPane page, WiringDesk desk, Pattern pattern) {
    Vehicle vehicle = desk.vehicle().orElseThrow();
    PreviewMaker maker = new PreviewMaker(desk.worker().another(), loops);
    AnswerPane pane = new AnswerPane(pattern, vehicle, basis, Map.of(), maker, desk.emProperty());
    KeyButton add =
        new KeyButton(
                Texts.of("starting.add"), "Enter", () -> add(desk, pattern, pane.form().given()))
            .styled("primary");
    KeyButton back =
        new KeyButton(Texts.of("starting.back"), "Esc", () -> pick(page, desk)).styled("action");
    page.getChildren()
        .setAll(
            new StepPage(
                pattern.title(basis), pane, add, Optional.of(back), Texts.of("starting.keys")));
    focus = pane::takeFocus;
    focus.run();
  }

  private void add(WiringDesk desk, Pattern pattern, Map<String, String> given) {
    try {
      Change change = desk.make(pattern.edit(basis, given));
      desk.close(change.circuits().stream().findFirst());
    } catch (Problem e) {
      // The preview says what is wrong; the form stays as it is.
      focus.run();
    }
  }
}
