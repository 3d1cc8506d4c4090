package loopwright.ui.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.casework.PaperReport;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.ui.Texts;

/** Puts into words what a whole check says, and what became different since the one before. */
final class Verdict {
  private static final int MOST_NAMED = 3;

  private Verdict() {}

  /** The check in one line. */
  static String of(PaperReport report) {
    if (!report.unsolved().isEmpty()) {
      return Texts.of("paper.verdict.unsolved", report.unsolved().size());
    }
    List<String> said = new ArrayList<>();
    say(said, report, Severity.BURNS, "paper.verdict.burns");
    say(said, report, Severity.FAILS, "paper.verdict.fails");
    say(said, report, Severity.WEARS, "paper.verdict.wears");
    return said.isEmpty() ? Texts.of("paper.verdict.clean") : String.join(", ", said);
  }

  private static void say(List<String> said, PaperReport report, Severity severity, String key) {
    int count = report.of(severity).size();
    if (count > 0) {
      String things =
          said.isEmpty() ? Texts.of("paper.verdict.things", count) : Integer.toString(count);
      said.add(Texts.of(key, things, count));
    }
  }

  /** What an edit changed: what is gone, what is new. */
  static String change(List<PaperItem> before, List<PaperItem> now) {
    List<PaperItem> gone = without(before, now);
    List<PaperItem> fresh = without(now, before);
    if (gone.isEmpty() && fresh.isEmpty()) {
      return Texts.of("paper.change.none");
    }
    List<String> said = new ArrayList<>();
    if (!gone.isEmpty()) {
      said.add(Texts.of("paper.change.fewer", gone.size(), names(gone)));
    }
    if (!fresh.isEmpty()) {
      said.add(Texts.of("paper.change.more", fresh.size(), names(fresh)));
    }
    return String.join(" ", said);
  }

  private static List<PaperItem> without(List<PaperItem> items, List<PaperItem> others) {
    Set<String> keys = others.stream().map(PaperItem::key).collect(Collectors.toSet());
    return items.stream().filter(i -> !keys.contains(i.key())).toList();
  }

  private static String names(List<PaperItem> items) {
    List<String> names = items.stream().map(PaperItem::title).distinct().toList();
    String named = names.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
    int more = names.size() - MOST_NAMED;
    return more > 0 ? Texts.of("paper.change.others", named, more) : named;
  }
}
