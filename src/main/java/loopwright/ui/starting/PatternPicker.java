package loopwright.ui.starting;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.Pattern;
import loopwright.casework.pattern.Patterns;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.Parts;

/** The patterns to pick from, by number or letters. */
final class PatternPicker extends VBox {
  private final Basis basis;
  private final TextField filter = new TextField();
  private final ObservableList<Pattern> shown = FXCollections.observableArrayList(Patterns.all());
  private final ListView<Pattern> list = new ListView<>(shown);
  private final Consumer<Pattern> pick;

  PatternPicker(Basis basis, Consumer<Pattern> pick) {
    this.basis = basis;
    this.pick = pick;
    getStyleClass().add("page");
    filter.setId("pattern-filter");
    filter.getStyleClass().addAll("search-field", "form-field");
    filter.setPromptText(Texts.of("starting.pick.prompt"));
    filter.setAccessibleText(Texts.of("starting.pick.prompt"));
    filter.textProperty().addListener((o, was, is) -> filter(is));
    list.setId("patterns");
    list.getStyleClass().add("fat-list");
    list.setFocusTraversable(false);
    list.setCellFactory(l -> new FatCell<>(l, this::face));
    list.setPlaceholder(Parts.text(Texts.of("starting.pick.none"), "muted"));
    list.setAccessibleText(Texts.of("starting.pick"));
    list.getSelectionModel().select(0);
    list.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            pickMarked();
          }
        });
    VBox.setVgrow(list, Priority.ALWAYS);
    getChildren()
        .setAll(
            Parts.text(Texts.of("starting.pick"), "page-title"),
            filter,
            list,
            Parts.text(Texts.of("starting.pick.keys"), "legend"));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
  }

  void takeFocus() {
    Platform.runLater(filter::requestFocus);
  }

  private void filter(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    List<Pattern> all = Patterns.all();
    if (wanted.matches("[0-9]{1,2}")) {
      // A number marks its line and hides none, so that the next digit finds its own.
      shown.setAll(all);
      int at = Integer.parseInt(wanted) - 1;
      list.getSelectionModel().select(at >= 0 && at < all.size() ? at : 0);
    } else {
      shown.setAll(
          all.stream()
              .filter(
                  p ->
                      (p.title(basis) + " " + p.purpose(basis) + " " + p.id())
                          .toLowerCase(Locale.ROOT)
                          .contains(wanted))
              .toList());
      list.getSelectionModel().select(0);
    }
    list.scrollTo(Math.max(0, list.getSelectionModel().getSelectedIndex() - 1));
  }

  private void pressed(KeyEvent e) {
    int at = list.getSelectionModel().getSelectedIndex();
    if (e.getCode() == KeyCode.DOWN || e.getCode() == KeyCode.UP) {
      int next = at + (e.getCode() == KeyCode.DOWN ? 1 : -1);
      if (next >= 0 && next < shown.size()) {
        list.getSelectionModel().select(next);
        list.scrollTo(Math.max(0, next - 1));
      }
      e.consume();
    } else if (e.getCode() == KeyCode.ENTER) {
      pickMarked();
      e.consume();
    }
  }

  private void pickMarked() {
    Pattern marked = list.getSelectionModel().getSelectedItem();
    if (marked != null) {
      pick.accept(marked);
    }
  }

  private HBox face(Pattern pattern) {
    String number = Integer.toString(Patterns.all().indexOf(pattern) + 1);
    HBox row =
        Parts.signed(
            Parts.keyCap(number),
            pattern.title(basis),
            Parts.text(pattern.purpose(basis), "form-source"));
    row.setAccessibleText(number + ", " + pattern.title(basis) + ", " + pattern.purpose(basis));
    return row;
  }
}
