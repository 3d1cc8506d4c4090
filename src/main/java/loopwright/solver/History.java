package loopwright.solver;

import java.util.BitSet;

/**
 * What outlasts a setting: fuses that have blown. Elements are named by number.
 *
 * @param blown numbers of blown links
 */
public record History(BitSet blown) {

  /** Nothing has blown. */
  public static final History NONE = new History(new BitSet());

  /** Copies the set. */
  public History {
    blown = (BitSet) blown.clone();
  }

  @Override
  public BitSet blown() {
    return (BitSet) blown.clone();
  }

  /** Whether this link has blown. */
  boolean hasBlown(int element) {
    return blown.get(element);
  }
}
