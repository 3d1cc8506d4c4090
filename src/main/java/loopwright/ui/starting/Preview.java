package loopwright.ui.starting;

import java.util.Optional;
import loopwright.casework.LoopView;
import loopwright.casework.pattern.Outcome;

/**
 * What would come out.
 *
 * @param outcome the vehicle with what was added; empty while an answer doesn't fit
 * @param loop the loop of the first new circuit; empty if it can't be drawn
 * @param problem what doesn't fit, in words; empty if all does
 */
record Preview(Optional<Outcome> outcome, Optional<LoopView> loop, String problem) {
  static final Preview NONE = new Preview(Optional.empty(), Optional.empty(), "");
}
