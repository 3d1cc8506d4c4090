package loopwright.casework;

import java.util.List;
import java.util.Optional;

/** An outlook for cases that are played from a script: the same for every check. */
public final class CannedOutlook {
  private CannedOutlook() {}

  /** The outlook on the check asked now. */
  public static Outlook of(CaseView view, Optional<String> checkId) throws Problem {
    CheckView check =
        view.next()
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
  public static Outlook.Then then(Outlook outlook, int result) {
    Outlook.Branch branch = outlook.branches().get(result);
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
}
