package loopwright.ui.find;

import java.util.List;
import java.util.stream.Collectors;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.ClearedView;
import loopwright.casework.LoopView;
import loopwright.casework.SuspectView;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** What is known: suspects, cleared pieces; or why the check is next; or what if it isn't this. */
final class SidePanel extends VBox {
  private static final int STRONGEST_WITH_MODES = 3;
  private static final int MODES_AT_A_GLANCE = 2;

  private final CaseViewModel model;
  private final VBox body = new VBox();
  private VBox chosen;
  private final ScrollPane scroll = Parts.scrolling(body);

  SidePanel(CaseViewModel model) {
    this.model = model;
    setId("known");
    getStyleClass().addAll("card", "side-card");
    body.getStyleClass().add("side-body");
    VBox.setVgrow(scroll, Priority.ALWAYS);
    FlowPane keys =
        new FlowPane(
            new KeyButton(Texts.of("action.ifNot"), CaseActions.IF_NOT, model::toggleIfNot)
                .styled("action", "small-action"),
            new KeyButton(Texts.of("action.swap"), CaseActions.SWAP, model::startSwap)
                .styled("action", "small-action"));
    keys.getStyleClass().add("actions");
    keys.setMinHeight(Region.USE_PREF_SIZE);
    getChildren().addAll(scroll, keys);
    setFocusTraversable(true);
    setAccessibleText(Texts.of("known.suspected"));
    model.viewProperty().addListener(o -> rebuild());
    model.sideProperty().addListener(o -> rebuild());
    model.suspectProperty().addListener(o -> rebuild());
    model.whyLines().addListener((javafx.collections.ListChangeListener<String>) c -> rebuild());
    model.ifNotLines().addListener((javafx.collections.ListChangeListener<String>) c -> rebuild());
    rebuild();
  }

  private void rebuild() {
    body.getChildren().clear();
    chosen = null;
    putBack();
    switch (model.sideProperty().get()) {
      case KNOWN -> known();
      case WHY -> why();
      case IF_NOT -> ifNot();
    }
    keepInSight();
  }

  private void putBack() {
    List<String> toDo = model.view().putBack();
    if (toDo.isEmpty()) {
      return;
    }
    VBox box = Parts.column("put-back", Parts.text(Texts.of("putBack.title"), "side-title"));
    toDo.forEach(p -> box.getChildren().add(Parts.text(p, "put-back-line")));
    body.getChildren().add(box);
  }

  private void known() {
    CaseView view = model.view();
    body.getChildren().add(title("known.suspected", CaseActions.KNOWN));
    for (int i = 0; i < view.suspects().size(); i++) {
      body.getChildren().add(suspect(view.suspects().get(i), i));
    }
    if (view.suspects().isEmpty()) {
      body.getChildren().add(Parts.text(Texts.of("known.nobody"), "muted"));
    }
    int index = view.suspects().size();
    if (!view.cleared().isEmpty()) {
      body.getChildren().add(Parts.text(Texts.of("known.cleared"), "side-title", "spaced"));
      for (ClearedView c : view.cleared()) {
        body.getChildren().add(asked(cleared(c), index++));
      }
    }
    if (!model.hardly().isEmpty()) {
      body.getChildren().add(Parts.text(Texts.of("known.hardly"), "side-title", "spaced"));
      for (LoopView.PieceView p : model.hardly()) {
        VBox row = Parts.column("cleared", Parts.text(p.title(), "cleared-name"));
        body.getChildren().add(asked(row, index++));
      }
    }
    if (!model.story().isEmpty()) {
      body.getChildren().add(Parts.text(Texts.of("known.story"), "side-title", "spaced"));
      body.getChildren().add(Parts.text(model.story(), "side-line"));
    }
    if (!view.cautions().isEmpty()) {
      body.getChildren().add(Parts.text(Texts.of("known.mind"), "side-title", "spaced"));
      view.cautions().forEach(c -> body.getChildren().add(Parts.text(c, "side-line")));
    }
  }

  private static HBox title(String key, String cap) {
    Label words = Parts.text(Texts.of(key), "side-title");
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    return Parts.row("side-head", words, Parts.keyCap(cap));
  }

  private VBox suspect(SuspectView s, int index) {
    Label name = Parts.text(s.title(), "suspect-name");
    HBox.setHgrow(name, Priority.ALWAYS);
    name.setMaxWidth(Double.MAX_VALUE);
    Label percent = Parts.line(Texts.of("percent", NowCard.percent(s.belief())), "suspect-percent");
    percent.setMinWidth(Region.USE_PREF_SIZE);
    VBox row =
        Parts.column(
            "suspect", Parts.row("suspect-line", name, percent), new StrengthBar(s.belief()));
    if (index < STRONGEST_WITH_MODES && !s.modes().isEmpty()) {
      boolean all = model.sideProperty().get() == CaseViewModel.Side.IF_NOT;
      List<String> told = all ? s.modes() : s.modes().stream().limit(MODES_AT_A_GLANCE).toList();
      row.getChildren().add(Parts.text(String.join(" · ", told), "suspect-modes"));
    }
    if (!s.splitBy().isEmpty()) {
      row.getChildren().add(Parts.text(s.splitBy(), "suspect-modes"));
    }
    row.setAccessibleText(Texts.of("access.suspect", s.title(), NowCard.percent(s.belief())));
    return asked(row, index);
  }

  /** A piece that can be asked about, with the answer under it once it is chosen. */
  private VBox asked(VBox row, int index) {
    row.setOnMouseClicked(e -> model.suspectProperty().set(index));
    if (model.suspectProperty().get() == index) {
      row.getStyleClass().add("picked");
      VBox lines = Parts.column("if-not-lines");
      model.ifNotLines().forEach(l -> lines.getChildren().add(Parts.text(l, "side-line")));
      row.getChildren().add(lines);
      chosen = row;
    }
    return row;
  }

  /** Scrolls so far that the chosen piece and what is told of it are seen. */
  private void keepInSight() {
    if (chosen == null || getHeight() <= 0) {
      return;
    }
    applyCss();
    layout();
    double seen = scroll.getViewportBounds().getHeight();
    double hidden = body.getHeight() - seen;
    double top = chosen.getBoundsInParent().getMinY();
    double bottom = chosen.getBoundsInParent().getMaxY();
    double at = scroll.getVvalue() * hidden;
    if (hidden > 0 && (top < at || bottom > at + seen)) {
      double to = Math.min(top, bottom - seen);
      scroll.setVvalue(
          Math.max(0, Math.min(1, (bottom - top > seen ? top : Math.max(0, to)) / hidden)));
    }
  }

  private static VBox cleared(ClearedView c) {
    String by = c.readings().stream().map(id -> "(" + id + ")").collect(Collectors.joining(" "));
    return Parts.column(
        "cleared",
        Parts.text(Texts.of("known.clearedLine", c.title(), by), "cleared-name"),
        Parts.text(c.why(), "cleared-why"));
  }

  private void why() {
    body.getChildren().add(title("why.title", CaseActions.WHY));
    // Where the results are listed below, the sentences that tell the same are left out.
    boolean listed = model.view().next().filter(c -> !c.outcomes().isEmpty()).isPresent();
    model.whyLines().stream()
        .limit(listed ? 1 : Long.MAX_VALUE)
        .forEach(l -> body.getChildren().add(Parts.text(l, "side-line")));
    model
        .view()
        .next()
        .ifPresent(
            check -> {
              body.getChildren().add(Parts.text(Texts.of("why.outcomes"), "side-title", "spaced"));
              check.outcomes().forEach(o -> body.getChildren().add(outcome(o)));
            });
    KeyButton tree =
        new KeyButton(Texts.of("action.tree"), CaseActions.TREE, model::toggleTree)
            .styled("action");
    body.getChildren().add(Parts.row("actions", tree, back()));
  }

  private static VBox outcome(CheckView.OutcomeView o) {
    VBox leaves = Parts.column("outcome-leaves");
    if (o.leaves().isEmpty()) {
      leaves.getChildren().add(Parts.text(Texts.of("why.leavesNothing"), "outcome-leaf"));
    }
    o.leaves().forEach(l -> leaves.getChildren().add(Parts.text(l, "outcome-leaf")));
    Label words = Parts.text(o.words(), "outcome-words");
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMaxWidth(Double.MAX_VALUE);
    return Parts.column(
        "outcome",
        Parts.row(
            "suspect-line",
            words,
            Parts.line(Texts.of("percent", NowCard.percent(o.chance())), "suspect-percent")),
        new StrengthBar(o.chance()),
        leaves);
  }

  private void ifNot() {
    body.getChildren().add(title("ifNot.title", CaseActions.IF_NOT));
    List<SuspectView> suspects = model.view().suspects();
    for (int i = 0; i < suspects.size(); i++) {
      body.getChildren().add(suspect(suspects.get(i), i));
    }
    body.getChildren().add(back());
  }

  private KeyButton back() {
    return new KeyButton(Texts.of("action.back"), CaseActions.BACK, model::back).styled("action");
  }
}
