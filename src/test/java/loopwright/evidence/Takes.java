package loopwright.evidence;

import loopwright.bench.HiddenTruth;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.Reading;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;

/** Takes checks on a hidden truth, for measurements outside this package. */
public final class Takes {
  private Takes() {}

  /** What the check gives. */
  public static Reading.Value measure(
      Vehicle vehicle, HiddenTruth truth, LoadRef watched, Check check) {
    return Plays.measure(vehicle, truth, watched, check);
  }
}
