package loopwright.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The normal distribution by its table, and small matrices by hand. */
class NormalTest {

  /** Abramowitz and Stegun 7.1.26 promises 1.5e-7 of erf, half of that of the tail. */
  private static final double ERROR = 1e-7;

  @Test
  void upperTailIsThatOfTheTable() {
    // Table of the standard normal distribution.
    double[][] rows = {
      {0, 0.5},
      {0.5, 0.3085375},
      {1, 0.1586553},
      {1.959964, 0.025},
      {2.575829, 0.005},
      {3, 0.0013499},
      {4, 3.16712e-5}
    };
    for (double[] row : rows) {
      assertThat(Normal.above(row[0])).as("above %s", row[0]).isEqualTo(row[1], within(ERROR));
      assertThat(Normal.above(-row[0])).isEqualTo(1 - row[1], within(ERROR));
    }
    assertThat(Normal.above(Double.NaN)).isEqualTo(0.5);
  }

  @Test
  void farOutItIsSmallButNeverNothing() {
    // exp(-x2/2) / (x sqrt(2 pi)) to a share of 1/x2: 7 has 1.2798e-12, 10 has 7.6199e-24.
    assertThat(Normal.above(7)).isEqualTo(1.2798e-12, within(0.03e-12));
    assertThat(Normal.above(10)).isEqualTo(7.6199e-24, within(0.1e-24));
    assertThat(Normal.above(30)).isPositive();
    for (double x = -8; x < 8; x += 0.25) {
      assertThat(Normal.above(x + 0.25)).isLessThanOrEqualTo(Normal.above(x));
    }
  }

  @Test
  void inverseOfATwoByTwoMatrixByHand() {
    double[][] inverse = Normal.inverse(new double[][] {{4, 1}, {1, 3}});
    assertThat(inverse[0][0]).isEqualTo(3 / 11.0, within(1e-12));
    assertThat(inverse[0][1]).isEqualTo(-1 / 11.0, within(1e-12));
    assertThat(inverse[1][0]).isEqualTo(-1 / 11.0, within(1e-12));
    assertThat(inverse[1][1]).isEqualTo(4 / 11.0, within(1e-12));
    assertThat(Normal.lastLogDeterminant(new double[][] {{4, 1}, {1, 3}}))
        .isEqualTo(Math.log(11), within(1e-12));
    assertThat(Normal.lastLogDeterminant(new double[][] {{0.25}}))
        .isEqualTo(Math.log(0.25), within(1e-12));
  }

  @Test
  void aMatrixTimesItsInverseIsOne() {
    Random random = new Random(9);
    for (int n = 1; n < 7; n++) {
      double[][] c = new double[n][n];
      double[][] root = new double[n][n];
      for (double[] row : root) {
        for (int k = 0; k < n; k++) {
          row[k] = random.nextGaussian();
        }
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          for (int k = 0; k < n; k++) {
            c[i][j] += root[i][k] * root[j][k];
          }
          c[i][j] += i == j ? 0.1 : 0;
        }
      }
      double[][] inverse = Normal.inverse(c);
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          double sum = 0;
          for (int k = 0; k < n; k++) {
            sum += c[i][k] * inverse[k][j];
          }
          assertThat(sum).isEqualTo(i == j ? 1 : 0, within(1e-9));
        }
      }
    }
  }

  @Test
  void twoReadingsThatAreOneStillHaveAnInverse() {
    double[][] inverse = Normal.inverse(new double[][] {{1, 1}, {1, 1}});
    for (double[] row : inverse) {
      for (double x : row) {
        assertThat(x).isFinite();
      }
    }
    assertThat(inverse[0][0]).isPositive();
  }
}
