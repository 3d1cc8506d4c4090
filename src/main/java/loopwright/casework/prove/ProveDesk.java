package loopwright.casework.prove;

import java.time.Clock;
import java.util.Objects;
import loopwright.casework.CaseDesk;
import loopwright.casework.MeterInHand;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Vehicle;

/** Takes up the proofs of vehicles for all front ends. */
public final class ProveDesk {
  private final Knowledge knowledge;
  private final CaseDesk cases;
  private final ProofStore store;
  private final Clock clock;
  private final Phrases phrases;

  /**
   * Sets up.
   *
   * @param knowledge failure tables, usual values and meters
   * @param cases opens cases over what is not as it should be
   * @param store where proofs are kept
   * @param clock tells the time of answers
   * @param phrases the words
   */
  public ProveDesk(
      Knowledge knowledge, CaseDesk cases, ProofStore store, Clock clock, Phrases phrases) {
    this.knowledge = Objects.requireNonNull(knowledge, "knowledge");
    this.cases = Objects.requireNonNull(cases, "cases");
    this.store = Objects.requireNonNull(store, "store");
    this.clock = Objects.requireNonNull(clock, "clock");
    this.phrases = Objects.requireNonNull(phrases, "phrases");
  }

  /**
   * Takes up the proofs of a vehicle. Takes up to some seconds; call off the window's thread.
   *
   * @param vehicleName how the vehicle is found again, for instance its file
   * @param vehicle a vehicle that can be solved
   * @param meter id of the meter's description
   * @throws Problem if the meter isn't known or the kept proofs can't be read
   */
  public Proving open(String vehicleName, Vehicle vehicle, String meter) throws Problem {
    MeterSpec spec = MeterInHand.of(knowledge, meter);
    return new Proving(vehicleName, vehicle, knowledge, spec, cases, store, clock, phrases);
  }
}
