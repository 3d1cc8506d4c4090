package loopwright.diagnosis;

import java.util.Optional;
import loopwright.meter.MeterFunction;

/** What a vehicle without failures shows, with the meter's greatest error on top. */
public final class HealthyBands {
  private final Workbench bench;
  private final Predictor predictor;

  /** Bands of a vehicle. */
  public HealthyBands(Workbench bench) {
    this(bench, new Predictor(bench));
  }

  HealthyBands(Workbench bench, Predictor predictor) {
    this.bench = bench;
    this.predictor = predictor;
  }

  /**
   * Least and greatest value in volts or ohms.
   *
   * @param check a meter check
   */
  public double[] band(Check check) {
    return band(bench.healthy(), check);
  }

  /** A drain has loads of wide spread at its root: there the slopes say nothing, bounds do. */
  private Predictor.Possible possible(Hypothesis h, Check check) {
    Optional<Predictor.Possible> bounds =
        check.kind() == CheckKind.DRAIN ? predictor.outer(h, check) : Optional.empty();
    return bounds.orElseGet(() -> predictor.possibleAtCorners(h, check));
  }

  double[] band(Hypothesis h, Check check) {
    Predictor.Possible band = possible(h, check);
    MeterFunction f = Workbench.function(check);
    double low = band.low() - bench.meter().error(f, band.low());
    double high =
        Double.isInfinite(band.high())
            ? band.high()
            : band.high() + bench.meter().error(f, band.high());
    // Where a healthy circuit is live, ohms read nonsense, which may lie below nought altogether.
    boolean atNought = check.kind() == CheckKind.OHMS && high >= 0;
    return new double[] {atNought ? Math.max(0, low) : low, high};
  }
}
