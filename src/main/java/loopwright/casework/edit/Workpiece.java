package loopwright.casework.edit;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A vehicle being worked on. Every edit can be taken back and made again, without limit. Not for
 * several threads.
 */
public final class Workpiece {
  private final Deque<Step> done = new ArrayDeque<>();
  private final Deque<Step> undone = new ArrayDeque<>();
  private Vehicle vehicle;
  private Vehicle saved;

  /** An edit made; the vehicle's own values are kept as vehicles without parts. */
  private record Step(
      String title,
      Vehicle bareBefore,
      Vehicle bareAfter,
      Stretch<Part> parts,
      Stretch<List<TerminalRef>> joins,
      Stretch<Circuit> circuits) {}

  private static Vehicle bare(Vehicle vehicle) {
    return vehicle.with(List.of(), List.of(), List.of());
  }

  /**
   * Begins with a vehicle as it was opened.
   *
   * @param vehicle the vehicle, as its file holds it
   */
  public Workpiece(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.saved = vehicle;
  }

  /** The vehicle as it is now. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /**
   * Makes an edit; what had been taken back can then no longer be made again.
   *
   * @throws Problem if it can't be made; nothing has changed then
   */
  public Change make(Edit edit) throws Problem {
    Edit.Made made = edit.make(vehicle);
    Vehicle before = vehicle;
    Vehicle after = made.vehicle();
    done.push(
        new Step(
            edit.title(),
            bare(before),
            bare(after),
            Stretch.between(before.parts(), after.parts()),
            Stretch.between(before.joins(), after.joins()),
            Stretch.between(before.circuits(), after.circuits())));
    undone.clear();
    return become(after, edit.title(), made.told());
  }

  /** Takes the last edit back; empty if there is none. */
  public Optional<Change> undo() {
    if (done.isEmpty()) {
      return Optional.empty();
    }
    Step step = done.pop();
    undone.push(step);
    Vehicle before =
        step.bareBefore()
            .with(
                step.parts().undo(vehicle.parts()),
                step.joins().undo(vehicle.joins()),
                step.circuits().undo(vehicle.circuits()));
    return Optional.of(become(before, step.title(), List.of()));
  }

  /** Makes the edit last taken back again; empty if there is none. */
  public Optional<Change> redo() {
    if (undone.isEmpty()) {
      return Optional.empty();
    }
    Step step = undone.pop();
    done.push(step);
    Vehicle after =
        step.bareAfter()
            .with(
                step.parts().redo(vehicle.parts()),
                step.joins().redo(vehicle.joins()),
                step.circuits().redo(vehicle.circuits()));
    return Optional.of(become(after, step.title(), List.of()));
  }

  private Change become(Vehicle next, String title, List<String> told) {
    Change change = Change.between(title, vehicle, next, told);
    vehicle = next;
    return change;
  }

  /** What undo would take back. */
  public Optional<String> undoTitle() {
    return Optional.ofNullable(done.peek()).map(Step::title);
  }

  /** What redo would make again. */
  public Optional<String> redoTitle() {
    return Optional.ofNullable(undone.peek()).map(Step::title);
  }

  /** Whether the vehicle differs from what was last saved. */
  public boolean unsaved() {
    return !vehicle.equals(saved);
  }

  /** Tells that a version of the vehicle was saved. */
  public void saved(Vehicle version) {
    saved = version;
  }
}
