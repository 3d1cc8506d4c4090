package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import loopwright.casework.CaseDesk;
import loopwright.casework.Problem;
import loopwright.model.Vehicle;

/**
 * Drills for a class, of one level on one vehicle, with their answers. All is settled by the code
 * of the drill that is drawn first.
 *
 * @param code the sheet's own code
 * @param vehicle the vehicle's name
 * @param drills what the debrief of each drill would say if nothing was done; at least one
 */
public record ClassSheet(DrillCode code, String vehicle, List<Debrief> drills) {

  /** Drills on a sheet, where the vehicle has so many of the level. */
  public static final int DRILLS = 10;

  /** Codes that are tried until so many different faults are found. */
  private static final int MOST_TRIED = 25;

  /** Copies the list. */
  public ClassSheet {
    drills = List.copyOf(drills);
  }

  /**
   * Makes the sheet of a code: faults that differ as far as there are so many. Takes some seconds
   * for each drill; call off the window's thread.
   *
   * @throws Problem if the vehicle isn't the code's, or has nothing of the code's level
   */
  public static ClassSheet of(
      DrillCode code, Vehicle vehicle, PractiseDesk desk, CaseDesk.Progress progress)
      throws Problem {
    return of(code, vehicle, desk, progress, DRILLS);
  }

  /** The sheet's first drills. */
  static ClassSheet of(
      DrillCode code, Vehicle vehicle, PractiseDesk desk, CaseDesk.Progress progress, int most)
      throws Problem {
    List<Debrief> drills = new ArrayList<>();
    List<Debrief> alike = new ArrayList<>();
    Set<Object> faults = new HashSet<>();
    Problem none = null;
    for (DrillCode one : codes(code)) {
      try (Drilling drilling = desk.open(one, vehicle, progress)) {
        boolean another =
            faults.add(List.of(drilling.circuit(), drilling.drill().hidden().truth()));
        (another ? drills : alike).add(drilling.debrief());
      } catch (Problem e) {
        none = e;
      }
      if (drills.size() == most) {
        break;
      }
    }
    alike.stream().limit(most - drills.size()).forEach(drills::add);
    if (drills.isEmpty() && none != null) {
      throw none;
    }
    return new ClassSheet(code, vehicle.name(), drills);
  }

  private static List<DrillCode> codes(DrillCode first) {
    IntStream others = new Random(first.packed()).ints(0, DrillCode.SEEDS);
    return IntStream.concat(IntStream.of(first.seed()), others)
        .distinct()
        .limit(MOST_TRIED)
        .mapToObj(seed -> new DrillCode(first.level(), first.vehicle(), seed, first.print()))
        .toList();
  }
}
