package loopwright.casework;

import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.Warning;

/**
 * All that a front end shows of a case after the latest accepted line.
 *
 * @param caseId id of the case
 * @param seq number of accepted lines so far
 * @param title for instance "Beacon dead - pumper"
 * @param status where the search stands
 * @param move what the person should do now
 * @param minutes working time of the checks so far
 * @param suspects parts and groups still suspected, strongest first
 * @param cleared parts ruled out, in the order of the loop
 * @param readings readings that count, in the order taken
 * @param deeds what was told besides and can be taken back, in the order told
 * @param next the proposed check; empty unless {@code move} is CHECK or PROOF
 * @param loop the loop with its staircase
 * @param said what the latest line did, in one sentence; may be empty
 * @param cautions cautions for the whole case
 * @param warnings smoke, heat or fuel reported and not yet gone, gravest first
 * @param makeSafe what to do about the warnings, before anything else; empty without one
 * @param putBack what has to be plugged in or put back before the case may end, in words
 * @param repair what to do; present once isolated
 * @param odds readings at odds with each other; empty unless the status is CONTRADICTION
 * @param oddsWords which readings contradict each other and which to take again; may be empty
 */
public record CaseView(
    String caseId,
    int seq,
    String title,
    Status status,
    Move move,
    double minutes,
    List<SuspectView> suspects,
    List<ClearedView> cleared,
    List<ReadingView> readings,
    List<DeedView> deeds,
    Optional<CheckView> next,
    LoopView loop,
    String said,
    List<String> cautions,
    List<Warning> warnings,
    List<String> makeSafe,
    List<String> putBack,
    Optional<RepairView> repair,
    List<Integer> odds,
    String oddsWords) {

  /** Where the search stands. */
  public enum Status {
    SEARCHING("searching"),
    ISOLATED("isolated"),
    HEALTHY("healthy"),
    CONTRADICTION("contradiction");

    private final String word;

    Status(String word) {
      this.word = word;
    }

    /** The word used in lines. */
    public String word() {
      return word;
    }
  }

  /** What the person should do now. */
  public enum Move {
    /** Take the proposed check. */
    CHECK("check"),
    /** Propose a check; the program's stays hidden until then. */
    PROPOSE("propose"),
    /** Mend the part, then say so. */
    REPAIR("repair"),
    /** Take the proposed check to prove the repair. */
    PROOF("proof"),
    /** Smoke, heat or fuel was reported: follow the cautions before anything else. */
    MAKE_SAFE("make-safe"),
    /** No admitted check splits what is left, or none may be asked. */
    STUCK("stuck"),
    /** The case is closed. */
    END("end");

    private final String word;

    Move(String word) {
      this.word = word;
    }

    /** The word used in lines. */
    public String word() {
      return word;
    }
  }

  /** Copies the lists. */
  public CaseView {
    suspects = List.copyOf(suspects);
    cleared = List.copyOf(cleared);
    readings = List.copyOf(readings);
    deeds = List.copyOf(deeds);
    cautions = List.copyOf(cautions);
    warnings = List.copyOf(warnings);
    makeSafe = List.copyOf(makeSafe);
    putBack = List.copyOf(putBack);
    odds = List.copyOf(odds);
  }
}
