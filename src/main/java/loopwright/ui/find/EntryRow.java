package loopwright.ui.find;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** The value field with its unit keys and the line that tells how it is understood. */
final class EntryRow extends VBox {
  private final CaseViewModel model;
  private final ValueField field;
  private final HBox units = Parts.row("unit-keys");
  private final StackPane place = new StackPane();
  private final Label status = Parts.text("", "entry-status");
  private final MeterStatus meter;

  EntryRow(CaseViewModel model) {
    this.model = model;
    this.field = new ValueField(model.entry());
    this.meter = MeterStatus.takenByEnter(model.meter(), model::lookAtMeter);
    getStyleClass().add("entry-row");
    field.setId("value");
    model.echoProperty().addListener(o -> showStatus());
    model.secondProperty().addListener(o -> showStatus());
    model.problemProperty().addListener(o -> showStatus());
    model.countingProperty().addListener(o -> showStatus());
    model.entry().textProperty().addListener(o -> showStatus());
    status.setId("entry-status");
    place.setAlignment(Pos.CENTER_LEFT);
    Label reads = Parts.line(Texts.of("check.reads"), "step-word");
    reads.setMinWidth(USE_PREF_SIZE);
    HBox line = Parts.row("entry-line", reads, field, units);
    getChildren().addAll(line, status, meter);
  }

  TextField field() {
    return field;
  }

  /** Shows this in place of the status line until something is typed. */
  void shareStatusWith(Node instead) {
    getChildren().remove(status);
    instead.visibleProperty().bind(status.visibleProperty().not());
    place.getChildren().setAll(instead, status);
    getChildren().remove(place);
    getChildren().add(place);
    showStatus();
  }

  /** Offers the units of what is entered now. */
  void refresh() {
    getChildren().setAll(getChildren().get(0), status, meter);
    place.getChildren().clear();
    status.setVisible(true);
    units.getChildren().clear();
    model.units().forEach(unit -> units.getChildren().add(field.unitKey(unit, model::unit)));
    showStatus();
  }

  private void showStatus() {
    String kind;
    String words;
    if (model.countingProperty().get()) {
      kind = "status-echo";
      words = Texts.of("entry.counting", model.entry().text());
    } else if (!model.problemProperty().get().isEmpty()) {
      kind = "status-problem";
      words = model.problemProperty().get();
    } else if (!model.secondProperty().get().isEmpty()) {
      kind = "status-second";
      words = Texts.of("entry.second", model.secondProperty().get());
    } else if (!model.echoProperty().get().isEmpty()) {
      kind = "status-echo";
      words = Texts.of("entry.echo", model.echoProperty().get());
    } else if (model.entry().hasNumber()) {
      kind = "status-hint";
      words = Texts.of("entry.unitHint");
    } else {
      kind = "status-hint";
      words = Texts.of(model.bands().isEmpty() ? "entry.hintPlain" : "entry.hint");
    }
    status.setText(words);
    status.setVisible(
        place.getChildren().isEmpty()
            || !model.entry().text().isEmpty()
            || model.countingProperty().get()
            || kind.equals("status-problem"));
    status.getStyleClass().setAll("label", "entry-status", kind);
  }
}
