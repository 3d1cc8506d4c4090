package loopwright.ui.ground;

import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundView;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;
import loopwright.ui.widget.StepGrid;

/** A ground's proof in the order in which hands work. */
final class GroundSteps extends VBox {
  private StepGrid grid = new StepGrid();

  GroundSteps() {
    setId("ground-steps");
    getStyleClass().add("steps");
  }

  /**
   * Shows a ground.
   *
   * @param details whether what it should have, and where its limit comes from, is wanted
   * @param byOhms whether ohms are about to be entered
   */
  void show(Optional<GroundView> view, boolean details, boolean byOhms) {
    getChildren().clear();
    if (view.isEmpty()) {
      getChildren().add(Parts.text(Texts.of("ground.workingOne"), "muted"));
      return;
    }
    GroundView ground = view.get();
    Label title = Parts.text(ground.title(), "headline");
    title.setId("ground-title");
    getChildren().add(title);
    String last =
        ground.since().isEmpty()
            ? ground.result().map(GroundResult::words).orElse("")
            : ground.since();
    if (!last.isEmpty()) {
      getChildren().add(Parts.text(Texts.of("ground.last", last), "said"));
    }
    ground.proof().ifPresent(p -> p.cautions().forEach(c -> getChildren().add(Parts.caution(c))));
    grid = new StepGrid();
    if (byOhms) {
      step("ground.ohms", ground.ohms(), "step-where");
    }
    ground
        .proof()
        .ifPresentOrElse(this::proof, () -> step("ground.proof", ground.unproven(), "step-quiet"));
    ground.proof().ifPresent(p -> p.notes().forEach(n -> step("ground.note", n, "step-where")));
    if (details || ground.proof().isEmpty()) {
      step("ground.should", ground.own(), "step-where");
      ground.proof().ifPresent(p -> step("ground.source", p.source(), "step-where"));
      if (!byOhms) {
        step("ground.ohms", ground.ohms(), "step-where");
      }
    }
    getChildren().add(grid);
  }

  private void proof(GroundView.Proof proof) {
    step(
        "check.set",
        proof.set().change().isEmpty()
            ? Texts.of("check.setSame")
            : String.join(", ", proof.set().change()),
        proof.set().change().isEmpty() ? "step-quiet" : "step-value");
    step("ground.runs", proof.works(), "step-quiet");
    grid.point("check.red", Parts.redMark(), proof.red());
    grid.point("check.black", Parts.blackMark(), proof.black());
    step("check.meter", proof.meter(), "step-quiet");
    step(
        "ground.judged",
        Texts.of("ground.bands", proof.good(), proof.bad(), proof.healthy()),
        "step-healthy");
    step("ground.limit", proof.limit(), "step-where");
  }

  private void step(String key, String words, String style) {
    grid.step(key, Parts.text(words, style));
  }
}
