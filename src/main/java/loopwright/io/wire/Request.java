package loopwright.io.wire;

import java.util.Optional;
import loopwright.casework.Answer;
import loopwright.casework.FindCase;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Warning;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** What an incoming line asks for. Names of points and parts are not looked up yet. */
public sealed interface Request {

  /** The answer to a proposed check. */
  record Answered(String check, Answer answer) implements Request {}

  /** The practice meter of a ready-made case is to answer the proposed check. */
  record Meter() implements Request {}

  /**
   * A reading of the client's own choice.
   *
   * @param setting the set-up; empty: the circuit's own
   */
  record OwnReading(
      CheckKind kind,
      Optional<TerminalRef> red,
      Optional<TerminalRef> black,
      Optional<String> look,
      Optional<Setting> setting,
      Answer answer)
      implements Request {}

  /** A check is refused. */
  record Refuse(String check, FindCase.Refusal why) implements Request {}

  /** A reading is taken back. */
  record Withdraw(int reading) implements Request {}

  /** A reading's value is put right. */
  record Correct(int reading, Answer answer) implements Request {}

  /** A part was replaced by a good one. */
  record Swapped(String part, FindCase.Helped helped) implements Request {}

  /** A part was mended. */
  record Repaired(String part) implements Request {}

  /** What was told besides readings is taken back, by its number. */
  record Undo(int deed) implements Request {}

  /** Smoke, heat or fuel is reported. */
  record Warn(Warning warning) implements Request {}

  /** The battery is isolated after smoke or heat. */
  record Isolated() implements Request {}

  /** What was warned of is gone. */
  record Gone() implements Request {}

  /** Asks why the proposed check is next; changes nothing. */
  record WhyNext() implements Request {}

  /** Asks why a part or suspect is held or cleared; changes nothing. */
  record WhyStill(String about) implements Request {}

  /**
   * Asks what the results of a check would leave; changes nothing.
   *
   * @param check its id; empty: the proposed one
   * @param depth 1 for its results alone, 2 for what would follow on each as well
   */
  record Outlook(Optional<String> check, int depth) implements Request {}

  /** Ends the conversation; the case is kept. */
  record Stop() implements Request {}
}
