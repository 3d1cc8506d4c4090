package loopwright.casework;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;

/** Hands every call on to another case, so that a subclass need only say what it does otherwise. */
public class ForwardingCase implements FindCase {
  private final FindCase to;

  /** Hands on to a case, which is closed with it. */
  public ForwardingCase(FindCase to) {
    this.to = to;
  }

  @Override
  public void prepare(BooleanSupplier goOn) {
    to.prepare(goOn);
  }

  @Override
  public CaseView view() {
    return to.view();
  }

  @Override
  public Understood understand(String checkId, Answer answer) throws Problem {
    return to.understand(checkId, answer);
  }

  @Override
  public CaseView answer(String checkId, Answer answer) throws Problem {
    return to.answer(checkId, answer);
  }

  @Override
  public CaseView take(OwnCheck check, Answer answer) throws Problem {
    return to.take(check, answer);
  }

  @Override
  public CaseView refuse(String checkId, Refusal refusal) throws Problem {
    return to.refuse(checkId, refusal);
  }

  @Override
  public CaseView withdraw(int reading) throws Problem {
    return to.withdraw(reading);
  }

  @Override
  public CaseView correct(int reading, Answer answer) throws Problem {
    return to.correct(reading, answer);
  }

  @Override
  public CaseView swapped(String part, Helped helped) throws Problem {
    return to.swapped(part, helped);
  }

  @Override
  public CaseView repaired(String part) throws Problem {
    return to.repaired(part);
  }

  @Override
  public CaseView undo(int deed) throws Problem {
    return to.undo(deed);
  }

  @Override
  public CaseView attach(Path photo, String caption) throws Problem {
    return to.attach(photo, caption);
  }

  @Override
  public CaseView warn(Warning warning) throws Problem {
    return to.warn(warning);
  }

  @Override
  public CaseView isolated() throws Problem {
    return to.isolated();
  }

  @Override
  public CaseView gone() throws Problem {
    return to.gone();
  }

  @Override
  public CaseView stop() {
    return to.stop();
  }

  @Override
  public List<String> whyStill(String partOrSuspect) throws Problem {
    return to.whyStill(partOrSuspect);
  }

  @Override
  public List<Against> against(String partOrSuspect) throws Problem {
    return to.against(partOrSuspect);
  }

  @Override
  public List<PartView> parts() {
    return to.parts();
  }

  @Override
  public Outlook outlook(Optional<String> checkId) throws Problem {
    return to.outlook(checkId);
  }

  @Override
  public Outlook.Then then(String checkId, int result) throws Problem {
    return to.then(checkId, result);
  }

  @Override
  public Appraisal appraise(OwnCheck check, Optional<OwnCheck> before) throws Problem {
    return to.appraise(check, before);
  }

  @Override
  public Map<String, Double> shows(OwnCheck check) throws Problem {
    return to.shows(check);
  }

  @Override
  public Proposer first() {
    return to.first();
  }

  @Override
  public CaseView propose(Proposer first) throws Problem {
    return to.propose(first);
  }

  @Override
  public Comparison compare(OwnCheck learners) throws Problem {
    return to.compare(learners);
  }

  @Override
  public CaseView settle(OwnCheck learners, Proposer taken) throws Problem {
    return to.settle(learners, taken);
  }

  @Override
  public List<String> whyNext() {
    return to.whyNext();
  }

  @Override
  public List<PointView> points() {
    return to.points();
  }

  @Override
  public String title(SuspectId suspect) {
    return to.title(suspect);
  }

  @Override
  public List<SettingView> settings() {
    return to.settings();
  }

  @Override
  public void close() {
    to.close();
  }
}
