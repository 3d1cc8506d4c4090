package loopwright.casework.prove;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Proofs that last as long as the test. */
public final class ProofsInMemory implements ProofStore {
  private final Map<String, List<ProofEvent>> kept = new LinkedHashMap<>();

  @Override
  public Kept read(String vehicleId) {
    return new Kept(kept.getOrDefault(vehicleId, List.of()), "");
  }

  @Override
  public void append(String vehicleId, ProofEvent event) {
    kept.computeIfAbsent(vehicleId, k -> new ArrayList<>()).add(event);
  }
}
