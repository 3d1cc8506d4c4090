package loopwright.ui.vehicle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import loopwright.casework.LoopView;
import loopwright.model.Part;
import loopwright.ui.Preferences;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicleLibrary;
import org.junit.jupiter.api.Test;

class VehicleViewModelTest {
  private final Deque<Runnable> background = new ArrayDeque<>();
  private final FakePreferences preferences = new FakePreferences();
  private final VehicleViewModel model = model();

  private VehicleViewModel model() {
    return new VehicleViewModel(
        new FakeVehicleLibrary(),
        new FakeLoops(),
        preferences,
        new Worker(background::add, Runnable::run));
  }

  private void finish() {
    while (!background.isEmpty()) {
      background.remove().run();
    }
  }

  @Test
  void aVehicleWithoutDefectsIsShownWithTheLoopOfItsFirstCircuit() {
    model.loadMarked();
    assertThat(model.busyProperty().get()).isTrue();
    finish();
    assertThat(model.choosingProperty().get()).isFalse();
    assertThat(model.loopProperty().get()).map(LoopView::title).contains("Beacon");
    assertThat(preferences.read(Preferences.Item.VEHICLE)).contains("pumper.json");
  }

  @Test
  void aVehicleWithDefectsIsNotTakenAndEachDefectIsTold() {
    model.moveEntry(2);
    model.loadMarked();
    finish();
    assertThat(model.vehicleProperty().get()).isEmpty();
    assertThat(model.choosingProperty().get()).isTrue();
    assertThat(model.defects()).hasSize(2).anyMatch(d -> d.contains("wires[6]"));
  }

  @Test
  void aDefectiveVehicleLeavesTheLoadedOne() {
    model.loadMarked();
    finish();
    model.chooseAnother();
    model.load("broken.json", () -> {});
    finish();
    model.backToVehicle();
    assertThat(model.vehicleProperty().get())
        .map(VehicleViewModel.Named::name)
        .contains("pumper.json");
  }

  @Test
  void onlyTheLoopOfTheCircuitChosenLastIsShown() {
    model.loadMarked();
    finish();
    model.moveCircuit(1);
    model.moveCircuit(1);
    finish();
    assertThat(model.loopProperty().get()).map(LoopView::title).contains("Fuel pump");
  }

  @Test
  void partsAreFilteredByAnyOfTheirWords() {
    model.loadMarked();
    finish();
    model.filterProperty().set("roof");
    assertThat(model.parts()).extracting(Part::id).containsExactly("C4", "L1");
    model.filterProperty().set("14 awg");
    assertThat(model.parts()).extracting(Part::id).containsExactly("W2", "W3");
    model.filterProperty().set("");
    assertThat(model.parts()).hasSizeGreaterThan(20);
  }

  @Test
  void theVehicleUsedLastIsLoadedAgainIfItIsStillThere() {
    preferences.keep(Preferences.Item.VEHICLE, "pumper.json");
    model.loadLast();
    finish();
    assertThat(model.vehicleProperty().get()).isPresent();
    preferences.keep(Preferences.Item.VEHICLE, "sold.json");
    VehicleViewModel later = model();
    later.loadLast();
    finish();
    assertThat(later.vehicleProperty().get()).isEqualTo(Optional.empty());
    assertThat(later.defects()).isEmpty();
  }
}
