package loopwright.casework;

import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;

/** The meter somebody measures with, by the id of its description. */
public final class MeterInHand {
  /** Id of the meter where none was chosen yet. */
  public static final String USUAL = "basic";

  private MeterInHand() {}

  /**
   * The description of a meter.
   *
   * @throws Problem if there is none of this id
   */
  public static MeterSpec of(Knowledge knowledge, String id) throws Problem {
    return knowledge
        .meter(id)
        .orElseThrow(
            () ->
                new Problem(
                    "meter",
                    id,
                    Phrases.inUse()
                        .oneOf(knowledge.meters().stream().map(MeterSpec::id).toList())));
  }
}
