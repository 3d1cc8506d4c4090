package loopwright.casework.edit;

import java.util.ArrayList;
import java.util.List;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/** Several edits that are made, and taken back, as one. */
public final class Together implements Edit {
  private final String title;
  private final List<Edit> edits;

  /**
   * Joins edits.
   *
   * @param title what undo calls them
   * @param edits made one after another, or none of them
   */
  public Together(String title, List<Edit> edits) {
    this.title = title;
    this.edits = List.copyOf(edits);
  }

  @Override
  public String title() {
    return title;
  }

  @Override
  public Made make(Vehicle before) throws Problem {
    Vehicle now = before;
    List<String> told = new ArrayList<>();
    for (Edit edit : edits) {
      Made made = edit.make(now);
      now = made.vehicle();
      told.addAll(made.told());
    }
    return new Made(now, told);
  }
}
