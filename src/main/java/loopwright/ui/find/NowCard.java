package loopwright.ui.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.Comparison;
import loopwright.casework.FindCase;
import loopwright.casework.LogWords;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.Proposer;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;
import loopwright.casework.RepairView;
import loopwright.casework.SettingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.widget.StepGrid;

/** What to do now, in the largest type and in the order in which hands work. */
final class NowCard extends VBox {
  private static final int ROOMIEST = -1;
  private static final int REASONLESS = 2;
  private static final int TIGHTEST = 5;

  /** Buttons that go first where room is shortest. */
  private static final Set<String> LEAST_NEEDED =
      Set.of(
          "action.own",
          "action.why",
          "action.tree",
          "action.end",
          "action.practice",
          "action.learnerFirst");

  private final CaseViewModel model;
  private final EntryRow entry;
  private final VBox steps = new VBox();
  private final ScrollPane stepsScroll = Parts.scrolling(steps);
  private final VBox answer = new VBox();
  private final FlowPane actions = new FlowPane();
  private final TextField search = new TextField();
  private final ListView<String> found = new ListView<>();
  private final List<Button> fatButtons = new ArrayList<>();
  private final Label more = Parts.line(Texts.of("now.more"), "more-below", "key-cap");
  private final StackPane upper = new StackPane();
  private boolean brief;
  private final Label because = Parts.text("", "because");
  private int tightness;
  private boolean refit = true;
  private double fittedWidth;
  private double fittedHeight;

  NowCard(CaseViewModel model) {
    this.model = model;
    this.entry = new EntryRow(model);
    setId("now");
    getStyleClass().addAll("card", "now-card");
    steps.getStyleClass().add("steps");
    answer.getStyleClass().add("answer");
    actions.getStyleClass().add("actions");
    stepsScroll.setMinHeight(0);
    answer.setMinHeight(Region.USE_PREF_SIZE);
    actions.setMinHeight(Region.USE_PREF_SIZE);
    more.setMouseTransparent(true);
    StackPane.setAlignment(more, Pos.BOTTOM_RIGHT);
    more.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    upper.getChildren().addAll(stepsScroll, more);
    upper.setMinHeight(0);
    VBox.setVgrow(upper, Priority.ALWAYS);
    stepsScroll.vvalueProperty().addListener(o -> showMore());
    getChildren().addAll(upper, answer, actions);
    search.getStyleClass().add("search-field");
    search.setId("own-search");
    search.textProperty().bindBidirectional(model.own().searchProperty());
    found.setItems(model.own().found());
    found.setId("own-found");
    found.setFocusTraversable(false);
    found.getStyleClass().add("found-list");
    found.setCellFactory(list -> FatCell.words(list, words -> words));
    found.setOnMouseClicked(e -> chooseFound());
    model
        .own()
        .found()
        .addListener(
            (javafx.collections.ListChangeListener<String>)
                c -> found.getSelectionModel().select(model.own().chosenIndex()));
    model.viewProperty().addListener(o -> rebuild());
    model.doingProperty().addListener(o -> rebuild());
    model.firstProperty().addListener(o -> rebuild());
    model.own().stepProperty().addListener(o -> ownChanged());
    model.own().kindProperty().addListener(o -> ownChanged());
    model.suspectProperty().addListener(o -> swapChanged());
    model.readingProperty().addListener(o -> readingChanged());
    rebuild();
  }

  private void ownChanged() {
    if (model.doing() == CaseViewModel.Doing.OWN) {
      rebuild();
    }
  }

  private void swapChanged() {
    if (model.doing() == CaseViewModel.Doing.SWAP) {
      rebuild();
    }
  }

  /**
   * Sets what is to be done as large as the room allows: first generously, then plainly, then
   * smaller, then without the reason (its key tells it), then smaller in two steps, then without
   * the buttons that are least needed (their keys go on). What still doesn't fit scrolls.
   */
  @Override
  protected void layoutChildren() {
    if (refit || getWidth() != fittedWidth || getHeight() != fittedHeight) {
      refit = false;
      fittedWidth = getWidth();
      fittedHeight = getHeight();
      for (int level = ROOMIEST; level <= TIGHTEST; level++) {
        set(level);
        applyCss();
        if (needed() <= fittedHeight) {
          break;
        }
      }
    }
    super.layoutChildren();
    showMore();
  }

  private double needed() {
    double inside = fittedWidth - snappedLeftInset() - snappedRightInset();
    return snappedTopInset()
        + steps.prefHeight(inside)
        + answer.prefHeight(inside)
        + actions.prefHeight(inside)
        + 2 * getSpacing()
        + snappedBottomInset();
  }

  private void set(int level) {
    tightness = level;
    getStyleClass().removeIf(c -> c.startsWith("tight-") || c.equals("roomy"));
    if (level == ROOMIEST) {
      getStyleClass().add("roomy");
    }
    for (int i = 1; i <= level; i++) {
      getStyleClass().add("tight-" + i);
    }
    Parts.shown(because, level < REASONLESS);
    for (Node button : actions.getChildren()) {
      boolean shown =
          level < TIGHTEST || !LEAST_NEEDED.contains(String.valueOf(button.getUserData()));
      Parts.shown(button, shown);
    }
    if (steps.lookup("#said") instanceof Label said) {
      fitSaid(said);
    }
  }

  private void refit() {
    refit = true;
    requestLayout();
  }

  /** Where room is short: the last result on one line, bands only until something is typed. */
  void setBrief(boolean isBrief) {
    if (brief != isBrief) {
      brief = isBrief;
      getStyleClass().remove("brief");
      if (brief) {
        getStyleClass().add("brief");
      }
      rebuild();
    }
  }

  /** Scrolls what doesn't fit by a share of what is seen. */
  void scrollSteps(int by) {
    double hidden = steps.getHeight() - stepsScroll.getHeight();
    if (hidden > 0) {
      double step = 0.6 * stepsScroll.getHeight() / hidden;
      stepsScroll.setVvalue(Math.max(0, Math.min(1, stepsScroll.getVvalue() + by * step)));
    }
  }

  private double hiddenSteps() {
    return steps.prefHeight(upper.getWidth()) - upper.getHeight();
  }

  private void showMore() {
    boolean picking = steps.lookup("#own-found") != null;
    more.setVisible(!picking && hiddenSteps() > 1 && stepsScroll.getVvalue() < 0.99);
  }

  private void readingChanged() {
    if (steps.lookup("#said") instanceof Label said
        && model.doing() == CaseViewModel.Doing.ANSWER) {
      said.setText(told());
      fitSaid(said);
    }
  }

  /** Puts the focus where hands go on. */
  void takeFocus() {
    if (model.doing() == CaseViewModel.Doing.OWN
        && model.own().stepProperty().get() != OwnCheckViewModel.Step.VALUE) {
      search.requestFocus();
    } else if (entryShown()) {
      entry.field().requestFocus();
      entry.field().end();
    } else if (!fatButtons.isEmpty()) {
      fatButtons.get(0).requestFocus();
    } else {
      requestFocus();
    }
  }

  /** The fat buttons, for the arrow keys. */
  List<Button> fatButtons() {
    return List.copyOf(fatButtons);
  }

  TextField searchField() {
    return search;
  }

  /** Moves in the list of what was found. */
  void moveFound(int by) {
    int size = found.getItems().size();
    if (size > 0) {
      int i = Math.max(0, Math.min(size - 1, found.getSelectionModel().getSelectedIndex() + by));
      found.getSelectionModel().select(i);
      found.scrollTo(Math.max(0, i - 2));
    }
  }

  /** Takes what is marked in the list. */
  void chooseFound() {
    model.own().choose(found.getSelectionModel().getSelectedIndex());
  }

  private boolean entryShown() {
    return entry.getParent() != null;
  }

  private void rebuild() {
    steps.getChildren().clear();
    answer.getChildren().clear();
    actions.getChildren().clear();
    fatButtons.clear();
    stepsScroll.setVvalue(0);
    refit();
    switch (model.doing()) {
      case OWN -> own();
      case CORRECT -> correct();
      // Without a reading left the answer is next.
      case AGAIN -> model.log().ifPresentOrElse(this::again, this::answer);
      case SWAP -> swap();
      case PUT_BACK -> putBack();
      case WARN -> warn();
      case COMPARE -> compare();
      case ANSWER, REFUSE -> answer();
    }
    if (getScene() != null) {
      takeFocus();
    }
  }

  // The proposed check and what the case came to.

  private void answer() {
    CaseView view = model.view();
    header(headline(view));
    if (!view.oddsWords().isEmpty()) {
      Label odds = Parts.text(view.oddsWords(), "odds");
      odds.setId("odds");
      steps.getChildren().add(odds);
    }
    if (view.move() == CaseView.Move.MAKE_SAFE) {
      makeSafe(view);
      endAction();
      return;
    }
    if (!view.warnings().isEmpty()) {
      steps.getChildren().add(Parts.caution(Texts.of("warn.stands", warnings(view))));
    }
    model.newCautions().stream()
        .filter(c -> !view.makeSafe().contains(c))
        .forEach(c -> steps.getChildren().add(Parts.caution(c)));
    switch (view.move()) {
      case MAKE_SAFE -> makeSafe(view);
      case CHECK, PROOF -> view.next().ifPresent(this::check);
      case PROPOSE -> propose();
      case REPAIR -> repair(view);
      case STUCK -> stuck();
      case END -> end(view);
    }
    if (!model.ended() && model.doing() == CaseViewModel.Doing.ANSWER) {
      if (!view.warnings().isEmpty()) {
        action("action.gone", CaseActions.GONE, model::gone);
      }
      if (view.move() != CaseView.Move.REPAIR) {
        actions.getChildren().add(warnButton());
      }
    }
    endAction();
  }

  private void endAction() {
    if (brief && !model.ended() && model.doing() == CaseViewModel.Doing.ANSWER) {
      action("action.end", CaseActions.END, model::end);
    }
  }

  // Smoke, heat, a smell.

  private KeyButton warnButton() {
    KeyButton warn =
        new KeyButton(words("action.warn"), CaseActions.WARN, model::startWarn)
            .styled("action", "warn-action");
    warn.setId("warn");
    return warn;
  }

  private void warn() {
    header(Texts.of("warn.head"));
    steps.getChildren().add(Parts.caution(Texts.of("warn.first")));
    FlowPane row = choiceRow();
    int i = 1;
    for (Warning warning : CaseActions.WARNINGS) {
      KeyButton button =
          new KeyButton(Texts.of(warning), Integer.toString(i), () -> model.warn(warning))
              .styled("choice-button");
      fatButtons.add(button);
      row.getChildren().add(button);
      i++;
    }
    answer.getChildren().add(row);
    problemLine();
    action("action.back", CaseActions.BACK, model::back);
  }

  private void makeSafe(CaseView view) {
    VBox what = Parts.column("make-safe");
    what.setId("make-safe");
    what.getChildren().add(Parts.text(warnings(view), "make-safe-head"));
    view.makeSafe().forEach(c -> what.getChildren().add(Parts.text(c, "make-safe-line")));
    steps.getChildren().add(what);
    FlowPane row = choiceRow();
    if (model.isolating()) {
      row.getChildren().add(primary("warn.isolated", CaseActions.COUNT, model::isolated));
    }
    KeyButton gone =
        new KeyButton(
                words(model.isolating() ? "warn.mistake" : "warn.aired"),
                CaseActions.GONE,
                model::gone)
            .styled("choice-button");
    fatButtons.add(gone);
    row.getChildren().add(gone);
    answer.getChildren().add(row);
    problemLine();
    actions.getChildren().add(warnButton());
  }

  private static String warnings(CaseView view) {
    return view.warnings().stream().map(w -> Texts.of(w)).collect(Collectors.joining(", "));
  }

  private String headline(CaseView view) {
    return switch (view.move()) {
      case CHECK ->
          Texts.of("now.check", view.next().map(c -> Integer.toString(c.number())).orElse(""));
      case PROOF -> Texts.of("now.proof");
      case PROPOSE -> Texts.of("now.propose");
      case REPAIR -> Texts.of("now.repair");
      case MAKE_SAFE -> Texts.of("now.makeSafe");
      case STUCK -> Texts.of(atOdds() ? "now.odds" : "now.stuck");
      case END -> Texts.of("now.end");
    };
  }

  private void header(String headline) {
    CaseView view = model.view();
    Label head = Parts.line(headline, "headline");
    head.setId("headline");
    head.setMinWidth(Region.USE_PREF_SIZE);
    Label said = Parts.text(told(), "said");
    said.setId("said");
    fitSaid(said);
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    said.setMaxWidth(Double.MAX_VALUE);
    Label minutes =
        Parts.line(
            Texts.of("now.minutes", String.format(Locale.ROOT, "%.0f", view.minutes())), "muted");
    minutes.setMinWidth(Region.USE_PREF_SIZE);
    HBox row = Parts.row("header", head);
    if (brief) {
      row.getChildren().add(said);
    } else {
      row.getChildren().addAll(Parts.spring(), minutes);
    }
    if (!brief && !model.ended() && model.doing() == CaseViewModel.Doing.ANSWER) {
      KeyButton end =
          new KeyButton(Texts.of("action.end"), CaseActions.END, model::end)
              .styled("action", "small-action");
      end.setMinWidth(Region.USE_PREF_SIZE);
      row.getChildren().add(end);
    }
    steps.getChildren().add(row);
    if (!brief && !said.getText().isEmpty()) {
      steps.getChildren().add(said);
    }
  }

  /** On one line where room is short; the whole stands among the readings. */
  private void fitSaid(Label said) {
    boolean oneLine = brief || tightness >= 3;
    said.setVisible(!said.getText().isEmpty() && (brief || tightness < TIGHTEST));
    said.setManaged(brief || tightness < TIGHTEST);
    said.setWrapText(!oneLine);
    said.setMinHeight(oneLine ? 0 : Region.USE_PREF_SIZE);
  }

  /** What the latest line did, or the chosen reading. */
  private String told() {
    return model
        .chosenReading()
        .filter(r -> model.doing() == CaseViewModel.Doing.ANSWER)
        .map(r -> Texts.of("now.reading", Integer.toString(r.id()), r.did()))
        .orElse(
            model.doing() == CaseViewModel.Doing.ANSWER
                    || model.doing() == CaseViewModel.Doing.REFUSE
                ? model.view().seq() == 0 ? story() : model.view().said()
                : "");
  }

  private String story() {
    return model.story().isEmpty() ? model.view().said() : Texts.of("now.story", model.story());
  }

  private void check(CheckView check) {
    check.cautions().forEach(c -> steps.getChildren().add(Parts.caution(c)));
    GridPane grid = stepGrid();
    boolean nothingChanges = check.set().change().isEmpty();
    // Where room is short, a set-up that stays as it is takes none.
    if (!brief || !nothingChanges) {
      step(
          grid,
          "check.set",
          Optional.empty(),
          nothingChanges ? Texts.of("check.setSame") : String.join(", ", check.set().change()),
          "",
          nothingChanges ? "step-quiet" : "step-value");
    }
    String healthy =
        check.healthyWords().isEmpty() ? "" : Texts.of("check.healthy", check.healthyWords());
    check.red().ifPresent(p -> point(grid, "check.red", Parts.redMark(), p));
    check.black().ifPresent(p -> point(grid, "check.black", Parts.blackMark(), p));
    if (check.kind().metered()) {
      step(grid, "check.meter", Optional.empty(), check.meter(), healthy, "step-value");
    } else {
      step(grid, "check.look", Optional.empty(), check.question(), healthy, "step-value");
    }
    steps.getChildren().add(grid);
    if (model.doing() == CaseViewModel.Doing.REFUSE) {
      refuse();
      return;
    }
    if (check.kind().metered()) {
      entry.refresh();
      answer.getChildren().add(entry);
      bands();
    } else {
      choices(check.choices(), seen -> named(check, seen));
      problemLine();
    }
    if (!check.because().isEmpty()) {
      because.setText(Texts.of("check.because", check.because()));
      answer.getChildren().add(because);
    }
    if (model.practising()) {
      action("action.practice", CaseActions.PRACTICE, model::meterReads);
    }
    action("action.refuse", CaseActions.REFUSE, model::startRefuse);
    action("action.own", CaseActions.OWN, model::startOwn);
    action("action.why", CaseActions.WHY, model::toggleWhy);
    if (!check.outcomes().isEmpty()) {
      action("action.tree", CaseActions.TREE, model::toggleTree);
    }
    firstAction();
  }

  // The learner first.

  private void firstAction() {
    if (!model.offersFirst()) {
      return;
    }
    boolean learner = model.firstProperty().get() == Proposer.LEARNER;
    String key = learner ? "action.programFirst" : "action.learnerFirst";
    action(key, CaseActions.FIRST, model::otherFirst);
  }

  private void propose() {
    steps.getChildren().add(Parts.text(Texts.of("propose.how"), "question"));
    HBox row =
        Parts.row("primary-row", primary("propose.begin", CaseActions.COUNT, model::startOwn));
    answer.getChildren().add(row);
    problemLine();
    firstAction();
  }

  private void compare() {
    header(Texts.of("compare.head"));
    Comparison compared = model.comparison().orElseThrow();
    side("compare.learners", compared.learners());
    side("compare.programs", compared.programs());
    Label verdict = Parts.text(compared.verdict(), "question");
    verdict.setId("verdict");
    steps.getChildren().add(verdict);
    FlowPane row = choiceRow();
    if (compared.blocked().isEmpty()) {
      row.getChildren()
          .add(primary("compare.takeLearners", "1", () -> model.settle(Proposer.LEARNER)));
    } else {
      steps.getChildren().add(Parts.caution(compared.blocked()));
    }
    row.getChildren()
        .add(primary("compare.takePrograms", "2", () -> model.settle(Proposer.PROGRAM)));
    answer.getChildren().add(row);
    problemLine();
    action("compare.again", CaseActions.BACK, model::back);
  }

  private void side(String key, Comparison.Side side) {
    VBox box =
        Parts.column(
            "step-box",
            Parts.line(Texts.of(key), "side-title"),
            Parts.text(side.what(), "step-value"),
            Parts.text(side.tells()));
    side.risks().forEach(r -> box.getChildren().add(Parts.caution(r)));
    steps.getChildren().add(box);
  }

  private void bands() {
    FlowPane row = new FlowPane();
    row.getStyleClass().add("bands");
    int i = 1;
    for (CheckView.OutcomeView outcome : model.bands()) {
      KeyButton button =
          new KeyButton(
                  outcome.words(),
                  Texts.of("key.alt", Integer.toString(i)),
                  () -> outcome.band().ifPresent(model::pick))
              .styled("band-button");
      fatButtons.add(button);
      row.getChildren().add(button);
      i++;
    }
    if (row.getChildren().isEmpty()) {
      return;
    }
    // One place for both: the bands, or how what is typed is understood.
    entry.shareStatusWith(row);
  }

  /** What is seen: in our short words for a look, else as the check words it. */
  private static String named(CheckView check, Seen seen) {
    return check.kind() == CheckKind.LOOK
        ? Texts.of(seen)
        : check.choiceWords().get(check.choices().indexOf(seen));
  }

  private void choices(List<Seen> choices, Function<Seen, String> named) {
    FlowPane row = choiceRow();
    int i = 1;
    for (Seen seen : choices) {
      KeyButton button =
          new KeyButton(named.apply(seen), Integer.toString(i), () -> model.pick(seen))
              .styled("choice-button");
      fatButtons.add(button);
      row.getChildren().add(button);
      i++;
    }
    answer.getChildren().add(row);
  }

  private void problemLine() {
    Label problem = Parts.text("", "entry-status", "status-problem");
    problem.textProperty().bind(model.problemProperty());
    problem.managedProperty().bind(model.problemProperty().isNotEmpty());
    answer.getChildren().add(problem);
  }

  private void refuse() {
    answer.getChildren().add(Parts.text(Texts.of("refuse.question"), "question"));
    FlowPane row = choiceRow();
    int i = 1;
    for (FindCase.Refusal refusal : CaseActions.REFUSALS) {
      KeyButton button =
          new KeyButton(Texts.of(refusal), Integer.toString(i), () -> model.refuse(refusal))
              .styled("choice-button");
      fatButtons.add(button);
      row.getChildren().add(button);
      i++;
    }
    answer.getChildren().add(row);
    action("action.back", CaseActions.BACK, model::back);
  }

  private GridPane stepGrid() {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("step-grid");
    ColumnConstraints word = new ColumnConstraints();
    word.setMinWidth(Region.USE_PREF_SIZE);
    ColumnConstraints mark = new ColumnConstraints();
    mark.setMinWidth(Region.USE_PREF_SIZE);
    mark.setHalignment(HPos.CENTER);
    ColumnConstraints value = new ColumnConstraints();
    value.setHgrow(Priority.ALWAYS);
    grid.getColumnConstraints().addAll(word, mark, value);
    return grid;
  }

  private static void point(GridPane grid, String key, Node mark, PointView point) {
    step(grid, key, Optional.of(mark), point.title(), StepGrid.where(point), "step-value");
  }

  private static void step(
      GridPane grid,
      String key,
      Optional<Node> mark,
      String value,
      String where,
      String valueClass) {
    int row = grid.getRowCount();
    // A word stands on the height of its value, and there are two heights.
    grid.add(Parts.line(Texts.of(key), "step-word", "beside-" + valueClass), 0, row);
    mark.ifPresent(m -> grid.add(m, 1, row));
    Text big = new Text(value);
    big.getStyleClass().addAll("ink-text", valueClass);
    TextFlow flow = new TextFlow(big);
    flow.getStyleClass().add("step-box");
    flow.setAccessibleText(value + " " + where);
    if (!where.isEmpty()) {
      Text small = new Text("   " + where);
      boolean healthy = key.equals("check.meter") || key.equals("check.look");
      small.getStyleClass().addAll("ink-text", healthy ? "step-healthy" : "step-where");
      flow.getChildren().add(small);
    }
    grid.add(flow, mark.isPresent() ? 2 : 1, row, mark.isPresent() ? 1 : 2, 1);
    RowConstraints constraints = new RowConstraints();
    constraints.setValignment(VPos.TOP);
    grid.getRowConstraints().add(constraints);
  }

  private void repair(CaseView view) {
    view.repair().ifPresent(this::repairText);
    KeyButton mended = primary("repair.done", CaseActions.COUNT, model::repaired);
    mended.setId("mended");
    KeyButton own =
        new KeyButton(words("action.own"), CaseActions.OWN, model::startOwn).styled("action");
    answer.getChildren().add(choiceRow(mended, own, warnButton()));
    problemLine();
  }

  private void repairText(RepairView repair) {
    SuspectView s = repair.suspect();
    Label piece = Parts.text(s.title(), "verdict");
    piece.setId("verdict");
    Label sure = Parts.text(Texts.of("repair.sure", percent(s.belief())), "verdict-sure");
    sure.setMinWidth(Region.USE_PREF_SIZE);
    HBox.setHgrow(piece, Priority.ALWAYS);
    piece.setMaxWidth(Double.MAX_VALUE);
    steps
        .getChildren()
        .addAll(
            Parts.row("verdict-line", piece, sure),
            Parts.text(String.join(" · ", s.modes()), "verdict-mode"));
    model.repairCautions().forEach(c -> steps.getChildren().add(Parts.caution(c)));
    VBox hands = Parts.column("sections");
    section(hands, "repair.inspect", repair.inspect());
    section(hands, "repair.repair", repair.repair());
    section(hands, "repair.prove", repair.prove());
    VBox reasons = Parts.column("sections");
    section(reasons, "repair.proof", repair.proof());
    section(reasons, "repair.why", repair.why());
    if (brief) {
      steps.getChildren().addAll(hands, reasons);
      return;
    }
    HBox both = new HBox(hands, reasons);
    both.getStyleClass().add("own-sides");
    HBox.setHgrow(hands, Priority.ALWAYS);
    hands.prefWidthProperty().bind(both.widthProperty().multiply(0.55));
    reasons.prefWidthProperty().bind(both.widthProperty().multiply(0.45));
    steps.getChildren().add(both);
  }

  private static void section(VBox into, String key, List<String> lines) {
    if (lines.isEmpty()) {
      return;
    }
    VBox box = Parts.column("section", Parts.text(Texts.of(key), "section-title"));
    lines.forEach(l -> box.getChildren().add(Parts.text(l, "section-line")));
    into.getChildren().add(box);
  }

  private boolean atOdds() {
    return model.view().status() == CaseView.Status.CONTRADICTION;
  }

  private void stuck() {
    if (!model.view().warnings().isEmpty()) {
      steps.getChildren().add(Parts.text(Texts.of("warn.stuck"), "question"));
      problemLine();
      action("action.own", CaseActions.OWN, model::startOwn);
      return;
    }
    if (atOdds()) {
      steps.getChildren().add(Parts.text(Texts.of("odds.words"), "question"));
      problemLine();
      action("action.correct", CaseActions.CORRECT, model::startCorrect);
      action("action.takeBack", CaseActions.TAKE_BACK, model::takeBack);
      action("action.own", CaseActions.OWN, model::startOwn);
      return;
    }
    steps.getChildren().add(Parts.text(Texts.of("stuck.words"), "question"));
    for (SuspectView s : model.view().suspects()) {
      String words =
          s.splitBy().isEmpty() ? s.title() : Texts.of("stuck.split", s.title(), s.splitBy());
      steps.getChildren().add(Parts.text(words, "section-line"));
    }
    problemLine();
    action("action.own", CaseActions.OWN, model::startOwn);
  }

  private void end(CaseView view) {
    steps.getChildren().add(Parts.text(Texts.of(view.status()) + Texts.of("end.kept"), "question"));
    view.repair().ifPresent(this::repairText);
    problemLine();
    if (model.endedByItself() && !view.readings().isEmpty()) {
      action("end.takeBack", CaseActions.TAKE_BACK, model::takeBack);
    }
    action("action.newCase", "F3", () -> fireEvent(new CaseLeft()));
  }

  static String percent(double belief) {
    double p = belief * 100;
    if (p > 99 && p < 100) {
      return "99";
    }
    return p < 1 ? Texts.of("percent.less") : String.format(Locale.ROOT, "%.0f", p);
  }

  // Correcting, swapping, putting back.

  private void correct() {
    Optional<ReadingView> reading = model.chosenReading();
    header(Texts.of("correct.head", reading.map(r -> Integer.toString(r.id())).orElse("")));
    reading.ifPresent(
        r -> {
          GridPane grid = taken(r, "");
          step(grid, "correct.was", Optional.empty(), r.value(), "", "step-value");
          steps.getChildren().add(grid);
        });
    if (model.choices().isEmpty()) {
      entry.refresh();
      answer.getChildren().add(entry);
    } else {
      choices(model.choices(), Texts::of);
      problemLine();
    }
    action("action.count", CaseActions.COUNT, model::count);
    action("action.back", CaseActions.BACK, model::back);
  }

  /** Where a reading was taken, and how the vehicle stood. */
  private GridPane taken(ReadingView reading, String beside) {
    GridPane grid = stepGrid();
    step(grid, "correct.where", Optional.empty(), reading.where(), beside, "step-value");
    String stood = String.join(", ", reading.setting());
    step(grid, "check.set", Optional.empty(), stood, "", "step-quiet");
    return grid;
  }

  /** One check again and again, with what it showed so far over time. */
  private void again(ReadingLog log) {
    header(Texts.of("again.head"));
    ReadingView reading = log.first();
    steps.getChildren().add(taken(reading, Texts.of("check.healthy", reading.healthyWords())));
    if (log.readings().size() == 1) {
      steps.getChildren().add(Parts.text(Texts.of("again.how"), "muted"));
    }
    LogWords words = LogWords.inUse();
    log.scale().ifPresent(s -> steps.getChildren().add(new LogChart(log, s, words)));
    if (log.readings().size() > 1) {
      words.of(log).forEach(l -> steps.getChildren().add(Parts.text(l, "section-line")));
    }
    if (model.choices().isEmpty()) {
      entry.refresh();
      answer.getChildren().add(entry);
      action("action.count", CaseActions.COUNT, model::count);
    } else {
      choices(model.choices(), seen -> Texts.of(reading.kind(), seen));
      problemLine();
    }
    action("again.end", CaseActions.BACK, model::back);
  }

  private void swap() {
    header(Texts.of("swap.head"));
    steps.getChildren().add(Parts.text(Texts.of("swap.which"), "muted"));
    List<SuspectView> suspects = model.view().suspects();
    for (int i = 0; i < suspects.size(); i++) {
      int index = i;
      Label row = Parts.text(suspects.get(i).title(), "pick-row");
      boolean chosen = model.suspectProperty().get() == i;
      if (chosen) {
        row.getStyleClass().add("picked");
      }
      row.setMaxWidth(Double.MAX_VALUE);
      row.setOnMouseClicked(e -> model.suspectProperty().set(index));
      steps.getChildren().add(row);
    }
    answer.getChildren().add(Parts.text(Texts.of("swap.question"), "question"));
    KeyButton yes =
        new KeyButton(Texts.of("swap.yes"), "1", () -> model.swapped(FindCase.Helped.YES))
            .styled("choice-button");
    KeyButton no =
        new KeyButton(Texts.of("swap.no"), "2", () -> model.swapped(FindCase.Helped.NO))
            .styled("choice-button");
    FlowPane row = choiceRow(yes, no);
    answer.getChildren().add(row);
    problemLine();
    action("action.back", CaseActions.BACK, model::back);
  }

  private void putBack() {
    header(Texts.of("putBack.head"));
    model.view().putBack().forEach(p -> steps.getChildren().add(Parts.text(p, "put-back-big")));
    KeyButton done = primary("putBack.done", CaseActions.PUT_BACK, model::allPutBack);
    answer.getChildren().add(Parts.row("primary-row", done));
    problemLine();
    action("action.back", CaseActions.BACK, model::back);
  }

  // A measurement of one's own choice.

  private void own() {
    OwnCheckViewModel own = model.own();
    header(Texts.of(model.proposing() ? "propose.head" : "own.head"));
    GridPane grid = stepGrid();
    ownStep(
        grid, OwnCheckViewModel.Step.KIND, Optional.empty(), Texts.of(own.kindProperty().get()));
    ownStep(
        grid,
        OwnCheckViewModel.Step.SET,
        Optional.empty(),
        own.settingProperty().get().map(NowCard::whole).orElse(""));
    if (own.metered()) {
      ownStep(
          grid,
          OwnCheckViewModel.Step.RED,
          Optional.of(Parts.redMark()),
          own.redProperty().get().map(PointView::title).orElse(""));
      ownStep(
          grid,
          OwnCheckViewModel.Step.BLACK,
          Optional.of(Parts.blackMark()),
          own.blackProperty().get().map(PointView::title).orElse(""));
    } else {
      if (own.unplugs()) {
        ownStep(
            grid,
            OwnCheckViewModel.Step.OUT,
            Optional.empty(),
            own.outProperty().get().map(PartView::title).orElse(""));
      }
      ownStep(
          grid,
          OwnCheckViewModel.Step.PART,
          Optional.empty(),
          own.partProperty().get().map(PartView::title).orElse(""));
    }
    if (own.stepProperty().get() == OwnCheckViewModel.Step.VALUE) {
      steps.getChildren().add(grid);
      if (model.proposing()) {
        answer
            .getChildren()
            .add(Parts.row("primary-row", primary("propose.compare", "Enter", model::count)));
        problemLine();
      } else if (own.metered()) {
        entry.refresh();
        answer.getChildren().add(entry);
      } else {
        choices(model.choices(), seen -> Texts.of(own.kindProperty().get(), seen));
        problemLine();
      }
    } else {
      search.setPromptText(Texts.of("own.search"));
      search.setAccessibleText(Texts.of("own.search"));
      found.getSelectionModel().select(own.chosenIndex());
      VBox picker = new VBox(search, found, Parts.text(Texts.of("own.click"), "muted"));
      picker.getStyleClass().add("picker");
      VBox.setVgrow(found, Priority.ALWAYS);
      if (brief) {
        Label step =
            Parts.line(Texts.of("own.step." + own.stepProperty().get().name()), "step-word");
        HBox asked = Parts.row("entry-line", step);
        switch (own.stepProperty().get()) {
          case RED -> asked.getChildren().add(Parts.redMark());
          case BLACK -> asked.getChildren().add(Parts.blackMark());
          default -> {}
        }
        asked.getChildren().add(search);
        HBox.setHgrow(search, Priority.ALWAYS);
        picker.getChildren().add(0, asked);
        steps.getChildren().add(picker);
        ownActions(own);
        return;
      }
      HBox sides = new HBox(grid, picker);
      sides.getStyleClass().add("own-sides");
      HBox.setHgrow(picker, Priority.ALWAYS);
      grid.setMinWidth(0);
      steps.getChildren().add(sides);
    }
    ownActions(own);
  }

  private void ownActions(OwnCheckViewModel own) {
    if (!model.proposing() || own.stepProperty().get() != OwnCheckViewModel.Step.VALUE) {
      action("own.next", CaseActions.COUNT, this::ownForward);
    }
    action("own.previous", "Shift+Tab", own::backward);
    action("action.back", CaseActions.BACK, model::back);
  }

  private void ownForward() {
    if (model.own().stepProperty().get() == OwnCheckViewModel.Step.VALUE) {
      model.count();
    } else {
      chooseFound();
    }
  }

  private static String whole(SettingView setting) {
    return setting.whole().isEmpty() ? Texts.of("own.atRest") : String.join(", ", setting.whole());
  }

  private void ownStep(
      GridPane grid, OwnCheckViewModel.Step step, Optional<Node> mark, String value) {
    boolean active = model.own().stepProperty().get() == step;
    step(
        grid,
        "own.step." + step.name(),
        mark,
        active ? Texts.of("own.active", value) : value,
        "",
        active ? "own-active" : "step-quiet");
  }

  /** What there is to choose from, side by side as far as there is room. */
  private static FlowPane choiceRow(Node... buttons) {
    FlowPane row = new FlowPane(buttons);
    row.getStyleClass().add("choices");
    return row;
  }

  /** The words of a button; shorter ones where room is short. */
  private String words(String key) {
    return Texts.of(brief && Texts.has(key + ".brief") ? key + ".brief" : key);
  }

  private KeyButton primary(String key, String cap, Runnable action) {
    KeyButton button = new KeyButton(words(key), cap, action).styled("primary");
    fatButtons.add(button);
    return button;
  }

  private void action(String key, String cap, Runnable action) {
    KeyButton button = new KeyButton(words(key), cap, action).styled("action");
    button.setUserData(key);
    actions.getChildren().add(button);
  }
}
