package loopwright.casework;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.model.TerminalRef;

/**
 * A reading that counts now.
 *
 * @param id its number in the case
 * @param kind kind of check
 * @param red where red was; empty for a look
 * @param black where black was; empty for a look
 * @param lookAt part looked at; empty for a meter reading
 * @param setting the set-up it was taken in, in words
 * @param where the two points or the part in words
 * @param value what was read, for instance "12.41 V", "OL" or "lit"
 * @param volts the number in volts for a volts reading, else empty
 * @param healthyWords what a healthy circuit shows there
 * @param did what it did, in one sentence
 * @param doubts why it should be taken again; empty if there is no doubt
 * @param at when it was taken
 */
public record ReadingView(
    int id,
    CheckKind kind,
    Optional<TerminalRef> red,
    Optional<TerminalRef> black,
    Optional<String> lookAt,
    List<String> setting,
    String where,
    String value,
    Optional<Double> volts,
    String healthyWords,
    String did,
    List<String> doubts,
    Instant at) {
  /** Copies the lists. */
  public ReadingView {
    setting = List.copyOf(setting);
    doubts = List.copyOf(doubts);
  }
}
