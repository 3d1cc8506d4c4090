package loopwright.evidence;

import java.util.List;
import loopwright.casework.DeedView;
import loopwright.casework.Problem;

/** What was told of a played case. */
public final class Deeds {
  private Deeds() {}

  /**
   * One of them by its number.
   *
   * @throws Problem if nothing was told by this number
   */
  public static DeedView numbered(int number, List<DeedView> deeds) throws Problem {
    return deeds.stream()
        .filter(d -> d.number() == number)
        .findFirst()
        .orElseThrow(() -> new Problem("deed", Integer.toString(number), "something told"));
  }
}
