package loopwright.cli;

import java.util.List;

/** What may be typed in a conversation in lines, and beside it what that does. */
final class HelpPage {
  /** Columns of what may be typed. */
  private static final int TYPED = 26;

  private HelpPage() {}

  /**
   * Shows rows.
   *
   * @param talk whose rows they are: what their keys begin with
   */
  static void show(Page page, String talk, List<String> rows) {
    for (String row : rows) {
      String typed = Speech.of("typed." + talk + row);
      page.block(
          typed + " ".repeat(Math.max(1, TYPED - typed.length())), Speech.of("help." + talk + row));
    }
  }
}
