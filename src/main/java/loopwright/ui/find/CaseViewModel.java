package loopwright.ui.find;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.Comparison;
import loopwright.casework.DeedView;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Proposer;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;
import loopwright.casework.SettingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.model.TerminalRef;
import loopwright.ui.Preferences;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/**
 * An open case: what is shown of it and what the person is doing. Every call to the {@link
 * FindCase} goes through one queue off the window's thread.
 */
public final class CaseViewModel {

  /** What the hands are busy with in the first place of the screen. */
  public enum Doing {
    /** Answering the proposed check, or reading what the case came to. */
    ANSWER,
    /** Saying why the check can't be done. */
    REFUSE,
    /** Taking a measurement of one's own choice. */
    OWN,
    /** Correcting a reading. */
    CORRECT,
    /** Reading one check again and again, to see when it changes. */
    AGAIN,
    /** Telling that a part was replaced. */
    SWAP,
    /** Saying that there is smoke, heat or a smell. */
    WARN,
    /** Putting back before the end. */
    PUT_BACK,
    /** Choosing between one's own proposal and the program's. */
    COMPARE
  }

  /** What the side of the screen tells. */
  public enum Side {
    /** What is suspected and what is cleared. */
    KNOWN,
    /** Why the check is next. */
    WHY,
    /** What if it isn't this piece. */
    IF_NOT
  }

  /**
   * What a ready-made case has besides.
   *
   * @param meter reads its checks
   * @param story what the owner tells; may be empty
   */
  public record Practice(ReadyCases.PracticeMeter meter, String story) {}

  private final FindCase findCase;
  private final Optional<Practice> practice;
  private final MeterViewModel meter;
  private final Worker worker;
  private final ReadOnlyObjectWrapper<CaseView> view = new ReadOnlyObjectWrapper<>();
  private final EntryViewModel entry = new EntryViewModel();
  private final ReadOnlyStringWrapper echo = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper second = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Doing> doing = new ReadOnlyObjectWrapper<>(Doing.ANSWER);
  private final ObjectProperty<Side> side = new SimpleObjectProperty<>(Side.KNOWN);
  private final ObservableList<String> whyLines = FXCollections.observableArrayList();
  private final ObservableList<String> ifNotLines = FXCollections.observableArrayList();
  private final IntegerProperty suspect = new SimpleIntegerProperty(-1);
  private final IntegerProperty reading = new SimpleIntegerProperty(-1);
  private final BooleanProperty wholeLoop = new SimpleBooleanProperty();
  private final OwnCheckViewModel own;
  private Optional<ReadingView> again = Optional.empty();
  private List<Seen> againChoices = List.of();
  private final TreeViewModel tree;
  private final Set<String> toldCautions = new HashSet<>();
  private Optional<Answer> secondFor = Optional.empty();
  private final ReadOnlyObjectWrapper<Proposer> first =
      new ReadOnlyObjectWrapper<>(Proposer.PROGRAM);
  private Optional<Comparison> comparison = Optional.empty();
  private int asked;
  private final ReadOnlyBooleanWrapper counting = new ReadOnlyBooleanWrapper();

  /**
   * Takes a case over.
   *
   * @param findCase an open case; closed by {@link #close}
   * @param first its state now
   * @param points its probe points
   * @param settings its set-ups
   * @param worker where its calls run; no other may use this case
   */
  public CaseViewModel(
      FindCase findCase,
      CaseView first,
      List<PointView> points,
      List<SettingView> settings,
      Worker worker) {
    this(
        findCase,
        first,
        points,
        settings,
        Optional.empty(),
        new MeterViewModel(Preferences.NONE),
        worker);
  }

  /**
   * Takes over a case that may be a ready-made one.
   *
   * @param practice what a ready-made case has besides
   * @param meter the person's own meter
   */
  public CaseViewModel(
      FindCase findCase,
      CaseView first,
      List<PointView> points,
      List<SettingView> settings,
      Optional<Practice> practice,
      MeterViewModel meter,
      Worker worker) {
    this.meter = Objects.requireNonNull(meter, "meter");
    this.practice = Objects.requireNonNull(practice, "practice");
    this.findCase = Objects.requireNonNull(findCase, "findCase");
    this.worker = Objects.requireNonNull(worker, "worker");
    this.own = new OwnCheckViewModel(points, settings);
    this.tree = new TreeViewModel(findCase, worker, this::prepare, this::failed);
    view.set(first);
    busy.bind(worker.pendingProperty().greaterThan(0));
    entry.textProperty().addListener((o, was, is) -> entryChanged());
    suspect.addListener((o, was, is) -> askIfNot());
    call(findCase::first, this.first::set);
    prepare();
  }

  /** While nothing else is to be done, what the next answer needs is worked out. */
  private void prepare() {
    worker.whenIdle(findCase::prepare);
  }

  /** What is shown of the case. */
  public ReadOnlyObjectProperty<CaseView> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What is shown of the case. */
  public CaseView view() {
    return view.get();
  }

  /** The value field. */
  public EntryViewModel entry() {
    return entry;
  }

  /** How the entry would be understood; empty until it is complete. */
  public ReadOnlyStringProperty echoProperty() {
    return echo.getReadOnlyProperty();
  }

  /** Why the entry deserves a second look; empty unless it was to be counted and does. */
  public ReadOnlyStringProperty secondProperty() {
    return second.getReadOnlyProperty();
  }

  /** What couldn't be accepted; empty if all was. */
  public ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** Whether a call is under way. */
  public ReadOnlyBooleanProperty busyProperty() {
    return busy.getReadOnlyProperty();
  }

  /** Whether something was told that isn't worked out yet. */
  public ReadOnlyBooleanProperty countingProperty() {
    return counting.getReadOnlyProperty();
  }

  /** What the hands are busy with. */
  public ReadOnlyObjectProperty<Doing> doingProperty() {
    return doing.getReadOnlyProperty();
  }

  /** What the hands are busy with. */
  public Doing doing() {
    return doing.get();
  }

  /** What the side tells. */
  public ObjectProperty<Side> sideProperty() {
    return side;
  }

  /** Why the check is next. */
  public ObservableList<String> whyLines() {
    return whyLines;
  }

  /** Why the chosen suspect is still held, or what cleared the chosen piece. */
  public ObservableList<String> ifNotLines() {
    return ifNotLines;
  }

  /** Index of the chosen piece: suspected, cleared, hardly suspected; -1 for none. */
  public IntegerProperty suspectProperty() {
    return suspect;
  }

  /** Index of what is chosen of what was done, -1 for none. */
  public IntegerProperty readingProperty() {
    return reading;
  }

  /** Whether the whole loop is drawn, or only the part in question. */
  public BooleanProperty wholeLoopProperty() {
    return wholeLoop;
  }

  /** The measurement of one's own choice. */
  public OwnCheckViewModel own() {
    return own;
  }

  /** The decision tree of the check. */
  public TreeViewModel tree() {
    return tree;
  }

  /** Opens the decision tree of the check asked now, or closes it. */
  public void toggleTree() {
    if (tree.open()) {
      tree.close();
    } else if (doing.get() == Doing.ANSWER && view.get().next().isPresent()) {
      tree.start();
    }
  }

  /** Cautions for the whole case that were not yet told at an earlier step. */
  public List<String> newCautions() {
    return view.get().cautions().stream().filter(c -> !toldCautions.contains(c)).toList();
  }

  /** Cautions of the repair that are not already among those for the whole case. */
  public List<String> repairCautions() {
    List<String> whole = view.get().cautions();
    return view.get().repair().stream()
        .flatMap(r -> r.cautions().stream())
        .filter(c -> !whole.contains(c))
        .toList();
  }

  /** The units to offer now. */
  public List<EntryUnit> units() {
    return doing.get() == Doing.WARN || proposing()
        ? List.of()
        : kind().map(EntryUnit::of).orElse(List.of());
  }

  /** What kind of check is at hand. */
  private Optional<CheckKind> kind() {
    return switch (doing.get()) {
      case OWN -> Optional.of(own.kindProperty().get());
      case CORRECT -> chosenReading().map(ReadingView::kind);
      case AGAIN -> again.map(ReadingView::kind);
      default -> view.get().next().map(CheckView::kind);
    };
  }

  /** What can be answered by looking now, in the order of its keys 1, 2, 3... */
  public List<Seen> choices() {
    return switch (doing.get()) {
      case OWN -> proposing() ? List.of() : own.answers();
      case CORRECT -> chosenReading().map(r -> r.kind().answers()).orElse(List.of());
      case AGAIN -> againChoices;
      case ANSWER -> view.get().next().map(CheckView::choices).orElse(List.of());
      default -> List.of();
    };
  }

  /** The bands that can be answered by a button now. */
  public List<CheckView.OutcomeView> bands() {
    return doing.get() == Doing.ANSWER
        ? view.get().next().stream()
            .flatMap(c -> c.outcomes().stream())
            .filter(o -> o.band().isPresent())
            .toList()
        : List.of();
  }

  /** Where the red lead belongs now. */
  public Optional<TerminalRef> red() {
    return switch (doing.get()) {
      case OWN -> own.red().map(PointView::ref);
      case AGAIN -> again.flatMap(ReadingView::red);
      default -> view.get().next().flatMap(CheckView::red).map(PointView::ref);
    };
  }

  /** Where the black lead belongs now. */
  public Optional<TerminalRef> black() {
    return switch (doing.get()) {
      case OWN -> own.black().map(PointView::ref);
      case AGAIN -> again.flatMap(ReadingView::black);
      default -> view.get().next().flatMap(CheckView::black).map(PointView::ref);
    };
  }

  /** Puts a unit behind the digits. */
  public void unit(EntryUnit unit) {
    if (!units().contains(unit)) {
      return;
    }
    if (!entry.unit(unit)) {
      problem.set(Texts.of("entry.digitsFirst"));
    }
  }

  /** The person's own meter, if it sends its readings. */
  public MeterViewModel meter() {
    return meter;
  }

  /** The meter is to measure what is asked now; what it says is shown. */
  public void lookAtMeter() {
    kind().ifPresent(meter::follow);
    // Read again and again, each change is taken by itself, and nothing typed by then is lost.
    if (doing.get() == Doing.AGAIN && !counting.get() && entry.text().isEmpty()) {
      meter.changed().ifPresent(read -> submit(new Answer.Text(read)));
    }
  }

  /** What was read again and again so far; empty if all of it was taken back. */
  public Optional<ReadingLog> log() {
    return again.flatMap(r -> ReadingLog.of(view.get().readings(), r.check()));
  }

  /**
   * Counts what stands in the field, or else what the person's own meter steadily reads; asks once
   * for a second look where it deserves one.
   */
  public void count() {
    if (proposing()) {
      compare();
      return;
    }
    if (entry.text().isEmpty() && !units().isEmpty() && meter.present()) {
      lookAtMeter();
      Optional<String> read = meter.take();
      if (read.isEmpty()) {
        problem.set(Texts.of("entry.meterNot"));
        return;
      }
      entry.type(read.get());
    }
    if (entry.text().isEmpty() && choices().isEmpty()) {
      problem.set(Texts.of("entry.empty"));
      return;
    }
    if (!entry.complete()) {
      problem.set(Texts.of(entry.hasNumber() ? "entry.unitMissing" : "entry.digitsFirst"));
      return;
    }
    submit(new Answer.Text(entry.plain()));
  }

  /** What the owner of a ready-made case tells; empty in any other. */
  public String story() {
    return practice.map(Practice::story).orElse("");
  }

  /** Whether a practice meter can answer the check that is asked now. */
  public boolean practising() {
    return practice.isPresent() && view().next().isPresent();
  }

  /** Lets the practice meter answer the check that is asked now. */
  public void meterReads() {
    if (!practising() || doing() != Doing.ANSWER) {
      return;
    }
    CheckView check = view().next().orElseThrow();
    change(
        () -> findCase.answer(check.id(), practice.orElseThrow().meter().read(check)),
        this::accept);
  }

  /** Answers with a band of values. */
  public void pick(Band band) {
    submit(new Answer.Within(band));
  }

  /** Answers with what was seen. */
  public void pick(Seen seen) {
    submit(new Answer.Saw(seen));
  }

  private void submit(Answer answer) {
    switch (doing.get()) {
      case OWN -> {
        Optional<String> missing = own.missing();
        if (missing.isPresent()) {
          problem.set(missing.orElseThrow());
          return;
        }
        OwnCheck check = own.check();
        change(() -> findCase.take(check, answer), this::accept);
      }
      case CORRECT ->
          chosenReading()
              .ifPresent(r -> change(() -> findCase.correct(r.id(), answer), this::accept));
      case AGAIN ->
          again.ifPresent(r -> change(() -> findCase.take(r.check(), answer), this::accept));
      default -> view.get().next().ifPresent(check -> answer(check.id(), answer));
    }
  }

  private void answer(String checkId, Answer answer) {
    if (secondFor.equals(Optional.of(answer))) {
      change(() -> findCase.answer(checkId, answer), this::accept);
      return;
    }
    this.<Optional<CaseView>>change(
        () -> {
          FindCase.Understood understood = findCase.understand(checkId, answer);
          if (understood.second().isPresent()) {
            worker.onWindow(
                () -> {
                  echo.set(understood.words());
                  second.set(understood.second().orElseThrow());
                  secondFor = Optional.of(answer);
                });
            return Optional.empty();
          }
          return Optional.of(findCase.answer(checkId, answer));
        },
        counted -> counted.ifPresent(this::accept));
  }

  /** Begins to say why the check can't be done. */
  public void startRefuse() {
    if (doing.get() == Doing.ANSWER && view.get().next().isPresent()) {
      begin(Doing.REFUSE);
    }
  }

  /** Says why the check can't be done. */
  public void refuse(FindCase.Refusal refusal) {
    view.get()
        .next()
        .ifPresent(check -> change(() -> findCase.refuse(check.id(), refusal), this::accept));
  }

  /** Begins a measurement of one's own choice. */
  public void startOwn() {
    if (!ended()) {
      own.begin(view.get().next());
      begin(Doing.OWN);
      call(findCase::parts, own::offer);
    }
  }

  /** Whether a click on the drawing puts a check together. */
  public boolean picks() {
    return doing.get() == Doing.OWN
        || doing.get() == Doing.ANSWER && view.get().move() == CaseView.Move.PROPOSE;
  }

  /**
   * A piece of the drawing was chosen for the check that is put together, or to be proposed.
   *
   * @param id id of the part
   * @param at points where the lead is meant to go, the first that can be reached
   */
  public void pick(String id, List<TerminalRef> at) {
    if (!picks()) {
      return;
    }
    if (doing.get() != Doing.OWN) {
      startOwn();
    }
    own.pick(id, at);
  }

  /** Whether the check put together is the learner's proposal, not to be taken at once. */
  public boolean proposing() {
    return doing.get() == Doing.OWN && view.get().move() == CaseView.Move.PROPOSE;
  }

  /** Who proposes each check first. */
  public ReadOnlyObjectProperty<Proposer> firstProperty() {
    return first.getReadOnlyProperty();
  }

  /** Whether it can be said now who proposes first: what proves a repair is nobody's choice. */
  public boolean offersFirst() {
    CaseView.Move move = view.get().move();
    return move == CaseView.Move.CHECK || move == CaseView.Move.PROPOSE;
  }

  /** Lets the other one propose each check first from now on. */
  public void otherFirst() {
    if (!offersFirst()) {
      return;
    }
    Proposer other = first.get() == Proposer.LEARNER ? Proposer.PROGRAM : Proposer.LEARNER;
    change(
        () -> findCase.propose(other),
        next -> {
          first.set(other);
          accept(next);
        });
  }

  private void compare() {
    Optional<String> missing = own.missing();
    if (missing.isPresent()) {
      problem.set(missing.get());
      return;
    }
    OwnCheck check = own.check();
    change(
        () -> findCase.compare(check),
        compared -> {
          comparison = Optional.of(compared);
          begin(Doing.COMPARE);
        });
  }

  /** The learner's proposal beside the program's; empty before the first was made. */
  public Optional<Comparison> comparison() {
    return comparison;
  }

  /** Takes one of the two. */
  public void settle(Proposer taken) {
    if (doing.get() == Doing.COMPARE) {
      OwnCheck check = own.check();
      change(() -> findCase.settle(check, taken), this::accept);
    }
  }

  /** Begins to correct the chosen reading, or the latest. */
  public void startCorrect() {
    if (chooseReadingIfNone()) {
      begin(Doing.CORRECT);
      chosenReading().map(ReadingView::value).ifPresent(entry::type);
    }
  }

  /** Begins to read the check of the chosen reading, or of the latest, again and again. */
  public void startAgain() {
    if (!ended() && chooseReadingIfNone()) {
      ReadingView chosen = chosenReading().orElseThrow();
      call(
          () -> chosen.kind().metered() ? List.<Seen>of() : seen(chosen.check()),
          choices -> {
            again = Optional.of(chosen);
            againChoices = choices;
            begin(Doing.AGAIN);
          });
    }
  }

  /** What can be seen in a check that was made before. */
  private List<Seen> seen(OwnCheck check) {
    return findCase.parts().stream()
        .filter(p -> check.lookAt().filter(p.subject()::equals).isPresent())
        .findFirst()
        .map(p -> p.checks().getOrDefault(check.kind(), List.of()))
        .orElse(check.kind().answers());
  }

  /** Takes back what is chosen of what was done, or came last; at the end the last answer. */
  public void takeBack() {
    List<Done> all = done();
    if (all.isEmpty()) {
      return;
    }
    if (chosen().isEmpty() && !(ended() && chooseReadingIfNone())) {
      reading.set(all.size() - 1);
    }
    Done what = chosen().orElseThrow();
    boolean open = !ended() || endedByItself();
    what.reading()
        .filter(r -> open)
        .ifPresent(r -> change(() -> findCase.withdraw(r.id()), this::accept));
    what.deed()
        .filter(d -> open || d.deed() instanceof CaseEvent.Photographed)
        .ifPresent(d -> change(() -> findCase.undo(d.number()), this::accept));
  }

  /** Begins to tell that a part was replaced. */
  public void startSwap() {
    if (!ended() && !view.get().suspects().isEmpty()) {
      begin(Doing.SWAP);
      if (chosenSuspect().isEmpty()) {
        suspect.set(0);
      }
    }
  }

  /** The chosen suspect's part was replaced. */
  public void swapped(FindCase.Helped helped) {
    chosenSuspect()
        .ifPresent(s -> change(() -> findCase.swapped(s.parts().get(0), helped), this::accept));
  }

  /** The isolated part is mended. */
  public void repaired() {
    view.get()
        .repair()
        .ifPresent(r -> change(() -> findCase.repaired(r.suspect().parts().get(0)), this::accept));
  }

  /** A photo goes to the case. */
  public void attach(Path photo) {
    change(() -> findCase.attach(photo, ""), this::accept);
  }

  /** Begins to say that there is smoke, heat or a smell; from whatever was begun. */
  public void startWarn() {
    if (!ended()) {
      begin(Doing.WARN);
    }
  }

  /** There is smoke, heat or a smell of fuel. */
  public void warn(Warning warning) {
    change(() -> findCase.warn(warning), this::accept);
  }

  /** Whether the battery is to be isolated, and can be said to be. */
  public boolean isolating() {
    List<Warning> warnings = view.get().warnings();
    return view.get().move() == CaseView.Move.MAKE_SAFE
        && !warnings.isEmpty()
        && !warnings.contains(Warning.FUEL);
  }

  /** The battery is isolated. */
  public void isolated() {
    if (isolating()) {
      change(findCase::isolated, this::accept);
    }
  }

  /** What was warned of is gone. */
  public void gone() {
    if (!view.get().warnings().isEmpty()) {
      change(findCase::gone, this::accept);
    }
  }

  /** Ends the case, unless something is still to be put back. */
  public void end() {
    if (ended()) {
      return;
    }
    if (!view.get().putBack().isEmpty()) {
      begin(Doing.PUT_BACK);
    } else {
      change(findCase::stop, this::accept);
    }
  }

  /** All is put back: ends the case. */
  public void allPutBack() {
    if (doing.get() == Doing.PUT_BACK) {
      change(findCase::stop, this::accept);
    }
  }

  /** Goes back from whatever was begun to the check. */
  public void back() {
    problem.set("");
    if (tree.open()) {
      tree.close();
    } else if (doing.get() == Doing.COMPARE) {
      begin(Doing.OWN);
    } else if (doing.get() != Doing.ANSWER) {
      begin(Doing.ANSWER);
    } else if (side.get() != Side.KNOWN) {
      side.set(Side.KNOWN);
    } else {
      entry.clear();
    }
  }

  /** Tells why the check is next, or goes back to what is known. */
  public void toggleWhy() {
    if (side.get() == Side.WHY) {
      side.set(Side.KNOWN);
      return;
    }
    call(
        findCase::whyNext,
        lines -> {
          whyLines.setAll(lines);
          side.set(Side.WHY);
        });
  }

  /** Tells why the chosen suspect is still held, or goes back to what is known. */
  public void toggleIfNot() {
    if (side.get() == Side.IF_NOT) {
      side.set(Side.KNOWN);
      return;
    }
    if (view.get().suspects().isEmpty()) {
      return;
    }
    side.set(Side.IF_NOT);
    if (suspect.get() < 0) {
      suspect.set(0);
    } else {
      askIfNot();
    }
  }

  private void askIfNot() {
    ifNotLines.clear();
    if (doing.get() == Doing.SWAP) {
      return;
    }
    int i = suspect.get();
    List<String> pieces = pieces();
    if (i >= 0 && i < pieces.size()) {
      call(
          () -> findCase.whyStill(pieces.get(i)),
          lines -> {
            if (suspect.get() == i) {
              ifNotLines.setAll(lines);
            }
          });
    }
  }

  /**
   * Ids of the pieces that can be asked about, in the order shown: suspected, cleared, hardly
   * suspected.
   */
  private List<String> pieces() {
    List<String> pieces = new ArrayList<>();
    view.get().suspects().forEach(s -> pieces.add(s.parts().get(0)));
    view.get().cleared().forEach(c -> pieces.add(c.part()));
    hardly().forEach(p -> pieces.add(p.part()));
    return pieces;
  }

  /** Pieces of the loop that are neither cleared nor suspected to speak of. */
  public List<LoopView.PieceView> hardly() {
    CaseView now = view.get();
    Set<String> told = new HashSet<>();
    now.suspects().forEach(s -> told.addAll(s.parts()));
    now.cleared().forEach(c -> told.add(c.part()));
    return now.loop().pieces().stream()
        .filter(p -> p.standing() == LoopView.Standing.HELD && told.add(p.part()))
        .toList();
  }

  /** The suspect chosen. */
  public Optional<SuspectView> chosenSuspect() {
    List<SuspectView> suspects = view.get().suspects();
    int i = suspect.get();
    return i >= 0 && i < suspects.size() ? Optional.of(suspects.get(i)) : Optional.empty();
  }

  /**
   * Something that was done: a reading, or what was told besides.
   *
   * @param reading the reading; empty if it was none
   * @param deed what was told besides; empty if it was a reading
   */
  public record Done(Optional<ReadingView> reading, Optional<DeedView> deed) {}

  /** What was done, in its order. */
  public List<Done> done() {
    return done(view.get());
  }

  private static List<Done> done(CaseView of) {
    List<Done> all = new ArrayList<>();
    List<DeedView> deeds = new ArrayList<>(of.deeds());
    for (ReadingView r : of.readings()) {
      while (!deeds.isEmpty() && deeds.get(0).after() < r.id()) {
        all.add(new Done(Optional.empty(), Optional.of(deeds.remove(0))));
      }
      all.add(new Done(Optional.of(r), Optional.empty()));
    }
    deeds.forEach(d -> all.add(new Done(Optional.empty(), Optional.of(d))));
    return all;
  }

  /** What is chosen of what was done. */
  public Optional<Done> chosen() {
    List<Done> all = done();
    int i = reading.get();
    return i >= 0 && i < all.size() ? Optional.of(all.get(i)) : Optional.empty();
  }

  /** The reading chosen. */
  public Optional<ReadingView> chosenReading() {
    return chosen().flatMap(Done::reading);
  }

  /** Moves the choice among the suspects. */
  public void moveSuspect(int by) {
    int size = doing.get() == Doing.SWAP ? view.get().suspects().size() : pieces().size();
    suspect.set(clamp(suspect.get() + by, size));
  }

  /** Moves the choice among what was done. */
  public void moveReading(int by) {
    reading.set(clamp(reading.get() + by, done().size()));
  }

  private static int clamp(int i, int size) {
    return size == 0 ? -1 : Math.max(0, Math.min(size - 1, i));
  }

  private boolean chooseReadingIfNone() {
    if (ended() && !endedByItself() || view.get().readings().isEmpty()) {
      return false;
    }
    if (chosenReading().isEmpty()) {
      List<ReadingView> readings = view.get().readings();
      Optional<ReadingView> last = Optional.of(readings.get(readings.size() - 1));
      reading.set(done().stream().map(Done::reading).toList().indexOf(last));
    }
    return true;
  }

  /** Whether it ended because all is healthy: a reading mistyped can still be taken back. */
  public boolean endedByItself() {
    return ended() && view.get().status() == CaseView.Status.HEALTHY;
  }

  /** Whether the case is closed. */
  public boolean ended() {
    return view.get().move() == CaseView.Move.END;
  }

  /** The loop. */
  public LoopView loop() {
    return view.get().loop();
  }

  /** Closes the case; what was counted is kept. */
  public void close() {
    worker.neverIdle();
    worker.run(
        () -> {
          findCase.close();
          return Boolean.TRUE;
        },
        closed -> {},
        failed -> {});
  }

  private void begin(Doing next) {
    tree.close();
    entry.clear();
    problem.set("");
    doing.set(next);
  }

  private void accept(CaseView next) {
    toldCautions.addAll(view.get().cautions());
    boolean grew = done(next).size() != done().size();
    view.set(next);
    tree.close();
    prepare();
    entry.clear();
    problem.set("");
    echo.set("");
    second.set("");
    secondFor = Optional.empty();
    side.set(Side.KNOWN);
    suspect.set(-1);
    if (grew || doing.get() == Doing.CORRECT) {
      reading.set(-1);
    }
    boolean goesOn =
        doing.get() == Doing.AGAIN
            && log().isPresent()
            && !ended()
            && next.move() != CaseView.Move.MAKE_SAFE;
    doing.set(goesOn ? Doing.AGAIN : Doing.ANSWER);
  }

  private void entryChanged() {
    problem.set("");
    second.set("");
    secondFor = Optional.empty();
    echo.set("");
    int now = ++asked;
    if (!entry.complete()) {
      return;
    }
    if (doing.get() != Doing.ANSWER || view.get().next().isEmpty()) {
      echo.set(entry.text());
      return;
    }
    String checkId = view.get().next().orElseThrow().id();
    Answer answer = new Answer.Text(entry.plain());
    call(
        () -> findCase.understand(checkId, answer),
        understood -> {
          if (now == asked) {
            echo.set(understood.words());
          }
        });
  }

  private <T> void call(Callable<T> work, Consumer<T> done) {
    worker.run(work, done, this::failed);
  }

  /** A call that changes the case; while one is under way another does nothing. */
  private <T> void change(Callable<T> work, Consumer<T> done) {
    if (counting.get()) {
      return;
    }
    counting.set(true);
    worker.run(
        work,
        result -> {
          counting.set(false);
          done.accept(result);
        },
        e -> {
          counting.set(false);
          failed(e);
        });
  }

  private void failed(Exception e) {
    problem.set(
        e instanceof Problem p
            ? Texts.of("entry.problem", p.value(), p.accepted())
            : Texts.of("case.failed", String.valueOf(e.getMessage())));
  }
}
