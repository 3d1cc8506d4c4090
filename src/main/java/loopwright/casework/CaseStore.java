package loopwright.casework;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where cases are kept: an append-only journal each. Implemented by the io room.
 *
 * <p>An event is on disk before {@link Journal#append} returns.
 */
public interface CaseStore {

  /**
   * Starts a journal.
   *
   * @throws Problem if it can't be written
   */
  Journal create(String caseId) throws Problem;

  /**
   * Opens a journal to go on with; what was cut off at its end is left out and told in {@link
   * Loaded#missing()}.
   *
   * @throws Problem if there is none or it can't be read
   */
  Loaded load(String caseId) throws Problem;

  /**
   * Reads a journal without opening it for more; one that is open somewhere can be read too.
   *
   * @throws Problem if there is none or it can't be read
   */
  Read read(String caseId) throws Problem;

  /** Ids of the kept cases, newest first. */
  List<String> ids();

  /**
   * A photo that was put to a case.
   *
   * @param file its path as {@link Journal#photo} told it
   * @return the picture, small enough for a page; empty if it is gone, can't be read or doesn't lie
   *     below the folder of the cases
   */
  default Optional<Picture> picture(String file) {
    return Optional.empty();
  }

  /** One case's journal, open for writing. */
  interface Journal extends AutoCloseable {
    /**
     * Writes an event and forces it to disk.
     *
     * @throws Problem if it can't be written; the event does not count then
     */
    void append(CaseEvent event) throws Problem;

    /**
     * Copies a photo beside the case.
     *
     * @return its path below the folder of the cases
     * @throws Problem if it is no picture or can't be copied
     */
    String photo(Path photo) throws Problem;

    @Override
    void close();
  }

  /**
   * A journal read.
   *
   * @param events the events in order
   * @param missing what could not be read, in words; empty if all could
   */
  record Read(List<CaseEvent> events, String missing) {
    /** Copies the list. */
    public Read {
      events = List.copyOf(events);
    }
  }

  /**
   * A journal read back.
   *
   * @param events the events in order
   * @param missing what could not be read, in words; empty if all could
   * @param journal the journal, open for more
   */
  record Loaded(List<CaseEvent> events, String missing, Journal journal) {}
}
