package loopwright.ui.fake;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.Against;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CannedCase;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.ClearedView;
import loopwright.casework.Comparison;
import loopwright.casework.DeedView;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Proposer;
import loopwright.casework.ReadingView;
import loopwright.casework.RepairView;
import loopwright.casework.SettingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;
import loopwright.evidence.Deeds;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A case played by halving the loop: full volts at a node clear what lies before it, no volts clear
 * what lies behind it. It stands in for the real search so that the screens can be seen and tested
 * alone.
 */
public final class FakeFindCase implements CannedCase {
  private static final double FULL = 12.6;
  private static final Pattern VALUE =
      Pattern.compile("(-?\\d+(?:[.,]\\d*)?)\\s*(mV|V|ohm|kohm)", Pattern.CASE_INSENSITIVE);
  private static final TerminalRef GROUNDED_POST = TerminalRef.parse("BATT.neg");

  private record Step(String part, TerminalRef before, TerminalRef after, double prior) {}

  private record Taken(int id, String checkId, OwnCheck check, Answer answer, String did) {}

  private final Vehicle vehicle;
  private final String title;
  private final Setting on;
  private final List<Step> mainLoop;
  private final List<Step> coilLoop;
  private final List<Taken> taken = new ArrayList<>();
  private final Set<String> refused = new TreeSet<>();
  private final List<DeedView> deeds = new ArrayList<>();
  private final Map<String, Integer> asked = new LinkedHashMap<>();
  private int nextId = 1;
  private int seq;
  private String said = "";
  private final Set<Warning> warnings = EnumSet.noneOf(Warning.class);
  private boolean isolated;
  private boolean repaired;
  private boolean proven;
  private boolean stopped;
  private Proposer first = Proposer.PROGRAM;
  private boolean settled;

  public FakeFindCase(Vehicle vehicle, String title) {
    this.vehicle = vehicle;
    this.title = title;
    this.on = vehicle.circuit("beacon").orElseThrow().onSetting();
    this.mainLoop = FakeLoops.beaconSteps().stream().map(FakeFindCase::step).toList();
    this.coilLoop = FakeLoops.coilSteps().stream().map(FakeFindCase::step).toList();
  }

  private static Step step(FakeLoops.Hop hop) {
    return new Step(hop.part(), hop.before(), hop.after(), hop.prior());
  }

  @Override
  public CaseView view() {
    Map<String, List<Integer>> cleared = cleared();
    Map<String, Double> belief = belief(cleared);
    List<SuspectView> suspects = suspects(belief);
    boolean contradiction = suspects.isEmpty();
    boolean isolated = suspects.size() == 1;
    Optional<CheckView> next =
        stopped || contradiction || (isolated && !repaired) || !warnings.isEmpty()
            ? Optional.empty()
            : isolated ? proven ? Optional.empty() : Optional.of(proof()) : nextCheck(belief);
    CaseView.Move move =
        stopped || proven
            ? CaseView.Move.END
            : !warnings.isEmpty() && !this.isolated
                ? CaseView.Move.MAKE_SAFE
                : isolated
                    ? repaired ? CaseView.Move.PROOF : CaseView.Move.REPAIR
                    : next.isEmpty()
                        ? CaseView.Move.STUCK
                        : first == Proposer.LEARNER && !settled
                            ? CaseView.Move.PROPOSE
                            : CaseView.Move.CHECK;
    CaseView.Status status =
        proven
            ? CaseView.Status.HEALTHY
            : contradiction
                ? CaseView.Status.CONTRADICTION
                : isolated ? CaseView.Status.ISOLATED : CaseView.Status.SEARCHING;
    List<Integer> odds = new ArrayList<>();
    if (contradiction && taken.size() > 1) {
      odds.add(taken.get(taken.size() - 2).id());
      odds.add(taken.get(taken.size() - 1).id());
    }
    return new CaseView(
        "fake-1",
        seq,
        title,
        status,
        move,
        taken.size() * 1.5,
        suspects,
        clearedViews(cleared),
        readings(),
        deeds,
        next.filter(n -> move != CaseView.Move.PROPOSE),
        loop(mainLoop, "Beacon", belief, cleared, true),
        said,
        List.of(),
        List.copyOf(warnings),
        warnings.isEmpty()
            ? List.of()
            : List.of("Isolate the battery now: battery switch, or the grounded lead off."),
        putBack(),
        isolated ? Optional.of(repair(suspects.get(0))) : Optional.empty(),
        odds,
        contradiction ? "Readings " + odds + " can't both be right: take the last one again." : "");
  }

  private Map<String, List<Integer>> cleared() {
    Map<String, List<Integer>> cleared = new LinkedHashMap<>();
    for (Taken t : taken) {
      for (String part : clears(t)) {
        cleared.computeIfAbsent(part, p -> new ArrayList<>()).add(t.id());
      }
    }
    return cleared;
  }

  private List<String> clears(Taken t) {
    if (t.answer() instanceof Answer.Saw saw) {
      return switch (saw.seen()) {
        case CLICKS -> coilLoop.stream().map(Step::part).filter(p -> !onMain(p)).toList();
        case SILENT -> mainLoop.stream().map(Step::part).filter(p -> !onCoil(p)).toList();
        default -> List.of();
      };
    }
    if (t.check().kind() == CheckKind.OHMS) {
      return number(t.answer()) > 10
          ? List.of("W31", "BODY", "ST1", "L1")
          : List.of("G4", "BODY", "ST1");
    }
    TerminalRef red = t.check().red().orElse(GROUNDED_POST);
    List<String> parts = new ArrayList<>();
    for (List<Step> loop : List.of(mainLoop, coilLoop)) {
      if (loop.stream().noneMatch(s -> s.before().equals(red) || s.after().equals(red))) {
        continue;
      }
      boolean past = false;
      for (Step s : loop) {
        past |= s.before().equals(red);
        if (past == number(t.answer()) < 6) {
          parts.add(s.part());
        }
      }
    }
    return parts;
  }

  private boolean onMain(String part) {
    return mainLoop.stream().anyMatch(s -> s.part().equals(part));
  }

  private boolean onCoil(String part) {
    return coilLoop.stream().anyMatch(s -> s.part().equals(part));
  }

  private Map<String, Double> belief(Map<String, List<Integer>> cleared) {
    Map<String, Double> belief = new LinkedHashMap<>();
    double sum = 0;
    for (List<Step> loop : List.of(mainLoop, coilLoop)) {
      for (Step s : loop) {
        if (!cleared.containsKey(s.part()) && belief.putIfAbsent(s.part(), s.prior()) == null) {
          sum += s.prior();
        }
      }
    }
    double total = sum;
    belief.replaceAll((part, b) -> b / total);
    return belief;
  }

  private List<SuspectView> suspects(Map<String, Double> belief) {
    return belief.entrySet().stream()
        .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
        .map(
            e ->
                new SuspectView(
                    List.of(e.getKey()),
                    vehicle.requirePart(e.getKey()).title(),
                    modes(vehicle.requirePart(e.getKey())),
                    e.getValue(),
                    List.of(new SuspectId(e.getKey(), "open")),
                    ""))
        .toList();
  }

  private static List<String> modes(Part part) {
    return switch (part.kind()) {
      case GROUND -> List.of("on paint, 900 to 1500 ohm", "loose, 1 to 10 ohm");
      case FUSE -> List.of("blown", "burnt holder, 5 to 20 ohm");
      case LAMP -> List.of("burnt filament");
      case RELAY -> List.of("contact worn open", "coil open");
      case CONNECTOR -> List.of("terminal not seated");
      case SWITCH -> List.of("contact open");
      default -> List.of("open");
    };
  }

  private List<ClearedView> clearedViews(Map<String, List<Integer>> cleared) {
    List<ClearedView> views = new ArrayList<>();
    cleared.forEach(
        (part, ids) ->
            views.add(
                new ClearedView(
                    part,
                    vehicle.requirePart(part).title(),
                    ids,
                    taken.stream()
                        .filter(t -> t.id() == ids.get(0))
                        .findFirst()
                        .map(t -> value(t.answer()) + " at " + where(t.check()))
                        .orElse(""))));
    return views;
  }

  private List<ReadingView> readings() {
    return taken.stream()
        .map(
            t ->
                new ReadingView(
                    t.id(),
                    t.check(),
                    words(t.check().setting()),
                    where(t.check()),
                    value(t.answer()),
                    volts(t),
                    t.check().kind().metered()
                        ? Optional.of(new Band(12.1, 12.7, Band.Unit.VOLT))
                        : Optional.empty(),
                    t.check().kind() == CheckKind.LOOK ? "clicks" : "12.1 to 12.7 V",
                    volts(t).filter(v -> v < 12.1 || v > 12.7).isEmpty(),
                    t.did(),
                    List.of(),
                    Instant.EPOCH))
        .toList();
  }

  private static Optional<Double> volts(Taken t) {
    return t.check().kind() == CheckKind.VOLTS && !(t.answer() instanceof Answer.Saw)
        ? Optional.of(number(t.answer()))
        : Optional.empty();
  }

  private String where(OwnCheck check) {
    return check
        .lookAt()
        .map(p -> vehicle.requirePart(p).title())
        .orElseGet(
            () ->
                check.red().map(TerminalRef::toString).orElse("")
                    + " to "
                    + check.black().map(TerminalRef::toString).orElse(""));
  }

  private static String value(Answer answer) {
    if (answer instanceof Answer.Saw saw) {
      return saw.seen().word();
    }
    if (answer instanceof Answer.Within within) {
      return within.band().low() + " to " + within.band().high() + " " + unit(within.band());
    }
    return ((Answer.Text) answer).text();
  }

  private static String unit(Band band) {
    return band.unit() == Band.Unit.VOLT ? "V" : "ohm";
  }

  private static double number(Answer answer) {
    if (answer instanceof Answer.Within within) {
      return Math.min((within.band().low() + within.band().high()) / 2, 1e9);
    }
    if (!(answer instanceof Answer.Text text)) {
      return 0;
    }
    if (text.text().trim().equalsIgnoreCase("OL")) {
      return 1e9;
    }
    Matcher m = VALUE.matcher(text.text().trim());
    if (!m.matches()) {
      return 0;
    }
    double value = Double.parseDouble(m.group(1).replace(',', '.'));
    return switch (m.group(2).toLowerCase(Locale.ROOT)) {
      case "mv" -> value / 1000;
      case "kohm" -> value * 1000;
      default -> value;
    };
  }

  private List<String> putBack() {
    return taken.isEmpty() || repaired
        ? List.of()
        : taken.get(taken.size() - 1).check().setting().apart().stream()
            .map(p -> vehicle.requirePart(p).title())
            .toList();
  }

  private LoopView loop(
      List<Step> steps,
      String name,
      Map<String, Double> belief,
      Map<String, List<Integer>> cleared,
      boolean main) {
    List<LoopView.PieceView> pieces = new ArrayList<>();
    List<LoopView.Stair> stairs = new ArrayList<>();
    boolean beforeLoad = true;
    for (int i = 0; i < steps.size(); i++) {
      Step s = steps.get(i);
      Part part = vehicle.requirePart(s.part());
      stairs.add(stair(s.before(), i, beforeLoad, main));
      if (part.kind().isLoad() || (!main && part.kind() == PartKind.RELAY)) {
        beforeLoad = false;
      }
      boolean alone = belief.size() == 1 && belief.containsKey(s.part());
      pieces.add(
          new LoopView.PieceView(
              s.part(),
              part.title(),
              part.label(),
              part.kind(),
              wire(part) ? Optional.empty() : Optional.of(s.before()),
              wire(part) ? Optional.empty() : Optional.of(s.after()),
              FakeLoops.detail(part),
              alone
                  ? LoopView.Standing.CONDEMNED
                  : cleared.containsKey(s.part())
                      ? LoopView.Standing.CLEARED
                      : LoopView.Standing.HELD,
              belief.getOrDefault(s.part(), 0.0),
              cleared.getOrDefault(s.part(), List.of())));
    }
    stairs.add(stair(GROUNDED_POST, steps.size(), false, main));
    return new LoopView(
        name,
        pieces,
        stairs,
        main ? List.of(loop(coilLoop, "Coil of relay K1", belief, cleared, false)) : List.of());
  }

  private static boolean wire(Part part) {
    return part.kind() == PartKind.WIRE || part.kind() == PartKind.STRAP;
  }

  private LoopView.Stair stair(TerminalRef point, int i, boolean beforeLoad, boolean main) {
    Band healthy =
        beforeLoad
            ? new Band(12.55 - 0.06 * i - 0.12, 12.7 - 0.04 * i, Band.Unit.VOLT)
            : new Band(0, point.equals(GROUNDED_POST) ? 0 : 0.12, Band.Unit.VOLT);
    List<LoopView.Measured> measured = new ArrayList<>();
    for (Taken t : taken) {
      if (t.check().red().equals(Optional.of(point)) && volts(t).isPresent()) {
        measured.add(new LoopView.Measured(t.id(), volts(t).orElseThrow()));
      }
    }
    boolean reachable = !refused.contains(point.toString());
    return new LoopView.Stair(point, List.of(), healthy, measured, reachable && main | !main);
  }

  private Optional<CheckView> nextCheck(Map<String, Double> belief) {
    boolean looked = taken.stream().anyMatch(t -> t.check().kind() == CheckKind.LOOK);
    if (!looked && !refused.contains("look-K1")) {
      return Optional.of(look());
    }
    if (belief.keySet().equals(Set.of("W31", "G4")) && !refused.contains("ohms-G4.lug")) {
      return Optional.of(ohms());
    }
    boolean coil = belief.keySet().stream().noneMatch(this::onMain);
    List<Step> loop = coil ? coilLoop : mainLoop;
    double best = 2;
    Step at = null;
    double before = 0;
    for (Step s : loop) {
      double away = Math.abs(before - 0.5);
      boolean splits = before > 1e-9 && before < 1 - 1e-9;
      if (splits && away < best && !refused.contains(s.before().toString())) {
        best = away;
        at = s;
      }
      before += belief.getOrDefault(s.part(), 0.0);
    }
    return at == null ? Optional.empty() : Optional.of(volts(at.before(), belief));
  }

  private CheckView look() {
    return new CheckView(
        "look-K1",
        number("look-K1"),
        CheckKind.LOOK,
        setting(on),
        Optional.empty(),
        Optional.empty(),
        "",
        Optional.of("K1"),
        "Hand on relay K1: does it click when you switch the beacon?",
        List.of(Seen.CLICKS, Seen.SILENT),
        List.of("clicks", "silent"),
        Optional.empty(),
        "clicks",
        List.of(
            new CheckView.OutcomeView(
                "clicks",
                Optional.empty(),
                Optional.of(Seen.CLICKS),
                0.7,
                List.of("beacon ground stud G4", "beacon lamp L1")),
            new CheckView.OutcomeView(
                "silent",
                Optional.empty(),
                Optional.of(Seen.SILENT),
                0.3,
                List.of("control fuse F1", "beacon switch S5"))),
        0.5,
        "It costs half a minute and tells the coil side from the lamp side.",
        List.of());
  }

  private CheckView ohms() {
    Setting apart = on.without("F3");
    return new CheckView(
        "ohms-G4.lug",
        number("ohms-G4.lug"),
        CheckKind.OHMS,
        setting(apart),
        Optional.of(pointOf(TerminalRef.parse("G4.lug"))),
        Optional.of(pointOf(GROUNDED_POST)),
        "ohms, 200 range",
        Optional.empty(),
        "",
        List.of(),
        List.of(),
        Optional.of(new Band(0, 0.6, Band.Unit.OHM)),
        "0 to 0.6 ohm",
        List.of(
            outcome(new Band(900, 1500, Band.Unit.OHM), 0.7, "beacon ground stud G4"),
            outcome(new Band(0, 0.6, Band.Unit.OHM), 0.3, "wire W31")),
        1.5,
        "It tells the ground stud from the wire that leads to it.",
        List.of(
            "Fuse F3 out before the leads go on: ohms only on a dead circuit.",
            "Prove 0.00 V between the two points first."));
  }

  private CheckView volts(TerminalRef red, Map<String, Double> belief) {
    List<String> upstream = new ArrayList<>();
    List<String> downstream = new ArrayList<>();
    boolean past = false;
    for (Step s : onMainNode(red) ? mainLoop : coilLoop) {
      past |= s.before().equals(red);
      if (belief.containsKey(s.part())) {
        (past ? downstream : upstream).add(vehicle.requirePart(s.part()).title());
      }
    }
    boolean healthyHigh =
        mainLoop.stream()
            .takeWhile(s -> !s.before().equals(red))
            .noneMatch(s -> s.part().equals("L1"));
    Band healthy =
        healthyHigh ? new Band(12.1, 12.7, Band.Unit.VOLT) : new Band(0, 0.12, Band.Unit.VOLT);
    return new CheckView(
        "volts-" + red,
        number("volts-" + red),
        CheckKind.VOLTS,
        setting(on),
        Optional.of(pointOf(red)),
        Optional.of(pointOf(GROUNDED_POST)),
        "volts DC, 20 range",
        Optional.empty(),
        "",
        List.of(),
        List.of(),
        Optional.of(healthy),
        healthyHigh ? "12.1 to 12.7 V" : "0 to 0.12 V",
        List.of(
            outcome(new Band(12.1, 12.7, Band.Unit.VOLT), 0.6, downstream.toArray(String[]::new)),
            outcome(new Band(0, 0.12, Band.Unit.VOLT), 0.4, upstream.toArray(String[]::new))),
        1,
        "It splits what is left in two in about one minute.",
        List.of());
  }

  private boolean onMainNode(TerminalRef point) {
    return mainLoop.stream().anyMatch(s -> s.before().equals(point));
  }

  private CheckView proof() {
    return new CheckView(
        "proof",
        number("proof"),
        CheckKind.VOLTS,
        setting(on),
        Optional.of(pointOf(TerminalRef.parse("G4.lug"))),
        Optional.of(pointOf(GROUNDED_POST)),
        "volts DC, lowest range",
        Optional.empty(),
        "",
        List.of(),
        List.of(),
        Optional.of(new Band(0, 0.12, Band.Unit.VOLT)),
        "0 to 0.12 V",
        List.of(outcome(new Band(0, 0.12, Band.Unit.VOLT), 0.97)),
        1,
        "Under load the stud must drop less than 0.12 V.",
        List.of("The beacon gets hot: hands off the glass."));
  }

  private static CheckView.OutcomeView outcome(Band band, double chance, String... leaves) {
    return new CheckView.OutcomeView(
        trim(band.low()) + " to " + trim(band.high()) + " " + unit(band),
        Optional.of(band),
        Optional.empty(),
        chance,
        List.of(leaves));
  }

  private static String trim(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  private int number(String checkId) {
    return asked.computeIfAbsent(checkId, c -> asked.size() + 1);
  }

  private SettingView setting(Setting to) {
    Setting from = taken.isEmpty() ? Setting.REST : taken.get(taken.size() - 1).check().setting();
    List<String> change = new ArrayList<>();
    to.positions()
        .forEach(
            (control, position) -> {
              if (!position.equals(from.positions().get(control))) {
                change.add(vehicle.requirePart(control).name() + " " + position);
              }
            });
    to.apart().stream()
        .filter(p -> !from.apart().contains(p))
        .forEach(p -> change.add("pull " + vehicle.requirePart(p).title()));
    from.apart().stream()
        .filter(p -> !to.apart().contains(p))
        .forEach(p -> change.add("put " + vehicle.requirePart(p).title() + " back"));
    return new SettingView(to, change, words(to));
  }

  private List<String> words(Setting setting) {
    List<String> words = new ArrayList<>();
    setting.positions().forEach((c, p) -> words.add(vehicle.requirePart(c).name() + " " + p));
    setting.apart().forEach(p -> words.add(vehicle.requirePart(p).title() + " pulled"));
    return words;
  }

  private PointView pointOf(TerminalRef ref) {
    Part part = vehicle.requirePart(ref.part());
    String side =
        switch (ref.terminal()) {
          case "neg" -> "negative post";
          case "pos" -> "positive post";
          case "in", "feed", "a", "1a" -> "feed side";
          case "out", "load", "b", "1b" -> "load side";
          default -> ref.terminal();
        };
    return new PointView(
        ref,
        part.title() + ", " + side,
        part.label(),
        part.access(ref.terminal()).how(),
        part.access(ref.terminal()).minutes(),
        part.access(ref.terminal()).reachable());
  }

  private RepairView repair(SuspectView suspect) {
    return new RepairView(
        suspect,
        taken.stream()
            .map(t -> "(" + t.id() + ") " + value(t.answer()) + " at " + where(t.check()))
            .toList(),
        List.of("The stud was bolted onto paint: 1.2 kohm instead of a few milliohms."),
        List.of("Look under the ring: paint, rust, a second ring between."),
        List.of("Battery grounded post off. Ring off, metal bare and bright, grease, bolt tight."),
        List.of("Beacon on: less than 0.12 V from the lug to the battery's grounded post."),
        List.of("Rings and watch off. The lamp has been hot."));
  }

  @Override
  public Understood understand(String checkId, Answer answer) throws Problem {
    parse(answer);
    String words = value(answer);
    boolean milli = words.toLowerCase(Locale.ROOT).endsWith("mv");
    double number = number(answer);
    Optional<String> second =
        milli && number < 0.1 && number > 0.005 && checkId.startsWith("volts")
            ? Optional.of(words + " - not " + words.replace("mV", "V") + "?")
            : number > 16 && checkId.startsWith("volts")
                ? Optional.of("More than this battery has. Decimal point?")
                : Optional.empty();
    return new Understood(words, second);
  }

  private static void parse(Answer answer) throws Problem {
    if (answer instanceof Answer.Text text
        && !text.text().trim().equalsIgnoreCase("OL")
        && !VALUE.matcher(text.text().trim()).matches()) {
      throw new Problem("value", text.text(), "a number with V, mV, ohm or kohm, or OL");
    }
  }

  @Override
  public CaseView answer(String checkId, Answer answer) throws Problem {
    parse(answer);
    CheckView next = view().next().orElseThrow(() -> new Problem("check", checkId, "none is open"));
    if (!next.id().equals(checkId)) {
      throw new Problem("check", checkId, next.id());
    }
    if (checkId.equals("proof")) {
      proven = true;
      seq++;
      said = value(answer) + " under load: the repair holds.";
      return view();
    }
    return add(
        checkId,
        new OwnCheck(
            next.kind(),
            next.red().map(PointView::ref),
            next.black().map(PointView::ref),
            next.lookAt(),
            next.set().setting()),
        answer);
  }

  @Override
  public CaseView take(OwnCheck check, Answer answer) throws Problem {
    parse(answer);
    return add("own", check, answer);
  }

  @Override
  public Proposer first() {
    return first;
  }

  @Override
  public CaseView propose(Proposer who) {
    first = who;
    settled = false;
    seq++;
    return view();
  }

  @Override
  public Comparison compare(OwnCheck learners) {
    return new Comparison(
        new Comparison.Side(
            "volts DC from beacon fuse F3, load side, to battery BATT, negative post",
            "It would split what is suspected 0.14 to 0.86 in 2 minutes.",
            List.of("Hands off the fan: it starts by itself.")),
        new Comparison.Side(
            "volts DC from beacon ground stud G4, lug, to battery BATT, negative post",
            "It would split what is suspected 0.48 to 0.52 in one minute.",
            List.of()),
        "The program’s tells more for its minutes: 1.00 bit in one against 0.58 in two.",
        "");
  }

  @Override
  public CaseView settle(OwnCheck learners, Proposer taken) {
    settled = true;
    seq++;
    return view();
  }

  private CaseView add(String checkId, OwnCheck check, Answer answer) {
    settled = false;
    Taken plain = new Taken(nextId++, checkId, check, answer, "");
    List<String> clears = clears(plain);
    said =
        value(answer)
            + " at "
            + where(check)
            + (clears.isEmpty() ? ": rules nothing out." : ": " + names(clears) + " good.");
    taken.add(new Taken(plain.id(), checkId, check, answer, said));
    seq++;
    return view();
  }

  private String names(List<String> parts) {
    List<String> first = parts.stream().limit(3).map(p -> vehicle.requirePart(p).title()).toList();
    return String.join(", ", first)
        + (parts.size() > 3
            ? " and " + (parts.size() - 3) + " more are"
            : parts.size() > 1 ? " are" : " is");
  }

  @Override
  public CaseView refuse(String checkId, Refusal refusal) {
    refused.add(checkId.startsWith("volts-") ? checkId.substring(6) : checkId);
    seq++;
    said = "Left out: " + refusal.words() + ".";
    return view();
  }

  @Override
  public CaseView withdraw(int reading) throws Problem {
    find(reading);
    proven = false;
    taken.removeIf(t -> t.id() == reading);
    seq++;
    said = "Reading " + reading + " taken back.";
    return view();
  }

  @Override
  public CaseView correct(int reading, Answer answer) throws Problem {
    parse(answer);
    Taken old = find(reading);
    taken.set(
        taken.indexOf(old), new Taken(old.id(), old.checkId(), old.check(), answer, old.did()));
    seq++;
    said = "Reading " + reading + " is now " + value(answer) + ".";
    return view();
  }

  private Taken find(int reading) throws Problem {
    return taken.stream()
        .filter(t -> t.id() == reading)
        .findFirst()
        .orElseThrow(() -> new Problem("reading", Integer.toString(reading), "a reading taken"));
  }

  @Override
  public CaseView swapped(String part, Helped helped) {
    done(new CaseEvent.Swapped(Instant.EPOCH, part, helped), "replaced, no help: " + part);
    seq++;
    said = part + " swapped: " + (helped == Helped.YES ? "that was it." : "no change.");
    return view();
  }

  private void done(CaseEvent.Deed deed, String words) {
    deeds.add(new DeedView(deeds.size() + 1, nextId - 1, deed, words));
  }

  @Override
  public CaseView undo(int deed) throws Problem {
    DeedView what = Deeds.numbered(deed, deeds);
    deeds.remove(what);
    if (what.deed() instanceof CaseEvent.Repaired) {
      repaired = false;
      proven = false;
    }
    seq++;
    said = what.words() + ": taken back.";
    return view();
  }

  @Override
  public CaseView repaired(String part) {
    done(new CaseEvent.Repaired(Instant.EPOCH, part), "mended: " + part);
    repaired = true;
    seq++;
    said = part + " mended. Now prove it under load.";
    return view();
  }

  @Override
  public CaseView attach(Path photo, String caption) {
    seq++;
    said = "The photo " + photo.getFileName() + " is kept with the case.";
    return view();
  }

  @Override
  public CaseView warn(Warning warning) {
    warnings.add(warning);
    seq++;
    said = "Reported: " + warning.word() + ".";
    return view();
  }

  @Override
  public CaseView isolated() {
    isolated = true;
    seq++;
    said = "The battery is off.";
    return view();
  }

  @Override
  public CaseView gone() {
    warnings.clear();
    isolated = false;
    seq++;
    said = "Gone.";
    return view();
  }

  @Override
  public CaseView stop() {
    stopped = true;
    seq++;
    said = "Case closed and kept.";
    return view();
  }

  @Override
  public List<String> whyStill(String partOrSuspect) {
    return List.of(
        "If " + partOrSuspect + " were open the lamp side would read as it does.",
        "No reading so far tells it from its neighbours.");
  }

  @Override
  public List<Against> against(String partOrSuspect) {
    return List.of();
  }

  @Override
  public List<PartView> parts() {
    List<Seen> works = List.of(Seen.ON, Seen.DIM, Seen.OFF);
    return vehicle.parts().stream()
        .map(
            p ->
                new PartView(
                    p.id(),
                    p.title(),
                    p.kind() == PartKind.FUSE
                        ? Map.of(CheckKind.LOOK, works, CheckKind.LAMP_FOR_FUSE, works)
                        : Map.of(CheckKind.LOOK, works, CheckKind.UNPLUG_AND_LOOK, works),
                    Optional.of(p.id())))
        .toList();
  }

  @Override
  public List<String> whyNext() {
    return List.of(
        "Of all points within reach this one splits what is left most evenly.",
        "It costs about a minute and no change of the switches.");
  }

  @Override
  public List<PointView> points() {
    return vehicle.terminals().stream()
        .map(this::pointOf)
        .sorted(Comparator.comparing(p -> p.ref().part().equals("BATT") ? 0 : 1))
        .toList();
  }

  @Override
  public String title(SuspectId suspect) {
    return vehicle.requirePart(suspect.part()).title() + ": " + suspect.mode();
  }

  @Override
  public List<SettingView> settings() {
    return List.of(setting(on), setting(Setting.REST), setting(on.without("F3")));
  }

  @Override
  public void close() {}
}
