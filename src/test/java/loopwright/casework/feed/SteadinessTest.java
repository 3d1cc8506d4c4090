package loopwright.casework.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import loopwright.meter.MeterLine.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Generated readings: values are volts with two places, times in seconds. */
class SteadinessTest {
  private static final int RUNS = 2_000;
  private static final double DIGIT = 0.01;

  private record Found(double at, double value) {}

  /** The first steady reading of a signal that is sampled with a last digit of 10 mV. */
  private static Optional<Found> first(
      DoubleUnaryOperator volts, double everySeconds, double seconds) {
    Steadiness steadiness = new Steadiness();
    for (double t = 0; t < seconds; t += everySeconds) {
      BigDecimal shown =
          BigDecimal.valueOf(volts.applyAsDouble(t)).setScale(2, RoundingMode.HALF_EVEN);
      steadiness.add(shown, Quantity.VOLTS, (long) (t * 1e9));
      Optional<Steadiness.Still> still = steadiness.still();
      if (still.isPresent()) {
        return Optional.of(new Found(t, still.get().amount().orElseThrow().doubleValue()));
      }
    }
    return Optional.empty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.1, 0.3, 1, 2})
  void aRestingReadingIsTakenSoonAndRight(double every) {
    Random random = new Random(1);
    for (int run = 0; run < RUNS; run++) {
      double truth = 11 + 2 * random.nextDouble();
      Optional<Found> found = first(t -> truth + 0.3 * DIGIT * random.nextGaussian(), every, 60);
      assertThat(found).as("run " + run).isPresent();
      assertThat(found.get().value()).isBetween(truth - 1.5 * DIGIT, truth + 1.5 * DIGIT);
      assertThat(found.get().at()).isGreaterThanOrEqualTo(1.49).isLessThan(1.6 + 12 * every);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.1, 0.3})
  void aDriftOfTwoDigitsASecondIsNeverTaken(double every) {
    Random random = new Random(2);
    for (int run = 0; run < RUNS; run++) {
      double speed = (2 + 20 * random.nextDouble()) * DIGIT * (random.nextBoolean() ? 1 : -1);
      double start = 11 + random.nextDouble();
      assertThat(first(t -> start + speed * t + 0.3 * DIGIT * random.nextGaussian(), every, 10))
          .as("run " + run + ", " + speed + " V/s")
          .isEmpty();
    }
  }

  @Test
  void aBouncingContactThatNeverRestsLongIsNeverTaken() {
    Random random = new Random(3);
    for (int run = 0; run < RUNS; run++) {
      double on = 12 + random.nextDouble();
      double off = on - (4 + random.nextInt(1000)) * DIGIT;
      boolean[] closed = {true};
      double[] until = {0};
      DoubleUnaryOperator bouncing =
          t -> {
            if (t >= until[0]) {
              closed[0] = !closed[0];
              until[0] = t + 0.02 + 1.2 * random.nextDouble();
            }
            return closed[0] ? on : off;
          };
      assertThat(first(bouncing, 0.1, 20)).as("run " + run).isEmpty();
    }
  }

  @Test
  void aSwingIsNeverTaken() {
    Random random = new Random(4);
    for (int run = 0; run < RUNS; run++) {
      double swing = (2.5 + 20 * random.nextDouble()) * DIGIT;
      double period = 0.25 + 1.25 * random.nextDouble();
      double phase = 7 * random.nextDouble();
      assertThat(first(t -> 12 + swing * Math.sin(phase + 2 * Math.PI * t / period), 0.07, 10))
          .as("run " + run + ", " + swing + " V in " + period + " s")
          .isEmpty();
    }
  }

  @Test
  void aSettlingReadingIsTakenWhenItHasSettled() {
    Random random = new Random(5);
    for (int run = 0; run < RUNS; run++) {
      double from = 12 * random.nextDouble();
      double to = 12 * random.nextDouble();
      double tau = 0.1 + random.nextDouble();
      Found found = first(t -> to + (from - to) * Math.exp(-t / tau), 0.1, 60).orElseThrow();
      assertThat(Math.abs(found.value() - to)).isLessThanOrEqualTo(3 * DIGIT);
    }
  }

  @Test
  void onePulseBetweenTwoReadingsOfASliceIsSeen() {
    Steadiness steadiness = new Steadiness();
    for (int i = 0; i < 2_000; i++) {
      BigDecimal shown = new BigDecimal(i == 1_500 ? "3.00" : "12.40");
      steadiness.add(shown, Quantity.VOLTS, i * 1_000_000L);
    }
    assertThat(steadiness.still()).isEmpty();
  }

  @Test
  void overRangeIsSteadyOnlyByItself() {
    Steadiness steadiness = new Steadiness();
    for (int i = 0; i < 20; i++) {
      steadiness.addOver(i * 100_000_000L);
    }
    assertThat(steadiness.still()).contains(new Steadiness.Still(Optional.empty()));
    steadiness.add(new BigDecimal("4.7"), Quantity.OHMS, 2_000_000_000L);
    assertThat(steadiness.still()).isEmpty();
  }

  @Test
  void aPauseBeginsAnew() {
    Steadiness steadiness = new Steadiness();
    for (int i = 0; i < 20; i++) {
      steadiness.add(new BigDecimal("12.40"), Quantity.VOLTS, i * 100_000_000L);
    }
    assertThat(steadiness.still()).isPresent();
    steadiness.add(new BigDecimal("12.40"), Quantity.VOLTS, 9_000_000_000L);
    assertThat(steadiness.still()).isEmpty();
  }

  @Test
  void memoryIsBoundedHoweverFastReadingsCome() {
    Steadiness steadiness = new Steadiness();
    for (int i = 0; i < 1_000_000; i++) {
      steadiness.add(new BigDecimal("12.40"), Quantity.VOLTS, i * 1_000L + i % 7);
      assertThat(steadiness.size()).isLessThan(120);
    }
  }

  @Test
  void aDigitIsNoFinerThanThatOfAHandHeldMeter() {
    assertThat(Steadiness.digit(new BigDecimal("12.4"), Quantity.VOLTS)).isEqualTo(0.1);
    assertThat(Steadiness.digit(new BigDecimal("12.412345"), Quantity.VOLTS)).isEqualTo(0.01);
    assertThat(Steadiness.digit(new BigDecimal("0.0123456"), Quantity.VOLTS)).isEqualTo(0.0001);
    assertThat(Steadiness.digit(new BigDecimal("4712.345"), Quantity.OHMS)).isEqualTo(1);
  }
}
