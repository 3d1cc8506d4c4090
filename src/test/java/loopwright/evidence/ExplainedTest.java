package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import loopwright.casework.Against;
import loopwright.casework.Answer;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Outlook;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Explainer;
import loopwright.diagnosis.Seen;
import loopwright.io.ReadyCaseFile;
import loopwright.knowledge.Context;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Why still, why not, and what each result would leave, over the real search. */
class ExplainedTest {

  private static final Vehicle PUMPER = Bench.vehicle("pumper");
  private static final Setting BEACON_ON = Setting.REST.with("KEY", "on").with("S5", "on");

  private static FindCase open(String vehicle, Vehicle model, String circuit, ComplaintKind kind)
      throws Problem {
    return Bench.desk()
        .open(
            new CaseDesk.NewCase(
                model,
                vehicle,
                circuit,
                Optional.empty(),
                kind,
                Context.IN_SERVICE,
                Bench.KNOWLEDGE.meters().get(0).id()),
            CaseDesk.Progress.SILENT);
  }

  private static OwnCheck volts(String red, Setting setting) {
    return new OwnCheck(
        CheckKind.VOLTS,
        Optional.of(TerminalRef.parse(red)),
        Optional.of(TerminalRef.parse("BATT.neg")),
        Optional.empty(),
        setting);
  }

  /**
   * The resistance that a reading asks for must hold the one that really is there, whatever the
   * practice meter errs and wherever the vehicle's values lie.
   */
  @ParameterizedTest
  @ValueSource(strings = {"fuel-pump-holder", "tractor-mudguard"})
  void theTrueResistanceLiesInTheNeededRange(String id) throws Problem {
    ReadyCase ready =
        ReadyCaseFile.readBundled().orThrow().stream()
            .filter(c -> c.id().equals(id))
            .findFirst()
            .orElseThrow();
    ReadyCase.Fault fault = ready.truth().get(0);
    Vehicle vehicle = Bench.vehicle(ready.vehicle());
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 7);
    try (FindCase find =
        meter.following(open(ready.vehicle(), vehicle, ready.circuit(), ready.kind()))) {
      CaseView view = find.view();
      for (int n = 0; n < 20 && view.move() == CaseView.Move.CHECK; n++) {
        CheckView check = view.next().orElseThrow();
        view = find.answer(check.id(), meter.read(check));
      }
      List<Against> against = find.against(fault.part());
      assertThat(against).isNotEmpty();
      double ohms = fault.ohms().orElseThrow();
      int narrowed = 0;
      for (Against a : against) {
        assertThat(a.needed()).as(a.toString()).isPresent();
        assertThat(a.needed().get().low()).as(a.toString()).isLessThanOrEqualTo(ohms);
        assertThat(a.needed().get().high()).as(a.toString()).isGreaterThanOrEqualTo(ohms);
        narrowed += a.needed().get().low() > 0 ? 1 : 0;
      }
      assertThat(narrowed).as("readings that a sound part doesn't give").isPositive();
    }
  }

  @Test
  void aReadingAsksForOhmsThatACorrodedContactHasAndACutWireHasNot() throws Problem {
    try (FindCase find = open("pumper", PUMPER, "beacon", ComplaintKind.DIM)) {
      // Both leads on the lamp: 9.2 V of 12 V there, so some ohms lie in the way.
      CaseView view =
          find.take(
              new OwnCheck(
                  CheckKind.VOLTS,
                  Optional.of(TerminalRef.parse("L5.in")),
                  Optional.of(TerminalRef.parse("L5.out")),
                  Optional.empty(),
                  BEACON_ON),
              new Answer.Text("6.20 V"));
      assertThat(view.readings()).hasSize(1);
      Against a = find.against("W9").get(0);
      assertThat(a.needed().orElseThrow().low()).isBetween(0.5, 10.0);
      assertThat(a.needed().orElseThrow().high()).isLessThan(3 * a.needed().orElseThrow().low());
      assertThat(a.modes())
          .anySatisfy(
              m -> {
                assertThat(m.suspect().mode()).isEqualTo("high-resistance");
                assertThat(m.can()).isEqualTo(Explainer.Can.GIVES);
              });
      String why = String.join(" ", find.whyStill("W9"));
      assertThat(why)
          .contains("would have to have")
          .contains("ohm in the way to give 6.2 V")
          .contains("Can give it: corroded or badly crimped end");
    }
  }

  @Test
  void whatIsClearedIsToldWithWhatItWouldHaveShownAtMost() throws Problem {
    try (FindCase find = open("pumper", PUMPER, "beacon", ComplaintKind.DEAD)) {
      CaseView view = find.take(volts("G4.lug", BEACON_ON), new Answer.Text("12.30 V"));
      assertThat(view.cleared()).anyMatch(c -> c.part().equals("F3"));
      List<String> why = find.whyStill("F3");
      assertThat(why.get(0)).contains("F3 is good: 12.3 V").contains("(1)");
      assertThat(why.get(1)).contains("reading 1 would have been at most").contains("it was 12.3");
      double most = Double.parseDouble(why.get(1).replaceAll(".*at most ([0-9.]+) .*", "$1"));
      assertThat(most).isBetween(0.0, 2000.0);
      assertThat(find.whyStill("F3/blown").get(0)).contains("is ruled out");
      assertThatThrownBy(() -> find.whyStill("F3/no-such-mode"))
          .isInstanceOf(Problem.class)
          .hasMessageContaining("F3/");
      // A short behind the fuse is held only as a slip of the reading, and blows the fuse first.
      String held = String.join(" ", find.whyStill("W8"));
      assertThat(held).contains("only if reading 1 (12.3 V").contains("F3 blows by it");
    }
  }

  @Test
  void whatABlowingFailureBringsAboutIsRead() throws Problem {
    try (FindCase find = open("pumper", PUMPER, "beacon", ComplaintKind.BLOWS_FUSE)) {
      String part = find.view().suspects().get(0).parts().get(0);
      assertThat(String.join(" ", find.whyStill(part)))
          .containsPattern(
              "blows by it \\([0-9.]+ A would flow; it blows at [0-9.]+ to [0-9.]+ A\\)");
    }
  }

  @Test
  void eachResultToldIsWhatTheSearchThenDoes() throws Problem {
    try (FindCase find = open("pumper", PUMPER, "beacon", ComplaintKind.DEAD)) {
      find.take(volts("BATT.pos", BEACON_ON), new Answer.Text("12.30 V"));
      CheckView asked = find.view().next().orElseThrow();
      CaseView before = find.view();
      Outlook outlook = find.outlook(Optional.empty());
      assertThat(outlook.check()).isEqualTo(asked.id());
      assertThat(outlook.proposed()).isTrue();
      assertThat(outlook.branches().stream().map(Outlook.Branch::outcome).toList())
          .isEqualTo(asked.outcomes());
      assertThat(outlook.branches().stream().mapToDouble(b -> b.outcome().chance()).sum())
          .isBetween(0.95, 1.001);
      for (Outlook.Choice choice : outlook.instead()) {
        Outlook other = find.outlook(Optional.of(choice.check()));
        assertThat(other.branches()).as(choice.check()).isNotEmpty();
        assertThat(other.proposed()).isFalse();
      }
      for (int i = 0; i < outlook.branches().size(); i++) {
        Outlook.Then then = find.then(outlook.check(), i);
        assertThat(find.view()).as("looking ahead changes nothing").isSameAs(before);
        CheckView.OutcomeView result = outlook.branches().get(i).outcome();
        CaseView real =
            find.answer(
                asked.id(),
                result
                    .seen()
                    .<Answer>map(Answer.Saw::new)
                    .orElseGet(() -> new Answer.Within(result.band().orElseThrow())));
        assertThat(then.move()).isEqualTo(real.move());
        assertThat(then.check()).isEqualTo(real.next().map(CheckView::id));
        assertThat(then.outcomes())
            .isEqualTo(real.next().map(CheckView::outcomes).orElse(List.of()));
        find.withdraw(real.readings().get(real.readings().size() - 1).id());
        before = find.view();
      }
      assertThatThrownBy(() -> find.then(outlook.check(), 99)).isInstanceOf(Problem.class);
      assertThatThrownBy(() -> find.outlook(Optional.of("volts Q9.a>Q9.b")))
          .isInstanceOf(Problem.class);
    }
  }

  @Test
  void lookingAheadWorksForLooksToo() throws Problem {
    try (FindCase find = open("pumper", PUMPER, "beacon", ComplaintKind.DEAD)) {
      Outlook outlook = find.outlook(Optional.empty());
      assertThat(outlook.branches()).isNotEmpty();
      assertThat(outlook.branches().get(0).outcome().seen().map(Seen::word)).isPresent();
      assertThat(outlook.branches().get(0).left()).isNotEmpty();
    }
  }
}
