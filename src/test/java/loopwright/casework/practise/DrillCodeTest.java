package loopwright.casework.practise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

class DrillCodeTest {

  @Test
  void everyCodeIsReadBackAsItWasAndNoTwoAreAlike() throws Problem {
    Set<String> all = new HashSet<>();
    for (Level level : Level.values()) {
      for (int vehicle = 1; vehicle <= 4; vehicle++) {
        for (int seed = 0; seed < DrillCode.SEEDS; seed++) {
          DrillCode code = new DrillCode(level, vehicle, seed, "");
          String text = code.toString();
          assertThat(text).matches("[34679ACDEFHJKLMNPRTVWXY]{4}");
          assertThat(DrillCode.parse(text)).isEqualTo(code);
          assertThat(all.add(text)).isTrue();
        }
      }
    }
  }

  @Test
  void aCodeIsReadHoweverItIsTyped() throws Problem {
    DrillCode code = new DrillCode(Level.RELAY, 2, 77, "");
    String text = code.toString();
    assertThat(DrillCode.parse(" " + text.toLowerCase(java.util.Locale.ROOT) + " "))
        .isEqualTo(code);
    assertThat(DrillCode.parse(text.substring(0, 2) + " " + text.substring(2))).isEqualTo(code);
  }

  @Test
  void mostCodesWithOneLetterMisheardAreNone() {
    String text = new DrillCode(Level.SHORT, 1, 200, "").toString();
    int taken = 0;
    int tried = 0;
    for (int at = 0; at < 4; at++) {
      for (char c : "34679ACDEFHJKLMNPRTVWXY".toCharArray()) {
        String other = text.substring(0, at) + c + text.substring(at + 1);
        if (!other.equals(text)) {
          tried++;
          taken += isCode(other) ? 1 : 0;
        }
      }
    }
    assertThat(taken).isLessThan(tried / 5);
  }

  private static boolean isCode(String text) {
    try {
      DrillCode.parse(text);
      return true;
    } catch (Problem p) {
      return false;
    }
  }

  @Test
  void anOwnVehiclesCodeTellsTwoFilesApart() throws Problem {
    Vehicle mine = Bench.vehicle("motorcycle");
    Vehicle other = Bench.vehicle("tractor");
    DrillCode code = DrillCode.of(Level.DEAD_LAMP, DrillCode.OWN, 3, mine);
    assertThat(code.toString()).hasSize(8).contains("-");
    assertThat(DrillCode.parse(code.toString())).isEqualTo(code);
    assertThat(code).isNotEqualTo(DrillCode.of(Level.DEAD_LAMP, DrillCode.OWN, 3, other));
    assertThatThrownBy(
            () -> Drills.desk().open(code, other, loopwright.casework.CaseDesk.Progress.SILENT))
        .isInstanceOf(Problem.class)
        .hasMessageContaining(DrillCode.print(other));
  }

  @Test
  void whatIsNoCodeIsRefused() {
    for (String text : new String[] {"", "4F7", "4F7O", "11111", "x".repeat(500), "4F7K-"}) {
      assertThat(isCode(text)).as(text).isFalse();
    }
  }
}
