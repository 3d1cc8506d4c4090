package loopwright.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.diagnosis.rulebook.Conclusion.Stage;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.knowledge.FaultMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every failure mode in the tables has its own advice: why, what to look at, repair and proof. */
class RepairAdviceTest {
  /** Rules that say something of whatever failed; they are no advice about a mode. */
  private static final Set<String> OF_ANYTHING =
      Set.of("any-other-failure", "fuse-is-the-victim", "prove-under-load");

  static Stream<String> modes() {
    return Bench.KNOWLEDGE.faults().stream().map(f -> f.kind() + "/" + f.mode());
  }

  @ParameterizedTest
  @MethodSource("modes")
  void everyFailureModeHasItsOwnWhyInspectionRepairAndProof(String name) {
    FaultMode mode =
        Bench.KNOWLEDGE.faults().stream()
            .filter(f -> name.equals(f.kind() + "/" + f.mode()))
            .findFirst()
            .orElseThrow();
    RuleBook book = Bench.rules();
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact.CaseFact(ComplaintKind.DEAD, Context.IN_SERVICE, 12, false, 12.3, ""));
    facts.add(new Fact.Piece("P1", mode.kind(), "the part P1", Set.of()));
    facts.add(new Fact.Isolated(new SuspectId("P1", mode.mode()), mode.kind()));
    if (mode.mode().equals("blown")) {
      facts.add(new Fact.BlownFuse("P1", false));
    }
    Map<Stage, List<String>> texts = new EnumMap<>(Stage.class);
    List<String> cautions = new ArrayList<>();
    try (RuleBook.Session session = book.open()) {
      session.state(facts);
      for (Conclusion c : session.conclusions()) {
        if (c instanceof Conclusion.Advice a && !OF_ANYTHING.contains(a.rule())) {
          texts
              .computeIfAbsent(a.stage(), s -> new ArrayList<>())
              .add(book.words(a.rule(), a.key(), a.args()));
        } else if (c instanceof Conclusion.Caution k && k.check().isEmpty()) {
          cautions.add(book.words(k.rule(), k.key(), k.args()));
        }
      }
    }
    for (Stage stage : Stage.values()) {
      assertThat(texts.get(stage)).as(stage.name()).isNotEmpty();
      assertThat(texts.get(stage))
          .as(stage.name())
          .allMatch(t -> t.length() >= 10 && !t.contains("{") && !t.contains("null"));
    }
    assertThat(cautions).as("cautions").isNotEmpty();
  }
}
