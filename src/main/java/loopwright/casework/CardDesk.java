package loopwright.casework;

import java.util.function.Supplier;
import loopwright.diagnosis.Complaint;
import loopwright.diagnosis.Diagnosis;
import loopwright.diagnosis.Step;
import loopwright.diagnosis.Workbench;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Context;
import loopwright.knowledge.Knowledge;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;
import loopwright.solver.Network;

/** Makes order-of-checks cards. */
public final class CardDesk {
  /** Checks that a card has at most: more than any page holds. */
  private static final int MOST_CHECKS = 12;

  private final Knowledge knowledge;
  private final Supplier<RuleBook> rules;
  private final Phrases phrases;

  /**
   * A desk.
   *
   * @param rules the rules; asked for at the first card, since compiling takes seconds
   */
  public CardDesk(Knowledge knowledge, Supplier<RuleBook> rules, Phrases phrases) {
    this.knowledge = knowledge;
    this.rules = rules;
    this.phrases = phrases;
  }

  /**
   * Makes the card of a complaint, for the usual meter. Takes some seconds: not on the window's
   * thread.
   *
   * @throws Problem if the vehicle has no such circuit or load
   */
  public OrderCard card(Vehicle vehicle, CaseDesk.Complaint about) throws Problem {
    Circuit circuit = Desk.circuit(vehicle, about.circuit());
    LoadRef load = Desk.load(circuit, about.load());
    Complaint complaint = new Complaint(about.kind(), circuit.id(), load, circuit.onSetting());
    Workbench bench =
        new Workbench(
            Network.of(vehicle, knowledge.typicals()),
            knowledge,
            MeterInHand.of(knowledge, MeterInHand.USUAL));
    try (Diagnosis diagnosis =
        Diagnosis.open(bench, rules.get(), complaint, Context.IN_SERVICE, Step.SILENT)) {
      return new OrderCard(
          diagnosis, diagnosis.orderOfChecks(MOST_CHECKS), bench, rules.get(), phrases);
    }
  }
}
