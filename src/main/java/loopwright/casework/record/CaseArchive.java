package loopwright.casework.record;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Picture;
import loopwright.casework.Problem;

/** The kept cases, to be looked at. */
public interface CaseArchive {

  /**
   * The kept cases.
   *
   * @param records those that can be read, newest first
   * @param unread why the others can't be
   */
  record Shelf(List<CaseRecord> records, List<Unread> unread) {
    /** Copies the lists. */
    public Shelf {
      records = List.copyOf(records);
      unread = List.copyOf(unread);
    }
  }

  /** A case that can't be read, and why. */
  record Unread(String caseId, String why) {}

  /** All cases; one that is open somewhere too. */
  Shelf shelf();

  /**
   * One case.
   *
   * @throws Problem if there is none or it can't be read
   */
  CaseRecord record(String caseId) throws Problem;

  /**
   * Puts a photo to a case that is open nowhere; it is copied beside the case.
   *
   * @param caption what it shows; may be empty
   * @throws Problem if it is no picture, can't be copied, or the case is open
   */
  void attach(String caseId, Path photo, String caption) throws Problem;

  /**
   * A photo that was put to a case; empty if it can't be shown.
   *
   * @param file its path as the case has it
   */
  default Optional<Picture> picture(String file) {
    return Optional.empty();
  }
}
