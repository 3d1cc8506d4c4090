package loopwright.casework.table;

import java.util.ArrayList;
import java.util.List;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.Vehicle;

/** What stands in the tables of a vehicle. */
public final class Rows {
  private final Draft draft;

  /** Prepares the tables of a vehicle as it is now. */
  public Rows(Vehicle vehicle) {
    draft = new Draft(vehicle);
  }

  /**
   * A row.
   *
   * @param id id of the part or circuit
   * @param cells the texts in the order of the table's columns
   */
  public record Row(String id, List<String> cells) {
    /** Copies the list. */
    public Row {
      cells = List.copyOf(cells);
    }
  }

  /** The rows of a table, in the order of the vehicle. */
  public List<Row> of(Table table) {
    List<Row> rows = new ArrayList<>();
    if (table == Table.CIRCUITS) {
      draft.circuits().stream().map(Circuit::id).forEach(id -> rows.add(row(table, id)));
    } else {
      for (Part part : draft.parts()) {
        if (table.kinds().contains(part.kind())) {
          rows.add(row(table, part.id()));
        }
      }
    }
    return rows;
  }

  private Row row(Table table, String id) {
    List<String> cells = new ArrayList<>();
    for (Column column : table.columns()) {
      cells.add(column == Column.ID ? id : table.rule(column).text(draft, id));
    }
    return new Row(id, cells);
  }
}
