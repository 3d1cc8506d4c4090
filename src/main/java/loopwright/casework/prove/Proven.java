package loopwright.casework.prove;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the kept events of a vehicle come to, subject by subject. Immutable. */
final class Proven {

  /**
   * The last proof of a subject that was begun.
   *
   * @param begun how it began
   * @param answers the last answer of each step, in the order in which they came
   * @param passed whether it came to its end
   * @param failed the case that was opened over it; empty if none was, or it was answered since
   */
  record Proof(
      ProofEvent.Begun begun,
      Map<String, ProofEvent> answers,
      boolean passed,
      Optional<ProofEvent.Failed> failed) {

    /** The answers with a reading or a look. */
    List<ProofEvent.Checked> readings() {
      return answers.values().stream()
          .filter(ProofEvent.Checked.class::isInstance)
          .map(ProofEvent.Checked.class::cast)
          .toList();
    }
  }

  private final Map<String, Proof> proofs = new LinkedHashMap<>();

  Proven(List<ProofEvent> events) {
    for (ProofEvent event : events) {
      if (event instanceof ProofEvent.Begun e) {
        proofs.put(e.subject(), new Proof(e, Map.of(), false, Optional.empty()));
      } else if (event instanceof ProofEvent.Checked e) {
        answered(e.subject(), e.step(), e);
      } else if (event instanceof ProofEvent.Confirmed e) {
        answered(e.subject(), e.step(), e);
      } else if (event instanceof ProofEvent.Passed e) {
        proofs.computeIfPresent(
            e.subject(), (s, p) -> new Proof(p.begun(), p.answers(), true, Optional.empty()));
      } else if (event instanceof ProofEvent.Failed e) {
        proofs.computeIfPresent(
            e.subject(), (s, p) -> new Proof(p.begun(), p.answers(), false, Optional.of(e)));
      }
    }
  }

  private void answered(String subject, String step, ProofEvent answer) {
    // Without its beginning nobody knows what it was taken of.
    proofs.computeIfPresent(
        subject,
        (s, p) -> {
          Map<String, ProofEvent> answers = new LinkedHashMap<>(p.answers());
          answers.remove(step);
          answers.put(step, answer);
          return new Proof(p.begun(), answers, false, Optional.empty());
        });
  }

  /** The last proof of a subject. */
  Optional<Proof> proof(String subject) {
    return Optional.ofNullable(proofs.get(subject));
  }
}
