package loopwright.casework;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;

/**
 * A part, or one function of it, that can be looked at or taken in hand.
 *
 * @param subject its id, with the function where it has several: {@code L7:stop}
 * @param title what a person calls it
 * @param checks the checks by eye and hand that it can be the subject of, with what can be seen
 * @param apart id of the part to unplug it by; empty where it can't be unplugged
 */
public record PartView(
    String subject, String title, Map<CheckKind, List<Seen>> checks, Optional<String> apart) {
  /** Copies the map. */
  public PartView {
    checks = Map.copyOf(checks);
  }
}
