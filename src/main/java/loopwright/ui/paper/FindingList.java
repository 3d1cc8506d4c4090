package loopwright.ui.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.application.Platform;
import javafx.beans.value.ObservableBooleanValue;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import loopwright.casework.Phrases;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.ui.Texts;
import loopwright.ui.paper.PaperViewModel.Group;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The findings in groups, one card each; the chosen card stays where it is on the screen. */
final class FindingList extends ScrollPane {
  /** The key that folds and unfolds what is worth knowing. */
  static final String KNOW_KEY = "K";

  private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");

  private final PaperViewModel model;
  private final BiConsumer<PaperItem, String> jump;
  private final Phrases phrases = Phrases.inUse();
  private final VBox column = Parts.column("findings");
  private final List<FindingCard> cards = new ArrayList<>();

  /**
   * Makes the list.
   *
   * @param stale whether what is shown may be of an older edit
   * @param jump goes from a card to a part
   */
  FindingList(
      PaperViewModel model, ObservableBooleanValue stale, BiConsumer<PaperItem, String> jump) {
    this.model = model;
    this.jump = jump;
    setId("findings");
    setContent(column);
    Parts.scrollDown(this);
    stale.addListener((o, was, is) -> column.pseudoClassStateChanged(STALE, is));
    model.groupsProperty().addListener(o -> fill());
    model.chosenProperty().addListener(o -> chosen());
    model.openedProperty().addListener(o -> opened());
    fill();
  }

  /** Puts the focus on the chosen card, or on the list where there is none. */
  void takeFocus() {
    chosenCard().ifPresentOrElse(Node::requestFocus, this::requestFocus);
  }

  private Optional<FindingCard> chosenCard() {
    return model
        .chosenProperty()
        .get()
        .flatMap(item -> cards.stream().filter(c -> c.item().key().equals(item.key())).findFirst());
  }

  private void fill() {
    Optional<Double> seenAt = chosenCard().map(this::topInView);
    boolean focused = holdsFocus();
    cards.clear();
    column.getChildren().clear();
    model.groupsProperty().get().forEach(this::add);
    opened();
    mark();
    // The view model says what is chosen only after it has said what there is.
    Platform.runLater(
        () -> {
          layOut();
          chosenCard()
              .ifPresent(
                  card -> {
                    seenAt.ifPresent(y -> scrollBy(topInView(card) - y));
                    reveal(card);
                    if (focused) {
                      card.requestFocus();
                    }
                  });
        });
  }

  private void add(Group group) {
    String words = words(group);
    Node name = Parts.text(words, "group-head");
    if (group.severity().equals(Optional.of(Severity.KNOW))) {
      KeyButton fold =
          new KeyButton(
                  Texts.of(group.folded() ? "paper.unfold" : "paper.fold", words),
                  KNOW_KEY,
                  model::toggleKnow)
              .styled("action", "wide");
      fold.setId("worth-knowing");
      fold.setFocusTraversable(false);
      name = fold;
    }
    HBox head = Parts.row("group-row", SeverityMark.of(group.severity()), name);
    column.getChildren().add(head);
    for (PaperItem item : group.items()) {
      FindingCard card =
          new FindingCard(item, severity(group.severity()), part -> jump.accept(item, part));
      card.setOnMousePressed(
          e -> {
            model.choose(item);
            card.requestFocus();
          });
      card.focusedProperty()
          .addListener(
              (o, was, is) -> {
                if (is) {
                  model.choose(item);
                }
              });
      cards.add(card);
      column.getChildren().add(card);
    }
  }

  private String words(Group group) {
    return Texts.of("paper.group", severity(group.severity()), group.count());
  }

  private String severity(Optional<Severity> severity) {
    return severity
        .map(s -> phrases.say("paper.severity." + s))
        .orElseGet(() -> Texts.of("paper.mendFirst"));
  }

  private void mark() {
    Optional<FindingCard> chosen = chosenCard();
    cards.forEach(c -> c.pick(chosen.equals(Optional.of(c))));
  }

  private void chosen() {
    mark();
    boolean focused = holdsFocus();
    chosenCard()
        .ifPresent(
            card -> {
              if (focused) {
                card.requestFocus();
              }
              layOut();
              reveal(card);
            });
  }

  private boolean holdsFocus() {
    return isFocused() || cards.stream().anyMatch(Node::isFocused);
  }

  private void opened() {
    cards.forEach(c -> c.open(model.openedProperty().get().contains(c.item().key())));
    layOut();
    chosenCard().ifPresent(this::reveal);
  }

  private void layOut() {
    if (getScene() != null) {
      applyCss();
      layout();
    }
  }

  private double height() {
    return getViewportBounds().getHeight();
  }

  private double over() {
    return Math.max(0, column.getHeight() - height());
  }

  private double topInView(Node card) {
    return card.getBoundsInParent().getMinY() - getVvalue() * over();
  }

  private void scrollBy(double pixels) {
    if (over() > 0) {
      setVvalue(Math.max(0, Math.min(1, getVvalue() + pixels / over())));
    }
  }

  /** Scrolls as little as shows the whole card, with the head of its group above the first one. */
  private void reveal(FindingCard card) {
    Bounds at = card.getBoundsInParent();
    double above = card == cards.get(0) ? at.getMinY() : 0;
    double top = topInView(card) - above;
    double bottom = topInView(card) + at.getHeight();
    if (top < 0 || bottom - top > height()) {
      scrollBy(top);
    } else if (bottom > height()) {
      scrollBy(bottom - height());
    }
  }
}
