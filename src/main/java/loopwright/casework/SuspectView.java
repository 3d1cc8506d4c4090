package loopwright.casework;

import java.util.List;
import loopwright.diagnosis.SuspectId;

/**
 * One part, or one group of parts that no check tells apart, that is still suspected.
 *
 * @param parts ids of the parts; more than one where they form a group
 * @param title for instance "beacon ground G4"
 * @param modes its failure modes that are still held, strongest first, for instance "on paint, 900
 *     to 1500 ohm"
 * @param belief chance that the failure lies here, 0 to 1
 * @param suspects the suspects summed here
 * @param splitBy for a group: what would split it, or why nothing does; empty otherwise
 */
public record SuspectView(
    List<String> parts,
    String title,
    List<String> modes,
    double belief,
    List<SuspectId> suspects,
    String splitBy) {
  /** Copies the lists. */
  public SuspectView {
    parts = List.copyOf(parts);
    modes = List.copyOf(modes);
    suspects = List.copyOf(suspects);
  }
}
