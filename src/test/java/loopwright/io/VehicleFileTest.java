package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

class VehicleFileTest {
  @Test
  void aVehicleWithEveryKindOfPartSurvivesTheRoundTrip() {
    Vehicle vehicle = Vehicles.allKinds();
    String text = VehicleFile.text(vehicle);
    assertThat(VehicleFile.read(text, "mule.json").orThrow()).isEqualTo(vehicle);
    assertThat(VehicleFile.text(VehicleFile.read(text, "mule.json").orThrow())).isEqualTo(text);
  }
}
