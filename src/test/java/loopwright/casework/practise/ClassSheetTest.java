package loopwright.casework.practise;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.casework.CaseDesk.Progress;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** Three drills of a sheet; all ten with {@code -Dloopwright.drills=300}. */
class ClassSheetTest {
  private static final int DRILLS =
      System.getProperty("loopwright.drills") == null ? 3 : ClassSheet.DRILLS;

  private final PractiseDesk desk = Bench.practiseDesk(new Bench.DrillsInMemory());
  private final Vehicle vehicle = Bench.vehicle("motorcycle");

  private ClassSheet sheet(DrillCode code) throws Exception {
    return ClassSheet.of(code, vehicle, desk, Progress.SILENT, DRILLS);
  }

  @Test
  void theAnswersAreWhatEachDrillGivesByItsCode() throws Exception {
    DrillCode code = DrillCode.of(Level.DEAD_LAMP, 4, 17, vehicle);
    ClassSheet sheet = sheet(code);
    assertThat(sheet.drills()).hasSize(DRILLS);
    assertThat(sheet.drills()).extracting(Debrief::code).doesNotHaveDuplicates();
    assertThat(sheet.drills()).extracting(d -> d.title() + d.truth()).doesNotHaveDuplicates();
    for (Debrief drill : sheet.drills()) {
      assertThat(drill.best().minutes()).isPositive();
      try (Drilling opened =
          desk.open(DrillCode.parse(drill.code().toString()), vehicle, Progress.SILENT)) {
        assertThat(lines(drill)).isEqualTo(lines(opened.debrief()));
        // The answers lead to the fault: who follows them loses nothing.
        assertThat(PractiseDesk.followPlan(opened).losses()).isEmpty();
        assertThat(shown(opened.way())).isEqualTo(shown(drill.best()));
      }
    }
    assertThat(sheet(code).drills())
        .extracting(ClassSheetTest::lines)
        .isEqualTo(sheet.drills().stream().map(ClassSheetTest::lines).toList());
  }

  /** All that is printed of a drill. */
  private static List<Object> lines(Debrief drill) {
    return List.of(
        drill.code(), drill.title(), drill.truth(), drill.best().minutes(), shown(drill.best()));
  }

  private static List<String> shown(Way way) {
    return way.steps().stream().map(s -> s.what() + ": " + s.shown()).toList();
  }
}
