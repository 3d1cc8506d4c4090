package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.css.PseudoClass;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import loopwright.casework.table.Column;
import loopwright.ui.Texts;
import loopwright.ui.wiring.GridViewModel.GridRow;

/** A table that is typed into. */
final class GridView extends StackPane {
  private static final PseudoClass CURSOR = PseudoClass.getPseudoClass("cursor");
  private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");
  private static final PseudoClass FRESH = PseudoClass.getPseudoClass("fresh");

  private final GridViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final TableView<GridRow> table = new TableView<>();
  private final TextField editor = new TextField();
  private final List<Cell> cells = new ArrayList<>();

  GridView(GridViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    table.setId("grid");
    table.getStyleClass().add("grid");
    table.setItems(model.rows());
    table.getSelectionModel().setCellSelectionEnabled(true);
    table.setPlaceholder(new StackPane());
    editor.setId("cell-editor");
    editor.getStyleClass().add("cell-editor");
    getChildren().add(table);
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    model.tableProperty().addListener(o -> columns());
    model.rowProperty().addListener(o -> show());
    model.columnProperty().addListener(o -> show());
    model.editingProperty().addListener(o -> editing());
    em.addListener(o -> columns());
    columns();
  }

  /** Puts the focus on the table. */
  void takeFocus() {
    (model.editingProperty().get().isPresent() ? editor : table).requestFocus();
  }

  private void columns() {
    cells.clear();
    List<TableColumn<GridRow, GridRow>> columns = new ArrayList<>();
    for (int i = 0; i < model.columns().size(); i++) {
      Column of = model.columns().get(i);
      TableColumn<GridRow, GridRow> column = new TableColumn<>(Texts.of(of));
      column.setSortable(false);
      column.setReorderable(false);
      column.setPrefWidth(Widths.ems(of) * em.get());
      column.setCellValueFactory(c -> new ReadOnlyObjectWrapper<>(c.getValue()));
      int index = i;
      column.setCellFactory(c -> new Cell(index));
      columns.add(column);
    }
    table.getColumns().setAll(columns);
    table.setAccessibleText(Texts.of(model.tableProperty().get()));
    show();
  }

  private void show() {
    int row = model.rowProperty().get();
    int column = model.columnProperty().get();
    if (row < 0 || column >= table.getColumns().size()) {
      return;
    }
    table.getSelectionModel().clearAndSelect(row, table.getColumns().get(column));
    if (cells.stream().noneMatch(c -> c.isAt(row, column) && c.inSight())) {
      table.scrollTo(Math.max(0, row - 2));
      table.scrollToColumnIndex(column);
    }
    restyle();
  }

  private void restyle() {
    cells.forEach(Cell::restyle);
  }

  private void editing() {
    Optional<String> text = model.editingProperty().get();
    if (text.isPresent()) {
      restyle();
      begin(text.get());
      // The cell may only now come into sight.
      Platform.runLater(
          () -> {
            if (!editor.isFocused()) {
              begin(text.get());
            }
          });
    } else {
      restyle();
      table.requestFocus();
    }
  }

  /** The focus selects what stands in the editor, so the text comes after it. */
  private void begin(String text) {
    editor.requestFocus();
    editor.setText(text);
    editor.end();
  }

  private void typed(KeyEvent e) {
    String c = e.getCharacter();
    boolean begins =
        model.editingProperty().get().isEmpty()
            && !e.isShortcutDown()
            && !e.isAltDown()
            && !c.isEmpty()
            && c.charAt(0) > ' '
            && c.charAt(0) != 127;
    if (begins) {
      model.edit(c);
      e.consume();
    }
  }

  private void pressed(KeyEvent e) {
    boolean handled = model.editingProperty().get().isPresent() ? whileEditing(e) : onGrid(e);
    if (handled) {
      e.consume();
    }
  }

  private boolean whileEditing(KeyEvent e) {
    switch (e.getCode()) {
      case ENTER -> commit(e.isShiftDown() ? -1 : 1, 0);
      case TAB -> commit(0, e.isShiftDown() ? -1 : 1);
      case UP -> commit(-1, 0);
      case DOWN -> commit(1, 0);
      case ESCAPE -> model.leave();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void commit(int down, int across) {
    if (model.commit(editor.getText())) {
      model.step(down, across);
    }
    restyle();
  }

  private boolean onGrid(KeyEvent e) {
    if (e.isShortcutDown() || e.isAltDown()) {
      return false;
    }
    switch (e.getCode()) {
      case ENTER -> model.edit(model.text());
      case TAB -> model.step(0, e.isShiftDown() ? -1 : 1);
      case UP -> model.step(-1, 0);
      case DOWN -> model.step(1, 0);
      case LEFT -> model.step(0, -1);
      case RIGHT -> model.step(0, 1);
      case HOME -> model.move(model.rowProperty().get(), 0);
      case END -> model.move(model.rowProperty().get(), Integer.MAX_VALUE);
      case PAGE_UP -> model.step(-10, 0);
      case PAGE_DOWN -> model.step(10, 0);
      default -> {
        return e.getCode() == KeyCode.SPACE;
      }
    }
    return true;
  }

  /** A cell; the one under the cursor holds the editor while it is edited. */
  private final class Cell extends TableCell<GridRow, GridRow> {
    private final int column;

    Cell(int column) {
      this.column = column;
      cells.add(this);
      setOnMousePressed(
          e -> {
            if (isEmpty()) {
              return;
            }
            boolean here = isAt(model.rowProperty().get(), model.columnProperty().get());
            if (!here && model.editingProperty().get().isPresent()) {
              model.commit(editor.getText());
            }
            model.move(getIndex(), column);
            if (e.getClickCount() == 2) {
              model.edit(model.text());
            } else if (!here) {
              table.requestFocus();
            }
            e.consume();
          });
    }

    @Override
    protected void updateItem(GridRow row, boolean empty) {
      super.updateItem(row, empty);
      restyle();
    }

    @Override
    public void updateIndex(int index) {
      super.updateIndex(index);
      restyle();
    }

    boolean isAt(int row, int atColumn) {
      return !isEmpty() && getIndex() == row && column == atColumn;
    }

    boolean inSight() {
      if (getScene() == null || !isVisible()) {
        return false;
      }
      var cell = localToScene(getLayoutBounds());
      var all = table.localToScene(table.getLayoutBounds());
      return cell.getMinX() >= all.getMinX() - 1
          && cell.getMaxX() <= all.getMaxX() + 1
          && cell.getMinY() >= all.getMinY() + 1.5 * em.get()
          && cell.getMaxY() <= all.getMaxY() - em.get();
    }

    void restyle() {
      boolean here = isAt(model.rowProperty().get(), model.columnProperty().get());
      boolean edited = here && model.editingProperty().get().isPresent();
      GridRow row = isEmpty() ? null : getItem();
      pseudoClassStateChanged(CURSOR, here);
      pseudoClassStateChanged(FRESH, row != null && row.id().isEmpty());
      pseudoClassStateChanged(WRONG, row != null && model.wrong(getIndex(), column).isPresent());
      if (edited) {
        setText("");
        if (getGraphic() != editor) {
          setGraphic(editor);
        }
      } else {
        if (getGraphic() != null) {
          setGraphic(null);
        }
        setText(row == null ? "" : model.text(getIndex(), column));
      }
    }
  }
}
