package loopwright.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Sketch;
import loopwright.casework.practise.Debrief;
import loopwright.casework.practise.Drilling;
import loopwright.casework.practise.Expectation;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.practise.Step;
import loopwright.diagnosis.CheckKind;
import loopwright.io.wire.Fields;
import loopwright.model.Language;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** A drill in lines. */
final class PractiseTalk {
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
    page.say("Drill " + drilling.code() + ": " + drilling.title());
    page.say(
        "Everything is at rest. You choose each check; accuse PART when you know. Say help for the"
            + " words understood here.");
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
    List<String> words = Arrays.stream(line.split("\\s+")).filter(w -> !w.isEmpty()).toList();
    if (words.isEmpty()) {
      return false;
    }
    List<String> rest = words.subList(1, words.size());
    try {
      switch (words.get(0).toLowerCase(Locale.ROOT)) {
        case "done" -> {
          return true;
        }
        case "help" -> help();
        case "draw" -> draw();
        case "points" -> points();
        case "volts" -> meter(CheckKind.VOLTS, rest);
        case "millivolts", "mv" -> meter(CheckKind.MILLIVOLTS, rest);
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
        case "accuse" -> show(drilling.accuse(new LinkedHashSet<>(known(rest))));
        default -> throw new Problem("word", Fields.cut(words.get(0)), "help shows all words");
      }
    } catch (Problem e) {
      page.say("'" + Page.plain(e.value()) + "' isn't taken: " + e.accepted() + ".");
    }
    return false;
  }

  private void help() {
    page.items(
        List.of(
            "volts RED [BLACK], ohms, millivolts, diode, amps: a reading between two points, as in"
                + " volts F3.load; black is on the grounded post if left out",
            "look PART: what it looks or sounds like; wiggle PART; swap PART: a good one in its"
                + " place; lamp FUSE: a lamp in its place",
            "on: the circuit's own switches on; rest: all at rest; set S5=on KEY=on",
            "pull PART: a fuse pulled, a plug apart, the battery off; back PART",
            "accuse PART ...: names the failed part and mends it; then prove it, and say done",
            "fuse: a new fuse for the meter; draw: the circuit; points: all probe points",
            "done or stop: ends it, with what there is to learn from it"));
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
    to.apart().forEach(part -> stands.add(part + " out"));
    page.block("  SET      ", stands.isEmpty() ? "all at rest" : String.join(", ", stands));
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
            "CONTROL=POSITION, of "
                + drilling.vehicle().controls().entrySet().stream()
                    .map(c -> c.getKey() + "=" + String.join("|", c.getValue()))
                    .collect(Collectors.joining(", ")));
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
        throw new Problem("part", Fields.cut(part), "a part of this vehicle by its id, as in draw");
      }
    }
    if (parts.isEmpty()) {
      throw new Problem("part", "", "a part of this vehicle by its id, as in draw");
    }
    return parts;
  }

  // ---- checks --------------------------------------------------------------------------------

  private List<TerminalRef> leads(List<String> rest) throws Problem {
    List<TerminalRef> leads = new ArrayList<>();
    for (String word : rest) {
      int dot = word.indexOf('.');
      if (dot <= 0 || dot == word.length() - 1) {
        throw new Problem("point", Fields.cut(word), "a probe point, as in F3.load");
      }
      leads.add(new TerminalRef(word.substring(0, dot), word.substring(dot + 1)));
    }
    if (leads.size() == 1) {
      leads.add(drilling.vehicle().groundedPost());
    }
    if (leads.size() != 2) {
      throw new Problem("point", String.join(" ", rest), "red, then black, as in F3.load G4.lug");
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
      throw new Problem("look", String.join(" ", rest), "one part, as in look F3");
    }
    take(new OwnCheck(kind, Optional.empty(), Optional.empty(), Optional.of(rest.get(0)), setting));
  }

  private void take(OwnCheck check) throws Problem, Asker.Ended {
    show(drilling.take(check, expect ? Optional.of(expected(check)) : Optional.empty()));
  }

  private Expectation expected(OwnCheck check) throws Problem, Asker.Ended {
    String value = asker.line("you expect (12-13 V, OL, on; Enter: nothing)> ");
    String parts = asker.line("it tells about (parts; Enter: nothing)> ");
    List<String> named = Arrays.stream(parts.split("[\\s,]+")).filter(p -> !p.isEmpty()).toList();
    return Expectation.of(check.kind(), value, Set.copyOf(named.isEmpty() ? named : known(named)));
  }

  private void amps(List<String> rest) throws Problem {
    List<TerminalRef> leads = leads(rest);
    show(drilling.amps(leads.get(0), leads.get(1), setting));
  }

  private void show(Step step) {
    if (!step.shown().isEmpty()) {
      page.block("  READS    ", step.shown());
    }
    step.told().forEach(t -> page.block("           ", t));
    page.block(
        "           ",
        Language.marked(String.format(Locale.ROOT, "%.1f", drilling.minutes())) + " min so far");
    if (drilling.proven()) {
      page.say("It works again. Say done, or go on if you think that something is left.");
    }
  }

  // ---- the debrief ---------------------------------------------------------------------------

  private void debrief(Debrief debrief) {
    page.gap();
    page.say("Drill " + debrief.code() + ": " + debrief.title());
    page.say("Score " + debrief.score() + " of 100.");
    debrief.truth().forEach(t -> page.block("  FAILED   ", t));
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
    page.say("The best plan:");
    for (Step step : debrief.best().steps()) {
      page.block(
          step.number() + "  ", step.what() + (step.shown().isEmpty() ? "" : ": " + step.shown()));
    }
  }
}
