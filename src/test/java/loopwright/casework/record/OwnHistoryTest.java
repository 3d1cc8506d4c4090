package loopwright.casework.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.Desk;
import loopwright.casework.FindCase;
import loopwright.casework.OwnRate;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.diagnosis.Cart;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import loopwright.solver.Failure;
import org.junit.jupiter.api.Test;

/** Confirmed repairs shift a vehicle's rates: by hand, bounded, from proven cases alone. */
class OwnHistoryTest {
  private static final Vehicle PUMPER = Bench.vehicle("pumper");

  private static List<OwnRate> rates(CaseRecord... records) {
    return OwnHistory.rates(List.of(records), PUMPER, Bench.KNOWLEDGE);
  }

  private static OwnRate onPaint(List<OwnRate> rates) {
    return rates.stream()
        .filter(r -> r.kind() == PartKind.GROUND && r.mode().equals("on-paint"))
        .findFirst()
        .orElseThrow();
  }

  /** The mode's share of all that the tables give this vehicle, added up the plain way. */
  private static double share(String mode) {
    double all = 0;
    double its = 0;
    for (var part : PUMPER.parts()) {
      for (Failure failure : Failure.of(Bench.network(PUMPER), part, Bench.KNOWLEDGE.faults())) {
        double rate = failure.rate(Context.IN_SERVICE);
        all += rate;
        its += part.kind() == PartKind.GROUND && failure.mode().mode().equals(mode) ? rate : 0;
      }
    }
    return its / all;
  }

  @Test
  void twoFindsCountAsTheFormulaSays() {
    OwnRate rate =
        onPaint(rates(Journals.begun("a").stud().record(), Journals.begun("b").stud().record()));
    assertThat(rate.found()).as("three quarters of each").isEqualTo(1.5, within(1e-12));
    assertThat(rate.expected()).isEqualTo(2 * share("on-paint"), within(1e-12));
    assertThat(rate.factor())
        .isEqualTo((3 + 1.5) / (3 + 2 * share("on-paint")), within(1e-12))
        .isBetween(1.3, 1.6);
  }

  @Test
  void onlyProvenMendsOfThisVehicleCountAndNoPractice() {
    assertThat(rates()).isEmpty();
    assertThat(rates(Journals.begun("a").volts("G4.lug", "1 V").found().record())).isEmpty();
    assertThat(rates(Journals.begun("a").volts("G4.lug", "1 V").found().mended("G4").record()))
        .isEmpty();
    assertThat(rates(Journals.begun("a", "pumper", true).stud().record())).isEmpty();
    assertThat(rates(Journals.begun("a", "truck", false).stud().record())).isEmpty();
    assertThat(
            rates(
                Journals.begun("a")
                    .volts("G4.lug", "1 V")
                    .mended("G4")
                    .volts("L5.in", "12 V")
                    .proven("G4")
                    .record()))
        .as("mended without anything found")
        .isEmpty();
    CaseRecord undone =
        Journals.begun("a").stud().and(new CaseEvent.Withdrawn(Journals.AT, 2)).record();
    assertThat(rates(undone)).as("a proof taken back counts no more").isEmpty();
  }

  @Test
  void factorsAreBoundedAndTheOrderOfCasesIsNothing() {
    List<CaseRecord> many = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      many.add(Journals.begun("c" + i).stud().record());
    }
    List<OwnRate> rates = OwnHistory.rates(many, PUMPER, Bench.KNOWLEDGE);
    assertThat(onPaint(rates).factor()).isEqualTo(OwnHistory.MOST);
    assertThat(rates)
        .allMatch(r -> r.factor() >= OwnHistory.LEAST && r.factor() <= OwnHistory.MOST);
    assertThat(rates).as("what never failed counts less").anyMatch(r -> r.factor() < 1);
    Collections.shuffle(many, new Random(1));
    assertThat(OwnHistory.rates(many, PUMPER, Bench.KNOWLEDGE)).isEqualTo(rates);
    assertThat(OwnHistory.factor(0, 1000)).isEqualTo(OwnHistory.LEAST);
    assertThat(OwnHistory.factor(0, 0)).isEqualTo(1);
  }

  private static FindCase open(Desk desk, boolean practice) throws Problem {
    return desk.open(
        new CaseDesk.NewCase(
            Cart.VEHICLE,
            "cart",
            "lamp",
            Optional.empty(),
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            "basic",
            practice),
        CaseDesk.Progress.SILENT);
  }

  /** Told when it counts, kept with the case, off when switched off, the same when taken up. */
  @Test
  void itIsToldKeptAndSwitchable() throws Problem {
    Bench.InMemory store = new Bench.InMemory();
    List<OwnRate> rates = List.of(new OwnRate(PartKind.WIRE, "unseated", 2, 0.1, 1.6));
    Desk desk =
        new Desk(
            Bench.KNOWLEDGE,
            Bench::rules,
            store,
            java.time.Clock.systemUTC(),
            new Phrases(java.util.Locale.ENGLISH),
            vehicle -> rates);
    String told =
        "This vehicle's own record counts: terminal not home or pulled off, 1.6 times as"
            + " likely as in the tables (found here twice).";
    String id;
    List<?> suspects;
    try (FindCase find = open(desk, false)) {
      id = find.view().caseId();
      suspects = find.view().suspects();
      assertThat(find.view().said()).isEqualTo(told);
      assertThat(find.whyNext()).contains(told);
      assertThat(find.view().cleared()).isEmpty();
    }
    assertThat(store.read(id).events())
        .anyMatch(e -> e instanceof CaseEvent.Weighed w && w.rates().equals(rates));
    try (FindCase again = desk.resume(id, Cart.VEHICLE, CaseDesk.Progress.SILENT)) {
      assertThat(again.view().said()).isEqualTo(told);
      assertThat(again.view().suspects()).isEqualTo(suspects);
    }
    try (FindCase practice = open(desk, true)) {
      assertThat(practice.view().said()).isEmpty();
    }
    desk.countOwnRecord(false);
    try (FindCase again = desk.resume(id, Cart.VEHICLE, CaseDesk.Progress.SILENT);
        FindCase fresh = open(desk, false)) {
      assertThat(again.view().said()).isEmpty();
      assertThat(fresh.view().said()).isEmpty();
      assertThat(again.view().suspects()).isEqualTo(fresh.view().suspects());
      assertThat(again.view().suspects()).isNotEqualTo(suspects);
    }
  }
}
