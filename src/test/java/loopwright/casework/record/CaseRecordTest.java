package loopwright.casework.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.FindCase;
import loopwright.casework.Phrases;
import loopwright.diagnosis.Warning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaseRecordTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static CaseRecord.CaseState state(Journals journal) {
    return journal.record().state();
  }

  @Test
  void aCaseStandsWhereItsLastEntriesLeaveIt() {
    assertThat(state(Journals.begun("a"))).isEqualTo(CaseRecord.CaseState.OPEN);
    assertThat(state(Journals.begun("a").volts("G4.lug", "12.7 V").found()))
        .isEqualTo(CaseRecord.CaseState.FOUND);
    assertThat(state(Journals.begun("a").volts("G4.lug", "12.7 V").found().mended("G4")))
        .isEqualTo(CaseRecord.CaseState.MENDED);
    assertThat(state(Journals.begun("a").stud())).isEqualTo(CaseRecord.CaseState.PROVEN);
    assertThat(state(Journals.begun("a").volts("L5.in", "12.1 V").proven("")))
        .as("whatever an account calls the part, its readings prove it")
        .isEqualTo(CaseRecord.CaseState.PROVEN);
  }

  /** What was said before a reading was put right or taken back doesn't stand any more. */
  @Test
  void aReadingTakenBackAfterTheProofUnprovesIt() {
    Journals journal =
        Journals.begun("a").stud().and(new CaseEvent.Withdrawn(Journals.AT.plusSeconds(900), 2));
    CaseRecord record = journal.record();
    assertThat(record.state()).isEqualTo(CaseRecord.CaseState.MENDED);
    assertThat(record.repairs()).singleElement().matches(r -> !r.proven());
    assertThat(record.readings().get(1).withdrawn()).isTrue();
    assertThat(state(Journals.begun("a").stud().volts("L5.in", "0.2 V")))
        .as("the proof failed later")
        .isEqualTo(CaseRecord.CaseState.OPEN);
  }

  /** As if it had never been mended: its readings belong to one search, and the record says so. */
  @Test
  void aMendTakenBackIsNoneAndTheRecordSaysSo() {
    Journals journal = Journals.begun("a").stud();
    CaseEvent.Deed mend =
        journal.journal().events().stream()
            .filter(CaseEvent.Deed.class::isInstance)
            .map(CaseEvent.Deed.class::cast)
            .findFirst()
            .orElseThrow();
    int readings = journal.record().readings().size();
    CaseRecord record =
        journal.and(new CaseEvent.Undone(Journals.AT.plusSeconds(900), mend)).record();
    assertThat(record.repairs()).isEmpty();
    assertThat(record.stages()).singleElement().matches(s -> s.readings().size() == readings);
    assertThat(record.state()).isEqualTo(CaseRecord.CaseState.OPEN);
    assertThat(new RecordText(record, PHRASES, ZoneOffset.UTC).besides())
        .extracting(RecordText.Fact::text)
        .anyMatch(t -> t.startsWith("Taken back") && t.endsWith("mended: G4"));
  }

  @Test
  void everyReadingIsThereWithWhatItWasBefore() {
    CaseRecord record =
        Journals.begun("a")
            .volts("F3.load", "1.26 V")
            .and(new CaseEvent.Corrected(Journals.AT, 1, new Answer.Text("12.6 V")))
            .volts("G4.lug", "9 V")
            .and(new CaseEvent.Withdrawn(Journals.AT, 2))
            .and(new CaseEvent.Swapped(Journals.AT, "F3", FindCase.Helped.NO))
            .and(new CaseEvent.Warned(Journals.AT, Warning.HEAT))
            .and(new CaseEvent.Gone(Journals.AT))
            .record();
    assertThat(record.readings()).hasSize(2);
    assertThat(record.readings().get(0).answer()).isEqualTo(new Answer.Text("12.6 V"));
    assertThat(record.readings().get(0).corrected()).containsExactly(new Answer.Text("1.26 V"));
    assertThat(record.readings().get(1).withdrawn()).isTrue();
    assertThat(record.remarks()).hasSize(3);
    RecordText text = new RecordText(record, PHRASES, ZoneOffset.UTC);
    assertThat(text.readings(0).rows().get(0)).contains("12.6 V", "KEY: on, S5: on");
    assertThat(text.readings(0).rows().get(0).get(6)).contains("first entered: 1.26 V");
    assertThat(text.readings(0).rows().get(1).get(6)).contains("Taken back");
    assertThat(text.besides()).extracting(RecordText.Fact::text).contains("reported: heat");
  }

  /** The first mend of two doesn't help; what is found after it is told after it. */
  @Test
  void aMendThatWasNotTheFaultIsToldAsUnproven() {
    CaseRecord record =
        Journals.begun("a")
            .volts("F3.load", "0.1 V")
            .found()
            .mended("F3")
            .volts("L5.in", "12.1 V")
            .found()
            .mended("G4")
            .volts("L5.in", "12.1 V")
            .proven("G4")
            .record();
    assertThat(record.repairs())
        .extracting(r -> r.mend().part(), CaseRecord.Repair::proven)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("F3", false),
            org.assertj.core.groups.Tuple.tuple("G4", true));
    RecordText text = new RecordText(record, PHRASES, ZoneOffset.UTC);
    assertThat(text.mend(0).orElseThrow().text()).contains("F3 mended").contains("not proven");
    assertThat(text.mend(1).orElseThrow().text())
        .contains("beacon ground stud G4 mended")
        .contains("Proven by the readings after it");
    assertThat(text.mend(2)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "beacon dead,true",
    "DEAD beac,true",
    "stud g4,true",
    "paint,true",
    "2024-05-17,true",
    "2024-05,true",
    "F3,true",
    "light pumper proven,true",
    "'',true",
    "horn,false",
    "eacon,false",
    "beacon tractor,false",
    "2024-06,false"
  })
  void wordsAreLookedForFromTheirBeginning(String words, boolean fits) {
    assertThat(CaseQuery.words(words).fits(Journals.begun("a").stud().record(), ZoneOffset.UTC))
        .isEqualTo(fits);
  }

  private static boolean fits(
      Optional<String> part, Optional<String> circuit, Optional<String> vehicle, int from, int to) {
    CaseQuery query =
        new CaseQuery(
            "",
            part,
            circuit,
            vehicle,
            Optional.of(LocalDate.of(2024, 5, from)),
            Optional.of(LocalDate.of(2024, 5, to)));
    return query.fits(Journals.begun("a").stud().record(), ZoneOffset.UTC);
  }

  @Test
  void partCircuitVehicleAndDaysAreLookedForWhole() {
    Optional<String> any = Optional.empty();
    assertThat(fits(Optional.of("G4"), Optional.of("beacon"), Optional.of("pumper"), 17, 17))
        .isTrue();
    assertThat(fits(Optional.of("F3"), any, any, 1, 31)).as("ruled out there").isTrue();
    assertThat(fits(Optional.of("G"), any, any, 1, 31)).isFalse();
    assertThat(fits(any, Optional.of("horn"), any, 1, 31)).isFalse();
    assertThat(fits(any, any, Optional.of("tractor"), 1, 31)).isFalse();
    assertThat(fits(any, any, any, 18, 31)).isFalse();
    assertThat(fits(any, any, any, 1, 16)).isFalse();
  }

  @Test
  void aPartsHistoryTellsWhatHappenedToItInItsVehicleAlone() {
    List<CaseRecord> records =
        List.of(
            Journals.begun("b").stud().record(),
            Journals.begun("a", "truck", false).stud().record());
    assertThat(PartHistory.of(records, "pumper", "G4"))
        .extracting(PartHistory.Entry::what)
        .containsExactly(
            PartHistory.What.READ,
            PartHistory.What.FOUND,
            PartHistory.What.MENDED,
            PartHistory.What.PROVEN);
    assertThat(PartHistory.of(records, "pumper", "F3"))
        .extracting(PartHistory.Entry::words)
        .contains("12.7 V at stud G4");
    assertThat(PartHistory.of(records, "pumper", "K1")).isEmpty();
  }
}
