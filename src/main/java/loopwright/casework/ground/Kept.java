package loopwright.casework.ground;

import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProofStore;
import loopwright.model.Vehicle;

/** What was proven of a vehicle's grounds, the last proof of each. */
final class Kept {
  private final ProofStore store;
  private final Vehicle vehicle;
  private final Clock clock;
  private final Map<String, ProofEvent.GroundProved> last = new LinkedHashMap<>();
  private String missing = "";

  Kept(ProofStore store, Vehicle vehicle, Clock clock) {
    this.store = store;
    this.vehicle = vehicle;
    this.clock = clock;
  }

  void read() throws Problem {
    ProofStore.Kept kept = store.read(vehicle.id());
    missing = kept.missing();
    last.clear();
    for (ProofEvent event : kept.events()) {
      if (event instanceof ProofEvent.GroundProved g) {
        last.put(g.ground(), g);
      }
    }
  }

  /** What of the journal can't be read, in words; empty if all can. */
  String missing() {
    return missing;
  }

  Optional<ProofEvent.GroundProved> of(String ground) {
    return Optional.ofNullable(last.get(ground));
  }

  Instant now() {
    return clock.instant();
  }

  /** Keeps a proof: it counts once it is on disk. */
  void add(ProofEvent.GroundProved proved) throws Problem {
    store.append(vehicle.id(), proved);
    last.put(proved.ground(), proved);
  }
}
