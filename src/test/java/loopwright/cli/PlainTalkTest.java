package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.CaseEvent;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlainTalkTest {
  private final MemoryStore store = new MemoryStore();

  private TestWorld find(String... lines) {
    TestWorld world = new TestWorld(store, lines);
    assertThat(world.run("find", "pumper", "--complaint", "beacon dead"))
        .as(world.errText())
        .isZero();
    return world;
  }

  private List<CaseEvent> events() {
    return store.cases.get("beacon-1");
  }

  private static String flat(TestWorld world) {
    return world.outText().replaceAll("\\s+", " ");
  }

  @Test
  void aWholeCaseGoesFromTheFirstCheckToTheProof() {
    TestWorld world = find("12,4 V", "3", "12.3", "mended", "on");
    String text = flat(world);
    assertThat(text)
        .containsSubsequence(
            "Beacon dead - Light pumper",
            "Check 1",
            "SET beacon switch on",
            "RED F3.load: the point F3.load",
            "label \"BCN\"",
            "BLACK BATT.neg: battery negative post",
            "METER volts DC",
            "HEALTHY 12.00 to 12.70 V",
            "BECAUSE It splits the loop behind the fuse.",
            "OR SAY a for 11.9 to 12.7 V: leaves beacon ground G4, beacon L1",
            "Taken: 12.4 V.",
            "suspected: beacon ground G4 60 %; beacon L1 20 %",
            "cleared: F3",
            "Check 2",
            "SET as it is: beacon switch on",
            "LOOK AT beacon L1",
            "Does the beacon light?",
            "1 on 2 dim 3 does nothing (off)",
            "Taken: off.",
            "Check 3",
            "RED L1.out",
            "Taken: 12.3 V.",
            "Found: beacon ground G4, more than 99 %",
            "PROVEN 12.3 V stands",
            "WHY Paint under the lug.",
            "INSPECT Look for rust",
            "CAREFUL Battery negative off",
            "REPAIR Clean the stud",
            "PROVE The beacon lights",
            "Proof of the repair",
            "Healthy: it works as it should.",
            "Before you go, put back: - switch the beacon off",
            "Kept as case beacon-1.");
    assertThat(text.indexOf("CAREFUL The beacon turns"))
        .as("a caution stands before what the hands do")
        .isBetween(0, text.indexOf("RED F3.load"));
    assertThat(events()).hasSize(6);
    assertThat(((CaseEvent.Taken) events().get(1)).answer()).isEqualTo(new Answer.Text("12,4 V"));
    assertThat(((CaseEvent.Taken) events().get(3)).answer())
        .as("a bare number is taken in the unit of the check")
        .isEqualTo(new Answer.Text("12.3 V"));
  }

  @ParameterizedTest
  @ValueSource(ints = {80, 46, 30})
  void noLineIsWiderThanTheScreen(int width) {
    TestWorld world =
        new TestWorld(
            store, "12.4", "off", "list", "help", "points", "setups", "why", "why G4", "tree",
            "12.3");
    world.run("find", "pumper", "--complaint", "beacon dead", "--width", "" + width);
    // On a screen the line that was typed ends the prompt's line.
    assertThat(world.outText().replaceAll("(?m)^[a-z ?]+> ", "").lines())
        .allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(width));
    assertThat(world.outText()).isASCII();
  }

  @Test
  void whenTheInputEndsTheCaseIsKeptAndCanBeTakenUpAgain() {
    TestWorld first = find("12.4", "off");
    assertThat(flat(first)).contains("To go on: loopwright find --resume beacon-1");
    assertThat(events()).hasSize(3);
    TestWorld second = new TestWorld(store, "12.3");
    assertThat(second.run("find", "--resume", "beacon-1")).isZero();
    assertThat(flat(second))
        .containsSubsequence(
            "cleared: F3", "SET beacon switch on", "RED L1.out", "Found: beacon ground")
        .as("after a break the whole set-up is said")
        .doesNotContain("as it is");
    assertThat(events()).hasSize(4);
  }

  @Test
  void aLetterAnswersWithTheBandOfThatResult() {
    find("A");
    assertThat(((CaseEvent.Taken) events().get(1)).answer())
        .isEqualTo(new Answer.Within(new Band(11.9, 12.7, Band.Unit.VOLT)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "OL|OL",
        "o.l.|OL",
        "over range|OL",
        "35 mV|35 mV",
        "-.5|-.5 V",
        "12.|12. V",
        "1.|1."
      })
  void valuesAreTakenAsTheDisplayShowsThem(String typed, String taken) throws Exception {
    Answer answer = Entry.of(CheckKind.VOLTS).read(typed);
    assertThat(answer).isEqualTo(new Answer.Text(taken));
  }

  @Test
  void aBareNumberIsMillivoltsOrOhmsWhereTheCheckSaysSo() throws Exception {
    assertThat(Entry.of(CheckKind.MILLIVOLTS).read("35")).isEqualTo(new Answer.Text("35 mV"));
    assertThat(Entry.of(CheckKind.OHMS).read("4.7")).isEqualTo(new Answer.Text("4.7 ohm"));
  }

  @Test
  void aBareFractionOnAMillivoltCheckMustSayItsUnit() {
    for (String typed : List.of("0.035", ".2", "-0,4")) {
      assertThatThrownBy(() -> Entry.of(CheckKind.MILLIVOLTS).read(typed))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("V or mV");
    }
  }

  @Test
  void anUnlikelyEntryIsAskedOnceMore() {
    TestWorld world = find("124", "no", "124", "124");
    assertThat(flat(world))
        .containsSubsequence(
            "124 V? Nothing here gives that.", "Does it count?", "Dropped.", "124 V? Nothing");
    assertThat(events()).as("typed again it counts, and only then").hasSize(2);
    assertThat(flat(world)).contains("These readings can't all be right: 1. Take reading 1 again.");
  }

  @Test
  void anotherValueTakesThePlaceOfTheUnlikelyOne() {
    find("124", "12.4");
    assertThat(events()).hasSize(2);
    assertThat(((CaseEvent.Taken) events().get(1)).answer()).isEqualTo(new Answer.Text("12.4 V"));
  }

  @Test
  void readingsAreTakenBackAndPutRight() {
    TestWorld world = find("12.4", "off", "fix 1 0,0 V", "back 1", "back");
    assertThat(events().subList(3, 6))
        .satisfiesExactly(
            e -> assertThat(((CaseEvent.Corrected) e).answer()).isEqualTo(new Answer.Text("0,0 V")),
            e -> assertThat(((CaseEvent.Withdrawn) e).reading()).isEqualTo(1),
            e -> assertThat(((CaseEvent.Withdrawn) e).reading()).isEqualTo(2));
    assertThat(flat(world))
        .containsSubsequence("Found: beacon fuse F3", "Reading 2 is taken back.");
  }

  @ParameterizedTest
  @CsvSource({
    "can't,CANT_REACH",
    "can\u2019t reach it,CANT_REACH",
    "can't ever,NEVER",
    "never,NEVER",
    "won't,WONT",
    "alone,NO_HELPER"
  })
  void aCheckIsRefusedInPlainWords(String typed, FindCase.Refusal refusal) {
    TestWorld world = find(typed);
    assertThat(((CaseEvent.Refused) events().get(1)).refusal()).isEqualTo(refusal);
    assertThat(flat(world)).contains("Left out: F3.load");
  }

  @Test
  void anotherReadingThanTheProposedOneIsTaken() {
    TestWorld world =
        find(
            "measure g4.lug",
            "12.1",
            "measure L1.out BATT.neg ohms setup 2",
            "1.2 kohm",
            "look l1",
            "dim");
    CaseEvent.Taken volts = (CaseEvent.Taken) events().get(1);
    assertThat(volts.check().red()).hasToString("Optional[G4.lug]");
    assertThat(volts.check().black()).as("the grounded post").hasToString("Optional[BATT.neg]");
    assertThat(volts.answer()).isEqualTo(new Answer.Text("12.1 V"));
    CaseEvent.Taken ohms = (CaseEvent.Taken) events().get(2);
    assertThat(ohms.check().kind()).isEqualTo(CheckKind.OHMS);
    assertThat(ohms.check().setting().apart()).containsExactly("BATT");
    CaseEvent.Taken look = (CaseEvent.Taken) events().get(3);
    assertThat(look.answer()).isEqualTo(new Answer.Saw(Seen.DIM));
    assertThat(flat(world)).contains("SET battery negative off");
  }

  @Test
  void aReadingOfOnesOwnCanBeLeft() {
    TestWorld world = find("measure G4.lug", "no", "12.4");
    assertThat(events()).hasSize(2);
    assertThat(((CaseEvent.Taken) events().get(1)).check().red()).hasToString("Optional[F3.load]");
    assertThat(world.outText()).doesNotContain("Not taken");
  }

  @Test
  void whatIsSeenIsSaidByNumberWordOrTheChecksOwnWords() {
    for (String typed : List.of("3", "off", "OFF", "does nothing")) {
      store.cases.clear();
      find("12.4", typed);
      assertThat(((CaseEvent.Taken) events().get(2)).answer())
          .as(typed)
          .isEqualTo(new Answer.Saw(Seen.OFF));
    }
  }

  @Test
  void aSwapIsKept() {
    find("swapped f3 no");
    assertThat(events().get(1)).isInstanceOf(CaseEvent.Swapped.class);
    assertThat(((CaseEvent.Swapped) events().get(1)).part()).isEqualTo("F3");
  }

  @Test
  void whatWasToldIsTakenBackByItsWordOrBecauseItCameLast() {
    find("12.4", "swapped f3 no", "back", "can't", "12.3", "back can't", "back mended");
    assertThat(events().stream().map(e -> e.getClass().getSimpleName()))
        .containsExactly("Opened", "Taken", "Swapped", "Undone", "Refused", "Taken", "Undone");
    assertThat(((CaseEvent.Undone) events().get(6)).what()).isEqualTo(events().get(4));
  }

  @Test
  void theListShowsSuspectsClearedReadingsAndStaircase() {
    TestWorld world = find("12.4", "list");
    assertThat(flat(world).replaceAll("\\d\\d:\\d\\d:01", "TIME"))
        .containsSubsequence(
            "Suspected beacon ground G4, 60 % open or corroded",
            "Cleared beacon fuse F3 by 1: 12.4 V behind it.",
            "Readings 1 TIME F3.load: 12.4 V (healthy 12.0 to 12.7 V)",
            "BATT.pos",
            "12.40 to 12.80 V",
            "| beacon fuse F3: cleared by 1",
            "F3.load",
            "12.00 to 12.70 V measured 12.40 V (1)",
            "| beacon L1: held, 30 %",
            "L1.out");
    String row =
        world.outLines().stream()
            .filter(l -> l.startsWith("F3.load") && l.contains("measured"))
            .findFirst()
            .orElseThrow();
    assertThat(row)
        .as("the bar shows where it was measured")
        .matches("F3\\.load +\\[ +x=*\\s*\\].*");
  }

  @Test
  void oneCheckIsReadAgainAndAgainAndItsTimesAreTold() {
    TestWorld world = find("12.4", "same", "12.3", "0.02", "OL?", "no", "log", "same 9");
    assertThat(flat(world).replaceAll("\\d\\d:\\d\\d:0(\\d)", "T$1"))
        .containsSubsequence(
            "AGAIN F3.load",
            "HEALTHY 12.0 to 12.7 V",
            "say each value; no ends it.",
            "it reads> T2 12.3 V [=",
            "it reads> T3 0.02 V [#",
            "] not as in health",
            "it reads> Not taken: entry 'OL?'",
            "T1 12.4 V",
            "T3 0.02 V",
            "3 readings from T1 to T3: between 0.02 V and 12.4 V. Healthy: 12.0 to 12.7 V.",
            "Not as in health at T3.",
            "It came and went.",
            "mended?>",
            "3 readings from T1 to T3",
            "Not taken: reading '9'");
    assertThat(events().stream().filter(CaseEvent.Taken.class::isInstance)).hasSize(3);
  }

  @Test
  void nothingCanBeReadAgainBeforeItWasRead() {
    assertThat(flat(find("same", "log")))
        .containsSubsequence("nothing was read yet", "No check was read twice yet.");
  }

  @Test
  void whyIsAnswered() {
    TestWorld world = find("why", "why G4");
    assertThat(flat(world))
        .contains("- It splits the loop behind the fuse.")
        .contains("- G4 is still held. - Nothing has ruled it out.");
    assertThat(events()).as("a question changes nothing").hasSize(1);
  }

  @Test
  void whatEachResultLeavesIsShownAsATree() {
    TestWorld world = find("tree", "tree 1", "tree 9");
    assertThat(world.outText())
        .containsPattern("(?m)^.*volts DC at beacon ground G4, ")
        .containsPattern("(?m)^[+]- .+, .+ %")
        .containsPattern("(?m)^[|] {4}leaves beacon ground G4 60 %")
        .containsPattern("(?m)^[|] {4}then {3}volts DC at beacon fuse F3, 2 minutes; first key on")
        .containsPattern("(?m)^or {7}tree 2: volts DC at beacon fuse F3");
    assertThat(flat(world)).contains("Not taken: tree '9': a number from 1 to 2");
    assertThat(events()).as("a question changes nothing").hasSize(1);
  }

  @Test
  void stopEndsAndKeeps() {
    TestWorld world = find("12.4", "stop", "12.3");
    assertThat(events()).hasSize(3).last().isInstanceOf(CaseEvent.Stopped.class);
    assertThat(flat(world)).endsWith("find --resume beacon-1 ");
  }

  @Test
  void whenNothingSplitsTheRestItSaysSo() {
    TestWorld world = find("can't", "can't", "can't", "12.4");
    assertThat(flat(world))
        .contains("No check that may be asked here tells the rest apart: - beacon ground G4, 60 %")
        .contains("no check is open now");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "rubbish",
        "12 W",
        "5000",
        "z",
        "why F99",
        "back 9",
        "back x",
        "fix 9 12",
        "fix",
        "fix 1",
        "measure F9.load",
        "measure",
        "measure F3.load L1.out BATT.neg",
        "measure F3.load setup 9",
        "look Q1",
        "look",
        "swapped F3 maybe",
        "swapped",
        "mended",
        "mended F99",
        "smell",
        "isolated",
        "gone",
        "\u0007\u001b[2J",
        "1234567890123456789012345678901234567890 V"
      })
  void whatCannotBeTakenIsToldAndChangesNothing(String typed) {
    TestWorld world = find(typed);
    assertThat(events()).hasSize(1);
    assertThat(flat(world)).contains("Not taken: ").contains("Nothing has changed.");
    assertThat(world.outText()).doesNotContain("\u001b");
  }

  @Test
  void smokeStopsTheChecksUntilItIsGone() {
    TestWorld world = find("smoke", "12.4", "isolated", "gone");
    String text = flat(world);
    assertThat(text)
        .containsSubsequence(
            "Check 1",
            "STOP: smoke",
            "DO Isolate the battery.",
            "Say isolated once the battery is off",
            "isolated or gone?>",
            "Not taken: ",
            "CAREFUL smoke was reported: the battery stays off.",
            "Nothing more can be checked on the dead vehicle",
            "Check 1");
    assertThat(events().stream().map(e -> e.getClass().getSimpleName()))
        .containsExactly("Opened", "Warned", "Isolated", "Gone");
  }

  @ParameterizedTest
  @CsvSource({"smoke, SMOKE", "burnt, SMOKE", "hot, HEAT", "HEAT, HEAT", "fuel, FUEL"})
  void aWarningIsOneWord(String typed, Warning warning) {
    find(typed);
    assertThat(((CaseEvent.Warned) events().get(1)).warning()).isEqualTo(warning);
  }

  @Test
  void aFullDiskIsToldAndTheAnswerCanBeGivenAgain() {
    TestWorld world = new TestWorld(store, "12.4");
    MemoryStore full = store;
    full.cases.put("beacon-1", new java.util.ArrayList<>());
    full.full = true;
    world.run("find", "pumper", "--resume", "beacon-1");
    assertThat(flat(world)).contains("Not taken: case file").contains("the disk is full");
    assertThat(full.cases.get("beacon-1")).isEmpty();
  }

  @Test
  void linesThatAreNoTextAreSurvived() {
    byte[] input = new byte[200_000];
    java.util.Arrays.fill(input, (byte) 'x');
    input[100_000] = '\n';
    input[100_001] = (byte) 0xff;
    input[100_002] = '\n';
    input[199_999] = '\n';
    TestWorld world = new TestWorld(store, input);
    assertThat(world.run("find", "pumper", "--complaint", "beacon dead")).isZero();
    assertThat(flat(world).split("can't be read as text", -1)).hasSize(4);
  }

  @Test
  void withoutAComplaintItAsksUntilItUnderstands() {
    TestWorld world = new TestWorld(store, "it is broken", "beacon dead", "12.4");
    assertThat(world.run("find", "pumper")).isZero();
    assertThat(flat(world))
        .containsSubsequence("What is wrong", "a circuit and what it does", "Check 1");
    assertThat(events()).hasSize(2);
  }
}
