package loopwright.knowledge;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import loopwright.meter.MeterSpec;
import loopwright.model.PartKind;
import loopwright.model.Typicals;

/**
 * Everything read from the knowledge folder except the rules.
 *
 * @param typicals usual values and spreads
 * @param faults failure modes of every kind of part
 * @param testSlip chance that one reading was not taken as asked (lead on paint, wrong point)
 * @param meters meter descriptions that come with the program
 * @param wireFuses the greatest fuse for each size of wire
 * @param patternValues what circuit patterns begin with
 */
public record Knowledge(
    Typicals typicals,
    List<FaultMode> faults,
    double testSlip,
    List<MeterSpec> meters,
    WireFuses wireFuses,
    PatternValues patternValues) {

  /** Copies the lists. */
  public Knowledge {
    Objects.requireNonNull(typicals, "typicals");
    Objects.requireNonNull(wireFuses, "wireFuses");
    Objects.requireNonNull(patternValues, "patternValues");
    faults = List.copyOf(faults);
    meters = List.copyOf(meters);
  }

  /** The failure modes of a kind of part. */
  public List<FaultMode> faults(PartKind kind) {
    return faults.stream().filter(f -> f.kind() == kind).toList();
  }

  /**
   * The same with the rates of its failure modes multiplied; none becomes more than 1.
   *
   * @param factor 0 and up
   */
  public Knowledge rated(ToDoubleFunction<FaultMode> factor) {
    List<FaultMode> rated =
        faults.stream().map(mode -> mode.rated(factor.applyAsDouble(mode))).toList();
    return new Knowledge(typicals, rated, testSlip, meters, wireFuses, patternValues);
  }

  /** The meter with this id. */
  public Optional<MeterSpec> meter(String id) {
    return meters.stream().filter(m -> m.id().equals(id)).findFirst();
  }
}
