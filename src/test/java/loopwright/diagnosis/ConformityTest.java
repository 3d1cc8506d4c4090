package loopwright.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import loopwright.meter.MeterSpec;
import loopwright.published.Csv;
import org.junit.jupiter.api.Test;

/**
 * Error limits of a meter, and how likely a value is within a limit when the reading lies beside it
 * (JCGM 106:2012, ILAC-G8): values and sources in published/meter-methods.csv. Shown for the normal
 * distribution that weighs readings and for the meter's ranges.
 */
class ConformityTest {
  private static final List<Map<String, String>> ROWS = Csv.rows("/published/meter-methods.csv");

  /** What the approximation of the normal distribution promises. */
  private static final double NORMAL = 1.5e-7;

  private static double value(String id) {
    return ROWS.stream()
        .filter(r -> r.get("id").equals(id))
        .mapToDouble(r -> Double.parseDouble(r.get("value")))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_reading_1_4_deviations_inside_a_limit_conforms_as_likely_as_printed() {
    assertEquals(value("conf.phi140"), 1 - Normal.above(1.4), 5e-4);
    assertEquals(value("conf.phi140.c"), 1 - Normal.above(1.4), NORMAL);
  }

  @Test
  void guard_bands_leave_the_published_risk_of_false_acceptance() {
    assertEquals(value("conf.guard"), Normal.above(2), NORMAL);
    assertEquals(value("conf.half"), Normal.above(1), NORMAL);
    assertEquals(value("conf.noguard"), Normal.above(0), NORMAL);
  }

  @Test
  void error_limits_are_percent_of_reading_plus_digits() {
    MeterSpec.Range twenty = new MeterSpec.Range(20, 0.01, 0.5, 3);
    MeterSpec.Range two = new MeterSpec.Range(2, 0.001, 0.5, 3);
    assertEquals(value("acc.20V.12.6"), twenty.error(12.6), 1e-9);
    assertEquals(value("acc.20V.12.5"), twenty.error(12.5), 1e-9);
    assertEquals(value("acc.direct"), two.error(0.1), 1e-9);
  }
}
