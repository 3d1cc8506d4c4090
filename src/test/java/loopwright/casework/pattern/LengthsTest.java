package loopwright.casework.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Language;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Units;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns ask for lengths in the unit preferred, and take what people write. */
class LengthsTest {
  private static final Units METRES = Units.inUse();
  private static final Units FEET = METRES.with("ft").orElseThrow();
  private static final Vehicle TRACTOR = Bench.vehicle("tractor");
  private static final Pattern LAMP = Patterns.find("lamp-switch").orElseThrow();

  @AfterEach
  void backToMetres() {
    Units.use(METRES);
    Language.use(Language.ENGLISH);
  }

  private static Question asked() throws Problem {
    return LAMP.questionnaire(TRACTOR, PatternsTest.BASIS).questions(Map.of()).stream()
        .filter(q -> q.id().equals("to-load"))
        .findFirst()
        .orElseThrow();
  }

  private static double metres(String answer) throws Problem {
    Vehicle after =
        LAMP.plan(TRACTOR, PatternsTest.BASIS, Map.of("to-load", asked().kept(answer))).vehicle();
    return after.parts().stream()
        .filter(p -> TRACTOR.part(p.id()).isEmpty())
        .map(Part::spec)
        .filter(PartSpec.Wire.class::isInstance)
        .mapToDouble(s -> ((PartSpec.Wire) s).metres().about())
        .max()
        .orElseThrow();
  }

  /** 0.3048 m a foot, published: international yard and pound agreement, 1959. */
  @ParameterizedTest
  @CsvSource({
    "m,20,20",
    "m,20 m,20",
    "m,60 ft,18.288",
    "m,60',18.288",
    "m,900 cm,9",
    "m,'9,5 m',9.5",
    "ft,60,18.288",
    "ft,60 ft,18.288",
    "ft,20 m,20",
    "ft,about 60,18.288"
  })
  void aLengthIsTakenInAnyUnit(String unit, String answer, double metres) throws Problem {
    Units.use(unit.equals("ft") ? FEET : METRES);
    assertThat(metres(answer)).isCloseTo(metres, within(1e-9));
  }

  @Test
  void theQuestionNamesTheUnit() throws Problem {
    assertThat(asked().text()).endsWith("metres?");
    String usual = asked().usual();
    Units.use(FEET);
    assertThat(asked().text()).endsWith("feet?");
    assertThat(asked().usual()).isEqualTo(FEET.length(Double.parseDouble(usual), 1));
    Language.use(Language.GERMAN);
    assertThat(
            LAMP.questionnaire(
                    TRACTOR, new Basis(PatternsTest.BASIS.knowledge(), PatternWords.inUse()))
                .questions(Map.of())
                .toString())
        .contains("Fuß?");
  }

  @Test
  void whatIsTooLongIsToldInTheUnit() {
    Units.use(FEET);
    assertThatThrownBy(() -> metres("600"))
        .isInstanceOf(Problem.class)
        .hasMessageContaining("600 ft")
        .hasMessageContaining("0.3 to 98 ft");
  }

  @Test
  void aChoiceIsTakenByItsWordsToo() throws Problem {
    Question.Form form = new Question.Form.OneOf(List.of(new Question.Choice("yes", "ja")));
    Question relays = new Question("relays", "Über Relais?", form, "yes", "");
    assertThat(Answers.fitting(relays, "Ja", 12)).isEqualTo("yes");
    assertThat(Answers.fitting(relays, "yes", 12)).isEqualTo("yes");
  }
}
