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
 * @param check what was read
 * @param setting the set-up it was taken in, in words
 * @param where the two points or the part in words
 * @param value what was read, for instance "12.41 V", "OL" or "lit"
 * @param number the number in volts or ohms, infinite for OL; empty for a look or a band
 * @param healthy what a healthy circuit's meter shows there; empty for a look
 * @param healthyWords what a healthy circuit shows there
 * @param fits whether it is what a healthy circuit shows there
 * @param did what it did, in one sentence
 * @param doubts why it should be taken again; empty if there is no doubt
 * @param at when it was taken
 */
public record ReadingView(
    int id,
    OwnCheck check,
    List<String> setting,
    String where,
    String value,
    Optional<Double> number,
    Optional<Band> healthy,
    String healthyWords,
    boolean fits,
    String did,
    List<String> doubts,
    Instant at) {
  /** Copies the lists. */
  public ReadingView {
    setting = List.copyOf(setting);
    doubts = List.copyOf(doubts);
  }

  /** Kind of check. */
  public CheckKind kind() {
    return check.kind();
  }

  /** Where red was; empty for a look. */
  public Optional<TerminalRef> red() {
    return check.red();
  }

  /** Where black was; empty for a look. */
  public Optional<TerminalRef> black() {
    return check.black();
  }

  /** Part looked at; empty for a meter reading. */
  public Optional<String> lookAt() {
    return check.lookAt();
  }

  /** The number in volts for a volts reading, else empty. */
  public Optional<Double> volts() {
    return number.filter(n -> kind() != CheckKind.OHMS && Double.isFinite(n));
  }
}
