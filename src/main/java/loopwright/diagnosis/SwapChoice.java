package loopwright.diagnosis;

import java.util.List;
import java.util.OptionalDouble;
import loopwright.diagnosis.plan.RepairOrder;

/**
 * Whether a part is to be swapped for a good one rather than tested. A swap stays among the
 * proposals only where it is expected to cost less than the quickest test that tells as much about
 * the part, or where there is no such test.
 */
final class SwapChoice {

  /** Share of what there is to learn about a part from which a test counts as sure to tell. */
  private static final double TELLS = 0.8;

  private SwapChoice() {}

  /** The proposals in the same order, without swaps that a test beats. */
  static List<Findings.Proposal> worthwhile(List<Findings.Proposal> ranked) {
    return ranked.stream().filter(p -> worthwhile(p, ranked)).toList();
  }

  private static boolean worthwhile(Findings.Proposal swap, List<Findings.Proposal> ranked) {
    if (swap.check().kind() != CheckKind.SWAP) {
      return true;
    }
    String part = swap.check().subject().orElseThrow();
    double chance = chance(swap, part);
    double open = entropy(chance);
    OptionalDouble test =
        ranked.stream()
            .filter(p -> p.check().kind() != CheckKind.SWAP && !p.outcomes().isEmpty())
            .filter(p -> tells(p, part, chance) >= TELLS * open)
            .mapToDouble(Findings.Proposal::minutes)
            .min();
    return test.isEmpty()
        || RepairOrder.swapRatherThanTest(chance, swap.minutes(), test.getAsDouble());
  }

  /** Chance that a part has failed, before the result of a check is known. */
  private static double chance(Findings.Proposal p, String part) {
    double all = 0;
    double sum = 0;
    for (Findings.Outcome o : p.outcomes()) {
      all += o.chance();
      sum += o.chance() * o.parts().getOrDefault(part, 0.0);
    }
    return all > 0 ? sum / all : 0;
  }

  /** What a check is expected to tell about whether a part has failed, in bits. */
  private static double tells(Findings.Proposal p, String part, double chance) {
    double all = 0;
    double left = 0;
    for (Findings.Outcome o : p.outcomes()) {
      all += o.chance();
      left += o.chance() * entropy(o.parts().getOrDefault(part, 0.0));
    }
    return all > 0 ? entropy(chance) - left / all : 0;
  }

  private static double entropy(double p) {
    return p <= 0 || p >= 1 ? 0 : -(p * log2(p) + (1 - p) * log2(1 - p));
  }

  private static double log2(double x) {
    return Math.log(x) / Math.log(2);
  }
}
