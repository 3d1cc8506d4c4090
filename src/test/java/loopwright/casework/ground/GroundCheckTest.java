package loopwright.casework.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.MeterInHand;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.evidence.Bench;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** The desk of grounds on the demo vehicles. */
class GroundCheckTest {
  private final Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();

  private GroundCheck open(Vehicle vehicle) throws Problem {
    return Bench.groundDesk(proofs).open(vehicle, MeterInHand.USUAL);
  }

  @Test
  void aGroundIsDescribedAndItsReadingJudgedAndKept() throws Problem {
    GroundCheck check = open(Bench.vehicle("pumper"));
    GroundView view = check.view("g4");
    GroundView.Proof proof = view.proof().orElseThrow();
    assertThat(view.title()).isEqualTo("beacon ground stud G4");
    assertThat(view.own()).startsWith("0.5 to 5 mohm across the stud");
    assertThat(proof.set().change()).containsExactly("key switch KEY: on", "beacon switch S5: on");
    assertThat(proof.works()).startsWith("beacon lamp L5 must work as it should: about 4.6 A");
    assertThat(proof.red().ref()).hasToString("G4.lug");
    assertThat(proof.black().ref()).hasToString("G4.metal");
    assertThat(proof.limit()).isEqualTo("22 mohm: 100 mV at 4.6 A, the most that comes back here");
    assertThat(view.ohms()).startsWith("Ohms can't prove it.");

    GroundResult said = check.take("G4", " 6.9m ");
    assertThat(said.verdict()).isEqualTo(GroundResult.Verdict.GOOD);
    assertThat(said.words()).isEqualTo("Good: 1.3 to 1.8 mohm; limit 22 mohm.");
    ProofEvent.GroundProved kept = (ProofEvent.GroundProved) proofs.read("pumper").events().get(0);
    assertThat(kept.answer()).hasToString("Text[text=6.9 mV]");
    assertThat(kept.prints()).containsOnlyKeys("G4", "L5");
    assertThat(check.view("L5").proof().orElseThrow().works())
        .startsWith("beacon lamp L5 must work");
    assertThat(open(Bench.vehicle("pumper")).view("G4").result().orElseThrow().words())
        .isEqualTo("good: 6.9 mV read, 1.3 to 1.8 mohm");
  }

  @Test
  void aLaterEditMakesItUnproven() throws Problem {
    Vehicle pumper = Bench.vehicle("pumper");
    open(pumper).take("G4", "6.9 mV");
    List<Part> parts = new ArrayList<>(pumper.parts());
    parts.replaceAll(
        p ->
            p.id().equals("L5")
                ? p.withSpec(new PartSpec.Lamp(Optional.empty(), Estimate.of(21)))
                : p.id().equals("G4") ? p.withName("beacon stud") : p);
    GroundCheck check = open(pumper.with(parts, pumper.joins(), pumper.circuits()));
    GroundRow row =
        check.rows().stream().filter(r -> r.id().equals("G4")).findFirst().orElseThrow();
    assertThat(row.good()).isFalse();
    // The new lamp, not the new name.
    assertThat(row.since()).isEqualTo("Changed since then: beacon lamp L5. Prove it anew.");
  }

  @Test
  void whatIsNotUnderstoodChangesNothing() throws Problem {
    GroundCheck check = open(Bench.vehicle("tractor"));
    for (String text : List.of("6.9", "0,02", "six mV", "OL", "12 ohm", "5000 V", "")) {
      assertThatThrownBy(() -> check.take("G4", text)).isInstanceOf(Problem.class);
    }
    assertThatThrownBy(() -> check.take("G4", "6.9")).hasMessageContaining("6.9 mV, or 0.007 V");
    assertThatThrownBy(() -> check.view("G9")).hasMessageContaining("one of");
    assertThat(proofs.read("tractor").events()).isEmpty();
  }

  @Test
  void plusGroundedReadsPlusWithRedAtThePost() throws Problem {
    GroundView.Proof proof = open(Bench.vehicle("tractor")).view("STR1").proof().orElseThrow();
    assertThat(proof.red().ref()).hasToString("BATT.pos");
    assertThat(proof.black().ref()).hasToString("G1.lug");
    assertThat(proof.healthy()).isEqualTo("3.1 to 20 mV");
  }

  @Test
  void theWalkPassesEveryGroundWithFewChangesAndCranksLast() throws Problem {
    GroundCheck check = open(Bench.vehicle("pumper"));
    List<String> met = new ArrayList<>();
    int changes = 0;
    int firstCranking = -1;
    Optional<String> at = check.next("");
    while (at.isPresent() && met.size() < 60) {
      GroundView view = check.view(at.get());
      GroundView.Proof proof = view.proof().orElseThrow();
      boolean cranks = proof.cautions().stream().anyMatch(c -> c.startsWith("Crank"));
      if (cranks && firstCranking < 0) {
        firstCranking = met.size();
      }
      assertThat(cranks).as(at.get()).isEqualTo(firstCranking >= 0);
      changes += proof.set().change().isEmpty() ? 0 : 1;
      met.add(at.get());
      // Half of what is good, so that every one passes.
      check.take(at.get(), half(proof.good()));
      at = check.next(at.get());
    }
    long provable = check.rows().stream().filter(GroundRow::provable).count();
    assertThat(met).doesNotHaveDuplicates().hasSize((int) provable);
    assertThat(check.rows()).allMatch(r -> !r.provable() || r.result().isPresent());
    // One set-up a ground would be 29 changes and more.
    assertThat(changes).isLessThan(17);
    assertThat(check.putBack()).isNotEmpty();
  }

  private static String half(String good) {
    String[] words = good.split(" ");
    return String.format(
        java.util.Locale.ROOT, "%.1f %s", Double.parseDouble(words[1]) / 2, words[2]);
  }

  @Test
  void aBadGroundSaysWhatToMendAndALoadsWayWhichPieces() throws Problem {
    GroundCheck check = open(Bench.vehicle("truck"));
    assertThat(check.take("G4", "0.31 V").next()).contains("bright metal under the lug");
    assertThat(check.take("L4", "0.9 V").next())
        .contains("Prove its pieces one by one")
        .contains("rear ground stud G4");
    assertThat(check.view("L4").result().orElseThrow().words()).isEqualTo("bad: 0.9 V lost");
    assertThat(check.take("G4", "0.0 mV").next()).contains("Even a sound ground loses more");
    assertThat(check.take("G4", "0.1 V").next()).contains("lowest range");
  }

  @Test
  void aReturnInTheShadowOfAnotherSaysSo() throws Problem {
    GroundCheck check = open(Bench.vehicle("pumper"));
    GroundView bolt = check.view("G8");
    assertThat(bolt.proof()).isEmpty();
    assertThat(bolt.unproven()).contains("other grounds beside it carry nearly all");
    assertThat(check.ohms("G8", "0.3", "OL").verdict()).isEqualTo(GroundResult.Verdict.BAD);
    assertThat(check.view("STR2").proof().orElseThrow().notes())
        .anyMatch(n -> n.contains("the drop proves them together"))
        .anyMatch(n -> n.startsWith("With engine strap STR2 off it would read about 2.79 V"));
  }

  @Test
  void anUnknownMeterIsRefused() {
    assertThatThrownBy(() -> Bench.groundDesk(proofs).open(Bench.vehicle("pumper"), "gold-plated"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("basic");
  }
}
