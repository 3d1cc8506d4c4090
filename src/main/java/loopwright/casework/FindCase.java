package loopwright.casework;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;

/**
 * One case of finding a fault: a complaint and all that followed. Each accepted call is in the
 * case's journal before it returns. Calls are not thread-safe: one thread a case.
 */
public interface FindCase extends AutoCloseable {

  /**
   * Works out beforehand what the answer to the proposed check will need, so that it is answered
   * promptly. Changes nothing. For the time in which the hands place the leads.
   *
   * @param goOn asked often; false ends it early
   */
  default void prepare(BooleanSupplier goOn) {}

  /** The state now. */
  CaseView view();

  /**
   * Says how an entry would be understood, before it counts: the value in words, and whether it
   * asks for a second look.
   *
   * @param checkId id of the proposed check
   * @param answer what the person entered
   * @throws Problem if it can't be understood
   */
  Understood understand(String checkId, Answer answer) throws Problem;

  /**
   * Takes the answer to the proposed check.
   *
   * @throws Problem if the check isn't known or the answer can't be understood
   */
  CaseView answer(String checkId, Answer answer) throws Problem;

  /**
   * Takes a reading of the person's own choice.
   *
   * @throws Problem if the points, the setting or the value can't be understood
   */
  CaseView take(OwnCheck check, Answer answer) throws Problem;

  /**
   * The person can't or won't do a check.
   *
   * @param checkId id of the proposed check
   * @param refusal why
   * @throws Problem if the check isn't known
   */
  CaseView refuse(String checkId, Refusal refusal) throws Problem;

  /**
   * Takes a reading back, as if it had never been taken.
   *
   * @throws Problem if there is no such reading
   */
  CaseView withdraw(int reading) throws Problem;

  /**
   * Corrects a reading's value.
   *
   * @throws Problem if there is no such reading or the value can't be understood
   */
  CaseView correct(int reading, Answer answer) throws Problem;

  /**
   * A part was replaced by a good one, on suspicion.
   *
   * @param part id of the part
   * @param helped whether the complaint went away
   * @throws Problem if there is no such part
   */
  CaseView swapped(String part, Helped helped) throws Problem;

  /**
   * The isolated part was mended: go on to the proof.
   *
   * @param part id of the part
   * @throws Problem if there is no such part
   */
  CaseView repaired(String part) throws Problem;

  /**
   * Takes back what was told besides readings, as if it had never been told: a mend, a swap, a
   * check refused, a photo (whose file stays). Readings taken since stay.
   *
   * @param deed its number in the view
   * @throws Problem if there is no such
   */
  CaseView undo(int deed) throws Problem;

  /**
   * Puts a photo to the case, also once it has ended; it is copied beside the case.
   *
   * @param caption what it shows; may be empty
   * @throws Problem if it is no picture or can't be copied
   */
  CaseView attach(Path photo, String caption) throws Problem;

  /**
   * Reports smoke, heat or fuel. Until it is {@link #gone} no check with the battery connected is
   * asked or taken.
   *
   * @throws Problem if it couldn't be kept
   */
  CaseView warn(Warning warning) throws Problem;

  /**
   * The battery is isolated after smoke or heat: what can be checked on the dead vehicle goes on.
   *
   * @throws Problem if neither smoke nor heat stands reported
   */
  CaseView isolated() throws Problem;

  /**
   * All that was warned of is gone and its cause mended, or it was a mistake.
   *
   * @throws Problem if nothing stands reported
   */
  CaseView gone() throws Problem;

  /** Who proposes each check first. */
  Proposer first();

  /**
   * Lets somebody propose each check first from now on.
   *
   * @throws Problem if the case has ended or it couldn't be kept
   */
  CaseView propose(Proposer first) throws Problem;

  /**
   * The learner's proposal beside the program's; changes nothing.
   *
   * @throws Problem if no proposal is waited for, or the points or the setting aren't known
   */
  Comparison compare(OwnCheck learners) throws Problem;

  /**
   * Settles whose proposal is taken; it is the proposed check then, until something is read.
   *
   * @throws Problem as {@link #compare}, or if the learner's can't be taken now
   */
  CaseView settle(OwnCheck learners, Proposer taken) throws Problem;

  /** Ends the case; it is kept. */
  CaseView stop();

  /**
   * Why a suspect is still held, or what ruled it out, in two or three sentences with numbers.
   *
   * @throws Problem if there is no such suspect or part
   */
  List<String> whyStill(String partOrSuspect) throws Problem;

  /**
   * The meter readings beside what a suspect could show there: the numbers behind {@link
   * #whyStill}, latest first. Empty for a part that was never in play.
   *
   * @param partOrSuspect id of a part, for its strongest failure, or a suspect as part/mode
   * @throws Problem if there is no such part
   */
  List<Against> against(String partOrSuspect) throws Problem;

  /** Why the proposed check is next, and what each result would leave, in sentences. */
  List<String> whyNext();

  /**
   * What each result of a check that may be asked now would leave. Quick.
   *
   * @param checkId id of the proposed check or of one that could be asked in its place; empty: the
   *     proposed one
   * @throws Problem if it isn't one of these
   */
  Outlook outlook(Optional<String> checkId) throws Problem;

  /**
   * What would follow on one result of a check, found as if it had been read. Takes as long as a
   * reading; changes nothing.
   *
   * @param checkId id of a check of which {@link #outlook} tells
   * @param result number of the result there, from 0
   * @throws Problem if there is no such result
   */
  Outlook.Then then(String checkId, int result) throws Problem;

  /**
   * What a check of the person's own choice is expected to tell, by what is known now. Takes about
   * as long as a reading; changes nothing.
   *
   * @param before the check done last, where its leads and set-up still are; empty: everything is
   *     at rest
   * @throws Problem if the points or the setting aren't known
   */
  Appraisal appraise(OwnCheck check, Optional<OwnCheck> before) throws Problem;

  /**
   * How far a check would show something else than in health for each part that may still have
   * failed, if it were that: 0 for the same, 1 for nothing in common; parts as good as ruled out
   * are left out. By what is known now; takes about as long as a reading, changes nothing.
   *
   * @throws Problem if the points or the setting aren't known
   */
  Map<String, Double> shows(OwnCheck check) throws Problem;

  /** All probe points that can be named, circuit's own first. */
  List<PointView> points();

  /** All parts that can be looked at or taken in hand, those of the loop first. */
  List<PartView> parts();

  /** Words for a suspect. */
  String title(SuspectId suspect);

  /** Set-ups that make sense in this case, the circuit's own first. */
  List<SettingView> settings();

  @Override
  void close();

  /** Whether a swap made the complaint go away. */
  enum Helped {
    YES,
    NO
  }

  /** Why a check is refused. */
  enum Refusal {
    /** The point can't be reached now. */
    CANT_REACH("cannot reach"),
    /** The point can't be reached at all in this case. */
    NEVER("never reachable"),
    /** The person doesn't want to. */
    WONT("will not"),
    /** It needs a second person. */
    NO_HELPER("no helper");

    private final String words;

    Refusal(String words) {
      this.words = words;
    }

    /** The words used in lines and on screens. */
    public String words() {
      return words;
    }
  }

  /**
   * How an entry was understood.
   *
   * @param words the value in words, for instance "12.4 mV"
   * @param second why it deserves a second look before it counts; empty if it doesn't
   */
  record Understood(String words, Optional<String> second) {}
}
