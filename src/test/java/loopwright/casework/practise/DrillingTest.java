package loopwright.casework.practise;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CaseDesk;
import loopwright.casework.FindCase;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.CheckKind;
import loopwright.evidence.Bench;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Drills on the demo motorcycle: what is done wrong has the results it has in life. */
class DrillingTest {
  private static final DrillCode DEAD = Drills.code(Level.DEAD_LAMP, "motorcycle", 5);
  private static Drilling dead;
  private static Drilling shorted;
  private Drilling drilling;
  private TerminalRef feed;
  private TerminalRef post;

  @BeforeAll
  static void open() throws Problem {
    dead = Drills.open(DEAD);
    shorted = Drills.open(Drills.code(Level.SHORT, "motorcycle", 1));
  }

  @AfterAll
  static void close() {
    dead.close();
    shorted.close();
  }

  @BeforeEach
  void begin() throws Problem {
    drilling = Drills.desk().again(dead, CaseDesk.Progress.SILENT);
    feed = drilling.vehicle().feedPost();
    post = drilling.vehicle().groundedPost();
  }

  @AfterEach
  void end() {
    drilling.close();
  }

  private Step volts(TerminalRef red, TerminalRef black, Setting setting) throws Problem {
    return drilling.take(Robots.measure(CheckKind.VOLTS, red, black, setting), Optional.empty());
  }

  private Step ohms(TerminalRef red, TerminalRef black, Setting setting) throws Problem {
    return drilling.take(Robots.measure(CheckKind.OHMS, red, black, setting), Optional.empty());
  }

  private Setting batteryOff() {
    return drilling.on().without(drilling.vehicle().battery().id());
  }

  @Test
  void theSameCodeGivesTheSameDrillInAnotherJava() throws Exception {
    List<String> codes =
        List.of(DEAD.toString(), Drills.code(Level.SHORT, "motorcycle", 1).toString());
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                SettledElsewhere.class.getName()));
    command.addAll(codes);
    Process other = new ProcessBuilder(command).redirectErrorStream(true).start();
    List<String> here = SettledElsewhere.of(codes);
    String there = read(other);
    assertThat(other.waitFor()).as(there).isZero();
    assertThat(there.lines().toList()).containsSubsequence(here);
  }

  private static String read(Process process) throws IOException {
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  @Test
  void amperesAcrossTheBatteryBlowTheMetersFuseUntilANewOneIsIn() throws Problem {
    Step step = drilling.amps(feed, post, Setting.REST);
    assertThat(step.losses()).containsExactly(Loss.AMPS_ACROSS, Loss.METER_FUSE);
    assertThat(drilling.meterFuse()).isFalse();
    assertThat(step.shown()).isEqualTo("0.00 A");
    step = drilling.amps(feed, post, Setting.REST);
    assertThat(step.losses()).as("nothing left to blow").containsExactly(Loss.AMPS_ACROSS);
    assertThat(volts(feed, post, Setting.REST).shown()).startsWith("12.");
    double before = drilling.minutes();
    drilling.newMeterFuse();
    assertThat(drilling.minutes()).isEqualTo(before + 5);
    assertThat(drilling.meterFuse()).isTrue();
    assertThat(drilling.amps(feed, post, Setting.REST).losses()).contains(Loss.METER_FUSE);
  }

  @Test
  void ohmsOnALiveCircuitReadNonsenseAndCountForNothing() throws Problem {
    Step step = ohms(feed, post, Setting.REST);
    assertThat(step.losses()).containsExactly(Loss.LIVE_OHMS);
    assertThat(step.shown()).isEqualTo("OL");
    assertThat(drilling.weighed().readings()).isEmpty();
  }

  @Test
  void ohmsOnADeadCircuitWantTheirZeroVoltsFirst() throws Problem {
    TerminalRef lamp = load();
    assertThat(ohms(lamp, post, batteryOff()).losses()).contains(Loss.UNPROVEN_DEAD);
    assertThat(volts(feed, post, batteryOff()).losses()).isEmpty();
    assertThat(volts(lamp, feed, batteryOff()).losses()).isEmpty();
    assertThat(ohms(lamp, feed, batteryOff()).risks()).isEmpty();
  }

  private TerminalRef load() {
    String part =
        drilling.vehicle().circuit(drilling.circuit()).orElseThrow().loads().get(0).part();
    return drilling.vehicle().terminals().stream()
        .filter(t -> t.part().equals(part) && drilling.vehicle().access(t).reachable())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aCheckThatCouldTellNothingIsNamed() throws Problem {
    volts(feed, post, Setting.REST);
    Step again = volts(feed, post, Setting.REST);
    assertThat(again.losses()).containsExactly(Loss.WASTED);
    assertThat(again.told()).anyMatch(t -> t.contains("couldn't have told"));
  }

  @Test
  void whatWasExpectedIsHeldAgainstWhatCame() throws Problem {
    Step right = expecting(12, 13);
    assertThat(right.told()).anyMatch(t -> t.startsWith("As you expected"));
    Step wrong = expecting(0, 1);
    assertThat(wrong.told()).anyMatch(t -> t.startsWith("Not as you expected"));
  }

  private Step expecting(double low, double high) throws Problem {
    Expectation expected =
        new Expectation(
            Optional.of(new Band(low, high, Band.Unit.VOLT)), Optional.empty(), Optional.empty());
    return drilling.take(
        Robots.measure(CheckKind.VOLTS, feed, post, Setting.REST), Optional.of(expected));
  }

  @Test
  void whatItWillTellIsHeldAgainstWhatTheSuspectsWouldShow() throws Problem {
    List<String> asked = drilling.asked();
    assertThat(asked).hasSizeBetween(2, 5);
    // At the lamp's feed, all on: what is on the way to it would show, what lies behind it not.
    OwnCheck check = Robots.measure(CheckKind.VOLTS, load(), post, drilling.on());
    String first = asked.get(0);
    String last = asked.get(asked.size() - 1);
    Step step = drilling.take(check, Optional.of(foretold(Set.of(first, last))));
    assertThat(step.told()).anyMatch(t -> t.startsWith("It told nothing of") && names(t, last));
    assertThat(step.told()).noneMatch(t -> t.startsWith("It told nothing of") && names(t, first));
    assertThat(step.foretold().right()).isPositive();
    assertThat(step.foretold().wrong()).isPositive();
    assertThat(drilling.debrief().summary())
        .anyMatch(t -> t.startsWith("What a check would tell of"));
    assertThat(volts(feed, post, Setting.REST).foretold()).as("not said").isEqualTo(Tally.NONE);
  }

  private boolean names(String sentence, String part) {
    return sentence.contains(drilling.vehicle().requirePart(part).title());
  }

  private static Expectation foretold(Set<String> parts) {
    return new Expectation(Optional.empty(), Optional.empty(), Optional.of(parts));
  }

  @Test
  void aGuessIsAccusedWithoutCauseAndALeftFaultIsMissed() throws Problem {
    Set<String> failed = failed(dead);
    String sound =
        drilling.parts().stream()
            .map(p -> p.subject())
            .filter(p -> !p.contains(":") && !failed.contains(p))
            .findFirst()
            .orElseThrow();
    Step step = drilling.accuse(Set.of(sound));
    assertThat(step.losses()).contains(Loss.WITHOUT_CAUSE, Loss.SOUND_ACCUSED);
    Debrief debrief = drilling.debrief();
    assertThat(debrief.own().atEnd()).containsExactly(Loss.MISSED);
    assertThat(debrief.score()).isLessThanOrEqualTo(40);
    assertThat(debrief.truth()).hasSize(1);
  }

  private static Set<String> failed(Drilling of) {
    return of.drill().hidden().truth().stream()
        .map(ReadyCase.Fault::part)
        .collect(java.util.stream.Collectors.toSet());
  }

  @Test
  void aLuckyGuessIsRightAndStillWithoutCause() throws Problem {
    Step step = drilling.accuse(failed(dead));
    assertThat(step.losses()).containsExactly(Loss.WITHOUT_CAUSE);
    assertThat(drilling.way().atEnd()).containsExactly(Loss.UNPROVEN_REPAIR);
    String load =
        drilling.vehicle().circuit(drilling.circuit()).orElseThrow().loads().get(0).toString();
    assertThat(drilling.take(Robots.look(load, drilling.on()), Optional.empty()).shown())
        .isEqualTo(Robots.WORKS);
    assertThat(drilling.proven()).isTrue();
    assertThat(drilling.way().atEnd()).isEmpty();
  }

  @Test
  void theKindOfFailureMayBeNamedToo() throws Problem {
    FaultKind real = dead.drill().kinds().get(0);
    String part = failed(dead).iterator().next();
    assertThat(drilling.kinds(part)).contains(real);
    FaultKind other = real == FaultKind.SHORT ? FaultKind.OPEN : FaultKind.SHORT;
    Step wrong = drilling.accuse(failed(dead), Optional.of(other));
    assertThat(wrong.losses()).containsExactly(Loss.WITHOUT_CAUSE, Loss.OTHER_FAILURE);
    assertThat(wrong.told()).anyMatch(t -> t.startsWith("Right part, other failure"));
    try (Drilling again = Drills.desk().again(dead, CaseDesk.Progress.SILENT)) {
      Step right = again.accuse(failed(dead), Optional.of(real));
      assertThat(right.losses()).containsExactly(Loss.WITHOUT_CAUSE);
      assertThat(right.told()).anyMatch(t -> t.startsWith("And it had failed as you said"));
    }
  }

  @Test
  void aReadingAtOddsWithTheOthersDoesNotHoldUpTheDrill() throws Problem {
    ReadyCase hidden = dead.drill().hidden();
    FindCase find =
        Bench.desk()
            .open(
                new CaseDesk.NewCase(
                    dead.vehicle(),
                    hidden.vehicle(),
                    hidden.circuit(),
                    Optional.empty(),
                    hidden.kind(),
                    hidden.context(),
                    hidden.meter(),
                    true),
                CaseDesk.Progress.SILENT);
    // No failure puts so many volts anywhere on this vehicle.
    OwnCheck odd = Robots.measure(CheckKind.VOLTS, feed, post, drilling.on());
    find.take(odd, new Answer.Text("-9 V"));
    find.take(
        Robots.measure(CheckKind.VOLTS, load(), post, drilling.on()), new Answer.Text("22 V"));
    assertThat(find.view().next().map(OwnCheck::of)).as("taken again").contains(odd);
    SimulatedMeter meter =
        new SimulatedMeter(dead.vehicle(), Bench.KNOWLEDGE, hidden, dead.drill().seed());
    try (Drilling held =
        new Drilling(
            dead.drill(), find, meter, dead.best(), Bench.KNOWLEDGE, new Phrases(Locale.ENGLISH))) {
      Step step = held.take(odd, Optional.empty());
      assertThat(step.best()).isTrue();
      assertThat(step.losses()).isEmpty();
      assertThat(step.review()).anyMatch(r -> r.startsWith("This was the best check"));
    }
  }

  @Test
  void aNewFuseOnADeadShortIsSpent() throws Problem {
    try (Drilling again = Drills.desk().again(shorted, CaseDesk.Progress.SILENT)) {
      String fuse = again.blownFuses().iterator().next();
      Step swapped =
          again.take(
              new OwnCheck(
                  CheckKind.SWAP,
                  Optional.empty(),
                  Optional.empty(),
                  Optional.of(fuse),
                  again.on()),
              Optional.empty());
      assertThat(swapped.losses()).contains(Loss.CIRCUIT_FUSE);
      assertThat(again.accuse(Set.of(fuse)).losses())
          .contains(Loss.CIRCUIT_FUSE, Loss.SOUND_ACCUSED);
    }
  }

  @Test
  void thePlanLosesNothingAndProgressIsKept() throws Problem {
    PractiseDesk desk = Drills.desk();
    try (Drilling again = desk.again(dead, CaseDesk.Progress.SILENT)) {
      PractiseDesk.followPlan(again);
      Debrief debrief = desk.finish(again);
      assertThat(debrief.own().losses()).isEmpty();
      assertThat(debrief.score()).isEqualTo(100);
      assertThat(debrief.own().steps()).allMatch(Step::best);
      assertThat(debrief.own().steps())
          .anyMatch(
              s -> s.review().stream().anyMatch(r -> r.matches(".*0\\.\\d\\d to 0\\.\\d\\d.*")));
      assertThat(debrief.own().steps()).allMatch(s -> !s.loop().stairs().isEmpty());
    }
    assertThat(desk.progress().levels()).containsOnlyKeys(Level.DEAD_LAMP);
    assertThat(desk.progress().levels().get(Level.DEAD_LAMP).lately()).isEqualTo(100);
    assertThat(desk.progress().kinds()).containsOnlyKeys(FaultKind.OPEN);
  }
}
