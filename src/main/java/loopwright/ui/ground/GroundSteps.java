package loopwright.ui.ground;

import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.PointView;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundView;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** A ground's proof in the order in which hands work. */
final class GroundSteps extends VBox {
  private GridPane grid = new GridPane();
  private int row;

  GroundSteps() {
    setId("ground-steps");
    getStyleClass().add("steps");
  }

  void show(Optional<GroundView> view, boolean details) {
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
    grid = new GridPane();
    grid.getStyleClass().add("step-grid");
    ColumnConstraints word = new ColumnConstraints();
    word.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints rest = new ColumnConstraints();
    rest.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().addAll(word, rest);
    row = 0;
    ground
        .proof()
        .ifPresentOrElse(this::proof, () -> step("ground.proof", ground.unproven(), "step-quiet"));
    ground.proof().ifPresent(p -> p.notes().forEach(n -> step("ground.note", n, "step-where")));
    if (details || ground.proof().isEmpty()) {
      step("ground.should", ground.own(), "step-where");
      ground.proof().ifPresent(p -> step("ground.source", p.source(), "step-where"));
      step("ground.ohms", ground.ohms(), "step-where");
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
    point("check.red", Parts.redMark(), proof.red());
    point("check.black", Parts.blackMark(), proof.black());
    step("check.meter", proof.meter(), "step-quiet");
    step(
        "ground.judged",
        Texts.of("ground.bands", proof.good(), proof.bad(), proof.healthy()),
        "step-healthy");
    step("ground.limit", proof.limit(), "step-where");
  }

  private void point(String key, Label mark, PointView point) {
    VBox what = Parts.column("step-box", Parts.text(point.title(), "step-value"));
    if (!point.how().isEmpty()) {
      what.getChildren().add(Parts.text(point.how(), "step-where"));
    }
    add(key, Parts.row("entry-line", mark, what));
  }

  private void step(String key, String words, String style) {
    add(key, Parts.text(words, style));
  }

  private void add(String key, Node what) {
    Label word = Parts.line(Texts.of(key), "step-word");
    GridPane.setValignment(word, VPos.TOP);
    grid.addRow(row++, word, what);
  }
}
