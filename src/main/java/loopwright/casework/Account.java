package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.model.PartKind;

/**
 * What a case said at one time, in the words that stood on the screen. It is kept with the case, so
 * that a record says what was said then, whatever has become of the vehicle's file, the tables or
 * the program since.
 *
 * @param title complaint and vehicle in words
 * @param status where the search stood
 * @param minutes working time of the checks so far
 * @param readings the readings that counted, in the order taken; after a mend those since
 * @param cleared parts ruled out, each by its readings
 * @param fault what was found; empty unless it was isolated
 * @param proven id of the part whose mend all these readings prove; empty if none is
 */
public record Account(
    String title,
    CaseView.Status status,
    double minutes,
    List<Line> readings,
    List<ClearedView> cleared,
    Optional<Fault> fault,
    Optional<String> proven) {

  /** Copies the lists. */
  public Account {
    readings = List.copyOf(readings);
    cleared = List.copyOf(cleared);
  }

  /**
   * A reading in words.
   *
   * @param reading its number
   * @param where the two points or the part
   * @param setting the set-up
   * @param value what was read
   * @param healthy what a healthy vehicle shows there
   * @param did what it did
   */
  public record Line(
      int reading, String where, List<String> setting, String value, String healthy, String did) {
    /** Copies the list. */
    public Line {
      setting = List.copyOf(setting);
    }
  }

  /**
   * What was found.
   *
   * @param title the part or group
   * @param modes its failure modes, strongest first
   * @param belief chance that it is right, 0 to 1
   * @param causes the same for counting, strongest first
   * @param proof the readings that prove it
   * @param why why it likely failed
   * @param inspect what to look at before the part goes in
   * @param repair what to do
   * @param prove how the repair is proven
   * @param cautions cautions for the repair
   */
  public record Fault(
      String title,
      List<String> modes,
      double belief,
      List<Cause> causes,
      List<String> proof,
      List<String> why,
      List<String> inspect,
      List<String> repair,
      List<String> prove,
      List<String> cautions) {
    /** Copies the lists. */
    public Fault {
      modes = List.copyOf(modes);
      causes = List.copyOf(causes);
      proof = List.copyOf(proof);
      why = List.copyOf(why);
      inspect = List.copyOf(inspect);
      repair = List.copyOf(repair);
      prove = List.copyOf(prove);
      cautions = List.copyOf(cautions);
    }
  }

  /**
   * One way in which it may have failed.
   *
   * @param part id of the part
   * @param kind its kind
   * @param mode name of the failure mode within the kind
   * @param belief its chance, 0 to 1
   */
  public record Cause(String part, PartKind kind, String mode, double belief) {}
}
