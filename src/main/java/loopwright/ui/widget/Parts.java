package loopwright.ui.widget;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.Told;

/** Small building blocks of the screens. */
public final class Parts {
  /** Pixels that a finger hits without aiming (WCAG 2.2, 2.5.5). */
  public static final double FINGER = 44;

  private Parts() {}

  /** A label that breaks its text and never shortens it. */
  public static Label text(String words, String... classes) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().addAll(classes);
    return label;
  }

  /** A label on one line. */
  public static Label line(String words, String... classes) {
    Label label = new Label(words);
    label.getStyleClass().addAll(classes);
    return label;
  }

  /** A text that says what was told last; a problem stands out. */
  public static Label told(ObservableValue<Told> last) {
    Label label = text("", "entry-status");
    Runnable show =
        () -> {
          label.setText(last.getValue().words());
          label.getStyleClass().removeAll("status-hint", "status-problem");
          boolean problem = last.getValue().tone() == Told.Tone.PROBLEM;
          label.getStyleClass().add(problem ? "status-problem" : "status-hint");
        };
    last.addListener(o -> show.run());
    show.run();
    return label;
  }

  /** A field for a value, with what is to be typed named in it. */
  public static TextField field(TextField field, String id, String key) {
    field.setId(id);
    field.getStyleClass().add("value-field");
    field.setPromptText(Texts.of(key));
    field.setAccessibleText(Texts.of(key));
    return field;
  }

  /** A row. */
  public static HBox row(String styleClass, Node... children) {
    HBox row = new HBox(children);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add(styleClass);
    return row;
  }

  /** A column. */
  public static VBox column(String styleClass, Node... children) {
    VBox column = new VBox(children);
    column.getStyleClass().add(styleClass);
    return column;
  }

  /** What a fat row of a list says: its title, what stands beside that, and the lines below. */
  public static VBox entry(String title, String beside, List<String> lines) {
    Label head = text(title, "entry-title");
    head.setMinWidth(0);
    Label shelf = line(beside, "shelf");
    shelf.setMinWidth(Region.USE_PREF_SIZE);
    VBox entry = column("entry", row("entry-head", head, shelf));
    lines.forEach(words -> entry.getChildren().add(text(words, "muted")));
    entry.setAccessibleText(
        Stream.concat(Stream.of(title, beside), lines.stream()).collect(Collectors.joining(", ")));
    return entry;
  }

  /** A row of a list: a sign, and beside it a title over a line. */
  public static HBox signed(Label sign, String title, Label below) {
    VBox words = column("entry-words", text(title, "entry-title"), below);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    return row("entry-head", sign, words);
  }

  /** Shows something, or takes it away with its room. */
  public static void shown(Node node, boolean now) {
    node.setVisible(now);
    node.setManaged(now);
  }

  /** What pushes its neighbours apart. */
  public static Region spring() {
    Region spring = new Region();
    HBox.setHgrow(spring, Priority.ALWAYS);
    return spring;
  }

  /** A caution: a triangle and words, before the hand's step. */
  public static HBox caution(String words) {
    Region mark = new Region();
    mark.getStyleClass().add("caution-mark");
    StackPane holder = new StackPane(mark);
    holder.getStyleClass().add("caution-holder");
    Label label = text(words, "caution-text");
    HBox row = row("caution", holder, label);
    HBox.setHgrow(label, Priority.ALWAYS);
    row.setAccessibleText(Texts.of("access.caution", words));
    return row;
  }

  /** The mark of the red lead: red, square, R. */
  public static Label redMark() {
    Label mark = line(Texts.of("lead.red.mark"), "lead-mark", "lead-mark-red");
    mark.setAccessibleText(Texts.of("lead.red"));
    return mark;
  }

  /** The mark of the black lead: black, round, B. */
  public static Label blackMark() {
    Label mark = line(Texts.of("lead.black.mark"), "lead-mark", "lead-mark-black");
    mark.setAccessibleText(Texts.of("lead.black"));
    return mark;
  }

  /** A key as printed on a keyboard. */
  public static Label keyCap(String key) {
    Label cap = line(KeyNames.printed(key), "key-cap");
    cap.setMinWidth(Region.USE_PREF_SIZE);
    return cap;
  }

  /** A pane that scrolls down but never sideways and takes no focus. */
  public static ScrollPane scrolling(Node content) {
    ScrollPane pane = new ScrollPane(content);
    scrollDown(pane);
    return pane;
  }

  /** Makes a pane one that scrolls down but never sideways and takes no focus. */
  public static void scrollDown(ScrollPane pane) {
    pane.setFitToWidth(true);
    pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll(pane);
  }

  /** Makes a pane one that scrolls sideways but never down and takes no focus. */
  public static void scrollSideways(ScrollPane pane) {
    pane.setFitToHeight(true);
    pane.setVbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll(pane);
  }

  private static void scroll(ScrollPane pane) {
    pane.setFocusTraversable(false);
    pane.getStyleClass().add("plain-scroll");
    Dragging.in(pane);
  }
}
