package loopwright.ui.find;

import java.util.List;
import java.util.Locale;
import javafx.animation.PauseTransition;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.util.Duration;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.Proposer;
import loopwright.diagnosis.Seen;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/**
 * An open case. Where there is room all is seen at once: what to do now, what is known, the loop,
 * what was done. Where there is not (large text, small window) each has a page of its own, and what
 * to do now comes first.
 */
final class CaseScreen extends Region {
  /** Pages where room is short. */
  enum Page {
    NOW,
    DRAWING,
    KNOWN,
    DONE
  }

  private static final double WIDE_LEAST = 50;
  private static final double BESIDE_LEAST = 48;
  private static final double HIGH_LEAST = 35.5;
  private static final double SIDE_SHARE = 0.31;
  private static final double STRIP = 3;
  private static final double GAP = 0.5;
  private static final double NOW_WANTED = 27;
  private static final Duration SLOW = Duration.millis(500);

  private final CaseViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final NowCard now;
  private final SidePanel side;
  private final DrawingPanel drawing;
  private final ReadingsStrip done;
  private final TreePanel tree;
  private final HBox tabs = Parts.row("page-tabs");
  private final ProgressBar working = new ProgressBar(ProgressBar.INDETERMINATE_PROGRESS);
  private Page page = Page.NOW;
  private boolean compact;

  CaseScreen(CaseViewModel model, ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    this.now = new NowCard(model);
    this.side = new SidePanel(model);
    this.drawing = new DrawingPanel(model, em);
    this.done = new ReadingsStrip(model);
    this.tree = new TreePanel(model, em);
    setId("case");
    getStyleClass().add("case-screen");
    working.getStyleClass().add("working");
    working.setVisible(false);
    working.setAccessibleText(Texts.of("case.working"));
    getChildren().addAll(now, side, drawing, done, tabs, tree, working);
    em.addListener(o -> requestLayout());
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
    PauseTransition slow = new PauseTransition(SLOW);
    slow.setOnFinished(e -> working.setVisible(model.busyProperty().get()));
    model
        .busyProperty()
        .addListener(
            (o, was, is) -> {
              if (is) {
                slow.playFromStart();
              } else {
                slow.stop();
                working.setVisible(false);
              }
            });
    model.viewProperty().addListener(o -> show(Page.NOW));
    model
        .doingProperty()
        .addListener(
            (o, was, is) -> {
              if (is != CaseViewModel.Doing.ANSWER) {
                show(Page.NOW);
              }
            });
    model
        .own()
        .stepProperty()
        .addListener(
            (o, was, is) -> {
              // Both leads were put on the drawing: on with it where that has a page of its own.
              if (is == OwnCheckViewModel.Step.VALUE && compact) {
                show(Page.NOW);
              }
            });
    model
        .sideProperty()
        .addListener(
            (o, was, is) -> {
              if (is != CaseViewModel.Side.KNOWN) {
                show(Page.KNOWN);
              } else if (compact && page == Page.KNOWN) {
                show(Page.NOW);
              }
            });
    model
        .tree()
        .outlookProperty()
        .addListener(
            (o, was, is) -> {
              requestLayout();
              if (is.isEmpty()) {
                // What the focus goes to must be seen again first.
                layout();
                show(page);
              } else {
                tree.requestFocus();
              }
            });
    fillTabs();
  }

  /** Puts the focus where hands go on. */
  void takeFocus() {
    now.takeFocus();
  }

  private void fillTabs() {
    tabs.getChildren()
        .setAll(
            tab("page.now", CaseActions.BACK, Page.NOW),
            tab("page.drawing", CaseActions.DRAWING, Page.DRAWING),
            tab("page.known", CaseActions.KNOWN, Page.KNOWN),
            tab("page.done", CaseActions.DONE, Page.DONE));
  }

  private KeyButton tab(String key, String cap, Page to) {
    KeyButton tab = new KeyButton(Texts.of(key), cap, () -> show(to)).styled("page-tab");
    if (page == to) {
      tab.getStyleClass().add("picked");
    }
    tab.setFocusTraversable(false);
    return tab;
  }

  private void show(Page next) {
    page = next;
    fillTabs();
    requestLayout();
    if (next == Page.NOW) {
      now.takeFocus();
    } else if (next == Page.KNOWN) {
      side.requestFocus();
    } else if (next == Page.DONE) {
      done.requestFocus();
    }
  }

  @Override
  protected void layoutChildren() {
    double u = em.get();
    double w = getWidth();
    double h = getHeight();
    double gap = GAP * u;
    boolean small = w / u < WIDE_LEAST || h / u < HIGH_LEAST;
    if (small != compact) {
      compact = small;
      now.setBrief(small);
      done.setTall(small);
    }
    working.resizeRelocate(0, 0, w, 0.35 * u);
    boolean looking = model.tree().open();
    tree.setVisible(looking);
    tabs.setVisible(compact && !looking);
    if (looking) {
      List.of(now, side, drawing, done).forEach(n -> n.setVisible(false));
      tree.resizeRelocate(gap, gap, w - 2 * gap, h - 2 * gap);
      return;
    }
    if (compact) {
      double bar = tabs.prefHeight(w);
      tabs.resizeRelocate(0, h - bar, w, bar);
      for (Node node : List.of(now, side, drawing, done)) {
        node.resizeRelocate(gap, gap, w - 2 * gap, h - bar - gap);
      }
      boolean beside = w / u >= BESIDE_LEAST;
      if (beside) {
        double sideWidth = sideWidth(w, u, gap);
        now.resize(w - 3 * gap - sideWidth, now.getHeight());
        side.resizeRelocate(w - gap - sideWidth, gap, sideWidth, now.getHeight());
      }
      now.setVisible(page == Page.NOW || (beside && page == Page.KNOWN));
      side.setVisible(page == Page.KNOWN || (beside && page == Page.NOW));
      drawing.setVisible(page == Page.DRAWING);
      done.setVisible(page == Page.DONE);
      return;
    }
    for (Node node : List.of(now, side, drawing, done)) {
      node.setVisible(true);
    }
    double sideWidth = sideWidth(w, u, gap);
    double strip = Math.max(STRIP * u, done.prefHeight(w - 2 * gap));
    double free = h - 4 * gap - strip;
    double nowWidth = w - 3 * gap - sideWidth;
    double least = 11.5 * u;
    double drawingHeight = Math.max(least, Math.min(free - NOW_WANTED * u, free * 0.5));
    double nowHeight = free - drawingHeight;
    now.resizeRelocate(gap, gap, nowWidth, nowHeight);
    side.resizeRelocate(2 * gap + nowWidth, gap, sideWidth, nowHeight);
    drawing.resizeRelocate(gap, 2 * gap + nowHeight, w - 2 * gap, drawingHeight);
    done.resizeRelocate(gap, 3 * gap + nowHeight + drawingHeight, w - 2 * gap, strip);
  }

  private static double sideWidth(double w, double u, double gap) {
    return Math.min(26 * u, Math.max(15 * u, (w - 3 * gap) * SIDE_SHARE));
  }

  // Keys.

  private boolean searching(KeyEvent e) {
    return e.getTarget() instanceof TextField field && field == now.searchField();
  }

  private void pressed(KeyEvent e) {
    if (model.tree().open()) {
      if (treeKey(e)) {
        e.consume();
      }
      return;
    }
    if (e.isAltDown() && e.getCode().isDigitKey()) {
      pickBand(KeyNames.digit(e.getCode()) - 1);
      e.consume();
      return;
    }
    boolean handled =
        switch (e.getCode()) {
          case ESCAPE -> escape();
          case ENTER -> enter(e);
          case DELETE -> delete(e);
          case UP -> arrow(e, -1, true);
          case DOWN -> arrow(e, 1, true);
          case LEFT -> arrow(e, -1, false);
          case RIGHT -> arrow(e, 1, false);
          case TAB -> tabKey(e);
          case PAGE_UP -> scroll(-1);
          case PAGE_DOWN -> scroll(1);
          case F11 -> drawingKey();
          case F12 -> page(Page.KNOWN);
          case F10 -> {
            model.end();
            yield true;
          }
          default -> false;
        };
    if (handled) {
      e.consume();
    }
  }

  /** The keys of the tree; what lies under it gets none but those of the whole window. */
  private boolean treeKey(KeyEvent e) {
    switch (e.getCode()) {
      case ESCAPE -> model.back();
      case UP -> model.tree().moveBranch(-1);
      case DOWN -> model.tree().moveBranch(1);
      case LEFT -> model.tree().move(-1);
      case RIGHT -> model.tree().move(1);
      case PAGE_UP -> tree.scrollBy(-1);
      case PAGE_DOWN -> tree.scrollBy(1);
      default -> {
        return !e.getCode().isFunctionKey();
      }
    }
    return true;
  }

  private boolean scroll(int by) {
    now.scrollSteps(by);
    return true;
  }

  private boolean page(Page to) {
    show(to);
    if (to == Page.KNOWN && model.suspectProperty().get() < 0) {
      model.moveSuspect(1);
    }
    if (to == Page.DONE && model.readingProperty().get() < 0) {
      model.readingProperty().set(model.done().size() - 1);
    }
    return true;
  }

  private boolean drawingKey() {
    if (compact && page != Page.DRAWING) {
      show(Page.DRAWING);
    } else {
      model.wholeLoopProperty().set(!model.wholeLoopProperty().get());
    }
    return true;
  }

  private boolean escape() {
    if (model.doing() == CaseViewModel.Doing.ANSWER
        && model.sideProperty().get() == CaseViewModel.Side.KNOWN
        && (page != Page.NOW || !compact)) {
      model.suspectProperty().set(-1);
      model.readingProperty().set(-1);
      model.entry().clear();
    } else {
      model.back();
    }
    show(Page.NOW);
    return true;
  }

  private boolean enter(KeyEvent e) {
    if (e.getTarget() instanceof ButtonBase button) {
      button.fire();
      return true;
    }
    if (model.doing() == CaseViewModel.Doing.OWN
        && model.own().stepProperty().get() != OwnCheckViewModel.Step.VALUE) {
      now.chooseFound();
      return true;
    }
    switch (model.doing()) {
      case ANSWER -> {
        if (model.view().move() == CaseView.Move.MAKE_SAFE) {
          model.isolated();
        } else if (model.view().move() == CaseView.Move.REPAIR) {
          model.repaired();
        } else if (model.view().move() == CaseView.Move.PROPOSE) {
          model.startOwn();
        } else if (model.view().next().isPresent() && model.choices().isEmpty()) {
          model.count();
        }
      }
      case OWN, CORRECT, AGAIN -> model.count();
      case PUT_BACK -> model.allPutBack();
      case REFUSE, SWAP, WARN, COMPARE -> {
        return false;
      }
    }
    return true;
  }

  private boolean delete(KeyEvent e) {
    if (searching(e) || !model.entry().text().isEmpty()) {
      return false;
    }
    if (model.chosen().isPresent()) {
      model.takeBack();
    } else {
      page(Page.DONE);
    }
    return true;
  }

  private boolean tabKey(KeyEvent e) {
    if (model.doing() != CaseViewModel.Doing.OWN) {
      return false;
    }
    if (e.isShiftDown()) {
      model.own().backward();
    } else if (model.own().stepProperty().get() != OwnCheckViewModel.Step.VALUE) {
      now.chooseFound();
    }
    return true;
  }

  private boolean arrow(KeyEvent e, int by, boolean upDown) {
    if (searching(e)) {
      if (upDown) {
        now.moveFound(by);
      }
      return upDown;
    }
    Object target = e.getTarget();
    if (target == side || model.doing() == CaseViewModel.Doing.SWAP) {
      model.moveSuspect(by);
      return true;
    }
    if (target == done) {
      model.moveReading(by);
      return true;
    }
    if (page == Page.DRAWING && compact) {
      drawing.drawing().scrollBy(by * 0.25);
      return true;
    }
    boolean typing = !model.entry().text().isEmpty() || target instanceof Button;
    if (model.wholeLoopProperty().get() && !upDown && !typing) {
      drawing.drawing().scrollBy(by * 0.25);
      return true;
    }
    return moveAmongButtons(target, by, upDown);
  }

  private boolean moveAmongButtons(Object target, int by, boolean upDown) {
    List<Button> buttons = now.fatButtons();
    if (buttons.isEmpty()) {
      return false;
    }
    int at = target instanceof Button b ? buttons.indexOf(b) : -1;
    if (at < 0) {
      if (upDown && by > 0) {
        buttons.get(0).requestFocus();
        return true;
      }
      return false;
    }
    if (upDown && by < 0) {
      now.takeFocus();
      return true;
    }
    buttons.get(Math.floorMod(at + by, buttons.size())).requestFocus();
    return true;
  }

  private void pickBand(int i) {
    if (i >= 0 && i < model.bands().size()) {
      model.bands().get(i).band().ifPresent(model::pick);
    }
  }

  private void typed(KeyEvent e) {
    if (searching(e)
        || e.isAltDown()
        || e.isControlDown()
        || e.isMetaDown()
        || e.getCharacter().isEmpty()) {
      return;
    }
    char c = e.getCharacter().toLowerCase(Locale.ROOT).charAt(0);
    if (model.tree().open()) {
      if (c == 't') {
        model.toggleTree();
      } else if (c == 'h') {
        model.startWarn();
      }
      e.consume();
      return;
    }
    if (Character.isDigit(c) && pickByDigit(c - '0')) {
      e.consume();
    } else if (Character.isDigit(c) || c == '.' || c == ',' || c == '-' || c == '−') {
      digit(e, c);
    } else if (Character.isLetter(c)) {
      letter(c);
      e.consume();
    }
  }

  private boolean pickByDigit(int digit) {
    int i = digit - 1;
    switch (model.doing()) {
      case REFUSE -> {
        if (i >= 0 && i < CaseActions.REFUSALS.size()) {
          model.refuse(CaseActions.REFUSALS.get(i));
        }
        return true;
      }
      case WARN -> {
        if (i >= 0 && i < CaseActions.WARNINGS.size()) {
          model.warn(CaseActions.WARNINGS.get(i));
        }
        return true;
      }
      case COMPARE -> {
        if (i == 0 || i == 1) {
          model.settle(i == 0 ? Proposer.LEARNER : Proposer.PROGRAM);
        }
        return true;
      }
      case SWAP -> {
        if (i == 0 || i == 1) {
          model.swapped(i == 0 ? FindCase.Helped.YES : FindCase.Helped.NO);
        }
        return true;
      }
      default -> {
        List<Seen> choices = model.choices();
        if (choices.isEmpty()) {
          return false;
        }
        if (i >= 0 && i < choices.size()) {
          model.pick(choices.get(i));
        }
        return true;
      }
    }
  }

  private void digit(KeyEvent e, char c) {
    if (model.units().isEmpty()) {
      return;
    }
    boolean inField =
        e.getTarget() instanceof TextField field
            && (field.getSelection().getLength() > 0
                || field.getCaretPosition() < field.getLength());
    if (!inField) {
      model.entry().add(c);
      if (page != Page.NOW) {
        show(Page.NOW);
      } else {
        now.takeFocus();
      }
      e.consume();
    }
  }

  private void letter(char c) {
    if (c == 'h') {
      model.startWarn();
      return;
    }
    for (EntryUnit unit : model.units()) {
      if (unit.key() == c) {
        model.unit(unit);
        return;
      }
    }
    if (model.doing() == CaseViewModel.Doing.PUT_BACK) {
      if (c == 'p') {
        model.allPutBack();
      }
      return;
    }
    if (model.doing() != CaseViewModel.Doing.ANSWER) {
      return;
    }
    switch (c) {
      case 'z' -> model.meterReads();
      case 'g' -> model.gone();
      case 'y' -> model.otherFirst();
      case 'c' -> model.startRefuse();
      case 'a' -> model.startOwn();
      case 'w' -> {
        if (model.view().next().isPresent()) {
          model.toggleWhy();
        }
      }
      case 't' -> model.toggleTree();
      case 'i' -> model.toggleIfNot();
      case 's' -> model.startSwap();
      case 'e' -> model.startCorrect();
      case 'n' -> model.startAgain();
      case 'd' -> page(Page.DONE);
      default -> {}
    }
  }
}
