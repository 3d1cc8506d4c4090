package loopwright.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A vehicle's parts by id, and that it stays equal by what it holds. */
class VehicleTest {
  private static final Part FRAME = Part.of("FRAME", "", new PartSpec.Body());
  private static final Part LUG = Part.of("G1", "", new PartSpec.Ground(Optional.empty()));
  private static final Part OTHER = Part.of("G1", "second", new PartSpec.Body());

  private static Vehicle of(List<Part> parts) {
    return new Vehicle("v", "v", 12, GroundedPole.NEGATIVE, parts, List.of(), List.of(), "");
  }

  @Test
  void aPartIsFoundByItsIdTheFirstOfTwo() {
    Vehicle vehicle = of(List.of(FRAME, LUG, OTHER));
    assertThat(vehicle.part("FRAME")).containsSame(FRAME);
    assertThat(vehicle.part("G1")).containsSame(LUG);
    assertThat(vehicle.part("G2")).isEmpty();
    assertThatThrownBy(() -> vehicle.requirePart("G2")).hasMessageContaining("'G2'");
  }

  @Test
  void lookingPartsUpChangesNoEquality() {
    List<Part> parts = new ArrayList<>(List.of(FRAME, LUG));
    Vehicle asked = of(parts);
    Vehicle fresh = of(parts);
    asked.part("G1");
    assertThat(asked).isEqualTo(fresh).hasSameHashCodeAs(fresh);
    assertThat(asked.parts()).isEqualTo(List.of(FRAME, LUG)).hasSameHashCodeAs(List.of(FRAME, LUG));
    assertThat(List.of(FRAME, LUG)).isEqualTo(asked.parts());
    assertThat(asked.with(asked.parts(), asked.joins(), asked.circuits())).isEqualTo(asked);
    assertThat(asked).isNotEqualTo(of(List.of(LUG, FRAME)));
  }

  @Test
  void aListHandedInMayChangeAfterwardsAndTheVehiclesOwnMayNot() {
    List<Part> parts = new ArrayList<>(List.of(FRAME));
    Vehicle vehicle = of(parts);
    parts.add(LUG);
    assertThat(vehicle.parts()).containsExactly(FRAME);
    assertThat(vehicle.part("G1")).isEmpty();
    assertThatThrownBy(() -> vehicle.parts().add(LUG))
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> vehicle.parts().iterator().remove())
        .isInstanceOf(RuntimeException.class);
    assertThatThrownBy(() -> of(java.util.Arrays.asList(FRAME, null)))
        .isInstanceOf(NullPointerException.class);
  }
}
