package loopwright.ui.sheet;

import java.io.File;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import loopwright.casework.Problem;
import loopwright.casework.sheet.Leniency;
import loopwright.ui.Texts;
import loopwright.ui.sheet.SheetViewModel.Line;
import loopwright.ui.sheet.SheetViewModel.Sort;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.WiringDesk;

/** A list before it is taken: where it comes from, its columns, and what would come of it. */
final class SheetView extends VBox {
  private static final double COLUMN_EM = 9;
  private static final double LINES_EM = 11;

  private final SheetViewModel model;
  private final WiringDesk desk;
  private final TextField path = new TextField();
  private final Map<Sort, KeyButton> sorts = new EnumMap<>(Sort.class);
  private final Map<Leniency, KeyButton> allowed = new EnumMap<>(Leniency.class);
  private final HBox columns = Parts.row("sheet-columns");
  private final ScrollPane strip = new ScrollPane(columns);
  private final ListView<Line> lines = new ListView<>();
  private final Label counts = Parts.text("", "sheet-counts");
  private final Label problem = Parts.text("", "entry-status", "status-problem");
  private final FlowPane row = new FlowPane();
  private final KeyButton take;
  private final ScrollPane scroll;

  SheetView(SheetViewModel model, WiringDesk desk) {
    this.model = model;
    this.desk = desk;
    setId("sheet");
    getStyleClass().addAll("page", "sheet");
    path.setId("sheet-path");
    path.getStyleClass().add("search-field");
    path.setPromptText(Texts.of("sheet.path"));
    path.setAccessibleText(Texts.of("sheet.path"));
    KeyButton choose =
        new KeyButton(Texts.of("sheet.choose"), "Ctrl+O", this::choose).styled("option");
    KeyButton paste =
        new KeyButton(Texts.of("sheet.paste"), "Ctrl+V", this::paste).styled("option");
    strip.setId("sheet-strip");
    Parts.scrollSideways(strip);
    strip.setMinHeight(USE_PREF_SIZE);
    strip.managedProperty().bind(strip.visibleProperty());
    lines.setId("sheet-lines");
    lines.setItems(model.lines());
    lines.setCellFactory(list -> new FatCell<>(list, SheetView::face));
    lines.setPlaceholder(Parts.text(Texts.of("sheet.how"), "muted"));
    lines.getStyleClass().add("sheet-lines");
    lines.setAccessibleText(Texts.of("sheet.lines"));
    VBox.setVgrow(lines, Priority.ALWAYS);
    lines.getSelectionModel().selectedItemProperty().addListener(o -> showRow());
    row.setId("sheet-row");
    row.getStyleClass().add("sheet-row");
    counts.setId("sheet-counts");
    counts.textProperty().bind(model.countsProperty());
    problem.setId("sheet-problem");
    problem.managedProperty().bind(problem.textProperty().isNotEmpty());
    take = new KeyButton(Texts.of("sheet.take"), "Enter", this::take).styled("primary");
    take.setId("sheet-take");
    take.disableProperty().bind(model.takesProperty().not());
    KeyButton leave =
        new KeyButton(Texts.of("sheet.leave"), "Esc", () -> desk.close(Optional.empty()))
            .styled("action");
    take.setMinWidth(USE_PREF_SIZE);
    leave.setMinWidth(USE_PREF_SIZE);
    HBox.setHgrow(counts, Priority.ALWAYS);
    counts.setMaxWidth(Double.MAX_VALUE);
    counts.setMinWidth(0);
    lines.setMinHeight(LINES_EM * desk.emProperty().get());
    FlowPane ways = new FlowPane(choose, paste);
    ways.getStyleClass().add("choices");
    VBox content =
        Parts.column(
            "sheet-content", heading(), path, ways, problem, strip, allowances(), lines, row);
    scroll = Parts.scrolling(content);
    scroll.setFitToHeight(true);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().addAll(scroll, Parts.row("primary-row", counts, leave, take));
    model.columns().addListener((ListChangeListener<Object>) c -> showColumns());
    model.lines().addListener((ListChangeListener<Object>) c -> settle());
    model.problemProperty().addListener(o -> problem.setText(model.problemProperty().get()));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    showColumns();
    showChoices();
  }

  void takeFocus() {
    // What scrolls is in the scene only after the first layout.
    applyCss();
    layout();
    (model.lines().isEmpty() ? path : lines).requestFocus();
  }

  private FlowPane heading() {
    FlowPane head = new FlowPane(Parts.line(Texts.of("sheet.title"), "page-title"));
    head.getStyleClass().add("choices");
    for (Sort sort : Sort.values()) {
      KeyButton button =
          new KeyButton(Texts.of(sort), "Alt+" + (sort.ordinal() + 1), () -> about(sort))
              .styled("option");
      sorts.put(sort, button);
      head.getChildren().add(button);
    }
    return head;
  }

  private FlowPane allowances() {
    FlowPane pane = new FlowPane();
    pane.getStyleClass().add("choices");
    for (Leniency what : Leniency.values()) {
      KeyButton button =
          new KeyButton(Texts.of(what), "Alt+" + letter(what), () -> toggle(what))
              .styled("small-action");
      allowed.put(what, button);
      pane.getChildren().add(button);
    }
    pane.visibleProperty().bind(strip.visibleProperty());
    pane.managedProperty().bind(strip.visibleProperty());
    return pane;
  }

  private static String letter(Leniency what) {
    return what.word().substring(0, 1).toUpperCase(Locale.ROOT);
  }

  private void about(Sort sort) {
    model.about(sort);
    showChoices();
  }

  private void toggle(Leniency what) {
    model.toggle(what);
    showChoices();
  }

  private void showChoices() {
    sorts.forEach((sort, button) -> pick(button, model.sort() == sort));
    allowed.forEach((what, button) -> pick(button, model.allows(what)));
    allowed.values().forEach(b -> b.setDisable(model.sort() == Sort.PINS));
  }

  private static void pick(KeyButton button, boolean picked) {
    button.getStyleClass().remove("picked");
    if (picked) {
      button.getStyleClass().add("picked");
    }
  }

  private void showColumns() {
    int hand = focusedColumn();
    columns.getChildren().clear();
    strip.setVisible(!model.columns().isEmpty());
    for (SheetViewModel.Column column : model.columns()) {
      columns.getChildren().add(column(column));
    }
    if (hand >= 0 && hand < columns.getChildren().size()) {
      chooser(columns.getChildren().get(hand)).requestFocus();
    }
  }

  /** Where the hand is among the choosers; -1 if elsewhere. */
  private int focusedColumn() {
    for (int i = 0; i < columns.getChildren().size(); i++) {
      if (chooser(columns.getChildren().get(i)).isFocused()) {
        return i;
      }
    }
    return -1;
  }

  private static Node chooser(Node column) {
    return ((VBox) column).getChildren().get(0);
  }

  private Node column(SheetViewModel.Column column) {
    ComboBox<String> chooser = new ComboBox<>();
    chooser.getItems().add(Texts.of("sheet.notRead"));
    chooser.getItems().addAll(model.options());
    chooser.setValue(column.taken().orElse(Texts.of("sheet.notRead")));
    chooser.setAccessibleText(Texts.of("sheet.column", column.heading()));
    chooser.setMaxWidth(Double.MAX_VALUE);
    chooser
        .valueProperty()
        .addListener(
            (o, was, is) ->
                model.choose(
                    column.number(),
                    Optional.of(is).filter(w -> !w.equals(Texts.of("sheet.notRead")))));
    VBox box = Parts.column("sheet-column", chooser, Parts.line(column.heading(), "side-title"));
    if (column.taken().isEmpty()) {
      box.getStyleClass().add("left-out");
    }
    for (String cell : column.first()) {
      box.getChildren().add(Parts.line(cell.isBlank() ? " " : cell, "muted"));
    }
    double width = COLUMN_EM * desk.emProperty().get();
    box.setMinWidth(width);
    box.setMaxWidth(width);
    return box;
  }

  /** After a list has come: the first line is looked at, where nobody is choosing columns. */
  private void settle() {
    Node focus = getScene() == null ? null : getScene().getFocusOwner();
    if (!model.lines().isEmpty()) {
      lines.getSelectionModel().select(0);
      lines.scrollTo(0);
      scroll.setVvalue(scroll.getVmax());
      if (focus == path) {
        lines.requestFocus();
      }
    }
    showRow();
  }

  private void showRow() {
    row.getChildren().clear();
    Line line = lines.getSelectionModel().getSelectedItem();
    if (line == null) {
      return;
    }
    for (SheetViewModel.Cell cell : model.row(line)) {
      Label text = Parts.line(cell.text().isBlank() ? "–" : cell.text(), "sheet-cell-text");
      VBox box = Parts.column("sheet-cell", Parts.line(cell.heading(), "muted"), text);
      if (cell.refused()) {
        box.getStyleClass().add("refused");
      }
      row.getChildren().add(box);
    }
  }

  private void choose() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Texts.of("sheet.choose"));
    chooser
        .getExtensionFilters()
        .addAll(
            new FileChooser.ExtensionFilter(
                Texts.of("sheet.tables"), "*.csv", "*.tsv", "*.txt", "*.CSV"),
            new FileChooser.ExtensionFilter(Texts.of("sheet.allFiles"), "*"));
    File file = chooser.showOpenDialog(getScene().getWindow());
    if (file != null) {
      path.setText(file.toString());
      model.open(file.toString());
    }
  }

  private void paste() {
    String text = Optional.ofNullable(Clipboard.getSystemClipboard().getString()).orElse("");
    if (text.isBlank()) {
      problem.setText(Texts.of("sheet.emptyClipboard"));
    } else if (isTable(text)) {
      path.clear();
      model.paste(text);
      path.requestFocus();
    } else {
      path.setText(text.strip());
      path.requestFocus();
      path.end();
    }
  }

  private static boolean isTable(String text) {
    return text.strip().contains("\n") || text.contains("\t");
  }

  private void take() {
    try {
      desk.make(model.edit());
      desk.close(Optional.empty());
    } catch (Problem e) {
      problem.setText(e.accepted());
    }
  }

  private void pressed(KeyEvent e) {
    boolean used = true;
    boolean showing = columns.getChildren().stream().anyMatch(SheetView::isChoosing);
    if (e.getCode() == KeyCode.ENTER && !showing && !e.isAltDown()) {
      if (getScene().getFocusOwner() == path) {
        model.open(path.getText());
      } else {
        take();
      }
    } else if (e.getCode() == KeyCode.ESCAPE && !showing) {
      // Here, since a list keeps Escape to itself.
      desk.close(Optional.empty());
    } else if (e.isShortcutDown() && e.getCode() == KeyCode.O) {
      choose();
    } else if (e.isShortcutDown() && e.getCode() == KeyCode.V) {
      paste();
    } else {
      used = e.isAltDown() && alt(e.getCode());
    }
    if (used) {
      e.consume();
    }
  }

  private static boolean isChoosing(Node column) {
    return chooser(column) instanceof ComboBox<?> c && c.isShowing();
  }

  private boolean alt(KeyCode code) {
    for (Sort sort : Sort.values()) {
      if (code.getName().equals(Integer.toString(sort.ordinal() + 1))) {
        about(sort);
        return true;
      }
    }
    List<Leniency> all = new ArrayList<>(List.of(Leniency.values()));
    all.removeIf(l -> !letter(l).equals(code.getName()) || model.sort() == Sort.PINS);
    all.forEach(this::toggle);
    return !all.isEmpty();
  }

  private static HBox face(Line line) {
    Label tone = Parts.line(Texts.of(line.tone()), "sheet-tone");
    tone.getStyleClass().add("tone-" + line.tone().name().toLowerCase(Locale.ROOT));
    Label words = Parts.text(line.words());
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    HBox box = Parts.row("sheet-line", tone, words);
    box.setAccessibleText(Texts.of(line.tone()) + ", " + line.words());
    return box;
  }
}
