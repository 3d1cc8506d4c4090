package loopwright.ui.shell;

import javafx.collections.FXCollections;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.RulesElsewhere;
import loopwright.ui.Texts;
import loopwright.ui.shell.RulesViewModel.Stage;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** Asks before rules from elsewhere run. Enter and Escape mean no. */
final class RulesScreen extends VBox {
  private final RulesViewModel model;
  private final ListView<String> list;
  private final KeyButton own;
  private final KeyButton run;

  /**
   * Makes the page.
   *
   * @param folder where they lie
   */
  RulesScreen(RulesViewModel model, String folder) {
    this.model = model;
    getStyleClass().addAll("page", "card");
    list = new ListView<>(FXCollections.observableList(model.differing()));
    list.setId("rules-list");
    list.getStyleClass().add("found-list");
    list.setFocusTraversable(false);
    list.setCellFactory(l -> FatCell.words(l, rule -> rule));
    VBox.setVgrow(list, Priority.ALWAYS);
    own = new KeyButton("", "Enter", model::refuse).styled("wide");
    own.setId("rules-own");
    run = new KeyButton(Texts.of("rules.run"), "Y", model::allow).styled("wide");
    run.setId("rules-run");
    run.setFocusTraversable(false);
    FlowPane actions = new FlowPane(own, run);
    actions.getStyleClass().add("actions");
    Label told = Parts.text("", "status-problem");
    told.setId("rules-told");
    told.textProperty().bind(model.toldProperty());
    told.managedProperty().bind(told.textProperty().isNotEmpty());
    getChildren()
        .addAll(
            Parts.text(Texts.of("rules.question", RulesElsewhere.plain(folder)), "page-title"),
            Parts.text(Texts.of("rules.warning")),
            actions,
            told,
            list,
            Parts.text(
                Texts.of(
                    "rules.same", Integer.toString(model.same()), inGroups(model.fingerprint()))));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    model.stageProperty().addListener(o -> show(model.stageProperty().get()));
    show(model.stageProperty().get());
  }

  /** Sixteen signs and a space, so that it breaks where room is short. */
  private static String inGroups(String fingerprint) {
    return fingerprint.replaceAll("(.{16})(?=.)", "$1 ");
  }

  void takeFocus() {
    own.requestFocus();
  }

  private void show(Stage stage) {
    own.setText(
        Texts.of(
            switch (stage) {
              case ASKING -> "rules.own";
              case TAKING -> "rules.taking";
              case REFUSED -> "rules.goOn";
            }));
    own.setDisable(stage == Stage.TAKING);
    run.setVisible(stage == Stage.ASKING);
  }

  private void pressed(KeyEvent e) {
    KeyCode code = e.getCode();
    if (code == KeyCode.ENTER || code == KeyCode.ESCAPE || code == KeyCode.N) {
      model.refuse();
    } else if (code == KeyCode.Y && model.stageProperty().get() == Stage.ASKING) {
      model.allow();
    } else if (code == KeyCode.DOWN || code == KeyCode.UP) {
      choose(code == KeyCode.DOWN ? 1 : -1);
    } else {
      return;
    }
    e.consume();
  }

  private void choose(int by) {
    int at = list.getSelectionModel().getSelectedIndex() + by;
    list.getSelectionModel().select(Math.max(0, Math.min(list.getItems().size() - 1, at)));
    list.scrollTo(list.getSelectionModel().getSelectedIndex());
  }
}
