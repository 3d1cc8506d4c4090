package loopwright.ui.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.Outlook;
import loopwright.casework.Problem;
import loopwright.ui.Worker;

/**
 * The decision tree of a check: its results at once, what follows on each while nothing else is to
 * be worked out.
 */
public final class TreeViewModel {
  private final FindCase findCase;
  private final Worker worker;
  private final Runnable closed;
  private final Consumer<Exception> failed;
  private final ReadOnlyObjectWrapper<Optional<Outlook>> outlook =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<Optional<Outlook.Then>> thens = FXCollections.observableArrayList();
  private final IntegerProperty branch = new SimpleIntegerProperty(0);
  private final List<String> checks = new ArrayList<>();
  private int asked;

  /**
   * For an open case.
   *
   * @param worker where its calls run
   * @param closed what the worker does while it is idle once the tree is closed is set here
   * @param failed gets what went wrong
   */
  TreeViewModel(FindCase findCase, Worker worker, Runnable closed, Consumer<Exception> failed) {
    this.findCase = findCase;
    this.worker = worker;
    this.closed = closed;
    this.failed = failed;
  }

  /** The outlook shown; empty while the tree is closed. */
  public ReadOnlyObjectProperty<Optional<Outlook>> outlookProperty() {
    return outlook.getReadOnlyProperty();
  }

  /** Whether the tree is open. */
  public boolean open() {
    return outlook.get().isPresent();
  }

  /** What follows on each result, in their order; empty while it is being worked out. */
  public ObservableList<Optional<Outlook.Then>> thens() {
    return thens;
  }

  /** Index of the result at hand. */
  public IntegerProperty branchProperty() {
    return branch;
  }

  /** How many checks can be looked at, the one asked now included. */
  public int count() {
    return checks.size();
  }

  /** Which of them is looked at, from 0. */
  public int at() {
    return outlook.get().map(o -> checks.indexOf(o.check())).orElse(0);
  }

  /** Opens the tree of the check asked now. */
  public void start() {
    load(
        Optional.empty(),
        found -> {
          checks.clear();
          checks.add(found.check());
          found.instead().forEach(c -> checks.add(c.check()));
        });
  }

  /** Goes to the tree of another check that could be asked. */
  public void move(int by) {
    int to = at() + by;
    if (open() && to >= 0 && to < checks.size()) {
      load(Optional.of(checks.get(to)), found -> {});
    }
  }

  /** Moves the choice among the results. */
  public void moveBranch(int by) {
    branch.set(Math.max(0, Math.min(thens.size() - 1, branch.get() + by)));
  }

  /** Closes it. */
  public void close() {
    asked++;
    if (open()) {
      outlook.set(Optional.empty());
      thens.clear();
      closed.run();
    }
  }

  private void load(Optional<String> check, Consumer<Outlook> before) {
    int now = ++asked;
    worker.run(
        () -> findCase.outlook(check),
        found -> {
          if (now == asked) {
            before.accept(found);
            show(found);
          }
        },
        failed);
  }

  private void show(Outlook found) {
    List<Optional<Outlook.Then>> none = new ArrayList<>();
    found.branches().forEach(b -> none.add(Optional.empty()));
    thens.setAll(none);
    branch.set(0);
    outlook.set(Optional.of(found));
    Optional<?>[] done = new Optional<?>[none.size()];
    worker.whenIdle(goOn -> follow(found, done, goOn));
  }

  /** Works out what follows, result by result; what was interrupted goes on where it was. */
  private void follow(Outlook found, Optional<?>[] done, BooleanSupplier goOn) {
    for (int i = 0; i < done.length && goOn.getAsBoolean(); i++) {
      if (done[i] == null) {
        Outlook.Then then = then(found, i);
        done[i] = Optional.of(then);
        int at = i;
        worker.onWindow(
            () -> {
              if (outlook.get().filter(o -> o == found).isPresent()) {
                thens.set(at, Optional.of(then));
              }
            });
      }
    }
  }

  private Outlook.Then then(Outlook found, int result) {
    try {
      return findCase.then(found.check(), result);
    } catch (Problem p) {
      return new Outlook.Then(
          CaseView.Move.STUCK, p.accepted(), Optional.empty(), List.of(), 0, List.of(), List.of());
    }
  }
}
