package loopwright.io.journal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import loopwright.casework.Problem;
import loopwright.io.FileWords;

/**
 * What a journal's bytes hold.
 *
 * @param events the events that can be relied on, in order
 * @param missing what could not be read, in sentences; empty if all could
 * @param keep how many bytes stay: up to the end of the last complete line, readable or not
 * @param endsOpen whether the last line kept lacks its line feed
 * @param next running number of the next line
 */
record Recovered<E>(List<E> events, String missing, int keep, boolean endsOpen, int next) {

  /** A new journal. */
  static <E> Recovered<E> nothing() {
    return new Recovered<>(List.of(), "", 0, false, 1);
  }

  /**
   * Reads a journal.
   *
   * @throws Problem if nothing can be made of it, or a newer program wrote it
   */
  static <E> Recovered<E> from(Contents<E> contents, String id, byte[] bytes) throws Problem {
    List<E> events = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    Predicate<E> orphans = contents.orphans();
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
      JournalLine.Found<E> found = JournalLine.read(contents, bytes, from, end);
      if (found instanceof JournalLine.Found.OtherVersion<E> other) {
        throw contents.problem(
            Contents.Matter.ONE,
            id,
            FileWords.say(
                "journal.version",
                other.version(),
                contents.named(Contents.Matter.FILE),
                Integer.toString(contents.latest())));
      }
      if (found instanceof JournalLine.Found.Whole<E> whole) {
        keep = complete ? end + 1 : end;
        endsOpen = !complete;
        if (whole.number() <= last) {
          notes.add(say("repeats", line, whole.number()));
        } else {
          if (whole.number() > last + 1) {
            notes.add(gap(last + 1, whole.number() - 1));
          }
          last = whole.number();
          if (orphans.test(whole.event())) {
            notes.add(say("orphan", whole.number()));
          } else {
            events.add(whole.event());
          }
        }
      } else if (complete) {
        // A complete line stays in the file even if it can't be read: it may be of use to somebody.
        keep = end + 1;
        endsOpen = false;
        if (end > from) {
          String why = ((JournalLine.Found.Broken<E>) found).why();
          notes.add(FileWords.say("journal.broken", Integer.toString(line), why));
        }
      } else {
        notes.add(say("cut"));
      }
      from = end + 1;
    }
    contents.ensureUsable(id, List.copyOf(events), String.join(" ", notes));
    return new Recovered<>(List.copyOf(events), String.join(" ", notes), keep, endsOpen, last + 1);
  }

  private static String gap(int first, int last) {
    return first == last ? say("gap", first) : say("gaps", first, last);
  }

  private static String say(String key, int... numbers) {
    Object[] args = Arrays.stream(numbers).mapToObj(Integer::toString).toArray();
    return FileWords.say("journal." + key, args);
  }
}
