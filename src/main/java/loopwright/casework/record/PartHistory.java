package loopwright.casework.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loopwright.casework.Account;
import loopwright.casework.ClearedView;

/** What the kept cases of a vehicle say of one of its parts. */
public final class PartHistory {
  private PartHistory() {}

  /** What happened to a part in a case. */
  public enum What {
    FOUND,
    MENDED,
    PROVEN,
    RULED_OUT,
    READ
  }

  /**
   * An entry.
   *
   * @param at when
   * @param caseId the case
   * @param title the case in words
   * @param what what happened
   * @param words more of it: how it had failed, by what it was ruled out, what was read
   */
  public record Entry(Instant at, String caseId, String title, What what, String words) {}

  /**
   * The entries of a part, latest case first; within a case in the order in which it happened.
   *
   * @param records kept cases, of whatever vehicles
   */
  public static List<Entry> of(List<CaseRecord> records, String vehicleId, String part) {
    List<Entry> entries = new ArrayList<>();
    for (CaseRecord record : records) {
      if (record.opened().vehicleId().equals(vehicleId)) {
        entries.addAll(of(record, part));
      }
    }
    return entries;
  }

  /** The entries of a part in one case. */
  public static List<Entry> of(CaseRecord record, String part) {
    List<Entry> entries = new ArrayList<>();
    for (CaseRecord.Stage stage : record.stages()) {
      String read =
          stage.readings().stream()
              .filter(r -> !r.withdrawn() && r.check().subjects().contains(part))
              .map(r -> stage.line(r.number()).map(Account.Line::value).orElse(r.answer().words()))
              .collect(Collectors.joining(", "));
      Instant end = stage.mend().map(CaseRecord.Mend::at).orElse(record.last());
      if (!read.isEmpty()) {
        entries.add(entry(record, end, What.READ, read));
      }
      stage.account().stream()
          .flatMap(a -> a.cleared().stream())
          .filter(c -> c.part().equals(part))
          .map(ClearedView::why)
          .forEach(why -> entries.add(entry(record, end, What.RULED_OUT, why)));
      stage
          .fault()
          .filter(f -> f.causes().stream().anyMatch(c -> c.part().equals(part)))
          .ifPresent(
              f -> entries.add(entry(record, end, What.FOUND, String.join("; ", f.modes()))));
      stage
          .mend()
          .filter(m -> m.part().equals(part))
          .ifPresent(m -> entries.add(entry(record, m.at(), What.MENDED, "")));
      stage
          .proven()
          .filter(part::equals)
          .ifPresent(p -> entries.add(entry(record, end, What.PROVEN, "")));
    }
    return entries;
  }

  private static Entry entry(CaseRecord record, Instant at, What what, String words) {
    return new Entry(at, record.opened().caseId(), record.title(), what, words);
  }
}
