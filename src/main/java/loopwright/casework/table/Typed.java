package loopwright.casework.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.edit.Edit;
import loopwright.casework.edit.PartEdits;
import loopwright.casework.edit.Shown;
import loopwright.model.Circuit;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.ShortName;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/**
 * Texts typed or pasted into cells of one table: an {@link Edit} that takes all of them, or what is
 * wrong with each.
 */
public final class Typed implements Edit {

  /**
   * The texts for one row.
   *
   * @param row id of the row; empty for a new one
   * @param cells the texts by column; others stay as they are
   */
  public record Entry(Optional<String> row, Map<Column, String> cells) {
    /** Copies the map. */
    public Entry {
      cells = new LinkedHashMap<>(cells);
    }
  }

  /**
   * A text that can't be taken.
   *
   * @param entry index of its entry
   * @param column its column
   * @param problem what is wrong and what is accepted
   */
  public record Bad(int entry, Column column, Problem problem) {}

  private final Table table;
  private final String title;
  private final List<Entry> entries;
  private final List<Bad> bad = new ArrayList<>();
  private final List<String> ids = new ArrayList<>();
  private final Map<String, String> renames = new LinkedHashMap<>();
  private final Vehicle tried;
  private Optional<Vehicle> made = Optional.empty();

  private Typed(Vehicle vehicle, Table table, String title, List<Entry> entries) {
    this.tried = vehicle;
    this.table = table;
    this.title = title;
    this.entries = List.copyOf(entries);
    Draft draft = new Draft(vehicle);
    for (int i = 0; i < entries.size(); i++) {
      entry(draft, i, entries.get(i));
    }
    if (bad.isEmpty()) {
      rename(draft.vehicle());
    }
  }

  /**
   * Tries texts on a vehicle; nothing has changed yet.
   *
   * @param title what undo calls it
   */
  public static Typed on(Vehicle vehicle, Table table, String title, List<Entry> entries) {
    return new Typed(vehicle, table, title, entries);
  }

  /** What can't be taken; if empty, the edit can be made. */
  public List<Bad> bad() {
    return List.copyOf(bad);
  }

  /** The ids the rows have afterwards, one an entry. */
  public List<String> ids() {
    return ids.stream().map(id -> renames.getOrDefault(id, id)).toList();
  }

  @Override
  public String title() {
    return title;
  }

  @Override
  public Made make(Vehicle before) throws Problem {
    Typed typed = before == tried ? this : new Typed(before, table, title, entries);
    if (!typed.bad.isEmpty()) {
      throw typed.bad.get(0).problem();
    }
    return new Made(typed.made.orElseThrow(), List.of());
  }

  private void entry(Draft draft, int index, Entry entry) {
    boolean fresh = entry.row().isEmpty();
    String id = entry.row().orElseGet(() -> newRow(draft, index, entry));
    ids.add(id);
    if (id.isEmpty()) {
      return;
    }
    Set<String> before = fresh ? Set.of() : outside(draft, id);
    Set<Column> set = new HashSet<>();
    for (Column column : inOrder(entry)) {
      String text = entry.cells().get(column).strip();
      if (column == Column.ID) {
        if (!fresh) {
          note(draft, index, id, text);
        }
      } else if (table.rule(column) != null && set(draft, index, id, column, text)) {
        set.add(column);
      }
    }
    if (fresh) {
      for (Column column : table.columns()) {
        boolean wanting =
            column != Column.ID
                && table.rule(column).required(draft, id)
                && !set.contains(column)
                && bad.stream().noneMatch(b -> b.entry() == index && b.column() == column)
                && !(column == Column.KIND && table == Table.WIRES);
        if (wanting) {
          bad.add(new Bad(index, column, new Problem(Words.of(column), "", Words.say("missing"))));
        }
      }
    }
    if (table != Table.CIRCUITS && bad.stream().noneMatch(b -> b.entry() == index)) {
      limits(draft, index, id, before, set);
    }
  }

  /** The kind comes first, since it decides which values there are. */
  private List<Column> inOrder(Entry entry) {
    List<Column> columns = new ArrayList<>(table.columns());
    if (columns.remove(Column.KIND)) {
      columns.add(0, Column.KIND);
    }
    columns.retainAll(entry.cells().keySet());
    return columns;
  }

  private boolean set(Draft draft, int index, String id, Column column, String text) {
    Rule rule = table.rule(column);
    if (text.equals(rule.text(draft, id)) && !(text.isEmpty() && rule.required(draft, id))) {
      return !text.isEmpty();
    }
    try {
      if (text.isEmpty() && rule.required(draft, id)) {
        throw new Problem(Words.of(column), "", Words.say("needed"));
      }
      rule.set(draft, id, text);
      return true;
    } catch (Problem e) {
      bad.add(new Bad(index, column, e));
      return false;
    }
  }

  // New rows.

  private String newRow(Draft draft, int index, Entry entry) {
    String text = entry.cells().getOrDefault(Column.ID, "").strip();
    String id = text.isEmpty() ? free(draft) : text;
    if (!fits(draft, index, id)) {
      return "";
    }
    if (table == Table.CIRCUITS) {
      draft.put(new Circuit(id, "", List.of(), Map.of(), ""));
      return id;
    }
    PartKind kind = table.kinds().get(0);
    draft.put(Part.of(id, "", Blanks.of(kind)));
    return id;
  }

  private boolean fits(Draft draft, int index, String id) {
    boolean there = taken(draft, id);
    if (ShortName.fits(id) && !there) {
      return true;
    }
    String accepted =
        there
            ? Words.say(table == Table.CIRCUITS ? "taken.circuit" : "taken.part")
            : ShortName.limit();
    bad.add(new Bad(index, Column.ID, new Problem(Words.of(Column.ID), Shown.of(id), accepted)));
    return false;
  }

  private boolean taken(Draft draft, String id) {
    return table == Table.CIRCUITS ? draft.circuit(id).isPresent() : draft.part(id).isPresent();
  }

  private String free(Draft draft) {
    int number = 1;
    while (taken(draft, table.letters() + number)) {
      number++;
    }
    return table.letters() + number;
  }

  // Renaming.

  private void note(Draft draft, int index, String id, String text) {
    if (text.equals(id)) {
      return;
    }
    if (fits(draft, index, text)) {
      renames.put(id, text);
    }
  }

  private void rename(Vehicle vehicle) {
    Vehicle now = vehicle;
    for (Map.Entry<String, String> rename : renames.entrySet()) {
      try {
        now =
            table == Table.CIRCUITS
                ? renamedCircuit(now, rename.getKey(), rename.getValue())
                : PartEdits.rename(rename.getKey(), rename.getValue()).make(now).vehicle();
      } catch (Problem e) {
        bad.add(new Bad(ids.indexOf(rename.getKey()), Column.ID, e));
        return;
      }
    }
    made = Optional.of(now);
  }

  private static Vehicle renamedCircuit(Vehicle vehicle, String from, String to) {
    List<Circuit> circuits = new ArrayList<>(vehicle.circuits());
    circuits.replaceAll(
        c -> c.id().equals(from) ? new Circuit(to, c.name(), c.loads(), c.on(), c.note()) : c);
    return vehicle.with(vehicle.parts(), vehicle.joins(), circuits);
  }

  // Limits.

  /** Paths of values that are outside their limits already. */
  private static Set<String> outside(Draft draft, String id) {
    Set<String> paths = new HashSet<>();
    draft.part(id).ifPresent(p -> findings(draft, p).forEach(f -> paths.add(f.path())));
    return paths;
  }

  private static List<VehicleCheck.Finding> findings(Draft draft, Part part) {
    Set<String> elsewhere = new HashSet<>();
    if (part.spec() instanceof PartSpec.Wire w) {
      elsewhere.add(w.from().part());
      elsewhere.add(w.to().part());
    }
    return VehicleCheck.check(draft.with(part), VehicleCheck.Scope.PIECES, elsewhere);
  }

  private void limits(Draft draft, int index, String id, Set<String> before, Set<Column> set) {
    for (VehicleCheck.Finding finding : findings(draft, draft.part(id).orElseThrow())) {
      if (finding.path().startsWith("parts[0]") && !before.contains(finding.path())) {
        Column named = Fields.column(finding.path(), table);
        Column column = set.contains(named) ? named : set.stream().findFirst().orElse(named);
        bad.add(
            new Bad(
                index, column, new Problem(Words.of(column), finding.value(), finding.limit())));
      }
    }
  }
}
