package loopwright.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.evidence.Bench;
import loopwright.model.Setting;
import org.junit.jupiter.api.Test;

class NamedPartsTest {

  private static CaseEvent look(String at) {
    return new CaseEvent.Taken(
        Instant.EPOCH,
        1,
        new OwnCheck(
            CheckKind.LOOK, Optional.empty(), Optional.empty(), Optional.of(at), Setting.REST),
        new Answer.Saw(Seen.ON));
  }

  @Test
  void aFilamentThatWasLookedAtIsAPartOfTheVehicle() {
    assertThat(NamedParts.missing(List.of(look("L1:dip")), Bench.vehicle("motorcycle"))).isEmpty();
  }

  @Test
  void whatIsGoneIsNamedByItsPart() {
    assertThat(NamedParts.missing(List.of(look("L77:dip")), Bench.vehicle("motorcycle")))
        .containsExactly("L77");
  }
}
