package loopwright.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.evidence.Bench;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of the demo vehicles' plans. */
class PaperCheckTest {

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor", "truck", "pumper"})
  void figuresOfTheDemoVehicles(String name) {
    List<Figure> figures =
        PaperCheck.figures(Bench.vehicle(name), Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
    for (Figure f : figures) {
      if (f.beyond()) {
        System.out.printf(
            "%s %s %s %.3g limit %.3g at %s with %s said %s%n",
            name,
            f.part(),
            f.kind().word(),
            f.value(),
            f.limit(),
            f.at().positions(),
            f.with(),
            f.said());
      }
    }
    assertThat(figures).isNotEmpty();
  }
}
