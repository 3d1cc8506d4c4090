package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loopwright.casework.Answer;
import loopwright.casework.Appraisal;
import loopwright.casework.CaseView;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.Phrases;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SettingView;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.SuspectId;
import loopwright.knowledge.Knowledge;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import loopwright.solver.Network;

/**
 * A drill while it is played: the learner chooses, the simulated meter answers, and a case that the
 * learner doesn't see weighs each reading. One thread at a time.
 */
public final class Drilling implements AutoCloseable {

  /** Minutes to open the meter and put a new fuse in. Our own estimate. */
  private static final double METER_FUSE_MINUTES = 5;

  /** Minutes to mend a part for which the vehicle names none. Our own estimate. */
  private static final double MEND_MINUTES = 5;

  /** Minutes to see that a part of a group is whole. Our own estimate. */
  private static final double INSPECT_MINUTES = 1;

  /** Volts that make ohms a live reading: more than any proof of 0.00 V leaves. */
  private static final double LIVE_VOLTS = 0.05;

  /** Belief below which an accusation has no cause. Our own choice: an even chance. */
  private static final double CAUSE = 0.5;

  /** Most parts of which is asked whether a check tells of them. Our own choice: one line. */
  private static final int MOST_ASKED = 5;

  private final Drill drill;
  private final FindCase find;
  private final SimulatedMeter meter;
  private final Way best;
  private final DrillWords words;
  private final Set<String> left;
  private final List<String> asked;
  private final List<Step> steps = new ArrayList<>();
  private final Set<OwnCheck> taken = new LinkedHashSet<>();
  private final Function<String, Set<FaultKind>> kinds;
  private Optional<OwnCheck> last = Optional.empty();
  private boolean meterFuse = true;
  private boolean slipped;
  private int meterReadings;

  /**
   * Begins.
   *
   * @param find the case that weighs the readings, just opened
   * @param best the best plan's way through this drill; nothing while that is looked for
   * @param knowledge how parts fail
   */
  Drilling(
      Drill drill,
      FindCase find,
      SimulatedMeter meter,
      Way best,
      Knowledge knowledge,
      Phrases phrases) {
    this.drill = drill;
    this.find = find;
    this.meter = meter;
    this.best = best;
    this.words = new DrillWords(phrases, drill.vehicle());
    this.left = new TreeSet<>();
    drill.hidden().truth().forEach(f -> left.add(f.part()));
    this.asked = asked(find.view());
    Map<String, Set<FaultKind>> known = new HashMap<>();
    this.kinds = part -> known.computeIfAbsent(part, p -> kinds(drill.vehicle(), p, knowledge));
  }

  private static Set<FaultKind> kinds(Vehicle vehicle, String part, Knowledge knowledge) {
    return Failure.of(
            Network.of(vehicle, knowledge.typicals()),
            vehicle.requirePart(part),
            knowledge.faults())
        .stream()
        .map(FaultKind::of)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(FaultKind.class)));
  }

  /**
   * Parts all along the way, of each stretch the likeliest at the beginning: asked for throughout,
   * so that they give nothing away of what was read since.
   */
  private static List<String> asked(CaseView opening) {
    List<String> way =
        Stream.concat(Stream.of(opening.loop()), opening.loop().branches().stream())
            .flatMap(l -> l.pieces().stream())
            .map(LoopView.PieceView::part)
            .distinct()
            .filter(part -> held(opening, Set.of(part)) > 0)
            .toList();
    int count = Math.min(MOST_ASKED, way.size());
    return IntStream.range(0, count)
        .mapToObj(i -> way.subList(i * way.size() / count, (i + 1) * way.size() / count))
        .map(s -> Collections.max(s, Comparator.comparingDouble(p -> held(opening, Set.of(p)))))
        .toList();
  }

  // ---- what the learner sees -----------------------------------------------------------------

  /** The drill's code. */
  public DrillCode code() {
    return drill.code();
  }

  /** The vehicle. */
  public Vehicle vehicle() {
    return drill.vehicle();
  }

  /** Id of the circuit complained of. */
  public String circuit() {
    return drill.hidden().circuit();
  }

  /** The complaint and the vehicle, for instance "Beacon dead - Light pumper". */
  public String title() {
    return find.view().title();
  }

  /** The setting in which the circuit should work. */
  public Setting on() {
    return drill.vehicle().circuit(circuit()).orElseThrow().onSetting();
  }

  /** What was done so far. */
  public List<Step> steps() {
    return List.copyOf(steps);
  }

  /** Working time so far in minutes. */
  public double minutes() {
    return steps.stream().mapToDouble(Step::minutes).sum();
  }

  /** Whether the meter's fuse is whole, as far as the last amperes showed. */
  public boolean meterFuse() {
    return meterFuse;
  }

  /** Whether something was mended and the circuit has been seen to work since. */
  public boolean proven() {
    CaseView view = find.view();
    return mended()
        && (view.move() == CaseView.Move.END
            || view.move() == CaseView.Move.PROOF
                && view.next().filter(n -> n.kind().metered()).isPresent());
  }

  /** All probe points, those of the circuit first. */
  public List<PointView> points() {
    return find.points();
  }

  /** All parts that can be looked at, taken in hand or accused, those of the circuit first. */
  public List<PartView> parts() {
    return find.parts();
  }

  /** Settings that make sense, the circuit's own first. */
  public List<SettingView> settings() {
    return find.settings();
  }

  /**
   * Ids of the parts of which can be said whether a check tells of them, in the order of the
   * circuit; none while a repair is proven.
   */
  public List<String> asked() {
    return proving(find.view()) ? List.of() : asked;
  }

  /** The case that weighs the readings: what it says is not for the learner before the end. */
  CaseView weighed() {
    return find.view();
  }

  // ---- checks --------------------------------------------------------------------------------

  /**
   * Takes a check of the learner's choice.
   *
   * @param expected what the learner expects; empty if that wasn't asked
   * @throws Problem if the points, the part or the setting aren't known or can't be reached
   */
  public Step take(OwnCheck check, Optional<Expectation> expected) throws Problem {
    reachable(check);
    Appraisal appraisal = find.appraise(check, last);
    Optional<Set<String>> said =
        expected.flatMap(Expectation::parts).filter(p -> !asked().isEmpty());
    Optional<Foretold> foretold =
        said.isPresent()
            ? Optional.of(Foretold.of(said.get(), asked(), find.shows(check)))
            : Optional.empty();
    CaseView before = find.view();
    List<Loss> losses = new ArrayList<>();
    Answer read = meter.read(check);
    boolean live = live(check, read, losses);
    if (check.kind() == CheckKind.SWAP && spends(check)) {
      losses.add(Loss.CIRCUIT_FUSE);
    }
    boolean proposed = before.next().map(OwnCheck::of).filter(check::equals).isPresent();
    boolean wasted = !live && !proposed && !proving(before) && tellsNothing(check, appraisal);
    if (wasted) {
      losses.add(Loss.WASTED);
    }
    Answer answer = live ? read : answer(check, read);
    CaseView after = live ? before : find.take(check, answer);
    taken.add(check);
    last = Optional.of(check);
    List<String> told = new ArrayList<>();
    losses.forEach(l -> told.add(words.lost(l)));
    if (wasted) {
      told.addAll(words.couldOnly(appraisal));
    }
    expected.ifPresent(e -> told.addAll(words.compared(e, check, answer)));
    foretold.filter(f -> !live).ifPresent(f -> told.addAll(words.foretold(f)));
    List<String> review = new ArrayList<>();
    if (!live && !after.said().isEmpty()) {
      review.add(after.said());
    }
    review.addAll(words.best(before, proposed));
    return done(
        new Step(
            steps.size() + 1,
            Step.Kind.CHECK,
            appraisal.words(),
            words.shown(check, answer),
            appraisal.minutes(),
            losses,
            told,
            review,
            foretold.filter(f -> !live).map(Foretold::right).orElse(Tally.NONE),
            proposed,
            after.loop()));
  }

  private Step done(Step step) {
    steps.add(step);
    return step;
  }

  private void reachable(OwnCheck check) throws Problem {
    for (Optional<TerminalRef> lead : List.of(check.red(), check.black())) {
      if (lead.isPresent()
          && drill.vehicle().part(lead.get().part()).isPresent()
          && !drill.vehicle().access(lead.get()).reachable()) {
        throw new Problem("point", lead.get().toString(), words.unreachable());
      }
    }
  }

  /** Whether the meter drives its current against volts of the vehicle; notes what that loses. */
  private boolean live(OwnCheck check, Answer read, List<Loss> losses) throws Problem {
    if (!check.kind().drives()) {
      return false;
    }
    TerminalRef red = check.red().orElseThrow();
    TerminalRef black = check.black().orElseThrow();
    if (drill.vehicle().inHand(red, black, check.setting())) {
      return false;
    }
    if (Math.abs(meter.standing(red, black, check.setting())) > LIVE_VOLTS
        || pushedBack(check, read)) {
      losses.add(Loss.LIVE_OHMS);
      return true;
    }
    if (taken.stream().noneMatch(t -> t.check().readsWhere(check.check()))) {
      losses.add(Loss.UNPROVEN_DEAD);
    }
    return false;
  }

  /** Whether few volts of the vehicle push the meter's own current back: ohms below nothing. */
  private static boolean pushedBack(OwnCheck check, Answer read) {
    return check.kind() == CheckKind.OHMS && read.words().startsWith("-");
  }

  private boolean spends(OwnCheck check) {
    String part = LoadRef.parse(check.lookAt().orElseThrow()).part();
    return drill.vehicle().requirePart(part).kind() == PartKind.FUSE
        && meter.spends(part, check.setting());
  }

  /** Whether a repair is being proven: then every look at the circuit is right. */
  private boolean proving(CaseView view) {
    return mended() && (view.move() == CaseView.Move.PROOF || view.move() == CaseView.Move.END);
  }

  private boolean mended() {
    return steps.stream().anyMatch(s -> s.kind() == Step.Kind.MEND);
  }

  private boolean tellsNothing(OwnCheck check, Appraisal appraisal) {
    boolean first = !taken.contains(check);
    boolean proofOfDead =
        first
            && check.kind().reads()
            && check.setting().apart().contains(drill.vehicle().battery().id());
    boolean complaintSeen = first && check.kind() == CheckKind.LOOK && shows(check);
    return !proofOfDead && !complaintSeen && (!first || !appraisal.tells());
  }

  /** Whether it looks at the load complained of, to see the complaint for oneself. */
  private boolean shows(OwnCheck check) {
    LoadRef load = drill.vehicle().circuit(circuit()).orElseThrow().loads().get(0);
    return check.lookAt().filter(load.toString()::equals).isPresent();
  }

  /** What the learner is shown: what was read, or for once the slip. */
  private Answer answer(OwnCheck check, Answer read) throws Problem {
    if (!check.kind().reads() && !check.kind().drives()) {
      return read;
    }
    meterReadings++;
    if (slipped
        || drill.slipFrom().isEmpty()
        || meterReadings < drill.slipFrom().getAsInt()
        || !differs(check, read)) {
      return read;
    }
    slipped = true;
    return new Answer.Text(check.kind() == CheckKind.OHMS ? "OL" : "0.001 V");
  }

  /** Whether touching no metal would show something else. */
  private boolean differs(OwnCheck check, Answer answer) throws Problem {
    return switch (check.kind()) {
      case OHMS -> !answer.words().equals("OL");
      case DIODE -> false;
      default ->
          Math.abs(
                  meter.standing(
                      check.red().orElseThrow(), check.black().orElseThrow(), check.setting()))
              > 0.5;
    };
  }

  // ---- amperes -------------------------------------------------------------------------------

  /**
   * Puts the meter on amperes between two points. Nothing is concluded from it: volts tell more and
   * harm nothing.
   *
   * @throws Problem if a point or the setting isn't known or can't be reached
   */
  public Step amps(TerminalRef red, TerminalRef black, Setting setting) throws Problem {
    OwnCheck as =
        new OwnCheck(
            CheckKind.VOLTS, Optional.of(red), Optional.of(black), Optional.empty(), setting);
    reachable(as);
    Appraisal appraisal = find.appraise(as, last);
    List<Loss> losses = new ArrayList<>();
    boolean instead = red.part().equals(black.part()) && setting.apart().contains(red.part());
    if (!instead && Math.abs(meter.standing(red, black, setting)) > LIVE_VOLTS) {
      losses.add(Loss.AMPS_ACROSS);
    }
    String shown = "0.00 A";
    if (meterFuse) {
      Optional<Answer> read = meter.amps(red, black, setting);
      if (read.isEmpty()) {
        meterFuse = false;
        losses.add(Loss.METER_FUSE);
      }
      shown = read.map(Answer::words).orElse(shown);
    }
    last = Optional.of(as);
    List<String> told = new ArrayList<>(losses.stream().map(words::lost).toList());
    return done(
        new Step(
            steps.size() + 1,
            Step.Kind.CHECK,
            words.amps(red, black),
            shown,
            appraisal.minutes(),
            losses,
            told,
            words.best(find.view(), false),
            Tally.NONE,
            false,
            find.view().loop()));
  }

  /** Puts a new fuse into the meter. */
  public Step newMeterFuse() {
    meterFuse = true;
    return done(
        new Step(
            steps.size() + 1,
            Step.Kind.METER_FUSE,
            words.meterFuse(),
            "",
            METER_FUSE_MINUTES,
            List.of(),
            List.of(),
            List.of(),
            Tally.NONE,
            false,
            find.view().loop()));
  }

  // ---- the accusation ------------------------------------------------------------------------

  /**
   * The kinds of failure that a part may have, in the order of {@link FaultKind}.
   *
   * @param part id of a part of the vehicle
   */
  public Set<FaultKind> kinds(String part) {
    return kinds.apply(part);
  }

  /**
   * Names the failed part, or a group that no check tells apart, and mends it.
   *
   * @param parts ids of the parts accused; at least one
   * @throws Problem if a part isn't known
   */
  public Step accuse(Set<String> parts) throws Problem {
    return accuse(parts, Optional.empty());
  }

  /**
   * Names the failed part, or a group that no check tells apart, and mends it.
   *
   * @param parts ids of the parts accused; at least one
   * @param how in what way it is said to have failed; empty if that isn't said
   * @throws Problem if a part isn't known
   */
  public Step accuse(Set<String> parts, Optional<FaultKind> how) throws Problem {
    for (String part : parts) {
      if (drill.vehicle().part(part).isEmpty()) {
        throw new Problem("part", part, words.unknownPart());
      }
    }
    if (parts.isEmpty()) {
      throw new Problem("part", "", words.unknownPart());
    }
    CaseView before = find.view();
    Set<String> answer = answer(before);
    List<Loss> losses = new ArrayList<>();
    List<String> told = new ArrayList<>();
    double held = held(before, parts);
    if (held < CAUSE) {
      losses.add(Loss.WITHOUT_CAUSE);
      told.add(words.lost(Loss.WITHOUT_CAUSE));
    }
    Set<String> sound = new TreeSet<>(parts);
    sound.removeAll(left);
    boolean hit = sound.size() < parts.size();
    if (hit) {
      // Parts that no check tells apart from the failed one are rightly mended with it.
      sound.removeAll(answer);
    }
    sound.forEach(
        part -> {
          losses.add(Loss.SOUND_ACCUSED);
          told.add(words.sound(part));
        });
    if (hit && how.isPresent()) {
      boolean so = failed(parts).contains(how.get());
      if (!so) {
        losses.add(Loss.OTHER_FAILURE);
      }
      told.add(words.failure(how.get(), so));
    }
    if (!hit && !answer.isEmpty() && !parts.containsAll(answer)) {
      told.add(words.alsoHeld(answer));
    }
    double minutes = 0;
    for (String part : parts) {
      // Of a group what is whole is seen to be so once it is open; only a guess is mended unseen.
      boolean seenWhole = hit && !left.contains(part) && answer.contains(part);
      minutes += seenWhole ? INSPECT_MINUTES : mendMinutes(part);
      meter.mended(part);
      find.repaired(part);
    }
    left.removeAll(parts);
    taken.clear();
    if (!meter.blown().isEmpty()) {
      losses.add(Loss.CIRCUIT_FUSE);
      told.add(words.lost(Loss.CIRCUIT_FUSE));
    }
    told.add(words.nowProve());
    return done(
        new Step(
            steps.size() + 1,
            Step.Kind.MEND,
            words.mended(parts),
            "",
            minutes,
            losses,
            told,
            words.best(before, answer.equals(parts)),
            Tally.NONE,
            answer.equals(parts),
            before.loop()));
  }

  /** The kinds of fault that are still in these parts. */
  private Set<FaultKind> failed(Set<String> parts) {
    List<ReadyCase.Fault> truth = drill.hidden().truth();
    return IntStream.range(0, truth.size())
        .filter(i -> parts.contains(truth.get(i).part()) && left.contains(truth.get(i).part()))
        .mapToObj(drill.kinds()::get)
        .collect(Collectors.toSet());
  }

  private double mendMinutes(String part) {
    return drill.vehicle().requirePart(part).swapMinutes().orElse(MEND_MINUTES);
  }

  /** The parts that the case answers with; empty while it has no answer. */
  static Set<String> answer(CaseView view) {
    return view.move() == CaseView.Move.REPAIR && !view.suspects().isEmpty()
        ? new TreeSet<>(view.suspects().get(0).parts())
        : Set.of();
  }

  /** Belief that the failure lies in one of these parts. */
  private static double held(CaseView view, Set<String> parts) {
    double held = 0;
    for (SuspectView suspect : view.suspects()) {
      long of = suspect.parts().stream().filter(parts::contains).count();
      held += suspect.belief() * of / suspect.parts().size();
    }
    return held;
  }

  // ---- the end -------------------------------------------------------------------------------

  /** The way so far, as if the drill ended here. */
  Way way() {
    List<Loss> atEnd = new ArrayList<>();
    left.forEach(part -> atEnd.add(Loss.MISSED));
    if (left.isEmpty() && !proven()) {
      atEnd.add(Loss.UNPROVEN_REPAIR);
    }
    return new Way(steps, atEnd);
  }

  /** What is to be learned from it; the drill can go on afterwards, but shouldn't. */
  public Debrief debrief() {
    Way own = way();
    return new Debrief(
        title(),
        drill.code(),
        own,
        best,
        drill.hidden().truth().stream()
            .map(f -> find.title(new SuspectId(f.part(), f.mode())))
            .toList(),
        words.summary(own, best));
  }

  Drill drill() {
    return drill;
  }

  Way best() {
    return best;
  }

  /** Ids of the fuses that have blown by now. */
  Set<String> blownFuses() {
    return meter.blown();
  }

  @Override
  public void close() {
    find.close();
  }
}
