package loopwright.casework;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;

/**
 * A case to practise on: a demo vehicle with something wrong that only the practice meter knows.
 *
 * @param id name of the case
 * @param title what it is about, in a few words that give nothing away
 * @param vehicle name of the demo vehicle
 * @param complaint what is wrong, in words
 * @param circuit id of the circuit complained of
 * @param kind what it does
 * @param context what came before
 * @param story what the owner tells, in sentences
 * @param truth what has really failed; at least one
 * @param meter id of the meter description
 */
public record ReadyCase(
    String id,
    String title,
    String vehicle,
    String complaint,
    String circuit,
    ComplaintKind kind,
    Context context,
    String story,
    List<Fault> truth,
    String meter) {

  /**
   * A part that has really failed.
   *
   * @param part id of the part
   * @param mode name of its failure mode, with the element where a part has several: {@code
   *     open:leg:a}
   * @param ohms its resistance in ohms, for a mode that may have any of a range; empty: by chance
   */
  public record Fault(String part, String mode, Optional<Double> ohms) {
    /** Rejects missing parts and an ohms value that is no resistance. */
    public Fault {
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(mode, "mode");
      if (ohms.isPresent() && !(ohms.get() >= 0 && Double.isFinite(ohms.get()))) {
        throw new IllegalArgumentException(
            "part " + part + ", mode " + mode + ": " + ohms.get() + " ohm, must be 0 or more");
      }
    }
  }

  /** Copies the list; rejects a case in which nothing has failed. */
  public ReadyCase {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(context, "context");
    truth = List.copyOf(truth);
    if (truth.isEmpty()) {
      throw new IllegalArgumentException("case " + id + ": nothing has failed");
    }
  }
}
