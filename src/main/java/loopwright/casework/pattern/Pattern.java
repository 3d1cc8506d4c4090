package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.edit.Edit;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;

/** A circuit of the trade that can be put into a vehicle. */
public abstract class Pattern {
  private final String id;

  Pattern(String id) {
    this.id = id;
  }

  /** Short name, for instance {@code lamp-relay}. */
  public final String id() {
    return id;
  }

  /** What the trade calls it. */
  public final String title(Basis basis) {
    return basis.words().say(id + ".title");
  }

  /** What it is for, in a sentence. */
  public final String purpose(Basis basis) {
    return basis.words().say(id + ".purpose");
  }

  /** What it asks for on a vehicle; nothing can be asked without a battery to begin at. */
  public final Questionnaire questionnaire(Vehicle vehicle, Basis basis) {
    return new Questionnaire() {
      @Override
      public List<Question> questions(Map<String, String> given) throws Problem {
        return Pattern.this.questions(vehicle, basis, given);
      }

      @Override
      public void check(Question question, String answer) throws Problem {
        Answers.fitting(question, answer, vehicle.systemVolts());
      }
    };
  }

  private List<Question> questions(Vehicle vehicle, Basis basis, Map<String, String> given)
      throws Problem {
    if (vehicle.parts().stream().noneMatch(p -> p.kind() == PartKind.BATTERY)) {
      throw new Problem("vehicle", vehicle.name(), basis.words().say("problem.battery"));
    }
    Questions questions = new Questions(id, vehicle, basis, given);
    ask(questions);
    return questions.all();
  }

  /**
   * What it would make of a vehicle.
   *
   * @param given answers by question; the usual ones stand in for what is missing
   * @throws Problem if an answer doesn't fit, or the vehicle lacks what the circuit hangs on
   */
  public final Outcome plan(Vehicle vehicle, Basis basis, Map<String, String> given)
      throws Problem {
    Answers answers =
        Answers.of(id, questions(vehicle, basis, given), given, vehicle.systemVolts());
    Harness harness = new Harness(vehicle, basis, answers.words("name"));
    build(harness, answers);
    return harness.finish(cranks());
  }

  /** The edit that puts it into a vehicle; undone, the whole circuit is gone again. */
  public final Edit edit(Basis basis, Map<String, String> given) {
    return Edit.of(
        basis.words().say("edit.add", title(basis)),
        before -> {
          Outcome outcome = plan(before, basis, given);
          return new Edit.Made(outcome.vehicle(), outcome.told());
        });
  }

  /** Whether its motor cranks the engine. */
  boolean cranks() {
    return false;
  }

  abstract void ask(Questions ask);

  abstract void build(Harness harness, Answers answers) throws Problem;

  /** The feed that was chosen. */
  static Feed feed(Harness harness, Answers answers) throws Problem {
    return feed(harness, answers.is("feed", Questions.KEY));
  }

  /** The best feed of a kind; the one that is always live where there is no key. */
  static Feed feed(Harness harness, boolean keyed) throws Problem {
    Existing existing = harness.existing();
    Optional<Feed> feed = keyed ? existing.keyed().or(existing::hot) : existing.hot();
    return feed.orElseThrow(
        () -> new Problem("vehicle", harness.vehicle().name(), harness.words("problem.feed")));
  }
}
