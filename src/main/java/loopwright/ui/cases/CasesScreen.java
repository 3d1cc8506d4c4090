package loopwright.ui.cases;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.CaseDesk;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The kept cases, to take one up again. */
public final class CasesScreen extends VBox {
  private final ListView<CaseDesk.Kept> list = new ListView<>();
  private final ListView<ReadyCases.Entry> ready = new ListView<>();
  private boolean untouched;

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param reopen takes a case up again
   * @param readyCases cases to practise on; may be none
   * @param practise opens one of them
   */
  public CasesScreen(
      CasesViewModel model,
      Consumer<CaseDesk.Kept> reopen,
      List<ReadyCases.Entry> readyCases,
      Consumer<ReadyCases.Entry> practise) {
    setId("cases");
    getStyleClass().add("page");
    list.setItems(model.kept());
    list.setId("kept");
    list.getStyleClass().add("fat-list");
    list.setCellFactory(l -> new KeptCell());
    list.setPlaceholder(Parts.text(Texts.of("cases.none"), "muted"));
    list.setAccessibleText(Texts.of("cases.title"));
    list.getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (o, was, is) -> {
              if (is.intValue() >= 0) {
                model.chosenProperty().set(is.intValue());
              }
            });
    model
        .kept()
        .addListener(
            (ListChangeListener<CaseDesk.Kept>)
                c -> {
                  list.getSelectionModel().select(model.chosenProperty().get());
                  // The list is read while the screen is already up: whoever has a case of their
                  // own goes on with that, not with one to practise on.
                  if (untouched && !model.kept().isEmpty() && ready.isFocused()) {
                    list.requestFocus();
                  }
                });
    VBox.setVgrow(list, Priority.ALWAYS);
    ready.setId("ready");
    ready.getStyleClass().add("fat-list");
    ready.getItems().setAll(readyCases);
    ready.setCellFactory(l -> new ReadyCell());
    ready.setAccessibleText(Texts.of("cases.ready"));
    ready.getSelectionModel().select(0);
    ready.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            chosenReady().ifPresent(practise);
          }
        });
    VBox.setVgrow(ready, Priority.ALWAYS);
    Label problem = Parts.text("", "entry-status", "status-problem");
    problem.textProperty().bind(model.problemProperty());
    problem.managedProperty().bind(model.problemProperty().isNotEmpty());
    KeyButton open =
        new KeyButton(Texts.of("cases.open"), "Enter", () -> model.chosen().ifPresent(reopen))
            .styled("primary");
    getChildren()
        .addAll(
            Parts.text(Texts.of("cases.title"), "page-title"),
            problem,
            list,
            Parts.row("primary-row", open));
    if (!readyCases.isEmpty()) {
      getChildren().addAll(Parts.text(Texts.of("cases.ready"), "section-line"), ready);
    }
    addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          untouched = false;
          if (e.getCode() == KeyCode.DOWN && atEnd(list) && !ready.getItems().isEmpty()) {
            ready.requestFocus();
            e.consume();
          } else if (e.getCode() == KeyCode.UP
              && ready.isFocused()
              && ready.getSelectionModel().getSelectedIndex() <= 0
              && !list.getItems().isEmpty()) {
            list.requestFocus();
            e.consume();
          } else if (e.getCode() == KeyCode.ENTER) {
            if (ready.isFocused()) {
              chosenReady().ifPresent(practise);
            } else {
              model.chosen().ifPresent(reopen);
            }
            e.consume();
          }
        });
  }

  /** Whether the arrow down has nowhere to go within a list that has the focus. */
  private static boolean atEnd(ListView<?> list) {
    return list.isFocused()
        && list.getSelectionModel().getSelectedIndex() >= list.getItems().size() - 1;
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    untouched = true;
    if (list.getItems().isEmpty() && !ready.getItems().isEmpty()) {
      ready.requestFocus();
    } else {
      list.requestFocus();
    }
  }

  private Optional<ReadyCases.Entry> chosenReady() {
    return Optional.ofNullable(ready.getSelectionModel().getSelectedItem());
  }

  /** A ready-made case on a fat row. */
  private static final class ReadyCell extends ListCell<ReadyCases.Entry> {
    @Override
    protected void updateItem(ReadyCases.Entry entry, boolean empty) {
      super.updateItem(entry, empty);
      setText("");
      if (empty || entry == null) {
        setGraphic(null);
        return;
      }
      setGraphic(
          Parts.column(
              "entry",
              Parts.row(
                  "entry-head",
                  Parts.line(entry.title(), "entry-title"),
                  Parts.line(entry.vehicleName(), "shelf")),
              Parts.line(entry.story(), "muted")));
    }
  }

  /** A kept case on a fat row. */
  private static final class KeptCell extends ListCell<CaseDesk.Kept> {
    private static final DateTimeFormatter DAY =
        DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withZone(ZoneId.systemDefault());

    @Override
    protected void updateItem(CaseDesk.Kept kept, boolean empty) {
      super.updateItem(kept, empty);
      setText("");
      if (empty || kept == null) {
        setGraphic(null);
        return;
      }
      setGraphic(
          Parts.column(
              "entry",
              Parts.row(
                  "entry-head",
                  Parts.line(kept.title(), "entry-title"),
                  Parts.line(kept.status(), "shelf")),
              Parts.line(
                  kept.vehicleName().isEmpty()
                      ? Texts.of("cases.unread")
                      : Texts.of(
                          "cases.detail",
                          DAY.format(kept.at()),
                          Integer.toString(kept.readings()),
                          kept.vehicleName()),
                  "muted")));
    }
  }
}
