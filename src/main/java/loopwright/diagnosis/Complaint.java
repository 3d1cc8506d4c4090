package loopwright.diagnosis;

import java.util.Objects;
import loopwright.model.LoadRef;
import loopwright.model.Setting;

/**
 * What the person saw, as a fact that can be solved.
 *
 * @param kind kind of complaint
 * @param circuit id of the circuit
 * @param load the load that shows it
 * @param on the setting in which the circuit should work
 */
public record Complaint(ComplaintKind kind, String circuit, LoadRef load, Setting on) {

  /** Rejects missing parts. */
  public Complaint {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(circuit, "circuit");
    Objects.requireNonNull(load, "load");
    Objects.requireNonNull(on, "on");
  }
}
