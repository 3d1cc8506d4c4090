package loopwright.ui.home;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.casework.CaseEvent;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.CaseRecord.CaseState;
import loopwright.ui.Texts;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.cases.CaseRow;

/**
 * What can be gone on with: a case that was begun, or a vehicle that was open.
 *
 * @param title what it is called
 * @param state what is left to do with it
 * @param detail a few words more
 * @param unfinished whether it is a case that isn't finished
 * @param opened how the case began; empty for a vehicle
 * @param vehicleName how its vehicle is found again
 */
public record Recent(
    String title,
    String state,
    String detail,
    boolean unfinished,
    Optional<CaseEvent.Opened> opened,
    String vehicleName) {
  private static final int MOST_CASES = 5;
  private static final Set<CaseState> UNFINISHED =
      Set.of(CaseState.OPEN, CaseState.FOUND, CaseState.MENDED);

  /**
   * The cases that are not finished, newest first, then the finished ones, then the vehicles. Cases
   * to practise on are left out: taken up again they have no meter that reads by itself.
   *
   * @param records newest first
   * @param vehicles all that can be opened; those that come with the program are left out
   */
  static List<Recent> of(List<CaseRecord> records, List<VehicleLibrary.Entry> vehicles) {
    Stream<Recent> cases =
        records.stream()
            .filter(r -> !r.opened().practice())
            .sorted(Comparator.comparing(r -> !unfinished(r)))
            .limit(MOST_CASES)
            .map(Recent::of);
    Stream<Recent> opened =
        vehicles.stream().filter(e -> e.shelf() == VehicleLibrary.Shelf.RECENT).map(Recent::of);
    return Stream.concat(cases, opened).toList();
  }

  private static boolean unfinished(CaseRecord record) {
    return UNFINISHED.contains(record.state());
  }

  private static Recent of(CaseRecord record) {
    CaseRow row = CaseRow.of(record, "");
    return new Recent(
        row.title(),
        row.state(),
        row.lines().get(0),
        unfinished(record),
        Optional.of(record.opened()),
        record.opened().vehicleName());
  }

  private static Recent of(VehicleLibrary.Entry entry) {
    return new Recent(
        entry.title(),
        Texts.of("home.vehicle"),
        entry.detail(),
        false,
        Optional.empty(),
        entry.name());
  }
}
