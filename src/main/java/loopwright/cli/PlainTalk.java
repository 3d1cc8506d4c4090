package loopwright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.CheckView.OutcomeView;
import loopwright.casework.ClearedView;
import loopwright.casework.Comparison;
import loopwright.casework.DeedView;
import loopwright.casework.Drops;
import loopwright.casework.FindCase;
import loopwright.casework.Outlook;
import loopwright.casework.OwnCheck;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Proposer;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;
import loopwright.casework.RepairView;
import loopwright.casework.SettingView;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.io.wire.LineReader;
import loopwright.model.Language;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** A case in plain lines for a person at a terminal. */
final class PlainTalk {
  private static final int BRIEF = 3;
  private static final int LISTED = 10;

  /** What the help tells of, in order. */
  private static final List<String> HELP =
      List.of(
          "a-b",
          "1-2-or-the-word",
          "again",
          "why",
          "tree",
          "why-g4",
          "can-t",
          "never",
          "won-t",
          "alone",
          "back-3",
          "back-mended",
          "fix-3-12-1",
          "measure-f3-load-batt-neg",
          "same-same-3",
          "log",
          "take",
          "look-l1",
          "learn-on",
          "swapped-k1-no",
          "mended",
          "smoke-hot-fuel",
          "isolated",
          "gone",
          "list",
          "stairs",
          "drops",
          "points-points-f3",
          "setups",
          "stop");

  private final FindCase findCase;
  private final Vehicle vehicle;
  private final Optional<SimulatedMeter> meter;
  private final String story;
  private final Page page;
  private final Meanwhile in;
  private final LiveMeter live;
  private final LogPage logs;
  private Waiting waiting = new Waiting.Nothing();

  /** Whether the next check says the whole set-up: nobody knows how the vehicle stands now. */
  private boolean wholeSetup = true;

  /** What the next line may be an answer to, besides the proposed check. */
  private sealed interface Waiting {
    record Nothing() implements Waiting {}

    /** The check of one's own whose value is waited for. */
    default Optional<OwnCheck> own() {
      return this instanceof Value value
          ? Optional.of(value.check())
          : this instanceof Again again ? Optional.of(again.check()) : Optional.empty();
    }

    /** The value of a reading of the person's own choice. */
    record Value(OwnCheck check) implements Waiting {}

    /** One more value of a check that is read again and again. */
    record Again(OwnCheck check) implements Waiting {}

    /** Whether one's own proposal or the program's is done. */
    record Compared(OwnCheck check) implements Waiting {}

    /** Whether an unlikely entry counts. */
    record Sure(String check, Answer answer, String typed) implements Waiting {}
  }

  /**
   * Makes the talk.
   *
   * @param meter reads the checks of a ready-made case
   * @param story what the owner tells; empty if nothing
   * @param live the person's own meter, if it sends its readings
   */
  PlainTalk(
      FindCase findCase,
      Vehicle vehicle,
      Optional<SimulatedMeter> meter,
      String story,
      Page page,
      Meanwhile in,
      LiveMeter live) {
    this.findCase = findCase;
    this.vehicle = vehicle;
    this.meter = meter;
    this.story = story;
    this.page = page;
    this.in = in;
    this.live = live;
    this.logs = new LogPage(page);
  }

  ExitCode run() throws IOException {
    CaseView view = findCase.view();
    page.say(view.title());
    page.say(Speech.of("case.opened", view.caseId()));
    if (!story.isEmpty()) {
      page.say(story);
    }
    if (meter.isPresent()) {
      page.say(Speech.of("case.meter"));
    }
    if (live.present()) {
      page.say(Speech.of("case.take"));
    }
    cautions(view.cautions());
    if (!view.said().isEmpty()) {
      page.say(view.said());
    }
    if (!view.readings().isEmpty()) {
      brief(view);
    }
    next(view);
    while (findCase.view().move() != CaseView.Move.END) {
      asked().ifPresent(live::follow);
      page.prompt(prompt());
      LineReader.Next next = in.next();
      if (next instanceof LineReader.Next.End) {
        page.gap();
        kept();
        return ExitCode.DONE;
      }
      if (next instanceof LineReader.Next.Line line) {
        try {
          line(line.text().strip());
        } catch (Problem problem) {
          page.say(Speech.of("not-taken", Speech.problem(problem)));
        }
      } else {
        page.say(Speech.of("no-text"));
      }
    }
    ending();
    return ExitCode.DONE;
  }

  /** The kind of check whose answer is waited for. */
  private Optional<CheckKind> asked() {
    return waiting.own().map(OwnCheck::kind).or(() -> findCase.view().next().map(CheckView::kind));
  }

  private String prompt() {
    return question().map(Speech::of).orElse("") + "> ";
  }

  /** The key of what the next line is asked for; empty if nothing is. */
  private Optional<String> question() {
    if (waiting instanceof Waiting.Sure) {
      return Optional.of("prompt.yes-no");
    }
    if (waiting instanceof Waiting.Compared) {
      return Optional.of("prompt.mine-program");
    }
    Optional<String> answer = asked().map(k -> k.metered() ? "prompt.reads" : "prompt.seen");
    if (waiting.own().isPresent()) {
      return answer;
    }
    return switch (findCase.view().move()) {
      case CHECK, PROOF -> answer;
      case PROPOSE -> Optional.of("prompt.propose");
      case REPAIR -> Optional.of("prompt.mended");
      case MAKE_SAFE -> Optional.of("prompt.isolated");
      case STUCK, END -> Optional.empty();
    };
  }

  // What was typed.

  private void line(String typed) throws Problem {
    if (typed.isEmpty()) {
      return;
    }
    String text = Obeyed.FIND.line(typed.replace('\u2019', '\''));
    if (waiting instanceof Waiting.Again again && text.matches("(?i)take\\s+\\d{1,4}")) {
      watch(again.check(), Integer.parseInt(text.replaceAll("\\D", "")));
      return;
    }
    if (text.equalsIgnoreCase("take")) {
      text = live.take(asked(), page);
    }
    String lower = text.toLowerCase(Locale.ROOT);
    Waiting before = waiting;
    if (before instanceof Waiting.Sure sure) {
      waiting = new Waiting.Nothing();
      if (Speech.yes(lower) || text.equals(sure.typed())) {
        after(findCase.answer(sure.check(), sure.answer()));
        return;
      }
      if (Speech.no(lower)) {
        page.say(Speech.of("dropped"));
        return;
      }
    }
    if (before.own().isPresent() && (Speech.no(lower))) {
      waiting = new Waiting.Nothing();
      if (before instanceof Waiting.Again again) {
        ReadingLog.of(findCase.view().readings(), again.check()).ifPresent(logs::show);
      }
      next(findCase.view());
      return;
    }
    if (before instanceof Waiting.Compared compared
        && (lower.equals("mine") || lower.equals("program"))) {
      Proposer whose = lower.equals("mine") ? Proposer.LEARNER : Proposer.PROGRAM;
      CaseView view = findCase.settle(compared.check(), whose);
      waiting = new Waiting.Nothing();
      after(view);
      return;
    }
    List<String> words = List.of(text.split("\\s+"));
    if (command(words.get(0).toLowerCase(Locale.ROOT), words.subList(1, words.size()))) {
      return;
    }
    if (waiting.own().isPresent()) {
      take(Entry.of(waiting.own().get().kind()).read(text));
      return;
    }
    answer(text);
  }

  /** The value of the check of one's own that is waited for. */
  private void take(Answer answer) throws Problem {
    OwnCheck check = waiting.own().orElseThrow();
    CaseView view = findCase.take(check, answer);
    boolean goesOn = waiting instanceof Waiting.Again && view.move() != CaseView.Move.END;
    if (goesOn) {
      logs.latest(view.readings(), check);
    } else {
      waiting = new Waiting.Nothing();
      after(view);
    }
  }

  /** Begins to read a check again and again. */
  private void same(List<String> rest) throws Problem {
    List<ReadingView> readings = findCase.view().readings();
    if (readings.isEmpty()) {
      throw new Problem("same", "", Speech.of("same.none"));
    }
    int number = rest.isEmpty() ? readings.get(readings.size() - 1).id() : reading(rest.get(0));
    ReadingView reading = known(number);
    page.labelled(Speech.label("again"), List.of(reading.where()));
    page.labelled(Speech.label("set"), whole(reading.check().setting()));
    page.labelled(Speech.label("healthy"), List.of(reading.healthyWords()));
    page.say(Speech.of(live.present() ? "log.say-take" : "log.say-value"));
    waiting = new Waiting.Again(reading.check());
  }

  /** The person's own meter is left on a check, and each change is taken. */
  private void watch(OwnCheck check, int seconds) throws Problem {
    live.follow(check.kind());
    page.say(Speech.of("log.watching", seconds));
    page.flush();
    long until = System.nanoTime() + seconds * 1_000_000_000L;
    while (waiting instanceof Waiting.Again) {
      Optional<String> read = live.changed(until);
      if (read.isEmpty()) {
        page.say(Speech.of("log.time-up", seconds));
        return;
      }
      take(Entry.of(check.kind()).read(read.get()));
      page.flush();
    }
  }

  private void answer(String text) throws Problem {
    CaseView view = findCase.view();
    Optional<CheckView> check = view.next();
    if (check.isEmpty()) {
      throw new Problem("entry", Page.plain(text), Speech.of("no-check"));
    }
    Answer answer = Entry.of(check.get()).read(text);
    FindCase.Understood understood = findCase.understand(check.get().id(), answer);
    if (understood.second().isPresent()) {
      page.say(understood.words() + "? " + understood.second().get());
      page.say(Speech.of("does-it-count"));
      waiting = new Waiting.Sure(check.get().id(), answer, text);
      return;
    }
    page.say(Speech.of("taken", understood.words()));
    after(findCase.answer(check.get().id(), answer));
  }

  /** Obeys a word; false if it isn't one. */
  private boolean command(String word, List<String> rest) throws Problem {
    switch (word) {
      case "help", "?" -> help();
      case "list" -> list(rest);
      case "stairs" -> new Staircase(page).show(findCase.view().loop());
      case "drops" -> drops();
      case "log" -> logs.show(findCase.view().readings());
      case "same" -> same(rest);
      case "points" -> points(rest);
      case "setups" -> setups();
      case "again", "show" -> {
        wholeSetup = true;
        next(findCase.view());
      }
      case "why" -> why(rest);
      case "tree" -> tree(rest);
      case "cant" ->
          refuse(rest.stream().map(Obeyed.FIND::detail).collect(Collectors.joining(" ")));
      case "never" -> refuse(FindCase.Refusal.NEVER);
      case "wont" -> refuse(FindCase.Refusal.WONT);
      case "alone" -> refuse(FindCase.Refusal.NO_HELPER);
      case "back" -> back(rest);
      case "fix" -> fix(rest);
      case "measure" -> measure(rest);
      case "look" -> look(rest);
      case "learn" -> learn(rest);
      case "swapped" -> swapped(rest);
      case "mended" -> mended(rest);
      case "meter" -> metered();
      case "smoke", "burnt" -> warn(Warning.SMOKE);
      case "hot", "heat" -> warn(Warning.HEAT);
      case "fuel" -> warn(Warning.FUEL);
      case "smell" -> throw new Problem("smell", "", Speech.of("smell"));
      case "isolated" -> {
        waiting = new Waiting.Nothing();
        after(findCase.isolated());
      }
      case "gone" -> {
        waiting = new Waiting.Nothing();
        after(findCase.gone());
      }
      case "stop" -> {
        waiting = new Waiting.Nothing();
        findCase.stop();
      }
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Where the volts go, share by share. */
  private void drops() {
    Optional<Drops> drops = Drops.of(findCase.view().loop());
    if (drops.isEmpty()) {
      page.say(Speech.of("drops.none"));
      return;
    }
    page.say(Speech.of("drops.head"));
    for (Drops.Share share : drops.get().shares()) {
      String measured = Staircase.volts(share.measured()) + " V";
      String lost = share.about() ? Language.about(measured) : measured;
      String mark =
          drops.get().worst().filter(share::equals).isPresent()
              ? "  <- " + Speech.of("drops.worst")
              : "";
      page.block(
          "  ",
          Speech.of(
                  "drops.share",
                  share.from(),
                  share.to(),
                  lost,
                  Staircase.volts(share.healthy()) + " V")
              + mark);
    }
  }

  private void warn(Warning warning) throws Problem {
    waiting = new Waiting.Nothing();
    after(findCase.warn(warning));
  }

  /** The practice meter answers: a reading of one's own, else the proposed check. */
  private void metered() throws Problem {
    if (meter.isEmpty()) {
      throw new Problem("meter", "", Speech.of("meter.none"));
    }
    if (waiting.own().isPresent()) {
      Answer answer = meter.get().read(waiting.own().get());
      page.say(Speech.of("meter.reads", shown(answer, Entry.of(waiting.own().get().kind()))));
      take(answer);
      return;
    }
    CheckView check =
        findCase
            .view()
            .next()
            .orElseThrow(() -> new Problem("meter", "", Speech.of("no-check-now")));
    Answer answer = meter.get().read(check);
    page.say(Speech.of("meter.reads", shown(answer, Entry.of(check))));
    waiting = new Waiting.Nothing();
    after(findCase.answer(check.id(), answer));
  }

  private static String shown(Answer answer, Entry entry) {
    if (answer instanceof Answer.Text text) {
      return text.text();
    }
    return answer instanceof Answer.Saw saw ? entry.words(saw.seen()) : "";
  }

  private void refuse(String why) throws Problem {
    // Never, or not ever.
    if (why.contains("ever")) {
      refuse(FindCase.Refusal.NEVER);
    } else if (why.contains("alone") || why.contains("helper")) {
      refuse(FindCase.Refusal.NO_HELPER);
    } else {
      refuse(FindCase.Refusal.CANT_REACH);
    }
  }

  private void refuse(FindCase.Refusal why) throws Problem {
    waiting = new Waiting.Nothing();
    Optional<CheckView> check = findCase.view().next();
    if (check.isEmpty()) {
      throw new Problem("check", "", Speech.of("no-check-open"));
    }
    after(findCase.refuse(check.get().id(), why));
  }

  /** Takes back what came last, a reading by its number, or the last thing told of a kind. */
  private void back(List<String> rest) throws Problem {
    CaseView view = findCase.view();
    Optional<DeedView> deed = last(view.deeds(), rest);
    int last = view.readings().stream().mapToInt(ReadingView::id).max().orElse(0);
    if (deed.isPresent() && (!rest.isEmpty() || deed.get().after() >= last)) {
      waiting = new Waiting.Nothing();
      after(findCase.undo(deed.get().number()));
      return;
    }
    if (rest.isEmpty() && view.readings().isEmpty()) {
      throw new Problem("reading", "", Speech.of("no-reading"));
    }
    int reading = rest.isEmpty() ? last : reading(rest.get(0));
    waiting = new Waiting.Nothing();
    after(findCase.withdraw(reading));
  }

  /** What was told last of a kind, by the word it is told with; of any without one. */
  private static Optional<DeedView> last(List<DeedView> deeds, List<String> rest) {
    String word = rest.isEmpty() ? "" : Obeyed.FIND.detail(rest.get(0));
    return deeds.stream()
        .filter(
            d ->
                switch (word) {
                  case "" -> true;
                  case "mended" -> d.deed() instanceof CaseEvent.Repaired;
                  case "swapped" -> d.deed() instanceof CaseEvent.Swapped;
                  case "photo" -> d.deed() instanceof CaseEvent.Photographed;
                  case "cant", "never", "wont", "alone" -> d.deed() instanceof CaseEvent.Refused;
                  default -> false;
                })
        .reduce((a, b) -> b);
  }

  private void fix(List<String> rest) throws Problem {
    if (rest.size() < 2) {
      throw new Problem("fix", String.join(" ", rest), Speech.of("fix.how"));
    }
    int number = reading(rest.get(0));
    Answer answer =
        Entry.of(known(number).kind()).read(String.join(" ", rest.subList(1, rest.size())));
    waiting = new Waiting.Nothing();
    after(findCase.correct(number, answer));
  }

  private ReadingView known(int number) throws Problem {
    return findCase.view().readings().stream()
        .filter(r -> r.id() == number)
        .findFirst()
        .orElseThrow(() -> noReading(Integer.toString(number)));
  }

  private int reading(String text) throws Problem {
    if (!text.matches("\\d{1,6}")) {
      throw noReading(text);
    }
    return Integer.parseInt(text);
  }

  private Problem noReading(String text) {
    String there =
        findCase.view().readings().stream()
            .map(r -> String.valueOf(r.id()))
            .collect(Collectors.joining(", "));
    return new Problem(
        "reading",
        Page.plain(text),
        Speech.of(there.isEmpty() ? "no-readings" : "reading-number", there));
  }

  private void measure(List<String> rest) throws Problem {
    if (rest.isEmpty()) {
      throw new Problem("measure", "", Speech.of("measure.how"));
    }
    CheckKind kind = CheckKind.VOLTS;
    Setting setting = OwnSetting.asked(findCase);
    List<TerminalRef> points = new ArrayList<>();
    for (int i = 0; i < rest.size(); i++) {
      switch (Obeyed.FIND.detail(rest.get(i))) {
        case "volts" -> kind = CheckKind.VOLTS;
        case "millivolts" -> kind = CheckKind.MILLIVOLTS;
        case "ohms" -> kind = CheckKind.OHMS;
        case "diode" -> kind = CheckKind.DIODE;
        case "setup" -> {
          i++;
          setting = setup(i < rest.size() ? rest.get(i) : "");
        }
        default -> points.add(point(rest.get(i)));
      }
    }
    if (points.isEmpty() || points.size() > 2) {
      throw new Problem("measure", String.join(" ", rest), Speech.of("measure.points"));
    }
    TerminalRef black = points.size() == 2 ? points.get(1) : vehicle.groundedPost();
    OwnCheck check =
        new OwnCheck(
            kind, Optional.of(points.get(0)), Optional.of(black), Optional.empty(), setting);
    if (proposed(check)) {
      return;
    }
    page.labelled(Speech.label("red"), List.of(points.get(0).toString()));
    page.labelled(Speech.label("black"), List.of(black.toString()));
    page.labelled(Speech.label("meter"), List.of(Speech.of("measure." + kind)));
    page.labelled(Speech.label("set"), whole(setting));
    page.say(Speech.of("what-reads"));
    waiting = new Waiting.Value(check);
  }

  private void look(List<String> rest) throws Problem {
    String accepted = Speech.of("look.how");
    if (rest.size() != 1) {
      throw new Problem("look", String.join(" ", rest), accepted);
    }
    LoadRef ref = LoadRef.parse(rest.get(0));
    String part =
        vehicle.parts().stream()
            .map(p -> p.id())
            .filter(p -> p.equalsIgnoreCase(ref.part()))
            .findFirst()
            .map(p -> new LoadRef(p, ref.filament()).toString())
            .orElseThrow(() -> new Problem("part", Page.plain(rest.get(0)), accepted));
    OwnCheck check =
        new OwnCheck(
            CheckKind.LOOK,
            Optional.empty(),
            Optional.empty(),
            Optional.of(part),
            OwnSetting.asked(findCase));
    if (proposed(check)) {
      return;
    }
    page.labelled(Speech.label("look-at"), List.of(title(part)));
    page.labelled(Speech.label("set"), whole(check.setting()));
    choices(Entry.of(CheckKind.LOOK));
    page.say(Speech.of("what-seen"));
    waiting = new Waiting.Value(check);
  }

  private List<String> whole(Setting setting) {
    List<String> words =
        findCase.settings().stream()
            .filter(s -> s.setting().equals(setting))
            .findFirst()
            .map(SettingView::whole)
            .orElseGet(
                () ->
                    findCase
                        .view()
                        .next()
                        .filter(c -> c.set().setting().equals(setting))
                        .map(c -> c.set().whole())
                        .orElse(List.of()));
    return words.isEmpty() ? List.of(Speech.of("at-rest")) : words;
  }

  private Setting setup(String text) throws Problem {
    List<SettingView> settings = findCase.settings();
    if (text.matches("\\d{1,4}")) {
      int index = Integer.parseInt(text) - 1;
      if (index >= 0 && index < settings.size()) {
        return settings.get(index).setting();
      }
    }
    throw new Problem("setup", Page.plain(text), Speech.of("setup.how", settings.size()));
  }

  private TerminalRef point(String text) throws Problem {
    for (PointView point : findCase.points()) {
      if (point.ref().toString().equalsIgnoreCase(text)) {
        return point.ref();
      }
    }
    throw new Problem("point", Page.plain(text), Speech.of("point.how"));
  }

  // The learner first.

  private void learn(List<String> rest) throws Problem {
    String word = Obeyed.FIND.detail(String.join(" ", rest));
    if (!word.equals("on") && !word.equals("off")) {
      throw new Problem("learn", Page.plain(word), Speech.of("learn.how"));
    }
    waiting = new Waiting.Nothing();
    after(findCase.propose(word.equals("on") ? Proposer.LEARNER : Proposer.PROGRAM));
  }

  /** Where a proposal is waited for: sets it beside the program's. */
  private boolean proposed(OwnCheck check) throws Problem {
    if (findCase.view().move() != CaseView.Move.PROPOSE) {
      return false;
    }
    Comparison compared = findCase.compare(check);
    side(Speech.label("learners"), compared.learners());
    side(Speech.label("programs"), compared.programs());
    page.say(compared.verdict());
    if (compared.blocked().isEmpty()) {
      page.say(Speech.of("compared.which"));
    } else {
      page.labelled(Speech.label("careful"), List.of(compared.blocked()));
      page.say(Speech.of("compared.blocked"));
    }
    waiting = new Waiting.Compared(check);
    return true;
  }

  private void side(String label, Comparison.Side side) {
    page.labelled(label, List.of(side.what(), side.tells()));
    page.labelled(Speech.label("careful"), side.risks());
  }

  private void swapped(List<String> rest) throws Problem {
    String accepted = Speech.of("swapped.how");
    if (rest.size() != 2) {
      throw new Problem("swapped", String.join(" ", rest), accepted);
    }
    String word = rest.get(1).toLowerCase(Locale.ROOT);
    if (!Speech.yes(word) && !Speech.no(word)) {
      throw new Problem("swapped", Page.plain(rest.get(1)), accepted);
    }
    FindCase.Helped helped = Speech.yes(word) ? FindCase.Helped.YES : FindCase.Helped.NO;
    waiting = new Waiting.Nothing();
    after(findCase.swapped(part(rest.get(0)), helped));
  }

  private void mended(List<String> rest) throws Problem {
    String part;
    if (!rest.isEmpty()) {
      part = part(rest.get(0));
    } else {
      List<String> parts = findCase.view().repair().map(r -> r.suspect().parts()).orElse(List.of());
      if (parts.size() != 1) {
        throw new Problem(
            "part",
            "",
            parts.isEmpty()
                ? Speech.of("mended.which")
                : Speech.of("mended.which-of", String.join(", ", parts)));
      }
      part = parts.get(0);
    }
    waiting = new Waiting.Nothing();
    after(findCase.repaired(part));
  }

  /**
   * The part's id as the vehicle spells it; what it doesn't know is left for the case to refuse.
   */
  private String part(String text) {
    return vehicle.parts().stream()
        .map(p -> p.id())
        .filter(p -> p.equalsIgnoreCase(text))
        .findFirst()
        .orElse(text);
  }

  private void why(List<String> rest) throws Problem {
    page.items(rest.isEmpty() ? findCase.whyNext() : findCase.whyStill(part(rest.get(0))));
  }

  /** What each result leaves and what follows on it; of a check in its place by number. */
  private void tree(List<String> rest) throws Problem {
    Outlook outlook = findCase.outlook(Optional.empty());
    if (!rest.isEmpty()) {
      List<Outlook.Choice> choices = outlook.instead();
      String number = rest.get(0);
      int index = number.matches("\\d{1,3}") ? Integer.parseInt(number) - 2 : -2;
      if (index < -1 || index >= choices.size()) {
        throw new Problem("tree", Page.plain(number), Speech.of("number-to", 1 + choices.size()));
      }
      outlook = index < 0 ? outlook : findCase.outlook(Optional.of(choices.get(index).check()));
    }
    new TreePage(page).show(outlook, findCase);
    page.flush();
  }

  // What is shown.

  private void after(CaseView view) {
    if (!view.said().isEmpty()) {
      page.say(view.said());
    }
    brief(view);
    if (view.move() != CaseView.Move.END) {
      next(view);
    }
  }

  private void brief(CaseView view) {
    if (view.status() == CaseView.Status.CONTRADICTION) {
      page.say(
          Speech.of(
              "odds",
              view.odds().stream().map(String::valueOf).collect(Collectors.joining(", ")),
              view.oddsWords()));
    }
    if (!view.suspects().isEmpty()) {
      String more =
          view.suspects().size() > BRIEF
              ? "; " + Speech.of("more", view.suspects().size() - BRIEF)
              : "";
      page.block(
          "  " + Speech.of("brief.suspected") + ": ",
          view.suspects().stream()
                  .limit(BRIEF)
                  .map(s -> s.title() + " " + Staircase.percent(s.belief()))
                  .collect(Collectors.joining("; "))
              + more);
    }
    if (!view.cleared().isEmpty()) {
      page.block(
          "  " + Speech.of("brief.cleared") + ": ",
          view.cleared().stream().map(ClearedView::part).collect(Collectors.joining(", ")));
    }
    if (!view.putBack().isEmpty()) {
      page.block("  " + Speech.of("brief.put-back") + ": ", String.join("; ", view.putBack()));
    }
  }

  private void next(CaseView view) {
    page.gap();
    if (!view.warnings().isEmpty() && view.move() != CaseView.Move.MAKE_SAFE) {
      page.block(Speech.of("label.careful") + " ", Speech.of("warned", warnings(view)));
    }
    switch (view.move()) {
      case MAKE_SAFE -> makeSafe(view);
      case CHECK, PROOF -> {
        if (view.move() == CaseView.Move.PROOF) {
          page.say(Speech.of("proof"));
        }
        view.next().ifPresent(this::check);
      }
      case PROPOSE -> page.say(Speech.of("propose.how"));
      case REPAIR -> view.repair().ifPresent(this::repair);
      case STUCK -> {
        if (!view.warnings().isEmpty()) {
          page.say(Speech.of("stuck.dead"));
        }
        page.say(Speech.of("stuck"));
        for (SuspectView suspect : view.suspects()) {
          page.block("- ", suspect.title() + ", " + Staircase.percent(suspect.belief()));
          if (!suspect.splitBy().isEmpty()) {
            page.block("    ", suspect.splitBy());
          }
        }
        page.say(Speech.of("stuck.say"));
      }
      case END -> {}
    }
    page.flush();
  }

  private void makeSafe(CaseView view) {
    page.say(Speech.of("stop", warnings(view)));
    page.labelled(Speech.label("do"), view.makeSafe());
    page.say(
        view.warnings().contains(Warning.FUEL) ? Speech.of("stop.fuel") : Speech.of("stop.hot"));
  }

  private static String warnings(CaseView view) {
    return view.warnings().stream().map(Warning::word).collect(Collectors.joining(", "));
  }

  private void check(CheckView check) {
    page.say(Speech.of("check", check.number(), minutes(check.minutes())));
    page.labelled(Speech.label("careful"), check.cautions());
    page.labelled(
        Speech.label("set"),
        wholeSetup && !check.set().whole().isEmpty()
            ? check.set().whole()
            : check.set().change().isEmpty()
                ? List.of(Speech.of("as-it-is", String.join(", ", check.set().whole())))
                : check.set().change());
    check.red().ifPresent(p -> page.labelled(Speech.label("red"), where(p)));
    check.black().ifPresent(p -> page.labelled(Speech.label("black"), where(p)));
    if (check.kind().metered()) {
      page.labelled(Speech.label("meter"), List.of(check.meter()));
    }
    check.lookAt().ifPresent(p -> page.labelled(Speech.label("look-at"), List.of(title(p))));
    if (!check.question().isEmpty()) {
      page.labelled(Speech.label("look"), List.of(check.question()));
    }
    page.labelled(Speech.label("healthy"), List.of(check.healthyWords()));
    page.labelled(Speech.label("because"), List.of(check.because()));
    choices(Entry.of(check));
    wholeSetup = false;
  }

  private void choices(Entry entry) {
    if (!entry.kind().metered()) {
      for (int i = 0; i < entry.choices().size(); i++) {
        page.block(
            i == 0 ? Speech.label("say") : "           ",
            (i + 1) + " " + choice(entry, entry.choices().get(i)));
      }
      return;
    }
    for (int i = 0; i < entry.outcomes().size(); i++) {
      OutcomeView outcome = entry.outcomes().get(i);
      page.block(
          i == 0 ? Speech.label("or-say") : "           ",
          outcome.leaves().isEmpty()
              ? Speech.of("outcome", Entry.letter(i), outcome.words())
              : Speech.of(
                  "outcome.leaves", Entry.letter(i), outcome.words(), left(outcome.leaves())));
    }
  }

  private static String left(List<String> leaves) {
    String first = leaves.stream().limit(2).collect(Collectors.joining(", "));
    return leaves.size() > 2 ? first + " " + Speech.of("more", leaves.size() - 2) : first;
  }

  private static String choice(Entry entry, Seen seen) {
    String words = entry.words(seen);
    return words.equals(Entry.word(seen)) ? words : words + " (" + Entry.word(seen) + ")";
  }

  private List<String> where(PointView point) {
    List<String> lines = new ArrayList<>();
    lines.add(point.ref() + ": " + point.title());
    if (!point.label().isEmpty()) {
      lines.add(Speech.of("labelled", point.label()));
    }
    if (!point.how().isEmpty()) {
      lines.add(point.how());
    }
    return lines;
  }

  private String title(String part) {
    LoadRef ref = LoadRef.parse(part);
    return vehicle.part(ref.part()).map(p -> p.title()).orElse(part)
        + ref.filament().map(f -> ", " + f).orElse("");
  }

  private void repair(RepairView repair) {
    page.say(
        Speech.of("found", repair.suspect().title(), Staircase.percent(repair.suspect().belief())));
    page.labelled(Speech.label("failed"), repair.suspect().modes());
    page.labelled(Speech.label("proven"), repair.proof());
    page.labelled(Speech.label("why"), repair.why());
    page.labelled(Speech.label("inspect"), repair.inspect());
    page.labelled(Speech.label("careful"), repair.cautions());
    page.labelled(Speech.label("repair"), repair.repair());
    page.labelled(Speech.label("prove"), repair.prove());
    page.say(Speech.of("when-mended"));
  }

  private void list(List<String> rest) {
    CaseView view = findCase.view();
    boolean all = !rest.isEmpty() && Obeyed.FIND.detail(rest.get(0)).equals("all");
    int shown = all ? view.suspects().size() : Math.min(LISTED, view.suspects().size());
    page.say(Speech.of("list.suspected"));
    for (SuspectView suspect : view.suspects().subList(0, shown)) {
      page.block("  ", suspect.title() + ", " + Staircase.percent(suspect.belief()));
      if (!suspect.modes().isEmpty()) {
        page.block("      ", String.join("; ", suspect.modes()));
      }
    }
    if (shown < view.suspects().size()) {
      page.say("  " + Speech.of("list.more", view.suspects().size() - shown));
    }
    page.say(Speech.of("list.cleared"));
    for (ClearedView cleared : view.cleared()) {
      page.block(
          "  ",
          Speech.of(
              "list.by",
              cleared.title(),
              cleared.readings().stream().map(String::valueOf).collect(Collectors.joining(", ")),
              cleared.why()));
    }
    page.say(Speech.of("list.readings"));
    for (ReadingView reading : view.readings()) {
      page.block(
          "  " + reading.id() + "  " + logs.time(reading) + "  ",
          Speech.of("list.reading", reading.where(), reading.value(), reading.healthyWords()));
      reading.doubts().forEach(d -> page.block("      ", Speech.of("list.again", d)));
    }
    view.deeds().forEach(d -> page.block("  ", d.words()));
    new Staircase(page).show(view.loop());
    if (!view.putBack().isEmpty()) {
      page.say(Speech.of("list.back", String.join("; ", view.putBack())));
    }
  }

  private void points(List<String> rest) {
    String part = rest.isEmpty() ? "" : rest.get(0).toLowerCase(Locale.ROOT);
    for (PointView point : findCase.points()) {
      if (point.ref().toString().toLowerCase(Locale.ROOT).contains(part)
          || point.title().toLowerCase(Locale.ROOT).contains(part)) {
        page.block(
            "  ",
            String.join("; ", where(point))
                + (point.reachable() ? "" : " (" + Speech.of("no-lead") + ")"));
      }
    }
  }

  private void setups() {
    int number = 1;
    for (SettingView setting : findCase.settings()) {
      page.block(
          "  " + number + "  ",
          setting.whole().isEmpty() ? Speech.of("at-rest") : String.join(", ", setting.whole()));
      number++;
    }
  }

  private void ending() {
    CaseView view = findCase.view();
    page.gap();
    if (view.status() == CaseView.Status.HEALTHY) {
      page.say(Speech.of("end.healthy"));
    }
    if (!view.putBack().isEmpty()) {
      page.say(Speech.of("end.back"));
      page.items(view.putBack());
    }
    page.say(Speech.of("end.readings", view.readings().size(), minutes(view.minutes())));
    kept();
  }

  private void kept() {
    String id = findCase.view().caseId();
    page.say(Speech.of("kept", id));
    page.say(Speech.of("go-on", id));
    page.flush();
  }

  private void cautions(List<String> cautions) {
    cautions.forEach(c -> page.block(Speech.of("label.careful") + " ", c));
  }

  static String minutes(double minutes) {
    return Speech.of("minutes", minutes < 1 ? 0 : Math.round(minutes));
  }

  private void help() {
    HelpPage.show(page, "", List.of("value"));
    if (meter.isPresent()) {
      HelpPage.show(page, "", List.of("meter"));
    }
    HelpPage.show(page, "", HELP);
  }
}
