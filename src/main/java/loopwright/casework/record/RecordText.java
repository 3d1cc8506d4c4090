package loopwright.casework.record;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.Account;
import loopwright.casework.CaseEvent;
import loopwright.casework.ClearedView;
import loopwright.casework.FindCase;
import loopwright.casework.OwnRate;
import loopwright.casework.Phrases;
import loopwright.casework.Proposer;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTable.Column;
import loopwright.casework.list.ListTable.Side;
import loopwright.model.Language;
import loopwright.model.TerminalRef;

/** A record in words, for paper and terminal alike. */
public final class RecordText {

  private final CaseRecord record;
  private final Phrases phrases;
  private final DateTimeFormatter day;
  private final DateTimeFormatter clock;
  private final DateTimeFormatter second;

  /**
   * Words of a record.
   *
   * @param zone where days and times are told
   */
  public RecordText(CaseRecord record, Phrases phrases, ZoneId zone) {
    this.record = record;
    this.phrases = phrases;
    this.day = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", phrases.locale()).withZone(zone);
    this.clock = DateTimeFormatter.ofPattern("HH:mm", phrases.locale()).withZone(zone);
    this.second = DateTimeFormatter.ofPattern("HH:mm:ss", phrases.locale()).withZone(zone);
  }

  /** Something with a label before it. */
  public record Fact(String label, String text) {}

  /** The record told. */
  public CaseRecord record() {
    return record;
  }

  /** What it is about, and where it stands. */
  public List<Fact> facts() {
    CaseEvent.Opened opened = record.opened();
    List<Fact> facts = new ArrayList<>();
    facts.add(fact("state", phrases.say("record.state." + record.state())));
    facts.add(
        fact(
            "vehicle",
            opened.vehicleId().equals(opened.vehicleName())
                ? opened.vehicleId()
                : opened.vehicleId() + ", " + opened.vehicleName()));
    facts.add(
        fact(
            "complaint",
            opened.circuit()
                + opened.load().map(l -> " (" + l + ")").orElse("")
                + ": "
                + opened.kind().words()
                + "; "
                + phrases.say("record.context." + opened.context().word())));
    if (opened.practice()) {
      facts.add(fact("practice", phrases.say("record.practice.text")));
    }
    record.accounts().reduce((a, b) -> b).ifPresent(a -> facts.add(fact("took", took())));
    facts.add(fact("when", span()));
    facts.add(fact("meter", opened.meter()));
    facts.add(fact("case", opened.caseId()));
    if (!record.missing().isEmpty()) {
      facts.add(fact("missing", record.missing()));
    }
    return facts;
  }

  private String span() {
    String from = day.format(record.opened().at());
    String to = day.format(record.last());
    boolean sameDay = from.substring(0, from.indexOf(',')).equals(to.substring(0, to.indexOf(',')));
    return phrases.say("record.span", from, sameDay ? clock.format(record.last()) : to);
  }

  private String took() {
    double minutes = record.accounts().mapToDouble(Account::minutes).max().orElse(0);
    long count = record.readings().stream().filter(r -> !r.withdrawn()).count();
    return phrases.say("record.took.text", count, Math.round(minutes));
  }

  private Fact fact(String key, String text) {
    return new Fact(phrases.say("record." + key), text);
  }

  /** The readings of a piece of the case; no rows if there are none. */
  public ListTable readings(int stage) {
    CaseRecord.Stage piece = record.stages().get(stage);
    List<List<String>> rows = new ArrayList<>();
    Optional<String> before = Optional.empty();
    for (CaseRecord.Taken reading : piece.readings()) {
      Optional<Account.Line> line = piece.line(reading.number());
      String setting =
          line.map(l -> String.join(", ", l.setting())).orElseGet(() -> setting(reading));
      rows.add(
          List.of(
              Integer.toString(reading.number()),
              second.format(reading.at()),
              before.equals(Optional.of(setting)) ? phrases.say("record.same") : setting,
              line.map(Account.Line::where).orElseGet(() -> where(reading)),
              line.map(Account.Line::value).orElse(reading.answer().words()),
              line.map(Account.Line::healthy).orElse(""),
              remark(reading, line, piece.proven().isPresent())));
      before = Optional.of(setting);
    }
    return new ListTable(
        stage == 0 ? phrases.say("record.readings") : phrases.say("record.since"),
        List.of(),
        List.of(
            column("number", 0, Side.RIGHT),
            column("time", 0, Side.RIGHT),
            column("setting", 2, Side.LEFT),
            column("where", 3, Side.LEFT),
            column("value", 1, Side.LEFT),
            column("healthy", 1, Side.LEFT),
            column("did", 3, Side.LEFT)),
        rows);
  }

  /** A row of {@link #readings} in one sentence. */
  public String reading(List<String> row) {
    String healthy = row.get(5).isEmpty() ? "" : phrases.say("record.beside", row.get(5));
    return phrases.say(
        "record.reading",
        row.get(1),
        row.get(2),
        row.get(3),
        row.get(4),
        healthy,
        row.get(6).isEmpty() ? 0 : 1,
        row.get(6));
  }

  private Column column(String key, double share, Side side) {
    return new Column(phrases.say("record.column." + key), share, side);
  }

  private static String setting(CaseRecord.Taken reading) {
    return Stream.concat(
            reading.check().setting().positions().entrySet().stream()
                .map(e -> e.getKey() + ": " + e.getValue()),
            reading.check().setting().apart().stream().map(p -> p + " apart"))
        .collect(Collectors.joining(", "));
  }

  private static String where(CaseRecord.Taken reading) {
    Optional<TerminalRef> red = reading.check().red();
    return reading.check().kind().word()
        + " "
        + red.map(r -> r + " to " + reading.check().black().orElseThrow())
            .orElse(reading.check().lookAt().orElse(""));
  }

  private String remark(CaseRecord.Taken reading, Optional<Account.Line> line, boolean good) {
    List<String> texts = new ArrayList<>();
    if (reading.withdrawn()) {
      texts.add(phrases.say("record.withdrawn"));
    }
    if (!reading.corrected().isEmpty()) {
      texts.add(
          phrases.say(
              "record.corrected",
              reading.corrected().stream().map(a -> a.words()).collect(Collectors.joining(", "))));
    }
    if (learners(reading)) {
      texts.add(phrases.say("record.learners"));
    }
    if (good && line.isPresent()) {
      texts.add(phrases.say("record.good"));
    } else {
      line.map(Account.Line::did).filter(d -> !d.isEmpty()).ifPresent(texts::add);
    }
    return String.join(" ", texts);
  }

  /** Whether the learner proposed this check. */
  private boolean learners(CaseRecord.Taken reading) {
    return record.remarks().stream()
        .filter(e -> e.at().compareTo(reading.at()) <= 0)
        .filter(CaseEvent.Settled.class::isInstance)
        .map(CaseEvent.Settled.class::cast)
        .reduce((a, b) -> b)
        .filter(s -> s.taken() == Proposer.LEARNER && s.learners().equals(reading.check()))
        .isPresent();
  }

  /** What was ruled out, parts ruled out by the same readings together. */
  public List<Fact> cleared(int stage) {
    Map<String, List<String>> byReason = new LinkedHashMap<>();
    record.stages().get(stage).account().stream()
        .flatMap(a -> a.cleared().stream())
        .forEach(
            (ClearedView c) ->
                byReason.computeIfAbsent(c.why(), w -> new ArrayList<>()).add(c.title()));
    return byReason.entrySet().stream()
        .map(e -> new Fact(e.getKey(), String.join(", ", e.getValue())))
        .toList();
  }

  /**
   * What was found in a piece of the case, and its proof.
   *
   * @param advice whether to say why it likely failed and what to look at, too
   */
  public List<Fact> found(int stage, boolean advice) {
    List<Fact> facts = new ArrayList<>();
    record
        .stages()
        .get(stage)
        .fault()
        .ifPresent(
            f -> {
              facts.add(fact("found", phrases.say("record.sure", f.title(), percent(f.belief()))));
              facts.add(fact("failed", String.join("; ", f.modes())));
              all(facts, "proof", f.proof());
              if (advice) {
                all(facts, "why", f.why());
                all(facts, "inspect", f.inspect());
              }
              all(facts, "repair", f.repair());
              all(facts, "cautions", f.cautions());
            });
    return facts;
  }

  private void all(List<Fact> facts, String key, List<String> texts) {
    if (!texts.isEmpty()) {
      facts.add(
          fact(key, texts.stream().map(RecordText::sentence).collect(Collectors.joining(" "))));
    }
  }

  private static String sentence(String text) {
    return text.isEmpty() || ".!?".indexOf(text.charAt(text.length() - 1)) >= 0 ? text : text + ".";
  }

  private static String percent(double belief) {
    double p = belief * 100;
    return p > 99 && p < 100 ? "99" : Long.toString(Math.round(p));
  }

  /** The mend that ended a piece of the case; empty for the last one. */
  public Optional<Fact> mend(int stage) {
    if (stage >= record.repairs().size()) {
      return Optional.empty();
    }
    CaseRecord.Repair repair = record.repairs().get(stage);
    String key = repair.mend().swapped() ? "record.swapped" : "record.mended";
    String proof =
        repair.proven()
            ? "record.proven"
            : stage + 1 < record.stages().size() - 1
                    || record.state() == CaseRecord.CaseState.FOUND
                    || record.state() == CaseRecord.CaseState.OPEN
                ? "record.unproven"
                : "record.untried";
    return Optional.of(
        fact(
            "mend",
            phrases.say(key, title(stage, repair.mend().part()), day.format(repair.mend().at()))
                + " "
                + phrases.say(proof)));
  }

  /** A part by name where it was the only one found. */
  private String title(int stage, String part) {
    return record
        .stages()
        .get(stage)
        .fault()
        .filter(f -> f.causes().stream().allMatch(c -> c.part().equals(part)))
        .map(Account.Fault::title)
        .orElse(part);
  }

  /** What happened besides, and photos. */
  public List<Fact> besides() {
    List<Fact> facts = new ArrayList<>();
    for (CaseEvent event : record.remarks()) {
      facts.add(new Fact(clock.format(event.at()), besides(event)));
    }
    for (CaseEvent.Photographed photo : record.photos()) {
      facts.add(
          fact(
              "photo",
              photo.caption().isEmpty()
                  ? photo.file()
                  : photo.caption() + " (" + photo.file() + ")"));
    }
    if (!record.rates().isEmpty()) {
      facts.add(fact("rates", rates(record.rates())));
    }
    return facts;
  }

  private String rates(List<OwnRate> rates) {
    return rates.stream()
        .filter(r -> r.factor() > 1)
        .map(
            r ->
                phrases.say(
                    "record.rate",
                    r.kind().word(),
                    r.mode(),
                    Language.marked(String.format(Locale.ROOT, "%.1f", r.factor()))))
        .collect(Collectors.joining(", "));
  }

  private String deed(CaseEvent.Deed deed) {
    if (deed instanceof CaseEvent.Repaired r) {
      return phrases.say("deed.mended", r.part());
    }
    if (deed instanceof CaseEvent.Swapped s && s.helped() == FindCase.Helped.YES) {
      return phrases.say("deed.swap-helped", s.part());
    }
    return deed instanceof CaseEvent.Photographed p
        ? phrases.say("deed.photo", p.file())
        : besides(deed);
  }

  private String besides(CaseEvent event) {
    if (event instanceof CaseEvent.Refused r) {
      return phrases.say("record.refused", r.check().check().id(), r.refusal().words());
    }
    if (event instanceof CaseEvent.Swapped s) {
      return phrases.say("record.no-help", s.part());
    }
    if (event instanceof CaseEvent.Undone u) {
      return phrases.say("record.undone", clock.format(u.what().at()), deed(u.what()));
    }
    if (event instanceof CaseEvent.Warned w) {
      return phrases.say("record.warned", phrases.say("warning." + w.warning().word()));
    }
    if (event instanceof CaseEvent.Proposing p) {
      return phrases.say("said.first." + p.first().word());
    }
    if (event instanceof CaseEvent.Settled s) {
      return phrases.say(
          "record.settled." + s.taken().word(),
          s.learners().check().id(),
          s.programs().check().id());
    }
    return phrases.say(event instanceof CaseEvent.Isolated ? "record.isolated" : "record.gone");
  }
}
