package loopwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Sketch;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.Drilling;
import loopwright.casework.practise.Expectation;
import loopwright.casework.practise.FaultKind;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.practise.Step;
import loopwright.diagnosis.CheckKind;
import loopwright.io.wire.Fields;
import loopwright.model.Language;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** A drill in lines. */
final class PractiseTalk {
  /** What the help tells of, in order. */
  private static final List<String> HELP =
      List.of(
          "volts",
          "others",
          "amps",
          "look",
          "wiggle",
          "swap",
          "lamp",
          "on",
          "set",
          "pull",
          "back",
          "accuse",
          "accuse-as",
          "fuse",
          "draw",
          "points",
          "done");

  private final Drilling drilling;
  private final PractiseDesk desk;
  private final Page page;
  private final Asker asker;
  private boolean expect;
  private boolean stairs;
  private Setting setting = Setting.REST;

  PractiseTalk(Drilling drilling, PractiseDesk desk, Page page, Asker asker) {
    this.drilling = drilling;
    this.desk = desk;
    this.page = page;
    this.asker = asker;
  }

  /** Whether it asks what is expected before each reading. */
  PractiseTalk asking(boolean asks) {
    expect = asks;
    return this;
  }

  /** Whether the debrief shows the staircase at each step. */
  PractiseTalk showing(boolean shows) {
    stairs = shows;
    return this;
  }

  void run() throws Problem {
    page.say(Speech.of("practise.drill", drilling.code(), drilling.title()));
    page.say(Speech.of("practise.how"));
    draw();
    try {
      boolean done = false;
      while (!done) {
        done = said(asker.line("> "));
      }
    } catch (Asker.Ended e) {
      page.gap();
    }
    debrief(desk.finish(drilling));
  }

  /** Does what a line says; true at the end. */
  private boolean said(String line) throws Asker.Ended {
    if (line.isEmpty()) {
      return false;
    }
    List<String> words = List.of(Obeyed.DRILL.line(line).split("\\s+"));
    List<String> rest = words.subList(1, words.size());
    try {
      switch (words.get(0)) {
        case "done", "stop" -> {
          return true;
        }
        case "help" -> HelpPage.show(page, "practise.", HELP);
        case "draw" -> draw();
        case "points" -> points();
        case "volts" -> meter(CheckKind.VOLTS, rest);
        case "millivolts" -> meter(CheckKind.MILLIVOLTS, rest);
        case "ohms" -> meter(CheckKind.OHMS, rest);
        case "diode" -> meter(CheckKind.DIODE, rest);
        case "amps" -> amps(rest);
        case "look" -> look(CheckKind.LOOK, rest);
        case "swap" -> look(CheckKind.SWAP, rest);
        case "wiggle" -> look(CheckKind.WIGGLE, rest);
        case "lamp" -> look(CheckKind.LAMP_FOR_FUSE, rest);
        case "on" -> set(new Setting(drilling.on().positions(), setting.apart()));
        case "rest" -> set(Setting.REST);
        case "set" -> position(rest);
        case "pull", "unplug" -> pull(rest);
        case "back" -> back(rest);
        case "fuse" -> show(drilling.newMeterFuse());
        case "accuse" -> accuse(rest);
        default -> throw new Problem("word", Fields.cut(words.get(0)), Speech.of("practise.words"));
      }
    } catch (Problem e) {
      page.say(Speech.of("refused", Page.plain(e.value()), e.accepted()));
    }
    return false;
  }

  // ---- what is around ------------------------------------------------------------------------

  private void draw() {
    new Sketch(drilling.vehicle()).of(drilling.circuit()).ifPresent(this::draw);
  }

  private void draw(LoopView loop) {
    page.say(loop.title());
    for (int i = 0; i < loop.stairs().size(); i++) {
      LoopView.Stair stair = loop.stairs().get(i);
      List<String> names = new ArrayList<>();
      names.add(stair.point().toString());
      stair.others().forEach(t -> names.add(t.toString()));
      page.block("  o ", String.join(", ", names));
      if (i < loop.pieces().size()) {
        page.block("    | ", loop.pieces().get(i).title());
      }
    }
    loop.branches().forEach(this::draw);
  }

  private void points() {
    for (PointView point : drilling.points()) {
      if (point.reachable()) {
        page.block("  " + point.ref() + "  ", point.title());
      }
    }
  }

  // ---- the setting ---------------------------------------------------------------------------

  private void set(Setting to) {
    setting = to;
    List<String> stands = new ArrayList<>();
    to.positions().forEach((control, position) -> stands.add(control + "=" + position));
    to.apart().forEach(part -> stands.add(Speech.of("practise.out", part)));
    page.block(
        Speech.label("set"),
        stands.isEmpty() ? Speech.of("practise.rest") : String.join(", ", stands));
  }

  private void position(List<String> rest) throws Problem {
    Setting to = setting;
    for (String word : rest) {
      String[] both = word.split("=", 2);
      List<String> positions = drilling.vehicle().controls().get(both[0]);
      if (both.length < 2 || positions == null || !positions.contains(both[1])) {
        throw new Problem(
            "set",
            Fields.cut(word),
            Speech.of(
                "practise.position",
                drilling.vehicle().controls().entrySet().stream()
                    .map(c -> c.getKey() + "=" + String.join("|", c.getValue()))
                    .collect(Collectors.joining(", "))));
      }
      to = to.with(both[0], both[1]);
    }
    set(to);
  }

  private void pull(List<String> rest) throws Problem {
    set(setting.without(Set.copyOf(known(rest))));
  }

  private void back(List<String> rest) throws Problem {
    SortedSet<String> apart = new TreeSet<>(setting.apart());
    apart.removeAll(known(rest));
    set(new Setting(setting.positions(), apart));
  }

  private List<String> known(List<String> parts) throws Problem {
    for (String part : parts) {
      if (drilling.vehicle().part(part).isEmpty()) {
        throw new Problem("part", Fields.cut(part), Speech.of("practise.part"));
      }
    }
    if (parts.isEmpty()) {
      throw new Problem("part", "", Speech.of("practise.part"));
    }
    return parts;
  }

  // ---- checks --------------------------------------------------------------------------------

  private List<TerminalRef> leads(List<String> rest) throws Problem {
    List<TerminalRef> leads = new ArrayList<>();
    for (String word : rest) {
      int dot = word.indexOf('.');
      if (dot <= 0 || dot == word.length() - 1) {
        throw new Problem("point", Fields.cut(word), Speech.of("practise.point"));
      }
      leads.add(new TerminalRef(word.substring(0, dot), word.substring(dot + 1)));
    }
    if (leads.size() == 1) {
      leads.add(drilling.vehicle().groundedPost());
    }
    if (leads.size() != 2) {
      throw new Problem("point", String.join(" ", rest), Speech.of("practise.leads"));
    }
    return leads;
  }

  private void meter(CheckKind kind, List<String> rest) throws Problem, Asker.Ended {
    List<TerminalRef> leads = leads(rest);
    take(
        new OwnCheck(
            kind, Optional.of(leads.get(0)), Optional.of(leads.get(1)), Optional.empty(), setting));
  }

  private void look(CheckKind kind, List<String> rest) throws Problem, Asker.Ended {
    if (rest.size() != 1) {
      throw new Problem("look", String.join(" ", rest), Speech.of("practise.one-part"));
    }
    take(new OwnCheck(kind, Optional.empty(), Optional.empty(), Optional.of(rest.get(0)), setting));
  }

  private void take(OwnCheck check) throws Problem, Asker.Ended {
    show(drilling.take(check, expect ? Optional.of(expected(check)) : Optional.empty()));
  }

  private Expectation expected(OwnCheck check) throws Problem, Asker.Ended {
    String value = asker.line(Speech.of("practise.expect") + "> ");
    return Expectation.of(check.kind(), english(check.kind(), value), foretold());
  }

  /** What is expected, in the words that it is understood by. */
  private static String english(CheckKind kind, String typed) throws Problem {
    if (kind.metered() || typed.isEmpty()) {
      return Obeyed.DRILL.details(typed);
    }
    return Entry.of(kind).read(typed) instanceof Answer.Saw saw ? saw.seen().word() : typed;
  }

  /** The parts whose failure should show, by the digits they are asked by or by their ids. */
  private Optional<Set<String>> foretold() throws Problem, Asker.Ended {
    List<String> asked = drilling.asked();
    if (asked.isEmpty()) {
      return Optional.empty();
    }
    page.block(
        Speech.label("foretold"),
        IntStream.range(0, asked.size())
            .mapToObj(i -> (i + 1) + " " + drilling.vehicle().requirePart(asked.get(i)).title())
            .collect(Collectors.joining(", ")));
    String typed = asker.line(Speech.of("practise.foretold") + "> ");
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    Set<String> named = new LinkedHashSet<>();
    for (String word : typed.split("[\\s,]+")) {
      boolean number = word.matches("[1-9]") && Integer.parseInt(word) <= asked.size();
      if (number) {
        named.add(asked.get(Integer.parseInt(word) - 1));
      } else if (!word.isEmpty() && !word.equals("0")) {
        named.addAll(known(List.of(word)));
      }
    }
    return Optional.of(named);
  }

  /** The parts, and how they failed behind the word as. */
  private void accuse(List<String> rest) throws Problem {
    int as = 0;
    while (as < rest.size() && !saysAs(rest.get(as))) {
      as++;
    }
    Optional<FaultKind> how = Optional.empty();
    if (as < rest.size()) {
      String said = String.join(" ", rest.subList(as + 1, rest.size()));
      String word = Obeyed.DRILL.detail(said);
      how = Stream.of(FaultKind.values()).filter(k -> k.word().equals(word)).findFirst();
      if (how.isEmpty()) {
        throw new Problem(
            "as",
            Fields.cut(said),
            Stream.of(FaultKind.values())
                .map(k -> Obeyed.usual(k.word()))
                .collect(Collectors.joining(", ")));
      }
    }
    show(drilling.accuse(new LinkedHashSet<>(known(rest.subList(0, as))), how));
  }

  private boolean saysAs(String word) {
    return drilling.vehicle().part(word).isEmpty() && Obeyed.DRILL.detail(word).equals("as");
  }

  private void amps(List<String> rest) throws Problem {
    List<TerminalRef> leads = leads(rest);
    show(drilling.amps(leads.get(0), leads.get(1), setting));
  }

  private void show(Step step) {
    if (!step.shown().isEmpty()) {
      page.block(Speech.label("shows"), step.shown());
    }
    step.told().forEach(t -> page.block(Speech.NO_LABEL, t));
    page.block(
        Speech.NO_LABEL,
        Speech.of(
            "practise.minutes",
            Language.marked(String.format(Locale.ROOT, "%.1f", drilling.minutes()))));
    if (drilling.proven()) {
      page.say(Speech.of("practise.works"));
    }
  }

  // ---- the debrief ---------------------------------------------------------------------------

  private void debrief(Debrief debrief) {
    page.gap();
    page.say(Speech.of("practise.drill", debrief.code(), debrief.title()));
    page.say(Speech.of("practise.score", debrief.score()));
    debrief.truth().forEach(t -> page.block(Speech.label("failed"), t));
    debrief.summary().forEach(s -> page.block("  ", s));
    for (Step step : debrief.own().steps()) {
      page.gap();
      page.block(
          step.number() + "  ",
          step.what()
              + (step.shown().isEmpty() ? "" : ": " + step.shown())
              + Language.marked(String.format(Locale.ROOT, ", %.1f min", step.minutes())));
      step.told().forEach(t -> page.block("   ", t));
      step.review().forEach(t -> page.block("   ", t));
      if (stairs) {
        new Staircase(page).show(step.loop());
      }
    }
    page.gap();
    page.say(Speech.of("practise.best"));
    for (Step step : debrief.best().steps()) {
      page.block(
          step.number() + "  ", step.what() + (step.shown().isEmpty() ? "" : ": " + step.shown()));
    }
  }
}
