package loopwright.ui.find;

import java.util.List;
import loopwright.casework.FindCase;
import loopwright.diagnosis.Warning;

/** The keys of a case. Units own V, M, O, K and L; R and B mean the leads and are no keys. */
final class CaseActions {
  static final String REFUSE = "C";
  static final String OWN = "A";
  static final String WHY = "W";
  static final String TREE = "T";
  static final String IF_NOT = "I";
  static final String SWAP = "S";
  static final String CORRECT = "E";
  static final String AGAIN = "N";
  static final String TAKE_BACK = "Del";
  static final String PUT_BACK = "P";
  static final String PRACTICE = "Z";
  static final String WARN = "H";
  static final String GONE = "G";
  static final String FIRST = "Y";
  static final String COUNT = "Enter";
  static final String BACK = "Esc";
  static final String DRAWING = "F11";
  static final String KNOWN = "F12";
  static final String DONE = "D";
  static final String END = "F10";
  static final String METER = "F10";

  /** Reasons for not doing a check, in the order of keys 1 to 4. */
  static final List<FindCase.Refusal> REFUSALS =
      List.of(
          FindCase.Refusal.CANT_REACH,
          FindCase.Refusal.NEVER,
          FindCase.Refusal.WONT,
          FindCase.Refusal.NO_HELPER);

  /** What can be warned of, in the order of keys 1 to 3. */
  static final List<Warning> WARNINGS = List.of(Warning.SMOKE, Warning.HEAT, Warning.FUEL);

  private CaseActions() {}
}
