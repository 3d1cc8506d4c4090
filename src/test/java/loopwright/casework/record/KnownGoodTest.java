package loopwright.casework.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import loopwright.casework.Answer;
import loopwright.casework.CircuitLoops;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.prove.ProofEvent;
import loopwright.diagnosis.CheckKind;
import loopwright.evidence.Bench;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** What the card says of the pumper's beacon. */
class KnownGoodTest {
  private static final Vehicle PUMPER = Bench.vehicle("pumper");
  private static final CircuitLoops LOOPS =
      new CircuitLoops(
          PUMPER, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), new Phrases(Locale.ENGLISH));

  private static KnownGood.Card beacon(
      List<CaseRecord> records, Map<String, List<ProofEvent.Checked>> proofs) throws Problem {
    return KnownGood.of(PUMPER, LOOPS, records, proofs, List.of()).circuits().stream()
        .filter(c -> c.name().equals("Beacon"))
        .findFirst()
        .orElseThrow();
  }

  /** The proof of the mended stud, as it is read or with its journal changed. */
  private static CaseRecord proven(String value, UnaryOperator<Journals> then) {
    return then.apply(
            Journals.begun("a")
                .volts("G4.lug", "12.7 V")
                .found()
                .mended("G4")
                .volts("G4.lug", value)
                .proven("G4"))
        .record();
  }

  private static List<KnownGood.Row> read(KnownGood.Card card) {
    return card.rows().stream().filter(r -> r.good().isPresent()).toList();
  }

  @Test
  void everyCircuitHasWhatItsLoadsShouldRead() throws Problem {
    KnownGood card = KnownGood.of(PUMPER, LOOPS, List.of(), Map.of(), List.of());
    assertThat(card.circuits()).hasSameSizeAs(PUMPER.circuits());
    assertThat(card.circuits()).allMatch(c -> !c.on().isEmpty());
    KnownGood.Card beacon = beacon(List.of(), Map.of());
    assertThat(beacon.rows())
        .extracting(KnownGood.Row::where)
        .anyMatch(w -> w.contains("beacon fuse F3"))
        .anyMatch(w -> w.contains("across beacon lamp L5"));
    assertThat(beacon.rows()).allMatch(r -> r.healthy().endsWith("V") && r.good().isEmpty());
  }

  @Test
  void whatProvedAMendStandsBesideWhatIsExpected() throws Problem {
    KnownGood.Row row = read(beacon(List.of(proven("21 mV", j -> j)), Map.of())).get(0);
    assertThat(row.where()).contains("beacon ground stud G4");
    assertThat(row.good().orElseThrow().value()).isEqualTo("21 mV");
    assertThat(row.good().orElseThrow().fits()).isTrue();
    KnownGood.Row odd = read(beacon(List.of(proven("3 V", j -> j)), Map.of())).get(0);
    assertThat(odd.good().orElseThrow().fits()).as("the vehicle was changed since").isFalse();
  }

  @Test
  void onlyProvenReadingsOfThisVehicleCountAndNoPractice() throws Problem {
    CaseRecord searching = Journals.begun("a").volts("G4.lug", "12.7 V").found().record();
    CaseRecord practice =
        Journals.begun("a", "pumper", true)
            .volts("G4.lug", "12.7 V")
            .mended("G4")
            .volts("G4.lug", "21 mV")
            .proven("G4")
            .record();
    CaseRecord other =
        Journals.begun("a", "truck", false)
            .mended("G4")
            .volts("G4.lug", "21 mV")
            .proven("G4")
            .record();
    CaseRecord later = proven("21 mV", j -> j.volts("L5.in", "0.1 V"));
    assertThat(read(beacon(List.of(searching, practice, other, later), Map.of()))).isEmpty();
  }

  @Test
  void theLatestOfMendsAndFirstPowerIsShownAndGroundsThatAreGood() throws Problem {
    OwnCheck check =
        new OwnCheck(
            CheckKind.VOLTS,
            Optional.of(TerminalRef.parse("G4.lug")),
            Optional.of(TerminalRef.parse("BATT.neg")),
            Optional.empty(),
            Setting.of(Map.of("KEY", "on", "S5", "on")));
    ProofEvent.Checked newer =
        new ProofEvent.Checked(
            Journals.AT.plusSeconds(99999), "beacon", "s", check, new Answer.Text("30 mV"));
    KnownGood.Card card =
        beacon(List.of(proven("21 mV", j -> j)), Map.of("beacon", List.of(newer)));
    assertThat(read(card)).hasSize(1);
    assertThat(read(card).get(0).good().orElseThrow())
        .isEqualTo(new KnownGood.Good("30 mV", newer.at(), KnownGood.From.FIRST_POWER, true));
    GroundResult good = new GroundResult(GroundResult.Verdict.GOOD, "0.4 to 1.1 mohm: good", "");
    GroundRow row = new GroundRow("STR1", "strap", "strap", true, Optional.of(good), "");
    GroundRow changed = new GroundRow("STR2", "strap", "strap", true, Optional.of(good), "longer");
    assertThat(KnownGood.of(PUMPER, LOOPS, List.of(), Map.of(), List.of(row, changed)).grounds())
        .containsExactly(row);
  }
}
