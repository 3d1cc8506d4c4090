package loopwright.casework.ground;

import java.time.Clock;
import java.util.Objects;
import java.util.function.Supplier;
import loopwright.casework.MeterInHand;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofStore;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/** Where grounds are checked. */
public final class GroundDesk {
  private final Knowledge knowledge;
  private final Supplier<RuleBook> rules;
  private final ProofStore store;
  private final Clock clock;
  private final Phrases phrases;

  /**
   * A desk.
   *
   * @param rules the rules, for their cautions; asked for at the first proof
   * @param store where proofs are kept
   */
  public GroundDesk(
      Knowledge knowledge,
      Supplier<RuleBook> rules,
      ProofStore store,
      Clock clock,
      Phrases phrases) {
    this.knowledge = Objects.requireNonNull(knowledge, "knowledge");
    this.rules = Objects.requireNonNull(rules, "rules");
    this.store = Objects.requireNonNull(store, "store");
    this.clock = Objects.requireNonNull(clock, "clock");
    this.phrases = Objects.requireNonNull(phrases, "phrases");
  }

  /**
   * Takes up the grounds of a vehicle, with what is kept of them. May take a second: not on the
   * window's thread.
   *
   * @param meterId id of the meter in hand
   * @throws Problem if the meter isn't known, the vehicle can't be solved or the proofs can't be
   *     read
   */
  public GroundCheck open(Vehicle vehicle, String meterId) throws Problem {
    MeterSpec meter = MeterInHand.of(knowledge, meterId);
    if (vehicle.parts().stream().noneMatch(p -> p.kind() == PartKind.BATTERY)
        || !VehicleCheck.check(vehicle).isEmpty()) {
      throw new Problem("vehicle", vehicle.name(), phrases.say("ground.problem.unsolved"));
    }
    GroundCheck check =
        new GroundCheck(vehicle, knowledge, meter, rules, new Kept(store, vehicle, clock), phrases);
    check.read();
    return check;
  }
}
