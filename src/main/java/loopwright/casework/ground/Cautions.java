package loopwright.casework.ground;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Hazards;
import loopwright.diagnosis.rulebook.Conclusion.Caution;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.ground.DropProof;
import loopwright.model.Part;
import loopwright.model.Vehicle;

/** What to be careful of at a proof, by the same rules as at any reading under power. */
final class Cautions {
  private final Vehicle vehicle;
  private final Supplier<RuleBook> rules;

  Cautions(Vehicle vehicle, Supplier<RuleBook> rules) {
    this.vehicle = vehicle;
    this.rules = rules;
  }

  List<String> of(DropProof proof) {
    RuleBook book = rules.get();
    List<Fact> facts = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      facts.add(new Fact.Piece(part.id(), part.kind(), part.title(), Hazards.of(part)));
    }
    Check check = Check.measure(CheckKind.MILLIVOLTS, proof.red(), proof.black(), proof.setting());
    double minutes =
        vehicle.access(proof.red()).minutes() + vehicle.access(proof.black()).minutes();
    facts.add(
        new Fact.CheckIdea(
            check.id(),
            check.kind(),
            proof.red().part(),
            proof.black().part(),
            true,
            false,
            true,
            false,
            true,
            minutes,
            proof.cranks(),
            false,
            false));
    Set<String> words = new LinkedHashSet<>();
    try (RuleBook.Session session = book.open()) {
      session.state(facts);
      session.conclusions().stream()
          .filter(Caution.class::isInstance)
          .map(Caution.class::cast)
          .filter(c -> c.check().equals(check.id()))
          .forEach(c -> words.add(book.words(c.rule(), c.key(), c.args())));
    }
    return List.copyOf(words);
  }
}
