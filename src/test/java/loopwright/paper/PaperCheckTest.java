package loopwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of the demo vehicles' plans. */
class PaperCheckTest {

  @ParameterizedTest
  @ValueSource(strings = {"motorcycle", "tractor", "truck", "pumper"})
  void hotterSurroundingsNeverMakeAPlanBetter(String name) {
    List<Figure> usual =
        PaperCheck.figures(Bench.vehicle(name), Bench.KNOWLEDGE, PaperCheck.USUAL_SURROUNDINGS);
    List<Figure> hot = PaperCheck.figures(Bench.vehicle(name), Bench.KNOWLEDGE, 75);
    assertThat(hot).hasSameSizeAs(usual);
    long beyond =
        usual.stream().filter(f -> f.kind() == Figure.Kind.FUSE_AMPS && f.beyond()).count();
    assertThat(hot.stream().filter(f -> f.kind() == Figure.Kind.FUSE_AMPS && f.beyond()).count())
        .isGreaterThan(beyond);
    for (int i = 0; i < hot.size(); i++) {
      if (usual.get(i).kind() != Figure.Kind.LOOM_LOAD) {
        assertThat(hot.get(i).value()).isEqualTo(usual.get(i).value());
      }
      if (usual.get(i).beyond()) {
        assertThat(hot.get(i).beyond()).isTrue();
      }
    }
  }

  @Test
  void surroundingsThatMeltTheInsulationAreRefused() {
    assertThatThrownBy(() -> PaperCheck.figures(Bench.vehicle("tractor"), Bench.KNOWLEDGE, 80))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("below 80");
  }
}
