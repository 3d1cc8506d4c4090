package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.KeptCases;
import loopwright.casework.record.RecordText;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** A real case in which the learner proposes each check first. */
class LearnerFirstTest {
  private final Bench.InMemory store = new Bench.InMemory();
  private final Vehicle vehicle = Bench.vehicle("tractor");

  private FindCase open() throws Problem {
    return Bench.desk(store)
        .open(
            new CaseDesk.NewCase(
                vehicle,
                "tractor",
                "tail",
                Optional.empty(),
                ComplaintKind.DEAD,
                Context.IN_SERVICE,
                "basic"),
            CaseDesk.Progress.SILENT);
  }

  private OwnCheck meter(CheckKind kind, String red, String black) {
    return new OwnCheck(
        kind,
        Optional.of(TerminalRef.parse(red)),
        Optional.of(TerminalRef.parse(black)),
        Optional.empty(),
        vehicle.circuit("tail").orElseThrow().onSetting());
  }

  @Test
  void theProgramsCheckStaysHiddenUntilBothAreCompared() throws Problem {
    OwnCheck own = meter(CheckKind.VOLTS, "L3.in", "L3.out");
    OwnCheck ohms = meter(CheckKind.OHMS, "L3.in", "L3.out");
    String id;
    OwnCheck best;
    try (FindCase find = open()) {
      id = find.view().caseId();
      best = OwnCheck.of(find.view().next().orElseThrow());
      CaseView hidden = find.propose(Proposer.LEARNER);
      assertThat(hidden.move()).isEqualTo(CaseView.Move.PROPOSE);
      assertThat(hidden.next()).isEmpty();
      assertThat(find.whyNext()).isEmpty();
      assertThatThrownBy(() -> find.outlook(Optional.empty())).isInstanceOf(Problem.class);

      // What is said of each is what the debrief of a drill would say.
      Comparison compared = find.compare(own);
      Appraisal appraisal = find.appraise(own, Optional.empty());
      assertThat(compared.learners().what()).isEqualTo(appraisal.words());
      assertThat(compared.learners().tells())
          .contains(
              Figures.share(appraisal.bits() / appraisal.minutes()),
              Figures.share(appraisal.outcomes().get(0).chance()),
              Figures.minutes(appraisal.minutes()));
      assertThat(compared.blocked()).isEmpty();
      assertThat(find.compare(best).verdict()).contains("what the program would have");
      assertThat(find.view()).isEqualTo(hidden);

      // Ohms on what may be live are compared, but not taken.
      assertThat(find.compare(ohms).blocked()).contains("0.00 V");
      assertThatThrownBy(() -> find.settle(ohms, Proposer.LEARNER)).isInstanceOf(Problem.class);
      assertThat(find.view()).isEqualTo(hidden);

      CaseView settled = find.settle(own, Proposer.LEARNER);
      assertThat(settled.move()).isEqualTo(CaseView.Move.CHECK);
      assertThat(settled.next().map(OwnCheck::of)).contains(own);
    }
    // Taken up again it goes on as it was.
    try (FindCase find = Bench.desk(store).resume(id, vehicle, CaseDesk.Progress.SILENT)) {
      assertThat(find.first()).isEqualTo(Proposer.LEARNER);
      CheckView check = find.view().next().orElseThrow();
      assertThat(OwnCheck.of(check)).isEqualTo(own);
      CaseView after = find.answer(check.id(), new Answer.Text("0.02 V"));
      assertThat(after.readings()).hasSize(1);
      assertThat(after.move()).isEqualTo(CaseView.Move.PROPOSE);

      CaseView programs = find.settle(own, Proposer.PROGRAM);
      OwnCheck shown = OwnCheck.of(programs.next().orElseThrow());
      assertThat(shown).isNotEqualTo(own);
      assertThat(find.propose(Proposer.PROGRAM).next().map(OwnCheck::of)).contains(shown);
    }
    CaseRecord record = new KeptCases(store, Clock.systemUTC()).record(id);
    RecordText text = new RecordText(record, new Phrases(Locale.ENGLISH), ZoneOffset.UTC);
    assertThat(text.readings(0).rows()).singleElement().asString().contains("by the learner");
    List<String> besides = text.besides().stream().map(RecordText.Fact::text).toList();
    assertThat(besides).anyMatch(t -> t.endsWith("the learner's was taken"));
    assertThat(besides).anyMatch(t -> t.endsWith("the program's was taken"));
  }
}
