package loopwright.model;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that a misspelt one was most likely meant to be. */
public final class Nearest {
  private Nearest() {}

  /**
   * The known word closest to the given one: at most one slip of the pen for every three letters,
   * and at least one allowed. A slip is a letter left out, added, changed, or two neighbours
   * changed over (optimal string alignment); case does not count.
   *
   * @param word what was written
   * @param known what could have been meant
   * @return the closest, the first of several equally close ones; empty if none is close
   */
  public static Optional<String> to(String word, Collection<String> known) {
    int allowed = Math.max(1, word.length() / 3);
    String best = null;
    for (String candidate : known) {
      if (Math.abs(candidate.length() - word.length()) > allowed) {
        continue;
      }
      int slips = slips(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (slips <= allowed && slips < Math.max(word.length(), candidate.length())) {
        best = candidate;
        allowed = slips - 1;
        if (allowed < 0) {
          break;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private static int slips(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int same = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + same);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
