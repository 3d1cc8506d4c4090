package loopwright.casework;

import java.util.List;

/**
 * What to do once a failure is isolated.
 *
 * @param suspect the part or group
 * @param proof readings that prove it, in words
 * @param why why it likely failed
 * @param inspect what to look at before the part goes in
 * @param repair what to do
 * @param prove how the repair is proven
 * @param cautions cautions for the repair
 */
public record RepairView(
    SuspectView suspect,
    List<String> proof,
    List<String> why,
    List<String> inspect,
    List<String> repair,
    List<String> prove,
    List<String> cautions) {
  /** Copies the lists. */
  public RepairView {
    proof = List.copyOf(proof);
    why = List.copyOf(why);
    inspect = List.copyOf(inspect);
    repair = List.copyOf(repair);
    prove = List.copyOf(prove);
    cautions = List.copyOf(cautions);
  }
}
