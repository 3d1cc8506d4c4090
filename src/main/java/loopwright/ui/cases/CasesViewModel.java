package loopwright.ui.cases;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseQuery;
import loopwright.casework.record.CaseRecord;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;

/** The kept cases, those that fit what is looked for, and what is written of them. */
public final class CasesViewModel {
  private final CaseShelf shelf;
  private final OwnRecordSwitch ownRecord;
  private final Worker worker;
  private final ObservableList<CaseRow> shown = FXCollections.observableArrayList();
  private final IntegerProperty chosen = new SimpleIntegerProperty(0);
  private final StringProperty search = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);
  private CaseArchive.Shelf kept = new CaseArchive.Shelf(List.of(), List.of());
  private Path folder;

  /**
   * Makes the view model.
   *
   * @param shelf the kept cases
   * @param ownRecord whether what a vehicle had before counts
   * @param worker where they are read and written
   */
  public CasesViewModel(CaseShelf shelf, OwnRecordSwitch ownRecord, Worker worker) {
    this.shelf = shelf;
    this.ownRecord = ownRecord;
    this.worker = worker;
    this.folder = shelf.folder();
    search.addListener(o -> show(true));
  }

  /** The cases that fit what is looked for, newest first. */
  public ObservableList<CaseRow> shown() {
    return shown;
  }

  /** Words that cases are looked for by; empty: all are shown. */
  public StringProperty searchProperty() {
    return search;
  }

  /** Index of the chosen case. */
  public IntegerProperty chosenProperty() {
    return chosen;
  }

  /** What came of what was done last. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Whether what a vehicle had before counts. */
  public ReadOnlyBooleanProperty ownCountsProperty() {
    return ownRecord.countsProperty();
  }

  /** Lets it count, or not, in cases opened or taken up from now on. */
  public void switchOwnRecord() {
    boolean counts = !ownRecord.countsProperty().get();
    ownRecord.countsProperty().set(counts);
    told.set(Told.plain(Texts.of(counts ? "cases.ownCounts" : "cases.ownIgnored")));
  }

  /** The folder that files go into. */
  public Path folder() {
    return folder;
  }

  /** Takes another folder. */
  public void takeFolder(Path other) {
    folder = other;
    told.set(Told.plain(Texts.of("cases.folder", other)));
  }

  /** Reads the list again. */
  public void refresh() {
    worker.run(
        shelf.archive()::shelf,
        read -> {
          kept = read;
          show(false);
        },
        this::failed);
  }

  private void show(boolean anew) {
    String words = search.get().strip();
    List<CaseRow> rows = new ArrayList<>();
    for (CaseRecord record : kept.records()) {
      if (CaseQuery.words(words).fits(record, ZoneId.systemDefault())) {
        rows.add(CaseRow.of(record, words));
      }
    }
    if (words.isEmpty()) {
      kept.unread().forEach(unread -> rows.add(CaseRow.of(unread)));
    }
    int keep = anew ? 0 : Math.max(0, Math.min(chosen.get(), rows.size() - 1));
    shown.setAll(rows);
    chosen.set(keep);
  }

  /** The chosen case. */
  public Optional<CaseRow> chosen() {
    int i = chosen.get();
    return i >= 0 && i < shown.size() ? Optional.of(shown.get(i)) : Optional.empty();
  }

  /** Writes the chosen case's record. */
  public void print() {
    chosen().flatMap(CaseRow::record).ifPresent(r -> write(CaseFiles.Sheet.RECORD, List.of(r)));
  }

  /** Writes all that is shown, for other programs and for a spreadsheet. */
  public void export() {
    List<CaseRecord> records = shown.stream().flatMap(row -> row.record().stream()).toList();
    if (records.isEmpty()) {
      told.set(Told.problem(Texts.of("cases.nothing")));
      return;
    }
    Path into = folder;
    run(
        () -> {
          Path json = shelf.files().write(CaseFiles.Sheet.JSON, records, into);
          Path csv = shelf.files().write(CaseFiles.Sheet.CSV, records, into);
          return Texts.of("cases.exported", records.size(), json, csv);
        });
  }

  private void write(CaseFiles.Sheet sheet, List<CaseRecord> records) {
    Path into = folder;
    run(() -> Texts.of("cases.written", shelf.files().write(sheet, records, into)));
  }

  private void run(Callable<String> task) {
    worker.run(task, words -> told.set(Told.plain(words)), this::failed);
  }

  /** Puts a photo to the chosen case. */
  public void attach(Path photo) {
    chosen()
        .ifPresent(
            row ->
                worker.run(
                    () -> {
                      shelf.archive().attach(row.caseId(), photo, "");
                      return photo;
                    },
                    p -> {
                      photoKept(p);
                      refresh();
                    },
                    this::failed));
  }

  /** Says that a photo is kept. */
  public void photoKept(Path photo) {
    told.set(Told.plain(Texts.of("cases.photoKept", photo.getFileName())));
  }

  /** Says what went wrong. */
  public void failed(Throwable why) {
    told.set(Told.problem(Texts.of("case.failed", String.valueOf(why.getMessage()))));
  }
}
