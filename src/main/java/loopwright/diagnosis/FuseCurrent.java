package loopwright.diagnosis;

import java.util.Optional;
import loopwright.meter.MeterSpec;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import loopwright.solver.Element;

/**
 * The current through a fuse from the drop across it: a fuse is a resistor of some milliohms that
 * nobody has to cut the wire for. Its cold resistance is known within a spread, so the current is
 * known within one. Some ten milliamperes don't show (the meter's last digit is 0.1 mV). Burnt
 * clips drop more for the same current, so this tells a person what flows and proves nothing by
 * itself.
 */
final class FuseCurrent {

  private final Workbench bench;
  private final Vehicle vehicle;

  FuseCurrent(Workbench bench) {
    this.bench = bench;
    this.vehicle = bench.vehicle();
  }

  /** Least and greatest current in amperes; empty if the reading is no drop across a fuse. */
  Optional<double[]> amps(Reading reading) {
    Check check = reading.check();
    if (!(reading.value() instanceof Reading.Value.Number n) || !check.kind().reads()) {
      return Optional.empty();
    }
    return fuse(check)
        .flatMap(f -> bench.network().element(f, "link"))
        .map(e -> (Element.Link) bench.network().elements().get(e))
        .filter(link -> Math.abs(n.value()) < SMALL_DROP)
        .map(
            link -> {
              MeterSpec meter = bench.meter();
              double volts = Math.abs(n.value());
              double off = meter.error(Workbench.function(check), n.value()) + n.step() / 2;
              return new double[] {
                Math.max(0, volts - off) / link.ohms().high(), (volts + off) / link.ohms().low()
              };
            });
  }

  /** Volts across a fuse above which it has blown or its clips are bad. */
  private static final double SMALL_DROP = 0.3;

  /** The fuse that both leads lie across. */
  private Optional<String> fuse(Check check) {
    return check
        .acrossPart()
        .filter(p -> vehicle.part(p).map(Part::kind).filter(PartKind.FUSE::equals).isPresent());
  }
}
