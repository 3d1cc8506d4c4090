package loopwright.ui.find;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.LogWords;
import loopwright.casework.ReadingView;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** What was done: the readings and what was told besides, in order, to correct or take back. */
final class ReadingsStrip extends VBox {
  private final LogWords words = LogWords.inUse();
  private final CaseViewModel model;
  private final HBox head;
  private final ChipRow chips = new ChipRow();
  private final VBox list = Parts.column("reading-list");
  private final ScrollPane listScroll = Parts.scrolling(list);
  private final List<KeyButton> keys;

  /** The keys where there is a list; on one line with the heading they might not fit. */
  private final FlowPane keyRow = new FlowPane();

  private boolean tall;

  ReadingsStrip(CaseViewModel model) {
    this.model = model;
    setId("done");
    getStyleClass().addAll("card", "readings-card");
    setFocusTraversable(true);
    setAccessibleText(Texts.of("done.title"));
    KeyButton correct =
        new KeyButton(Texts.of("action.correct"), CaseActions.CORRECT, model::startCorrect)
            .styled("action", "small-action");
    KeyButton back =
        new KeyButton(Texts.of("action.takeBack"), CaseActions.TAKE_BACK, model::takeBack)
            .styled("action", "small-action");
    KeyButton again =
        new KeyButton(Texts.of("action.again"), CaseActions.AGAIN, model::startAgain)
            .styled("action", "small-action");
    again.setMinWidth(Region.USE_PREF_SIZE);
    correct.setMinWidth(Region.USE_PREF_SIZE);
    back.setMinWidth(Region.USE_PREF_SIZE);
    Label title = Parts.line(Texts.of("done.title"), "side-title");
    title.setMinWidth(Region.USE_PREF_SIZE);
    keys = List.of(again, correct, back);
    keyRow.getStyleClass().add("actions");
    keyRow.setMinHeight(Region.USE_PREF_SIZE);
    head = Parts.row("readings-head", title, Parts.keyCap(CaseActions.DONE), chips);
    HBox.setHgrow(chips, Priority.ALWAYS);
    VBox.setVgrow(listScroll, Priority.ALWAYS);
    model.viewProperty().addListener(o -> rebuild());
    model.readingProperty().addListener(o -> rebuild());
    rebuild();
  }

  /** Shows a list down the page in place of a strip. */
  void setTall(boolean isTall) {
    if (tall != isTall || getChildren().isEmpty()) {
      tall = isTall;
      rebuild();
    }
  }

  private void rebuild() {
    chips.getChildren().clear();
    list.getChildren().clear();
    int i = 0;
    for (CaseViewModel.Done done : model.done()) {
      Pane box =
          done.reading().<Pane>map(r -> tall ? entry(r) : chip(r)).orElseGet(() -> told(done));
      int index = i;
      box.setOnMouseClicked(e -> model.readingProperty().set(index));
      if (model.readingProperty().get() == i) {
        box.getStyleClass().add("picked");
      }
      done.reading()
          .filter(r -> model.view().odds().contains(r.id()) || !r.doubts().isEmpty())
          .ifPresent(r -> box.getStyleClass().add("doubted"));
      (tall ? list : chips).getChildren().add(box);
      i++;
    }
    if (i == 0) {
      String none = Texts.of(tall ? "done.noneYet" : "done.none");
      (tall ? list : chips).getChildren().add(Parts.text(none, "muted"));
    }
    if (tall) {
      head.getChildren().removeAll(keys);
      keyRow.getChildren().setAll(keys);
      getChildren().setAll(head, keyRow, listScroll);
    } else {
      keyRow.getChildren().clear();
      head.getChildren().removeAll(keys);
      head.getChildren().addAll(keys);
      getChildren().setAll(head);
    }
    int chosen = model.readingProperty().get();
    chips.show(chosen < 0 ? i - 1 : chosen);
  }

  /** What was told besides readings. */
  private Pane told(CaseViewModel.Done done) {
    String words = done.deed().orElseThrow().words();
    if (tall) {
      return Parts.column("reading-entry", Parts.text(words, "reading-where"));
    }
    Label label = Parts.line(words, "reading-where");
    label.setMinWidth(Region.USE_PREF_SIZE);
    return Parts.row("chip", label);
  }

  private static HBox chip(ReadingView r) {
    Label number = Parts.line(Integer.toString(r.id()), "reading-number");
    Label where = Parts.line(r.where(), "reading-where");
    Label value = Parts.line(r.value(), "reading-value");
    for (Label label : new Label[] {number, where, value}) {
      label.setMinWidth(Region.USE_PREF_SIZE);
    }
    HBox chip = Parts.row("chip", number, where, value);
    if (!r.doubts().isEmpty()) {
      chip.getChildren().add(Parts.line(Texts.of("done.doubt"), "doubt"));
    }
    return chip;
  }

  private VBox entry(ReadingView r) {
    FlowPane line =
        new FlowPane(
            Parts.line(Integer.toString(r.id()), "reading-number"),
            Parts.line(words.time(r.at()), "reading-time"),
            Parts.line(r.where(), "reading-where"),
            Parts.line(r.value(), "reading-value"));
    line.getStyleClass().add("reading-line");
    VBox box = Parts.column("reading-entry", line);
    if (!r.healthyWords().isEmpty()) {
      box.getChildren().add(Parts.text(Texts.of("check.healthy", r.healthyWords()), "cleared-why"));
    }
    box.getChildren().add(Parts.text(r.did(), "cleared-why"));
    r.doubts().forEach(d -> box.getChildren().add(Parts.text(d, "doubt")));
    return box;
  }
}
