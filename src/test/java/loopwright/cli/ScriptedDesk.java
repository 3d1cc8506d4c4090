package loopwright.cli;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Vehicle;

/** Opens scripted cases. */
final class ScriptedDesk implements CaseDesk {
  private static final Instant START = Instant.parse("2024-05-17T18:00:00Z");
  final CaseStore store;
  NewCase asked;
  ScriptedCase open;
  RuntimeException defect;

  ScriptedDesk(CaseStore store) {
    this.store = store;
  }

  @Override
  public Complaint understand(Vehicle vehicle, String words) throws Problem {
    if (words.equals("beacon dead")) {
      return new Complaint("beacon", Optional.empty(), ComplaintKind.DEAD);
    }
    throw new Problem("complaint", words, "a circuit and what it does: beacon; dead, dim");
  }

  @Override
  public FindCase open(NewCase newCase, Progress progress) throws Problem {
    asked = newCase;
    progress.at("Working out the circuit", 0.5);
    if (newCase.vehicle().circuit(newCase.circuit()).isEmpty()) {
      throw new Problem("circuit", newCase.circuit(), "beacon");
    }
    String id = "beacon-" + (store.ids().size() + 1);
    CaseStore.Journal journal = store.create(id);
    journal.append(
        new CaseEvent.Opened(
            START,
            id,
            newCase.vehicleName(),
            newCase.vehicle().id(),
            newCase.circuit(),
            newCase.load(),
            newCase.kind(),
            newCase.context(),
            newCase.meter()));
    open = new ScriptedCase(newCase.vehicle(), id, journal);
    open.defect = defect;
    return open;
  }

  @Override
  public String handOver(NewCase newCase, List<Before> readings) {
    throw new UnsupportedOperationException("nothing is handed over here");
  }

  @Override
  public FindCase resume(String caseId, Vehicle vehicle, Progress progress) throws Problem {
    CaseStore.Loaded loaded = store.load(caseId);
    open = new ScriptedCase(vehicle, caseId, loaded.journal());
    open.replay(loaded.events());
    return open;
  }
}
