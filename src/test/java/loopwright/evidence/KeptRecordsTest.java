package loopwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Account;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.casework.ReadingView;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.KeptCases;
import loopwright.diagnosis.ComplaintKind;
import loopwright.io.ReadyCaseFile;
import loopwright.io.journal.FileCaseStore;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the journals of played cases say, against what stood on the screen. */
class KeptRecordsTest {
  @TempDir Path folder;

  private CaseRecord record() {
    return new KeptCases(new FileCaseStore(folder), Clock.systemUTC()).shelf().records().get(0);
  }

  private static ReadyCase ready(String id) {
    return ReadyCaseFile.readBundled().orThrow().stream()
        .filter(c -> c.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private FindCase open(ReadyCase ready, Vehicle vehicle, SimulatedMeter meter) throws Problem {
    return meter.following(
        Bench.desk(new FileCaseStore(folder))
            .open(CaseDesk.NewCase.practice(ready, vehicle), CaseDesk.Progress.SILENT));
  }

  private static CaseView play(FindCase find, SimulatedMeter meter, CaseView.Move move)
      throws Problem {
    CaseView view = find.view();
    for (int n = 0; n < 30 && view.move() == move; n++) {
      CheckView check = view.next().orElseThrow();
      view = find.answer(check.id(), meter.read(check));
    }
    return view;
  }

  @Test
  void theRecordSaysWhatStoodOnTheScreenEvenWhileTheCaseIsOpen() throws Problem {
    ReadyCase ready = ready("tractor-horn");
    Vehicle vehicle = Bench.vehicle(ready.vehicle());
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 1);
    try (FindCase find = open(ready, vehicle, meter)) {
      assertThat(record().state()).isEqualTo(CaseRecord.CaseState.OPEN);
      CaseView found = play(find, meter, CaseView.Move.CHECK);
      assertThat(found.move()).isEqualTo(CaseView.Move.REPAIR);
      CaseRecord record = record();
      assertThat(record.state()).isEqualTo(CaseRecord.CaseState.FOUND);
      assertThat(record.title()).isEqualTo(found.title());
      Account.Fault fault = record.stages().get(0).fault().orElseThrow();
      assertThat(fault.title()).isEqualTo(found.suspects().get(0).title());
      assertThat(fault.repair()).isEqualTo(found.repair().orElseThrow().repair()).isNotEmpty();
      assertThat(fault.causes()).isNotEmpty();
      assertThat(fault.causes().stream().mapToDouble(Account.Cause::belief).sum())
          .isBetween(0.9, 1.0 + 1e-9);
      assertThat(record.stages().get(0).account().orElseThrow().cleared())
          .isEqualTo(found.cleared());
      same(record.stages().get(0), found.readings());

      find.repaired(found.suspects().get(0).parts().get(0));
      CaseView end = play(find, meter, CaseView.Move.PROOF);
      assertThat(end.move()).isEqualTo(CaseView.Move.END);
      assertThat(record().state()).isEqualTo(CaseRecord.CaseState.PROVEN);
      assertThat(record().repairs()).singleElement().matches(CaseRecord.Repair::proven);
      same(record().stages().get(1), end.readings());
      assertThat(record().opened().practice()).isTrue();

      int seq = end.seq();
      find.stop();
      assertThat(find.view().seq()).as("what is told counts as no line").isEqualTo(seq + 1);
    }
    int events = new FileCaseStore(folder).read(record().opened().caseId()).events().size();
    try (FindCase again =
        Bench.desk(new FileCaseStore(folder))
            .resume(record().opened().caseId(), vehicle, CaseDesk.Progress.SILENT)) {
      assertThat(again.view().move()).isEqualTo(CaseView.Move.END);
    }
    assertThat(new FileCaseStore(folder).read(record().opened().caseId()).events())
        .as("who looks at a case again changes nothing")
        .hasSize(events);
  }

  /**
   * Two parts of the tail lamp's loop have failed. The first is found and mended, its proof fails,
   * the case goes on without suspecting the mended one, and finds the second. The record says so.
   */
  @Test
  void aFailedProofGoesOnToTheSecondFault() throws Problem {
    ReadyCase ready =
        new ReadyCase(
            "two",
            "Two faults",
            "tractor",
            "tail dead",
            "tail",
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            "",
            List.of(
                new ReadyCase.Fault("C1", "unseated:cavity:1", Optional.empty()),
                new ReadyCase.Fault("G3", "on-paint", Optional.of(2000.0))),
            "basic");
    Vehicle vehicle = Bench.vehicle("tractor");
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, 7);
    try (FindCase find = open(ready, vehicle, meter)) {
      List<String> mended = new ArrayList<>();
      CaseView view = find.view();
      for (int mends = 0; mends < 2; mends++) {
        view = play(find, meter, CaseView.Move.CHECK);
        assertThat(view.move()).isEqualTo(CaseView.Move.REPAIR);
        String part =
            view.suspects().get(0).parts().stream()
                .filter(p -> p.equals("C1") || p.equals("G3"))
                .filter(p -> !mended.contains(p))
                .findFirst()
                .orElseThrow();
        mended.add(part);
        find.repaired(part);
        view = play(find, meter, CaseView.Move.PROOF);
        if (mends == 0) {
          assertThat(view.move())
              .as("the proof fails and the case goes on")
              .isEqualTo(CaseView.Move.CHECK);
          assertThat(view.suspects().get(0).parts()).doesNotContain(part);
        }
      }
      assertThat(view.move()).isEqualTo(CaseView.Move.END);
      CaseRecord record = record();
      assertThat(record.state()).isEqualTo(CaseRecord.CaseState.PROVEN);
      assertThat(record.repairs()).extracting(r -> r.mend().part()).isEqualTo(mended);
      assertThat(record.repairs())
          .extracting(CaseRecord.Repair::proven)
          .containsExactly(false, true);
      assertThat(record.stages()).hasSize(3);
    }
  }

  private static void same(CaseRecord.Stage stage, List<ReadingView> shown) {
    assertThat(stage.readings()).hasSameSizeAs(shown);
    for (ReadingView reading : shown) {
      Account.Line line = stage.line(reading.id()).orElseThrow();
      assertThat(line.value()).isEqualTo(reading.value());
      assertThat(line.healthy()).isEqualTo(reading.healthyWords());
      assertThat(line.where()).isEqualTo(reading.where());
    }
  }
}
