package loopwright.ui.find;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.CheckView.OutcomeView;
import loopwright.casework.Outlook;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/**
 * The decision tree of a check: the check on top, a limb for each result, as thick as it is likely,
 * and beside it what is left then and what would be asked next.
 */
final class TreePanel extends VBox {
  /** Parts named for one result. */
  private static final int NAMED = 3;

  /** Width in em from which a result and what follows it stand side by side. */
  private static final double BESIDE = 46;

  private final CaseViewModel model;
  private final TreeViewModel tree;
  private final ReadOnlyDoubleProperty em;
  private final VBox body = Parts.column("tree-body");
  private final ScrollPane scroll = Parts.scrolling(body);
  private final HBox head = Parts.row("tree-head");

  TreePanel(CaseViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.tree = model.tree();
    this.em = em;
    setId("tree");
    getStyleClass().addAll("card", "tree-card");
    VBox.setVgrow(scroll, Priority.ALWAYS);
    scroll.setMinHeight(0);
    getChildren().addAll(head, scroll);
    setFocusTraversable(true);
    setAccessibleText(Texts.of("tree.title"));
    tree.outlookProperty().addListener(o -> rebuild());
    tree.thens()
        .addListener(
            (javafx.collections.ListChangeListener<Optional<Outlook.Then>>) c -> rebuild());
    tree.branchProperty().addListener(o -> rebuild());
  }

  private void rebuild() {
    head.getChildren().clear();
    body.getChildren().clear();
    tree.outlookProperty().get().ifPresent(this::show);
  }

  private void show(Outlook outlook) {
    head.getChildren().addAll(Parts.text(Texts.of("tree.title"), "headline"), Parts.spring());
    if (tree.count() > 1) {
      Label of =
          Parts.line(
              Texts.of("tree.of", Integer.toString(tree.at() + 1), Integer.toString(tree.count())),
              "muted");
      of.setMinWidth(USE_PREF_SIZE);
      head.getChildren()
          .addAll(
              of,
              small(new KeyButton(Texts.of("tree.before"), "←", () -> tree.move(-1))),
              small(new KeyButton(Texts.of("tree.after"), "→", () -> tree.move(1))));
    }
    head.getChildren()
        .add(small(new KeyButton(Texts.of("action.back"), CaseActions.BACK, model::back)));
    body.getChildren().add(root(outlook));
    if (!outlook.note().isEmpty()) {
      body.getChildren().add(Parts.text(outlook.note(), "tree-note"));
    }
    // What follows arrives one by one; until then there may be fewer than there are results.
    for (int i = 0; i < Math.min(outlook.branches().size(), tree.thens().size()); i++) {
      boolean last = i == outlook.branches().size() - 1;
      Limb limb =
          new Limb(
              result(outlook.branches().get(i)),
              tree.thens().get(i).map(TreePanel::then).orElseGet(TreePanel::working),
              outlook.branches().get(i).outcome().chance(),
              last);
      if (i == tree.branchProperty().get()) {
        limb.getStyleClass().add("picked");
      }
      int at = i;
      limb.setOnMouseClicked(e -> tree.branchProperty().set(at));
      body.getChildren().add(limb);
    }
    keepInSight();
  }

  private static KeyButton small(KeyButton button) {
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setFocusTraversable(false);
    return button.styled("action", "small-action");
  }

  private VBox root(Outlook outlook) {
    Label when =
        Parts.text(
            Texts.of(outlook.proposed() ? "tree.now" : "tree.instead", minutes(outlook.minutes())),
            "muted");
    VBox root = Parts.column("tree-root", when, Parts.text(outlook.words(), "tree-check"));
    if (!outlook.proposed() && !outlook.set().isEmpty()) {
      root.getChildren()
          .add(Parts.text(Texts.of("tree.set", String.join(", ", outlook.set())), "side-line"));
    }
    return root;
  }

  private static VBox result(Outlook.Branch branch) {
    Label words = Parts.text(branch.outcome().words(), "outcome-words");
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMaxWidth(Double.MAX_VALUE);
    Label chance =
        Parts.line(
            Texts.of("percent", NowCard.percent(branch.outcome().chance())), "suspect-percent");
    chance.setMinWidth(Region.USE_PREF_SIZE);
    return Parts.column(
        "tree-result",
        Parts.row("suspect-line", words, chance),
        new StrengthBar(branch.outcome().chance()),
        Parts.text(Texts.of("tree.leaves", left(branch.left())), "tree-left"));
  }

  private static VBox then(Outlook.Then then) {
    VBox box = Parts.column("tree-then");
    String set = then.set().isEmpty() ? "" : Texts.of("tree.set", String.join(", ", then.set()));
    String minutes = then.check().isPresent() ? minutes(then.minutes()) : "";
    box.getChildren().add(Parts.text(Texts.of("tree.then", then.words()), "tree-next"));
    if (!minutes.isEmpty()) {
      String both = set.isEmpty() ? minutes : Texts.of("tree.both", minutes, set);
      box.getChildren().add(Parts.text(both, "muted"));
    }
    for (OutcomeView outcome : then.outcomes()) {
      box.getChildren()
          .add(
              Parts.text(
                  Texts.of(
                      "tree.twig",
                      outcome.words(),
                      NowCard.percent(outcome.chance()),
                      named(outcome.leaves())),
                  "tree-twig"));
    }
    if (then.outcomes().isEmpty() && then.left().size() > 1) {
      box.getChildren().add(Parts.text(Texts.of("tree.leaves", left(then.left())), "tree-twig"));
    }
    return box;
  }

  private static VBox working() {
    return Parts.column("tree-then", Parts.text(Texts.of("tree.working"), "muted"));
  }

  private static String left(List<Outlook.Left> left) {
    return left.isEmpty()
        ? Texts.of("why.leavesNothing")
        : more(
            left.stream()
                .limit(NAMED)
                .map(l -> Texts.of("tree.left", l.title(), NowCard.percent(l.belief())))
                .collect(Collectors.joining(", ")),
            left.size());
  }

  private static String named(List<String> titles) {
    return titles.isEmpty()
        ? Texts.of("why.leavesNothing")
        : more(titles.stream().limit(NAMED).collect(Collectors.joining(", ")), titles.size());
  }

  private static String more(String listed, int size) {
    return size > NAMED ? Texts.of("tree.more", listed, Integer.toString(size - NAMED)) : listed;
  }

  private static String minutes(double minutes) {
    return minutes < 1
        ? Texts.of("tree.quick")
        : Texts.of("tree.minutes", Long.toString(Math.round(minutes)));
  }

  /** Scrolls by a share of what is seen. */
  void scrollBy(int by) {
    double hidden = body.getHeight() - scroll.getViewportBounds().getHeight();
    if (hidden > 0) {
      scroll.setVvalue(
          clamp(scroll.getVvalue() + by * 0.6 * scroll.getViewportBounds().getHeight() / hidden));
    }
  }

  /** Scrolls so far that the picked result is seen. */
  private void keepInSight() {
    body.applyCss();
    layout();
    int index = body.getChildren().size() - tree.thens().size() + tree.branchProperty().get();
    double hidden = body.getHeight() - scroll.getViewportBounds().getHeight();
    if (hidden > 0 && index >= 0 && index < body.getChildren().size()) {
      Node limb = body.getChildren().get(index);
      double top = tree.branchProperty().get() == 0 ? 0 : limb.getBoundsInParent().getMinY();
      scroll.setVvalue(clamp(top / hidden));
    }
  }

  private static double clamp(double share) {
    return Math.max(0, Math.min(1, share));
  }

  /** One result with what follows, on a limb from the trunk. */
  private final class Limb extends Region {
    private static final double STEM = 2.2;
    private static final double ARM = 1.6;
    private static final double GAP = 0.35;
    private static final double THICKEST = 0.6;

    private final Region trunk = line();
    private final Region arm = line();
    private final Region twig = line();
    private final Region result;
    private final Region then;
    private final double chance;
    private final boolean last;

    Limb(Region result, Region then, double chance, boolean last) {
      this.result = result;
      this.then = then;
      this.chance = chance;
      this.last = last;
      getStyleClass().add("tree-limb");
      getChildren().addAll(trunk, arm, twig, result, then);
    }

    private static Region line() {
      Region line = new Region();
      line.getStyleClass().add("tree-line");
      return line;
    }

    private boolean beside(double width) {
      return width / em.get() >= BESIDE;
    }

    private double inner(double width) {
      return width - STEM * em.get();
    }

    private double resultWidth(double width) {
      return beside(width) ? 0.42 * (inner(width) - ARM * em.get()) : inner(width);
    }

    private double thenWidth(double width) {
      return beside(width) ? 0.58 * (inner(width) - ARM * em.get()) : inner(width) - ARM * em.get();
    }

    @Override
    public Orientation getContentBias() {
      return Orientation.HORIZONTAL;
    }

    @Override
    protected double computePrefHeight(double width) {
      double w = width < 0 ? getWidth() : width;
      double a = result.prefHeight(resultWidth(w));
      double b = then.prefHeight(thenWidth(w));
      return (beside(w) ? Math.max(a, b) : a + b) + GAP * em.get();
    }

    @Override
    protected double computeMinHeight(double width) {
      return computePrefHeight(width);
    }

    @Override
    protected double computePrefWidth(double height) {
      return 20 * em.get();
    }

    @Override
    protected double computeMinWidth(double height) {
      return 0;
    }

    @Override
    protected void layoutChildren() {
      double u = em.get();
      double w = getWidth();
      double top = GAP * u;
      double thick = Math.max(2, THICKEST * u * chance);
      double thin = Math.max(1.5, 0.1 * u);
      double y = top + 1.1 * u;
      trunk.resizeRelocate(0.7 * u, 0, thin, last ? y + thick / 2 : getHeight());
      arm.resizeRelocate(0.7 * u, y - thick / 2, (STEM - 0.7) * u, thick);
      double x = STEM * u;
      double a = result.prefHeight(resultWidth(w));
      double b = then.prefHeight(thenWidth(w));
      result.resizeRelocate(x, top, resultWidth(w), a);
      if (beside(w)) {
        double from = x + resultWidth(w);
        twig.resizeRelocate(from, y - thin / 2, ARM * u, thin);
        then.resizeRelocate(from + ARM * u, top, thenWidth(w), b);
      } else {
        twig.resizeRelocate(x + 0.3 * u, top + a + 1.1 * u, (ARM - 0.3) * u, thin);
        then.resizeRelocate(x + ARM * u, top + a, thenWidth(w), b);
      }
    }
  }
}
