package loopwright.ui.wiring;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.table.Column;
import loopwright.casework.table.Fields;
import loopwright.casework.table.Table;
import loopwright.model.Part;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/** The cell that a finding of the check is about. */
final class Places {
  private static final Pattern PATH = Pattern.compile("(parts|circuits|joins)\\[(\\d+)](.*)");

  private Places() {}

  /** A row and a cell of it. */
  record Place(String id, Optional<Column> column) {}

  static Optional<Place> of(VehicleCheck.Finding finding, Optional<Vehicle> vehicle) {
    Matcher m = PATH.matcher(finding.path());
    if (vehicle.isEmpty() || !m.matches()) {
      return Optional.empty();
    }
    Vehicle v = vehicle.get();
    int at = Integer.parseInt(m.group(2));
    return switch (m.group(1)) {
      case "parts" -> part(v, at, finding.path());
      case "circuits" ->
          at < v.circuits().size()
              ? Optional.of(
                  new Place(
                      v.circuits().get(at).id(),
                      Optional.of(Fields.column(finding.path(), Table.CIRCUITS))))
              : Optional.empty();
      default -> join(v, at);
    };
  }

  private static Optional<Place> part(Vehicle v, int at, String path) {
    if (at >= v.parts().size()) {
      return Optional.empty();
    }
    Part part = v.parts().get(at);
    return Optional.of(
        new Place(part.id(), Optional.of(Fields.column(path, Table.of(part.kind())))));
  }

  private static Optional<Place> join(Vehicle v, int at) {
    return at >= v.joins().size()
        ? Optional.empty()
        : v.joins().get(at).stream()
            .map(TerminalRef::part)
            .filter(id -> v.part(id).isPresent())
            .findFirst()
            .map(id -> new Place(id, Optional.of(Column.TOUCHES)));
  }
}
