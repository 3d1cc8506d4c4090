package loopwright.casework.ground;

import java.util.List;
import java.util.Optional;
import loopwright.casework.PointView;
import loopwright.casework.SettingView;

/**
 * A ground and its proof, complete enough to be done from these words alone.
 *
 * @param id its id
 * @param title what a person calls it
 * @param own what it should have by its size, length and contacts
 * @param proof how it is proven; empty where no load proves it
 * @param unproven why not; empty where one does
 * @param ohms what an ohms reading can show of it and what it can't
 * @param result what the last proof said; empty if there was none
 * @param since what was changed since then; empty if nothing
 */
public record GroundView(
    String id,
    String title,
    String own,
    Optional<Proof> proof,
    String unproven,
    String ohms,
    Optional<GroundResult> result,
    String since) {

  /**
   * The proof by the volts lost.
   *
   * @param set how the vehicle is set up, and what changes for it
   * @param works what must be at work, in a sentence: without current nothing is proven
   * @param red where the red lead goes
   * @param black where the black lead goes
   * @param meter what the meter is set to
   * @param healthy what a sound vehicle shows
   * @param good which readings are good
   * @param bad which are bad
   * @param limit the limit and for what current
   * @param source where the limit comes from
   * @param notes what else to know, a sentence each
   * @param cautions what to be careful of, a sentence each
   * @param greater whether there is a proof with a greater current
   */
  public record Proof(
      SettingView set,
      String works,
      PointView red,
      PointView black,
      String meter,
      String healthy,
      String good,
      String bad,
      String limit,
      String source,
      List<String> notes,
      List<String> cautions,
      boolean greater) {
    /** Copies the lists. */
    public Proof {
      notes = List.copyOf(notes);
      cautions = List.copyOf(cautions);
    }
  }
}
