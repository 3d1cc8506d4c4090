package loopwright.ui.wiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import loopwright.casework.table.Column;
import loopwright.model.Units;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.GridViewModel.GridRow;

/** A table that is typed into. */
final class GridView extends StackPane {
  private static final PseudoClass CURSOR = PseudoClass.getPseudoClass("cursor");
  private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");
  private static final PseudoClass BLOCK = PseudoClass.getPseudoClass("block");
  private static final PseudoClass FRESH = PseudoClass.getPseudoClass("fresh");

  private static final int PAGE = 10;
  private static final double BUBBLE = 30;

  private final GridViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final TableView<GridRow> table = new TableView<>();
  private final TextField editor = new TextField();
  private final List<Cell> cells = new ArrayList<>();
  private final Label bubble = Parts.text("", "cell-bubble");

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
    bubble.setManaged(false);
    bubble.setMouseTransparent(true);
    getChildren().addAll(table, bubble);
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
      TableColumn<GridRow, GridRow> column = new TableColumn<>(heading(of));
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
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    placeBubble();
  }

  /**
   * What is wrong with the cell under the cursor stands right below it, or above where no room is.
   */
  private void placeBubble() {
    int row = model.rowProperty().get();
    int column = model.columnProperty().get();
    Optional<GridViewModel.Wrong> wrong = model.wrong(row, column);
    Optional<Cell> at =
        cells.stream().filter(c -> c.isAt(row, column) && c.getScene() != null).findFirst();
    bubble.setVisible(wrong.isPresent() && at.isPresent());
    if (!bubble.isVisible()) {
      return;
    }
    bubble.setText(wrong.get().message());
    var cell = sceneToLocal(at.get().localToScene(at.get().getLayoutBounds()));
    double width = Math.min(getWidth(), BUBBLE * em.get());
    double height = bubble.prefHeight(width);
    double x = Math.max(0, Math.min(cell.getMinX(), getWidth() - width));
    double y = cell.getMaxY() + 1;
    bubble.resizeRelocate(
        x, y + height > getHeight() ? cell.getMinY() - height - 1 : y, width, height);
  }

  private void editing() {
    Optional<String> text = model.editingProperty().get();
    if (text.isPresent()) {
      editor.setText(text.get());
      show();
      focusEditor();
    } else {
      restyle();
      table.requestFocus();
    }
  }

  /**
   * Moves the focus into the editor as soon as its cell is in sight. The focus selects what stands
   * there, so the text is put in once more.
   */
  private void focusEditor() {
    if (editor.getScene() != null && !editor.isFocused()) {
      String text = editor.getText();
      editor.requestFocus();
      editor.setText(text);
      editor.end();
    }
  }

  private void typed(KeyEvent e) {
    String c = e.getCharacter();
    boolean sign =
        !e.isShortcutDown()
            && !e.isAltDown()
            && !c.isEmpty()
            && c.charAt(0) >= ' '
            && c.charAt(0) != 127;
    boolean editing = model.editingProperty().get().isPresent();
    if (sign && !editing && !c.isBlank()) {
      model.edit(c);
      e.consume();
    } else if (sign && editing && (!editor.isFocused() || editor.getSkin() == null)) {
      // Its cell isn't in sight yet, or the editor was never drawn and takes no keys.
      editor.appendText(c);
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
      case ENTER -> commit(() -> model.nextRow(e.isShiftDown() ? -1 : 1));
      case TAB -> commit(() -> model.tab(e.isShiftDown() ? -1 : 1));
      case UP -> commit(() -> model.step(-1, 0));
      case DOWN -> commit(() -> model.step(1, 0));
      case ESCAPE -> model.leave();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void commit(Runnable goOn) {
    if (model.commit(editor.getText())) {
      goOn.run();
    }
    restyle();
  }

  /** Takes what is being typed, before something else is done. */
  void finishTyping() {
    if (model.editingProperty().get().isPresent()) {
      commit(() -> {});
    }
  }

  private boolean onGrid(KeyEvent e) {
    if (e.isAltDown()) {
      return false;
    }
    if (e.isShortcutDown()) {
      return withShortcut(e);
    }
    switch (e.getCode()) {
      case ENTER -> model.edit(model.text());
      case TAB -> model.tab(e.isShiftDown() ? -1 : 1);
      case UP -> step(e, -1, 0);
      case DOWN -> step(e, 1, 0);
      case LEFT -> step(e, 0, -1);
      case RIGHT -> step(e, 0, 1);
      case HOME -> step(e, 0, -model.columns().size());
      case END -> step(e, 0, model.columns().size());
      case PAGE_UP -> step(e, -PAGE, 0);
      case PAGE_DOWN -> step(e, PAGE, 0);
      case DELETE, BACK_SPACE -> model.delete();
      default -> {
        return e.getCode() == KeyCode.SPACE;
      }
    }
    restyle();
    return true;
  }

  private void step(KeyEvent e, int down, int across) {
    if (e.isShiftDown()) {
      model.stretch(model.rowProperty().get() + down, model.columnProperty().get() + across);
    } else {
      model.step(down, across);
    }
  }

  private boolean withShortcut(KeyEvent e) {
    switch (e.getCode()) {
      case C, INSERT -> copy();
      case X -> {
        copy();
        model.delete();
      }
      case V ->
          model.paste(Optional.ofNullable(Clipboard.getSystemClipboard().getString()).orElse(""));
      case D -> model.fillDown();
      case A -> {
        model.move(0, 0);
        model.stretch(Integer.MAX_VALUE, Integer.MAX_VALUE);
      }
      case HOME -> model.move(0, 0);
      case END -> model.goToEmpty();
      case DELETE -> model.removeRows();
      default -> {
        return false;
      }
    }
    restyle();
    return true;
  }

  private void copy() {
    ClipboardContent content = new ClipboardContent();
    content.putString(model.copy());
    Clipboard.getSystemClipboard().setContent(content);
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
            if (e.isShiftDown()) {
              model.stretch(getIndex(), column);
            } else {
              model.move(getIndex(), column);
            }
            GridView.this.restyle();
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
          && cell.getMaxY() <= all.getMaxY() - 0.3 * em.get();
    }

    void restyle() {
      boolean here = isAt(model.rowProperty().get(), model.columnProperty().get());
      boolean edited = here && model.editingProperty().get().isPresent();
      GridRow row = isEmpty() ? null : getItem();
      pseudoClassStateChanged(CURSOR, here);
      pseudoClassStateChanged(BLOCK, row != null && model.inBlock(getIndex(), column));
      pseudoClassStateChanged(FRESH, row != null && row.id().isEmpty());
      pseudoClassStateChanged(WRONG, row != null && model.wrong(getIndex(), column).isPresent());
      if (edited) {
        setText("");
        if (getGraphic() != editor) {
          setGraphic(editor);
          Platform.runLater(GridView.this::focusEditor);
        }
      } else {
        if (getGraphic() != null) {
          setGraphic(null);
        }
        setText(row == null ? "" : model.text(getIndex(), column));
      }
    }
  }

  /** A column's heading; that of lengths names the unit in use. */
  private static String heading(Column column) {
    return column == Column.METRES
        ? Texts.of("wiring.column.length", Units.inUse().lengthUnit())
        : Texts.of(column);
  }
}
