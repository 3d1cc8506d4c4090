package loopwright.ui.cases;

import java.util.Optional;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.CaseDesk;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** The kept cases. */
public final class CasesViewModel {
  private final CaseDesk desk;
  private final Worker worker;
  private final ObservableList<CaseDesk.Kept> kept = FXCollections.observableArrayList();
  private final IntegerProperty chosen = new SimpleIntegerProperty(0);
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");

  /**
   * Makes the view model.
   *
   * @param desk keeps the cases
   * @param worker where the list is read
   */
  public CasesViewModel(CaseDesk desk, Worker worker) {
    this.desk = desk;
    this.worker = worker;
  }

  /** The kept cases, newest first. */
  public ObservableList<CaseDesk.Kept> kept() {
    return kept;
  }

  /** Index of the chosen case. */
  public IntegerProperty chosenProperty() {
    return chosen;
  }

  /** Why the list couldn't be read; empty if it could. */
  public ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** Reads the list again. */
  public void refresh() {
    worker.run(
        desk::kept,
        list -> {
          problem.set("");
          kept.setAll(list);
          chosen.set(Math.max(0, Math.min(chosen.get(), kept.size() - 1)));
        },
        failed -> problem.set(Texts.of("case.failed", String.valueOf(failed.getMessage()))));
  }

  /** The chosen case. */
  public Optional<CaseDesk.Kept> chosen() {
    int i = chosen.get();
    return i >= 0 && i < kept.size() ? Optional.of(kept.get(i)) : Optional.empty();
  }
}
