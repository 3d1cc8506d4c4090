package loopwright.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.Against;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CannedCase;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CaseView;
import loopwright.casework.CaseView.Move;
import loopwright.casework.CaseView.Status;
import loopwright.casework.CheckView;
import loopwright.casework.CheckView.OutcomeView;
import loopwright.casework.ClearedView;
import loopwright.casework.DeedView;
import loopwright.casework.LoopView;
import loopwright.casework.LoopView.Measured;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.LoopView.Stair;
import loopwright.casework.LoopView.Standing;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.ReadingView;
import loopwright.casework.RepairView;
import loopwright.casework.SettingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Explainer;
import loopwright.diagnosis.Explainer.Can;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;
import loopwright.evidence.Deeds;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A stand-in for a case: no circuit is solved, a fixed list of checks is gone through on the
 * vehicle of {@link Shed}. Volts at F3.load below 1 blame the fuse; volts at L1.out above 6 blame
 * the ground, below 1 the lamp. It exists to try the conversations, not the search.
 */
final class ScriptedCase implements CannedCase {
  private static final Instant START = Instant.parse("2024-05-17T18:00:00Z");
  private static final Pattern VALUE =
      Pattern.compile("([+-]?\\d+(?:[.,]\\d+)?)\\s*(V|mV|ohm|kohm|Mohm)");
  private static final Setting ON = Setting.of(Map.of("S5", "on"));
  private static final List<String> ON_WORDS = List.of("beacon switch on");

  private record Taken(int id, OwnCheck check, Answer answer, String words, double number) {}

  private final Vehicle vehicle;
  private final String caseId;
  private final CaseStore.Journal journal;
  private final Map<Integer, Taken> readings = new LinkedHashMap<>();
  private final List<OwnCheck> refused = new ArrayList<>();
  private final List<DeedView> deeds = new ArrayList<>();
  private int lastDeed;

  private static final int MOST_DEEDS = 5;

  private String said = "";
  private boolean mended;
  private Optional<Warning> warning = Optional.empty();
  private boolean isolated;
  private boolean stopped;
  private int seq;
  private int lastId;

  /** What the next accepted call throws, to play a defect of the program. */
  RuntimeException defect;

  ScriptedCase(Vehicle vehicle, String caseId, CaseStore.Journal journal) {
    this.vehicle = vehicle;
    this.caseId = caseId;
    this.journal = journal;
  }

  /** Brings it to the state after these events. */
  void replay(List<CaseEvent> events) throws Problem {
    for (CaseEvent event : events) {
      apply(event);
    }
  }

  private void write(CaseEvent event) throws Problem {
    if (defect != null) {
      throw defect;
    }
    journal.append(event);
    apply(event);
  }

  private void apply(CaseEvent event) throws Problem {
    if (event instanceof CaseEvent.Opened) {
      return;
    }
    seq++;
    if (event instanceof CaseEvent.Deed e) {
      deeds.add(new DeedView(++lastDeed, lastId, e, e.getClass().getSimpleName()));
      // Thousands of random lines would make long ones.
      deeds.subList(0, Math.max(0, deeds.size() - MOST_DEEDS)).clear();
    }
    if (event instanceof CaseEvent.Undone e) {
      deeds.removeIf(d -> d.deed().equals(e.what()));
      mended &= !(e.what() instanceof CaseEvent.Repaired);
      if (e.what() instanceof CaseEvent.Refused r) {
        refused.remove(r.check());
      }
    } else if (event instanceof CaseEvent.Taken e) {
      readings.put(e.reading(), taken(e.reading(), e.check(), e.answer()));
      lastId = Math.max(lastId, e.reading());
    } else if (event instanceof CaseEvent.Withdrawn e) {
      readings.remove(e.reading());
    } else if (event instanceof CaseEvent.Corrected e) {
      readings.put(e.reading(), taken(e.reading(), readings.get(e.reading()).check(), e.answer()));
    } else if (event instanceof CaseEvent.Refused e) {
      refused.add(e.check());
    } else if (event instanceof CaseEvent.Repaired) {
      mended = true;
    } else if (event instanceof CaseEvent.Warned e) {
      warning = Optional.of(e.warning());
    } else if (event instanceof CaseEvent.Isolated) {
      isolated = true;
    } else if (event instanceof CaseEvent.Gone) {
      warning = Optional.empty();
      isolated = false;
    } else if (event instanceof CaseEvent.Stopped) {
      stopped = true;
    }
  }

  private Instant now() {
    return START.plusSeconds(60L * seq);
  }

  // Checks.

  private record Script(String id, CheckKind kind, String red, String look, String because) {
    boolean asks(OwnCheck check) {
      return check.kind() == kind
          && check.red().map(TerminalRef::toString).orElse("").equals(red)
          && check.lookAt().orElse("").equals(look);
    }

    OwnCheck own() {
      return new OwnCheck(
          kind,
          red.isEmpty() ? Optional.empty() : Optional.of(TerminalRef.parse(red)),
          red.isEmpty() ? Optional.empty() : Optional.of(TerminalRef.parse("BATT.neg")),
          look.isEmpty() ? Optional.empty() : Optional.of(look),
          ON);
    }
  }

  private static final Script FUSE =
      new Script("c1", CheckKind.VOLTS, "F3.load", "", "It splits the loop behind the fuse.");
  private static final Script LAMP =
      new Script("c2", CheckKind.LOOK, "", "L1", "A look costs nothing.");
  private static final Script GROUND =
      new Script("c3", CheckKind.VOLTS, "L1.out", "", "It tells the lamp from its ground.");
  private static final Script PROOF =
      new Script("p1", CheckKind.LOOK, "", "L1", "It must light again.");

  private Optional<Script> proposed() {
    Move move = move();
    if (move == Move.PROOF) {
      return Optional.of(PROOF);
    }
    return move == Move.CHECK ? open() : Optional.empty();
  }

  private Optional<Script> open() {
    for (Script script : List.of(FUSE, LAMP, GROUND)) {
      boolean done =
          readings.values().stream().anyMatch(t -> script.asks(t.check()))
              || refused.stream().anyMatch(script::asks);
      if (!done) {
        return Optional.of(script);
      }
    }
    return Optional.empty();
  }

  private Optional<Taken> volts(String red) {
    return readings.values().stream()
        .filter(t -> t.check().kind() == CheckKind.VOLTS)
        .filter(t -> t.check().red().map(TerminalRef::toString).orElse("").equals(red))
        .reduce((a, b) -> b);
  }

  private Optional<String> found() {
    Optional<Taken> fuse = volts("F3.load");
    if (fuse.isPresent() && fuse.get().number() < 1) {
      return Optional.of("F3");
    }
    Optional<Taken> ground = volts("L1.out");
    if (ground.isPresent()) {
      return Optional.of(ground.get().number() > 6 ? "G4" : "L1");
    }
    return Optional.empty();
  }

  private boolean lit() {
    return readings.values().stream()
        .anyMatch(t -> t.answer() instanceof Answer.Saw saw && saw.seen() == Seen.ON);
  }

  private boolean odd() {
    return volts("F3.load").map(t -> t.number() > 20).orElse(false);
  }

  private Move move() {
    if (stopped) {
      return Move.END;
    }
    if (warning.isPresent()) {
      return isolated ? Move.STUCK : Move.MAKE_SAFE;
    }
    if (mended) {
      return lit() ? Move.END : Move.PROOF;
    }
    if (odd()) {
      return Move.CHECK;
    }
    if (found().isPresent()) {
      return Move.REPAIR;
    }
    return open().isPresent() ? Move.CHECK : Move.STUCK;
  }

  // Values.

  private static Taken taken(int id, OwnCheck check, Answer answer) throws Problem {
    if (answer instanceof Answer.Saw saw) {
      if (check.kind().metered()) {
        throw new Problem("value", saw.seen().word(), "a value with its unit for a meter check");
      }
      return new Taken(id, check, answer, saw.seen().word(), 0);
    }
    if (!check.kind().metered()) {
      throw new Problem("value", "a meter value", "what is seen: on, dim, off");
    }
    if (answer instanceof Answer.Within within) {
      double low = within.band().low();
      double high = Math.min(within.band().high(), 1e9);
      return new Taken(id, check, answer, Staircase.band(within.band()), (low + high) / 2);
    }
    String text = ((Answer.Text) answer).text().strip();
    boolean ohms = check.kind() == CheckKind.OHMS;
    if (text.equals("OL")) {
      return new Taken(id, check, answer, "OL", 1e9);
    }
    Matcher matcher = VALUE.matcher(text);
    if (!matcher.matches() || matcher.group(2).endsWith("ohm") != ohms) {
      throw new Problem("value", text, "a number with " + (ohms ? "ohm" : "V or mV") + ", or OL");
    }
    double number = Double.parseDouble(matcher.group(1).replace(',', '.'));
    double base =
        switch (matcher.group(2)) {
          case "mV" -> number / 1000;
          case "kohm" -> number * 1e3;
          case "Mohm" -> number * 1e6;
          default -> number;
        };
    if (Math.abs(base) > 1000 && !ohms) {
      throw new Problem("value", text, "at most 1000 V");
    }
    return new Taken(
        id, check, answer, matcher.group(1).replace(',', '.') + " " + matcher.group(2), base);
  }

  // The case.

  @Override
  public Understood understand(String checkId, Answer answer) throws Problem {
    Taken taken = taken(0, script(checkId).own(), answer);
    return new Understood(
        taken.words(),
        Math.abs(taken.number()) > 20 && taken.number() < 1e9
            ? Optional.of("Nothing here gives that.")
            : Optional.empty());
  }

  private Script script(String id) throws Problem {
    return proposed()
        .filter(s -> s.id().equals(id))
        .orElseThrow(
            () ->
                new Problem(
                    "check", id, proposed().map(s -> "the open check, " + s.id()).orElse("none")));
  }

  @Override
  public CaseView answer(String checkId, Answer answer) throws Problem {
    return takeChecked(script(checkId).own(), answer);
  }

  @Override
  public CaseView take(OwnCheck check, Answer answer) throws Problem {
    for (Optional<TerminalRef> point : List.of(check.red(), check.black())) {
      if (point.isPresent() && !vehicle.terminals().contains(point.get())) {
        throw new Problem(
            point.equals(check.red()) ? "red" : "black",
            point.get().toString(),
            "a point of the pumper");
      }
    }
    if (check.lookAt().isPresent()) {
      part(check.lookAt().get());
    }
    for (String control : check.setting().positions().keySet()) {
      if (!vehicle.controls().containsKey(control)) {
        throw new Problem("setting", control, "a control: S5");
      }
    }
    return takeChecked(check, answer);
  }

  private CaseView takeChecked(OwnCheck check, Answer answer) throws Problem {
    Taken taken = taken(lastId + 1, check, answer);
    write(new CaseEvent.Taken(now(), lastId + 1, check, answer));
    said = taken.words() + " at " + where(check) + " is reading " + lastId + ".";
    return view();
  }

  private static String where(OwnCheck check) {
    return check.red().map(TerminalRef::toString).orElseGet(() -> check.lookAt().orElse(""));
  }

  @Override
  public CaseView refuse(String checkId, Refusal refusal) throws Problem {
    OwnCheck check = script(checkId).own();
    write(new CaseEvent.Refused(now(), check, refusal));
    said = "Left out: " + where(check) + ", " + refusal.words() + ".";
    return view();
  }

  @Override
  public CaseView withdraw(int reading) throws Problem {
    reading(reading);
    write(new CaseEvent.Withdrawn(now(), reading));
    said = "Reading " + reading + " is taken back.";
    return view();
  }

  @Override
  public CaseView correct(int reading, Answer answer) throws Problem {
    Taken taken = taken(reading, reading(reading).check(), answer);
    write(new CaseEvent.Corrected(now(), reading, answer));
    said = "Reading " + reading + " is now " + taken.words() + ".";
    return view();
  }

  private Taken reading(int reading) throws Problem {
    if (!readings.containsKey(reading)) {
      throw new Problem("reading", String.valueOf(reading), "one of " + readings.keySet());
    }
    return readings.get(reading);
  }

  @Override
  public CaseView swapped(String part, Helped helped) throws Problem {
    part(part);
    write(new CaseEvent.Swapped(now(), part, helped));
    said = part + " was replaced; it " + (helped == Helped.YES ? "helped." : "did not help.");
    return view();
  }

  @Override
  public CaseView repaired(String part) throws Problem {
    part(part);
    write(new CaseEvent.Repaired(now(), part));
    said = part + " is mended.";
    return view();
  }

  @Override
  public CaseView undo(int deed) throws Problem {
    DeedView what = Deeds.numbered(deed, deeds);
    write(new CaseEvent.Undone(now(), what.deed()));
    said = what.words() + " is taken back.";
    return view();
  }

  private void part(String part) throws Problem {
    if (vehicle.part(part).isEmpty()) {
      throw new Problem("part", part, "a part of the pumper");
    }
  }

  @Override
  public CaseView attach(Path photo, String caption) throws Problem {
    write(new CaseEvent.Photographed(now(), journal.photo(photo), caption));
    said = "The photo is kept.";
    return view();
  }

  @Override
  public CaseView warn(Warning of) throws Problem {
    write(new CaseEvent.Warned(now(), of));
    said = "Reported: " + of.word() + ".";
    return view();
  }

  @Override
  public CaseView isolated() throws Problem {
    warned("isolated");
    write(new CaseEvent.Isolated(now()));
    said = "The battery is off.";
    return view();
  }

  @Override
  public CaseView gone() throws Problem {
    warned("gone");
    write(new CaseEvent.Gone(now()));
    said = "Gone.";
    return view();
  }

  private void warned(String word) throws Problem {
    if (warning.isEmpty()) {
      throw new Problem(word, "", "a warning before");
    }
  }

  @Override
  public CaseView stop() {
    try {
      write(new CaseEvent.Stopped(now()));
    } catch (Problem e) {
      stopped = true;
    }
    return view();
  }

  @Override
  public List<String> whyStill(String partOrSuspect) throws Problem {
    part(partOrSuspect);
    return List.of(partOrSuspect + " is still held.", "Nothing has ruled it out.");
  }

  @Override
  public List<Against> against(String partOrSuspect) throws Problem {
    part(partOrSuspect);
    return readings.values().stream()
        .filter(t -> t.check().kind() == CheckKind.VOLTS)
        .map(
            t ->
                new Against(
                    t.id(),
                    where(t.check()),
                    t.words(),
                    volts(0, 12.7),
                    volts(12, 12.7),
                    Optional.of(new Band(4.1, Double.POSITIVE_INFINITY, Band.Unit.OHM)),
                    List.of(
                        new Explainer.Mode(
                            new SuspectId("G4", "on-paint"), "ground on paint", Can.GIVES))))
        .toList();
  }

  @Override
  public List<PartView> parts() {
    return List.of();
  }

  @Override
  public List<String> whyNext() {
    return proposed().map(s -> List.of(s.because())).orElse(List.of("No check is open."));
  }

  @Override
  public List<PointView> points() {
    return List.of(
        point("BATT.pos", "battery positive post"),
        point("BATT.neg", "battery negative post"),
        point("F3.load", "beacon fuse F3, load side"),
        point("L1.out", "beacon L1, ground side"),
        point("G4.lug", "beacon ground G4, lug"));
  }

  private static PointView point(String ref, String title) {
    return new PointView(
        TerminalRef.parse(ref),
        title,
        ref.equals("F3.load") ? "BCN" : "",
        "under the dash",
        0.5,
        true);
  }

  @Override
  public String title(SuspectId suspect) {
    return suspect.toString();
  }

  @Override
  public List<SettingView> settings() {
    return List.of(
        new SettingView(ON, List.of(), ON_WORDS),
        new SettingView(Setting.REST.without("BATT"), List.of(), List.of("battery negative off")));
  }

  @Override
  public void close() {
    journal.close();
  }

  // The view.

  @Override
  public CaseView view() {
    Move move = move();
    Optional<String> found = found();
    List<ClearedView> cleared = new ArrayList<>();
    List<SuspectView> suspects = new ArrayList<>();
    Optional<Taken> fuse = volts("F3.load");
    boolean fuseGood = fuse.map(t -> t.number() >= 1).orElse(false);
    if (fuseGood) {
      cleared.add(
          new ClearedView(
              "F3",
              "beacon fuse F3",
              List.of(fuse.get().id()),
              fuse.get().words() + " behind it."));
    }
    for (String part : List.of("G4", "L1", "F3")) {
      boolean out = found.isPresent() ? !found.get().equals(part) : part.equals("F3") && fuseGood;
      if (!out) {
        suspects.add(suspect(part, found.isPresent() ? 0.995 : part.equals("G4") ? 0.6 : 0.2));
      }
    }
    Status status =
        odd()
            ? Status.CONTRADICTION
            : mended && lit()
                ? Status.HEALTHY
                : found.isPresent() ? Status.ISOLATED : Status.SEARCHING;
    Optional<CheckView> next =
        move == Move.CHECK && odd() ? Optional.of(check(FUSE)) : proposed().map(this::check);
    return new CaseView(
        caseId,
        seq,
        "Beacon dead - Light pumper",
        status,
        move,
        readings.size() * 1.5,
        suspects,
        cleared,
        readings.values().stream().map(this::reading).toList(),
        deeds,
        next,
        loop(found, fuseGood),
        said,
        List.of("Rings and watch off."),
        warning.stream().toList(),
        warning.isPresent() ? List.of("Isolate the battery.") : List.of(),
        readings.isEmpty() || stopped ? List.of() : List.of("switch the beacon off"),
        found.isPresent() && !odd() ? Optional.of(repair(found.get())) : Optional.empty(),
        odd() ? List.of(volts("F3.load").get().id()) : List.of(),
        odd() ? "Take reading " + volts("F3.load").get().id() + " again." : "");
  }

  private static SuspectView suspect(String part, double belief) {
    return new SuspectView(
        List.of(part),
        switch (part) {
          case "G4" -> "beacon ground G4";
          case "L1" -> "beacon L1";
          default -> "beacon fuse F3";
        },
        List.of("open or corroded"),
        belief,
        List.of(new SuspectId(part, "open")),
        "");
  }

  private ReadingView reading(Taken taken) {
    return new ReadingView(
        taken.id(),
        taken.check(),
        ON_WORDS,
        where(taken.check()),
        taken.words(),
        taken.check().kind() == CheckKind.VOLTS && taken.number() < 1e6
            ? Optional.of(taken.number())
            : Optional.empty(),
        Optional.of(volts(12, 12.7)),
        "12.0 to 12.7 V",
        taken.number() >= 12 && taken.number() <= 12.7,
        "It did something.",
        List.of(),
        START.plusSeconds(taken.id()));
  }

  private CheckView check(Script script) {
    boolean metered = script.kind().metered();
    Band healthy = script == FUSE ? volts(12, 12.7) : volts(0, 0.05);
    return new CheckView(
        script.id(),
        readings.size() + 1,
        script.kind(),
        new SettingView(ON, readings.isEmpty() ? ON_WORDS : List.of(), ON_WORDS),
        metered ? Optional.of(point(script.red(), "the point " + script.red())) : Optional.empty(),
        metered ? Optional.of(point("BATT.neg", "battery negative post")) : Optional.empty(),
        metered ? "volts DC" : "",
        metered ? Optional.empty() : Optional.of(script.look()),
        metered ? "" : "Does the beacon light?",
        metered ? List.of() : List.of(Seen.ON, Seen.DIM, Seen.OFF),
        metered ? List.of() : List.of("on", "dim", "does nothing"),
        metered ? Optional.of(healthy) : Optional.empty(),
        metered ? Staircase.band(healthy) : "on",
        metered
            ? List.of(
                new OutcomeView(
                    "11.9 to 12.7 V",
                    Optional.of(volts(11.9, 12.7)),
                    Optional.empty(),
                    0.7,
                    List.of("beacon ground G4", "beacon L1")),
                new OutcomeView(
                    "0 to 0.2 V",
                    Optional.of(volts(0, 0.2)),
                    Optional.empty(),
                    0.3,
                    List.of("beacon fuse F3")))
            : List.of(
                new OutcomeView(
                    "does nothing", Optional.empty(), Optional.of(Seen.OFF), 1, List.of())),
        1,
        script.because(),
        List.of("The beacon turns: keep clear."));
  }

  private static Band volts(double low, double high) {
    return new Band(low, high, Band.Unit.VOLT);
  }

  private LoopView loop(Optional<String> found, boolean fuseGood) {
    return new LoopView(
        "Beacon",
        List.of(
            piece("F3", found, fuseGood ? Standing.CLEARED : Standing.HELD),
            piece("L1", found, Standing.HELD),
            piece("G4", found, Standing.HELD)),
        List.of(
            stair("BATT.pos", volts(12.4, 12.8)),
            stair("F3.load", volts(12, 12.7)),
            stair("L1.out", volts(0, 0.05)),
            stair("BATT.neg", volts(0, 0))),
        List.of());
  }

  private PieceView piece(String part, Optional<String> found, Standing standing) {
    boolean condemned = found.isPresent() && found.get().equals(part);
    return new PieceView(
        part,
        vehicle.requirePart(part).title(),
        "",
        vehicle.requirePart(part).kind(),
        Optional.empty(),
        Optional.empty(),
        "",
        condemned ? Standing.CONDEMNED : standing,
        condemned ? 0.995 : 0.3,
        standing == Standing.CLEARED ? List.of(1) : List.of());
  }

  private Stair stair(String point, Band healthy) {
    return new Stair(
        TerminalRef.parse(point),
        List.of(),
        healthy,
        volts(point).map(t -> new Measured(t.id(), t.number())).stream().toList(),
        true);
  }

  private RepairView repair(String part) {
    return new RepairView(
        suspect(part, 0.995),
        List.of("12.3 V stands at the lamp's ground side."),
        List.of("Paint under the lug."),
        List.of("Look for rust at the stud."),
        List.of("Clean the stud to bare metal."),
        List.of("The beacon lights and its ground side reads below 0.05 V."),
        List.of("Battery negative off before you reach in."));
  }
}
