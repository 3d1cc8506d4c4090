package loopwright.ui.cases;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Account;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.PartHistory;
import loopwright.ui.Texts;

/**
 * A kept case in the list.
 *
 * @param caseId its id
 * @param record what it says; empty if it can't be read
 * @param title what it is about
 * @param state where it stands
 * @param lines what else is told of it
 */
public record CaseRow(
    String caseId, Optional<CaseRecord> record, String title, String state, List<String> lines) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withZone(ZoneId.systemDefault());

  /** Copies the list. */
  public CaseRow {
    lines = List.copyOf(lines);
  }

  /**
   * A case that can be read.
   *
   * @param part id of a part whose history is told too; empty for none
   */
  public static CaseRow of(CaseRecord record, String part) {
    List<String> lines = new ArrayList<>();
    long readings = record.readings().stream().filter(r -> !r.withdrawn()).count();
    lines.add(
        Texts.of(
            record.opened().practice() ? "cases.practice" : "cases.detail",
            DAY.format(record.last()),
            Long.toString(readings),
            record.opened().vehicleName()));
    record.stages().stream()
        .flatMap(s -> s.fault().stream())
        .reduce((a, b) -> b)
        .map(Account.Fault::title)
        .ifPresent(title -> lines.add(Texts.of("cases.found", title)));
    for (PartHistory.Entry entry : PartHistory.of(record, part)) {
      lines.add(words(entry, part));
    }
    return new CaseRow(
        record.opened().caseId(),
        Optional.of(record),
        record.title(),
        Texts.of(record.state()),
        lines);
  }

  private static String words(PartHistory.Entry entry, String part) {
    String what = Texts.of("cases.part", part, Texts.of(entry.what()));
    return entry.words().isEmpty() ? what : Texts.of("cases.partWords", what, entry.words());
  }

  /** A case that can't be read. */
  static CaseRow of(CaseArchive.Unread unread) {
    return new CaseRow(
        unread.caseId(),
        Optional.empty(),
        unread.caseId(),
        Texts.of("cases.unread"),
        List.of(unread.why()));
  }
}
