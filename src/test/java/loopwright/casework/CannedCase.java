package loopwright.casework;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What cases that are played from a script have in common: one outlook for every check, and nothing
 * that the real search is needed for.
 */
public interface CannedCase extends FindCase {

  /** The outlook on the check asked now. */
  @Override
  default Outlook outlook(Optional<String> checkId) throws Problem {
    CheckView check =
        view()
            .next()
            .filter(c -> checkId.map(c.id()::equals).orElse(true))
            .orElseThrow(() -> new Problem("check", checkId.orElse(""), "the check asked now"));
    return new Outlook(
        check.id(),
        check.kind(),
        "volts DC at beacon ground G4",
        List.of(),
        check.minutes(),
        true,
        "",
        check.outcomes().stream()
            .map(
                o ->
                    new Outlook.Branch(o, List.of(new Outlook.Left("G4", "beacon ground G4", 0.6))))
            .toList(),
        List.of(new Outlook.Choice("volts F3.load>BATT.neg", "volts DC at beacon fuse F3", 2)));
  }

  /** What follows: another check on its first result, a repair on any other. */
  @Override
  default Outlook.Then then(String checkId, int result) throws Problem {
    Outlook.Branch branch = outlook(Optional.of(checkId)).branches().get(result);
    return result == 0
        ? new Outlook.Then(
            CaseView.Move.CHECK,
            "volts DC at beacon fuse F3",
            Optional.of("volts F3.load>BATT.neg"),
            List.of("key on"),
            2,
            branch.left(),
            List.of(branch.outcome()))
        : new Outlook.Then(
            CaseView.Move.REPAIR,
            "found: beacon ground G4",
            Optional.empty(),
            List.of(),
            0,
            branch.left(),
            List.of());
  }

  @Override
  default Proposer first() {
    return Proposer.PROGRAM;
  }

  @Override
  default CaseView propose(Proposer first) throws Problem {
    throw new Problem("first", first.word(), "a case over the real search");
  }

  @Override
  default Comparison compare(OwnCheck learners) throws Problem {
    throw new Problem("proposal", learners.check().id(), "a case over the real search");
  }

  @Override
  default CaseView settle(OwnCheck learners, Proposer taken) throws Problem {
    throw new Problem("proposal", learners.check().id(), "a case over the real search");
  }

  @Override
  default Map<String, Double> shows(OwnCheck check) {
    return Map.of();
  }

  @Override
  default Appraisal appraise(OwnCheck check, Optional<OwnCheck> before) {
    return new Appraisal(check.kind().word(), 0.5, true, 1, List.of());
  }
}
