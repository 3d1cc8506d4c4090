package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.CircuitLoops;
import loopwright.casework.Phrases;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.record.Journals;
import loopwright.casework.record.KnownGood;
import loopwright.evidence.Bench;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KnownGoodCardTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "motorcycle", "truck"})
  void everyCircuitStandsOnAPageOrTwo(String name) throws Exception {
    Vehicle vehicle = Bench.vehicle(name);
    GroundResult good = new GroundResult(GroundResult.Verdict.GOOD, "0.4 to 1.1 mohm.", "");
    KnownGood known =
        KnownGood.of(
            vehicle,
            new CircuitLoops(vehicle, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), PHRASES),
            List.of(
                Journals.begun("a").mended("G4").volts("G4.lug", "21 mV").proven("G4").record()),
            Map.of(),
            List.of(new GroundRow("STR1", "cable", "strap", true, Optional.of(good), "")));
    for (PageSize size : PageSize.values()) {
      Paper paper = KnownGoodCard.paper(known, size, ZoneOffset.UTC, "1 June 2024", PHRASES);
      assertThat(paper.pages()).as(name).isLessThanOrEqualTo(2);
      Pages.wellLaidOut(paper.finished(), 9);
      Pages.blackOnly(paper.pdf());
      String text = String.join(" ", Pages.texts(paper.pdf())).replaceAll("\\s+", " ");
      for (Circuit circuit : vehicle.circuits()) {
        assertThat(text).contains(circuit.name().split(" ")[0]);
      }
      assertThat(text).contains("0.4 to 1.1 mohm.").contains("The program advises.");
      if (name.equals("pumper")) {
        assertThat(text).contains("21 mV, 17 May 2024");
      }
    }
  }
}
