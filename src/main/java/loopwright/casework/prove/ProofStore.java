package loopwright.casework.prove;

import java.util.List;
import loopwright.casework.Problem;

/**
 * Where proofs are kept: an append-only journal for each vehicle. Implemented by the io room.
 *
 * <p>A journal is open only while it is read or written to, so that several views and programs can
 * add to one vehicle's proofs in turn.
 */
public interface ProofStore {

  /**
   * What is kept for a vehicle; nothing for one that was never proven.
   *
   * @param vehicleId the vehicle's id
   * @throws Problem if it can't be read
   */
  Kept read(String vehicleId) throws Problem;

  /**
   * Writes an event and forces it to disk.
   *
   * @param vehicleId the vehicle's id
   * @throws Problem if it can't be written; the event does not count then
   */
  void append(String vehicleId, ProofEvent event) throws Problem;

  /**
   * A journal read back.
   *
   * @param events the events in order
   * @param missing what could not be read, in words; empty if all could
   */
  record Kept(List<ProofEvent> events, String missing) {
    /** Copies the list. */
    public Kept {
      events = List.copyOf(events);
    }
  }
}
