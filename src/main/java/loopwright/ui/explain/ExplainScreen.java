package loopwright.ui.explain;

import java.util.List;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import loopwright.casework.explain.ExplainDesk.Entry;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The explaining pages: the list with its search at the left, the open page at the right. */
public final class ExplainScreen extends HBox {
  /** Narrower than this, in ems, the list gives way to the page unless somebody searches. */
  private static final double ROOM_FOR_BOTH = 56;

  private final ExplainViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final TextField search = new TextField();
  private final ListView<Entry> list = new ListView<>();
  private final LessonView lesson;
  private final VBox left;
  private boolean choosing;

  /**
   * Makes the screen.
   *
   * @param em pixels of one em
   * @param back leaves the pages
   * @param keys goes to the page of keys
   */
  public ExplainScreen(
      ExplainViewModel model, ReadOnlyDoubleProperty em, Runnable back, Runnable keys) {
    this.model = model;
    this.em = em;
    setId("explain");
    getStyleClass().add("explain");
    search.setId("explain-search");
    search.getStyleClass().add("search-field");
    search.setPromptText(Texts.of("explain.search"));
    search.setAccessibleText(Texts.of("explain.search"));
    search.textProperty().bindBidirectional(model.searchProperty());
    list.setId("explain-list");
    list.getStyleClass().add("fat-list");
    list.setAccessibleText(Texts.of("explain.list"));
    list.setFocusTraversable(false);
    list.setCellFactory(l -> FatCell.words(l, Entry::title));
    VBox.setVgrow(list, Priority.ALWAYS);
    list.setPlaceholder(Parts.text(Texts.of("explain.none"), "muted"));
    left = Parts.column("explain-left", search, list);
    lesson =
        new LessonView(
            model,
            em,
            List.of(
                action("explain.next", "PgDn", () -> model.step(1)),
                action("explain.before", "PgUp", () -> model.step(-1)),
                action("explain.toSearch", "Ctrl+F", this::choose),
                action("explain.keys", "F1", keys),
                action("explain.back", "Esc", back)));
    HBox.setHgrow(lesson, Priority.ALWAYS);
    getChildren().addAll(left, lesson);
    model.entriesProperty().addListener(o -> entries());
    model.pageProperty().addListener(o -> mark());
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (o, was, is) -> {
              if (is != null) {
                model.open(is.id());
              }
            });
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    widthProperty().addListener(o -> arrange());
    em.addListener(o -> arrange());
    entries();
    arrange();
  }

  private static KeyButton action(String key, String cap, Runnable action) {
    return new KeyButton(Texts.of(key), cap, action).styled("action", "small-action");
  }

  private void entries() {
    list.getItems().setAll(model.entriesProperty().get());
    if (!model.searchProperty().get().isBlank()) {
      list.getSelectionModel().selectFirst();
    }
    mark();
  }

  private void mark() {
    model
        .pageProperty()
        .get()
        .ifPresent(
            page ->
                list.getItems().stream()
                    .filter(e -> e.id().equals(page.id()))
                    .findFirst()
                    .ifPresent(e -> list.getSelectionModel().select(e)));
  }

  private void arrange() {
    boolean both = getWidth() / em.get() >= ROOM_FOR_BOTH;
    Parts.shown(left, both || choosing);
    Parts.shown(lesson, both || !choosing);
  }

  private void choose() {
    choosing = true;
    arrange();
    search.requestFocus();
    search.selectAll();
  }

  /** Puts the focus on the first control of the open page. */
  public void takeFocus() {
    choosing = false;
    arrange();
    lesson.takeFocus();
  }

  private void pressed(KeyEvent e) {
    boolean handled = true;
    switch (e.getCode()) {
      case F -> {
        handled = e.isShortcutDown();
        if (handled) {
          choose();
        }
      }
      case ENTER -> {
        handled = search.isFocused();
        if (handled) {
          takeFocus();
        }
      }
      case PAGE_DOWN -> model.step(1);
      case PAGE_UP -> model.step(-1);
      case DOWN -> down(1);
      case UP -> down(-1);
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  /** Beside the search the arrows go through the list, elsewhere through the controls. */
  private void down(int by) {
    if (search.isFocused()) {
      model.step(by);
    } else {
      lesson.nextControl(by);
    }
  }
}
