package loopwright.ui.lists;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import loopwright.ui.Texts;
import loopwright.ui.Told;
import loopwright.ui.Worker;

/** What is printed, on which paper, into which folder, and what came of it. */
public final class PrintViewModel {

  private final Prints prints;
  private final Prints.Plan plan;
  private final Worker worker;
  private final ObjectProperty<Prints.Paper> paper;
  private final StringProperty folder;
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(Told.NOTHING);

  /**
   * Prints of a vehicle.
   *
   * @param plan the vehicle
   * @param paper the paper to begin with
   * @param folder the folder to begin with
   * @param worker where writing runs
   */
  public PrintViewModel(
      Prints prints, Prints.Plan plan, Prints.Paper paper, String folder, Worker worker) {
    this.prints = prints;
    this.plan = plan;
    this.worker = worker;
    this.paper = new SimpleObjectProperty<>(paper);
    this.folder = new SimpleStringProperty(folder);
  }

  /** The vehicle, and for which surroundings its plan is checked. */
  public Prints.Plan plan() {
    return plan;
  }

  /** The paper printed on. */
  public ObjectProperty<Prints.Paper> paperProperty() {
    return paper;
  }

  /** The folder that files go into. */
  public StringProperty folderProperty() {
    return folder;
  }

  /** What came of it. */
  public ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Takes the other paper. */
  public void otherPaper() {
    Prints.Paper[] all = Prints.Paper.values();
    paper.set(all[(paper.get().ordinal() + 1) % all.length]);
  }

  /** Writes a sheet. */
  public void print(Prints.Sheet sheet) {
    Path into;
    try {
      into = Path.of(folder.get().strip());
    } catch (InvalidPathException e) {
      told.set(Told.problem(Texts.of("lists.noFolder", folder.get())));
      return;
    }
    Prints.Paper on = paper.get();
    told.set(Told.plain(Texts.of("lists.writing", Texts.of(sheet))));
    worker.run(
        () -> prints.write(plan, sheet, on, into),
        file -> told.set(Told.plain(Texts.of("lists.written", Texts.of(sheet), file))),
        failed ->
            told.set(
                Told.problem(
                    Texts.of(
                        "lists.failed", Texts.of(sheet), String.valueOf(failed.getMessage())))));
  }
}
