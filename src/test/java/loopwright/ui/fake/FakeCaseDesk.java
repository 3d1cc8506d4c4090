package loopwright.ui.fake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import loopwright.casework.CaseDesk;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.diagnosis.ComplaintKind;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;

/** Opens {@link FakeFindCase}s; slowly, if asked, so that progress can be seen. */
public final class FakeCaseDesk implements CaseDesk {
  private final long openingMillis;
  private final List<NewCase> opened = new ArrayList<>();

  public FakeCaseDesk() {
    this(0);
  }

  public FakeCaseDesk(long openingMillis) {
    this.openingMillis = openingMillis;
  }

  /** The cases opened so far. */
  public List<NewCase> opened() {
    return List.copyOf(opened);
  }

  @Override
  public Complaint understand(Vehicle vehicle, String words) throws Problem {
    String said = words.toLowerCase(Locale.ROOT);
    for (Circuit circuit : vehicle.circuits()) {
      if (said.contains(circuit.name().toLowerCase(Locale.ROOT))) {
        for (ComplaintKind kind : ComplaintKind.values()) {
          if (said.contains(kind.words())) {
            return new Complaint(circuit.id(), Optional.empty(), kind);
          }
        }
      }
    }
    throw new Problem("complaint", words, "a circuit's name and dead, dim, stuck on, ...");
  }

  @Override
  public FindCase open(NewCase newCase, Progress progress) throws Problem {
    for (int i = 0; i < 10; i++) {
      if (progress.cancelled()) {
        throw new CancellationException();
      }
      progress.at("Solving what each failure would read", i / 10.0);
      pause(openingMillis / 10);
    }
    opened.add(newCase);
    Circuit circuit =
        newCase
            .vehicle()
            .circuit(newCase.circuit())
            .orElseThrow(() -> new Problem("circuit", newCase.circuit(), "a circuit's id"));
    return new FakeFindCase(
        newCase.vehicle(),
        circuit.name() + " " + newCase.kind().words() + " - " + newCase.vehicle().name());
  }

  private static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public String handOver(NewCase newCase, List<Before> readings) {
    throw new UnsupportedOperationException("nothing is handed over here");
  }

  @Override
  public FindCase resume(String caseId, Vehicle vehicle, Progress progress) throws Problem {
    if (!FakeCases.IDS.contains(caseId)) {
      throw new Problem("case", caseId, "a kept case");
    }
    return new FakeFindCase(vehicle, "Beacon dead - " + vehicle.name());
  }
}
