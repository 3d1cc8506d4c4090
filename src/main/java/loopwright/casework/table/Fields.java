package loopwright.casework.table;

import java.util.Map;

/** Which column a field of a vehicle file stands in. */
public final class Fields {
  private static final Map<String, Column> COLUMNS =
      Map.ofEntries(
          Map.entry("id", Column.ID),
          Map.entry("from", Column.FROM),
          Map.entry("to", Column.TO),
          Map.entry("metres", Column.METRES),
          Map.entry("end_ohms", Column.OHMS),
          Map.entry("volts", Column.VOLTS),
          Map.entry("ohms", Column.OHMS),
          Map.entry("amp_hours", Column.AMP_HOURS),
          Map.entry("charge_idle_amps", Column.CHARGE_IDLE_AMPS),
          Map.entry("charge_amps", Column.CHARGE_AMPS),
          Map.entry("amps", Column.AMPS),
          Map.entry("watts", Column.WATTS),
          Map.entry("filaments", Column.WATTS),
          Map.entry("rated_volts", Column.RATED_VOLTS),
          Map.entry("stall_amps", Column.STALL_AMPS),
          Map.entry("forward_volts", Column.FORWARD_VOLTS),
          Map.entry("coil_ohms", Column.COIL_OHMS),
          Map.entry("pull_in_volts", Column.PULL_IN_VOLTS),
          Map.entry("drop_out_volts", Column.DROP_OUT_VOLTS),
          Map.entry("contact_ohms", Column.CONTACT_OHMS),
          Map.entry("positions", Column.POSITIONS),
          Map.entry("terminals", Column.TERMINALS),
          Map.entry("cavities", Column.TERMINALS),
          Map.entry("legs", Column.TERMINALS),
          Map.entry("contacts", Column.CLOSED),
          Map.entry("spare", Column.FREE),
          Map.entry("loads", Column.LOADS),
          Map.entry("on", Column.ON),
          Map.entry("name", Column.NAME));

  private Fields() {}

  /**
   * The column of a check's path such as {@code parts[6].metres}; the id where it has none of its
   * own.
   */
  public static Column column(String path, Table table) {
    String[] steps = path.split("\\.");
    String field = steps.length > 1 ? steps[1].replaceAll("\\[.*", "") : "id";
    Column column = COLUMNS.getOrDefault(field, Column.ID);
    if (column == Column.AMPS && !table.columns().contains(column)) {
      column = Column.CONTACT_AMPS;
    }
    if (column == Column.OHMS && !table.columns().contains(column)) {
      column = Column.CONTACT_OHMS;
    }
    return table.columns().contains(column) ? column : Column.ID;
  }
}
