package loopwright.io.journal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import loopwright.casework.CaseEvent;
import loopwright.casework.Problem;

/**
 * What a journal's bytes hold.
 *
 * @param events the events that can be relied on, in order
 * @param missing what could not be read, in sentences; empty if all could
 * @param keep how many bytes stay: up to the end of the last complete line, readable or not
 * @param endsOpen whether the last line kept lacks its line feed
 * @param next running number of the next line
 */
record Recovered(List<CaseEvent> events, String missing, int keep, boolean endsOpen, int next) {

  /** A new journal. */
  static final Recovered NOTHING = new Recovered(List.of(), "", 0, false, 1);

  /**
   * Reads a journal.
   *
   * @throws Problem if no case can be made of it, or a newer program wrote it
   */
  static Recovered from(String caseId, byte[] bytes) throws Problem {
    List<CaseEvent> events = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    Set<Integer> readings = new HashSet<>();
    int last = 0;
    int keep = 0;
    boolean endsOpen = false;
    int line = 0;
    for (int from = 0; from < bytes.length; ) {
      line++;
      int end = from;
      while (end < bytes.length && bytes[end] != '\n') {
        end++;
      }
      boolean complete = end < bytes.length;
      JournalLine.Found found = JournalLine.read(bytes, from, end);
      if (found instanceof JournalLine.Found.OtherVersion other) {
        throw new Problem(
            "case",
            caseId,
            "written in version "
                + other.version()
                + " of the case file; this program reads version "
                + JournalLine.VERSION
                + ". Nothing was changed");
      }
      if (found instanceof JournalLine.Found.Whole whole) {
        keep = complete ? end + 1 : end;
        endsOpen = !complete;
        if (whole.number() <= last) {
          notes.add("Line " + line + " repeats entry " + whole.number() + " and is left out.");
        } else {
          if (whole.number() > last + 1) {
            notes.add(gap(last + 1, whole.number() - 1));
          }
          last = whole.number();
          if (orphan(whole.event(), readings)) {
            notes.add(
                "Entry "
                    + whole.number()
                    + " is about a reading that is missing, and is left out.");
          } else {
            events.add(whole.event());
          }
        }
      } else if (complete) {
        // A complete line stays in the file even if it can't be read: it may be of use to somebody.
        keep = end + 1;
        endsOpen = false;
        if (end > from) {
          notes.add(
              "Line "
                  + line
                  + " can't be read ("
                  + ((JournalLine.Found.Broken) found).why()
                  + ") and is left out.");
        }
      } else {
        notes.add(
            "The last line was cut off while it was written and is left out: the answer given last"
                + " may have to be given again.");
      }
      from = end + 1;
    }
    if (events.isEmpty() || !(events.get(0) instanceof CaseEvent.Opened)) {
      throw new Problem(
          "case",
          caseId,
          "the case file's first entry, which says what the case is about, is missing or can't be"
              + " read. "
              + String.join(" ", notes)
              + " Nothing was changed");
    }
    return new Recovered(List.copyOf(events), String.join(" ", notes), keep, endsOpen, last + 1);
  }

  private static String gap(int first, int last) {
    return first == last
        ? "Entry " + first + " is missing."
        : "Entries " + first + " to " + last + " are missing.";
  }

  /** Whether an event speaks of a reading that isn't there, which no replay could follow. */
  private static boolean orphan(CaseEvent event, Set<Integer> readings) {
    if (event instanceof CaseEvent.Taken taken) {
      readings.add(taken.reading());
      return false;
    }
    if (event instanceof CaseEvent.Withdrawn withdrawn) {
      return !readings.contains(withdrawn.reading());
    }
    if (event instanceof CaseEvent.Corrected corrected) {
      return !readings.contains(corrected.reading());
    }
    return false;
  }
}
