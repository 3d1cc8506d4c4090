package loopwright.ui.home;

import java.util.List;
import java.util.function.Supplier;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.record.CaseArchive;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.Worker;

/** What was begun before. */
public final class HomeViewModel {
  private final CaseArchive archive;
  private final Supplier<List<VehicleLibrary.Entry>> vehicles;
  private final Worker worker;
  private final ObservableList<Recent> recents = FXCollections.observableArrayList();

  /**
   * Reads nothing yet.
   *
   * @param archive the kept cases
   * @param vehicles those that can be opened
   * @param worker where cases are read
   */
  public HomeViewModel(
      CaseArchive archive, Supplier<List<VehicleLibrary.Entry>> vehicles, Worker worker) {
    this.archive = archive;
    this.vehicles = vehicles;
    this.worker = worker;
  }

  /** What can be gone on with; what is left to do comes first. */
  public ObservableList<Recent> recents() {
    return recents;
  }

  /** Reads it again. */
  public void refresh() {
    worker.run(
        () -> archive.shelf().records(),
        records -> recents.setAll(Recent.of(records, vehicles.get())),
        // The place Cases says why cases can't be read.
        failed -> recents.setAll(Recent.of(List.of(), vehicles.get())));
  }
}
