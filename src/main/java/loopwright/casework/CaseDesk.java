package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;

/** Opens new cases and takes up kept ones. */
public interface CaseDesk {

  /**
   * What a new case needs.
   *
   * @param vehicle the vehicle
   * @param vehicleName how the vehicle is found again, for instance its file
   * @param circuit id of the circuit complained of
   * @param load id of the load that shows it; empty: the circuit's first
   * @param kind what the person saw
   * @param context what happened to the vehicle before
   * @param meter id of the meter description
   * @param practice whether the fault is a made-up one
   * @param power how far the vehicle is powered up
   */
  record NewCase(
      Vehicle vehicle,
      String vehicleName,
      String circuit,
      Optional<String> load,
      ComplaintKind kind,
      Context context,
      String meter,
      boolean practice,
      FirstPower power) {

    /** A case of a vehicle as it is meant to be. */
    public NewCase(
        Vehicle vehicle,
        String vehicleName,
        String circuit,
        Optional<String> load,
        ComplaintKind kind,
        Context context,
        String meter,
        boolean practice) {
      this(vehicle, vehicleName, circuit, load, kind, context, meter, practice, FirstPower.WHOLE);
    }

    /** A case of a vehicle that somebody really has. */
    public NewCase(
        Vehicle vehicle,
        String vehicleName,
        String circuit,
        Optional<String> load,
        ComplaintKind kind,
        Context context,
        String meter) {
      this(vehicle, vehicleName, circuit, load, kind, context, meter, false);
    }

    /** A ready-made case on its vehicle. */
    public static NewCase practice(ReadyCase ready, Vehicle vehicle) {
      return new NewCase(
          vehicle,
          ready.vehicle(),
          ready.circuit(),
          Optional.empty(),
          ready.kind(),
          ready.context(),
          ready.meter(),
          true);
    }
  }

  /** What opening is busy with. May be called from another thread. */
  interface Progress {
    /** A step in words and how much is done, 0 to 1. */
    void at(String step, double share);

    /** Whether the person wants to give up. */
    boolean cancelled();

    /** Tells nobody and never gives up. */
    Progress SILENT =
        new Progress() {
          @Override
          public void at(String step, double share) {}

          @Override
          public boolean cancelled() {
            return false;
          }
        };
  }

  /**
   * Reads a complaint in words, such as {@code beacon dead} or {@code left tail lamp is dim}.
   *
   * @throws Problem naming the circuits and kinds there are
   */
  Complaint understand(Vehicle vehicle, String words) throws Problem;

  /** A complaint understood. */
  record Complaint(String circuit, Optional<String> load, ComplaintKind kind) {}

  /**
   * Opens a new case. Takes up to some seconds; call off the window's thread.
   *
   * @throws Problem if the circuit, load or meter isn't known
   * @throws java.util.concurrent.CancellationException if progress said so
   */
  FindCase open(NewCase newCase, Progress progress) throws Problem;

  /** A reading that was taken before its case began. */
  record Before(OwnCheck check, Answer answer) {}

  /**
   * Keeps a new case with readings that were taken before; it is taken up like any other.
   *
   * @return its id
   * @throws Problem if the circuit, load or meter isn't known or it can't be kept
   */
  String handOver(NewCase newCase, List<Before> readings) throws Problem;

  /**
   * Whether what a vehicle had before counts in cases opened or taken up from now on; it does until
   * told otherwise. It shifts what is suspected first, clears nothing and is kept either way.
   */
  default void countOwnRecord(boolean counts) {}

  /**
   * Takes up a kept case with all its readings.
   *
   * @throws Problem if it can't be read
   */
  FindCase resume(String caseId, Vehicle vehicle, Progress progress) throws Problem;
}
