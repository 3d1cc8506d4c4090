package loopwright.casework.practise;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.CaseDesk;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/**
 * Three kinds of learner play the same drills: one that puts the leads anywhere, one that walks
 * from the battery, one that follows the plan. {@code -Dloopwright.drills=300} plays so many each.
 */
class DrillRobotsTest {
  private static final int DRILLS = Integer.getInteger("loopwright.drills", 6);

  /** The small ones first, for the ordinary build. */
  private static final List<String> VEHICLES = List.of("motorcycle", "tractor", "truck", "pumper");

  private static final Path REPORT = Path.of("target", "evidence", "drills.txt");

  private record Play(DrillCode code, Robots robot, Debrief debrief) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%s %-15s %-10s %-8s %3d %6.1f min %2d checks %s %s%n",
          code,
          code.level().word(),
          Drills.DEMO.get(code.vehicle() - 1),
          robot,
          debrief.score(),
          debrief.own().minutes(),
          debrief.own().checks(),
          debrief.own().losses(),
          debrief.truth());
    }
  }

  private final List<Play> plays = new ArrayList<>();
  private int redrawn;

  /** Levels by turns, vehicles by turns; a vehicle that has nothing for a level is passed over. */
  private static List<DrillCode> codes() {
    List<DrillCode> codes = new ArrayList<>();
    Map<String, List<Level>> levels = new HashMap<>();
    for (int n = 0; codes.size() < DRILLS; n++) {
      int turn = n % Level.values().length;
      Level level = Level.values()[turn];
      String vehicle = VEHICLES.get((n / Level.values().length + turn) % VEHICLES.size());
      if (levels
          .computeIfAbsent(vehicle, v -> Drills.desk().levels(Bench.vehicle(v)))
          .contains(level)) {
        codes.add(Drills.code(level, vehicle, n));
      }
    }
    return codes;
  }

  @Test
  void scoresRankTheRobotsAndThePerfectOneLosesNothing() throws IOException {
    Files.createDirectories(REPORT.getParent());
    List<String> none = new ArrayList<>();
    List<DrillCode> codes = codes();
    for (DrillCode code : codes) {
      try (Drilling first = Drills.open(code)) {
        redrawn += drawnAnew(first.drill()) ? 1 : 0;
        for (Robots robot : Robots.values()) {
          play(robot, first);
        }
      } catch (Problem p) {
        none.add(p.getMessage());
      }
      Files.writeString(REPORT, table() + "no drill: " + none + "\n\n" + lines());
    }
    System.out.println(table());
    assertThat(mean(Robots.RANDOM, Debrief::score)).isLessThan(mean(Robots.WALKER, Debrief::score));
    assertThat(mean(Robots.WALKER, Debrief::score)).isLessThan(100);
    assertThat(of(Robots.PERFECT))
        .isNotEmpty()
        .allSatisfy(
            d -> {
              assertThat(d.own().losses()).isEmpty();
              assertThat(d.score()).isEqualTo(100);
            });
    assertThat(none).hasSizeLessThanOrEqualTo(codes.size() / 20);
  }

  private void play(Robots robot, Drilling first) throws Problem {
    try (Drilling drilling = Drills.desk().again(first, CaseDesk.Progress.SILENT)) {
      robot.play(drilling, first.code().seed());
      plays.add(new Play(first.code(), robot, drilling.debrief()));
    }
  }

  /** Whether the best plan didn't get through what was drawn first. */
  private static boolean drawnAnew(Drill drill) {
    Vehicle vehicle = drill.vehicle();
    return new DrillDraw(vehicle, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0))
        .draw(drill.code(), 0)
        .filter(d -> d.seed() == drill.seed())
        .isEmpty();
  }

  private List<Debrief> of(Robots robot) {
    return plays.stream().filter(p -> p.robot() == robot).map(Play::debrief).toList();
  }

  private double mean(Robots robot, ToDoubleFunction<Debrief> what) {
    return of(robot).stream().mapToDouble(what).average().orElse(0);
  }

  private String lines() {
    return plays.stream().map(Play::toString).collect(Collectors.joining());
  }

  private String table() {
    return redrawn
        + " drawn anew\n"
        + Stream.of(Robots.values())
            .map(
                r ->
                    String.format(
                        Locale.ROOT,
                        "%-8s %d drills: mean score %.1f, all found in %.1f %%, each: wasted %.2f,"
                            + " risks %.2f, accused in vain %.2f, checks %.1f, minutes %.1f%n",
                        r,
                        of(r).size(),
                        mean(r, Debrief::score),
                        100 * mean(r, d -> d.own().count(Loss.MISSED) == 0 ? 1 : 0),
                        mean(r, d -> d.own().count(Loss.WASTED)),
                        mean(r, d -> d.own().risks()),
                        mean(r, d -> d.own().count(Loss.SOUND_ACCUSED)),
                        mean(r, d -> d.own().checks()),
                        mean(r, d -> d.own().minutes())))
            .collect(Collectors.joining());
  }
}
