package loopwright.casework.sheet;

import java.util.List;

/** What a column of a list may hold. */
public interface SheetColumn {

  /** The heading it is written under; also the word that names it. */
  default String word() {
    return headings().get(0);
  }

  /** What it is called in the language in use. */
  default String said() {
    return SheetWords.say("column." + word().replace(' ', '-'));
  }

  /**
   * Headings people give it, in small letters without signs and without a unit; the written one
   * first.
   */
  List<String> headings();

  /**
   * Whether a cell may hold it, where a list has no headings to tell; false for what cells alone
   * don't tell.
   */
  boolean couldBe(String cell);
}
