package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Predicate;
import loopwright.casework.Problem;
import loopwright.io.FileWords;

/**
 * What a kind of journal holds. The discipline of its lines is the same for all.
 *
 * @param <E> its events
 */
interface Contents<E> {

  /** What one journal is about, as fields of problems say it: case. */
  String about();

  /** What of journals a problem is about. */
  enum Matter {
    /** What is in it. */
    ONE("", ""),
    /** Its file. */
    FILE(" file", ".file"),
    /** The folder of all. */
    FOLDER("s folder", ".folder");

    private final String field;
    private final String key;

    Matter(String field, String key) {
      this.field = field;
      this.key = key;
    }
  }

  /** What a journal, its file or the folder of all is called in the language in use. */
  default String named(Matter matter) {
    return FileWords.say(about() + matter.key);
  }

  /** A problem with a journal, its file or the folder of all. */
  default Problem problem(Matter matter, Object value, String accepted) {
    return new Problem(about() + matter.field, named(matter), value.toString(), accepted);
  }

  /** End of the files' names. */
  String ending();

  /** What an id must be, in words. */
  String idWords();

  /** The latest version of the file that is written and read. */
  default int latest() {
    return 1;
  }

  /** The first version of the file that has such an event; its line is written in that. */
  default int version(E event) {
    return 1;
  }

  /** An event as an object. */
  ObjectNode write(E event);

  /**
   * Reads an event.
   *
   * @throws Problem naming the field that is wrong
   */
  E read(JsonNode node) throws Problem;

  /**
   * Tells the events that speak of something missing, which no replay could follow. Asked once for
   * each event of a journal, in order.
   */
  default Predicate<E> orphans() {
    return e -> false;
  }

  /**
   * Looks at what could be read of a journal.
   *
   * @param id the journal's id
   * @param missing what could not be read, in sentences
   * @throws Problem if nothing can be made of it
   */
  default void ensureUsable(String id, List<E> events, String missing) throws Problem {}
}
