package loopwright.ui.find;

import java.util.Optional;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.casework.CheckView;
import loopwright.diagnosis.CheckKind;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** Finding a fault: the complaint, then opening, then the case. */
public final class FindScreen extends StackPane {
  private final FindViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final ComplaintScreen complaint;
  private final VBox opening;
  private final VBox nothing;
  private Optional<CaseScreen> caseScreen = Optional.empty();

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   */
  public FindScreen(FindViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    this.complaint = new ComplaintScreen(model);
    this.opening = opening();
    this.nothing = Parts.column("page", Parts.text(Texts.of("find.noVehicle"), "question"));
    setId("find");
    model.stageProperty().addListener(o -> show());
    addEventHandler(CaseLeft.TYPE, e -> model.leaveCase());
    show();
  }

  private VBox opening() {
    ProgressBar bar = new ProgressBar();
    bar.getStyleClass().add("opening-bar");
    bar.progressProperty().bind(model.progressProperty());
    bar.setAccessibleText(Texts.of("opening.title"));
    Label step = Parts.text("", "question");
    step.textProperty().bind(model.progressWordsProperty());
    KeyButton cancel =
        new KeyButton(Texts.of("opening.cancel"), CaseActions.BACK, model::cancel).styled("action");
    cancel.setId("cancel-opening");
    VBox box =
        Parts.column(
            "page", Parts.text(Texts.of("opening.title"), "page-title"), step, bar, cancel);
    box.setId("opening");
    box.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            model.cancel();
            e.consume();
          }
        });
    return box;
  }

  private void show() {
    switch (model.stageProperty().get()) {
      case NO_VEHICLE -> getChildren().setAll(nothing);
      case COMPLAINT -> getChildren().setAll(complaint);
      case OPENING -> getChildren().setAll(opening);
      case CASE -> {
        caseScreen = model.openCaseProperty().get().map(c -> new CaseScreen(c, em));
        caseScreen.ifPresent(c -> getChildren().setAll(c));
      }
    }
    takeFocus();
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    if (getScene() == null) {
      return;
    }
    switch (model.stageProperty().get()) {
      case COMPLAINT -> complaint.takeFocus();
      case OPENING -> opening.lookup("#cancel-opening").requestFocus();
      case CASE -> caseScreen.ifPresent(CaseScreen::takeFocus);
      case NO_VEHICLE -> nothing.requestFocus();
    }
  }

  /** The explaining page that belongs to the check asked now, or to the complaint. */
  public String explains() {
    return model
        .openCaseProperty()
        .get()
        .flatMap(c -> c.view().next())
        .map(CheckView::kind)
        .map(FindScreen::explains)
        .orElse("loop");
  }

  private static String explains(CheckKind kind) {
    return switch (kind) {
      case VOLTS -> "across";
      case MILLIVOLTS -> "ground";
      case OHMS -> "ohms";
      case DIODE -> "diode";
      case DRAIN -> "meter";
      default -> "loop";
    };
  }

  /** Whether a case is open and F3 should begin a new complaint. */
  public boolean caseEnded() {
    return model.stageProperty().get() == FindViewModel.Stage.CASE
        && model.openCaseProperty().get().map(CaseViewModel::ended).orElse(false);
  }
}
