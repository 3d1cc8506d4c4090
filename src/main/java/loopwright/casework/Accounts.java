package loopwright.casework;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.Findings;
import loopwright.model.Vehicle;

/** Makes the account of a case from what it shows. */
final class Accounts {
  private Accounts() {}

  /**
   * The account.
   *
   * @param proven id of the part whose mend the readings prove, if they do
   */
  static Account of(CaseView view, Findings findings, Vehicle vehicle, Optional<String> proven) {
    List<Account.Line> lines =
        view.readings().stream()
            .map(
                r ->
                    new Account.Line(
                        r.id(), r.where(), r.setting(), r.value(), r.healthyWords(), r.did()))
            .toList();
    return new Account(
        view.title(),
        view.status(),
        view.minutes(),
        lines,
        view.cleared(),
        view.repair().map(repair -> fault(repair, findings, vehicle)),
        proven);
  }

  private static Account.Fault fault(RepairView repair, Findings findings, Vehicle vehicle) {
    List<Account.Cause> causes = new ArrayList<>();
    for (Findings.PartBelief part : findings.parts()) {
      if (repair.suspect().parts().contains(part.part())) {
        for (Findings.ModeBelief mode : part.modes()) {
          causes.add(
              new Account.Cause(
                  part.part(),
                  vehicle.requirePart(part.part()).kind(),
                  mode.suspect().row(),
                  mode.belief()));
        }
      }
    }
    causes.sort(Comparator.comparingDouble(Account.Cause::belief).reversed());
    return new Account.Fault(
        repair.suspect().title(),
        repair.suspect().modes(),
        repair.suspect().belief(),
        causes,
        repair.proof(),
        repair.why(),
        repair.inspect(),
        repair.repair(),
        repair.prove(),
        repair.cautions());
  }
}
