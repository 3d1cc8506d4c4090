package loopwright.ui.paper;

import static loopwright.ui.fake.FakePlanCheck.finding;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import loopwright.casework.PaperReport;
import loopwright.casework.PlanFinding;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.ui.Worker;
import loopwright.ui.fake.FakeVehicles;
import loopwright.ui.paper.PaperViewModel.Stage;
import org.junit.jupiter.api.Test;

class PaperViewModelTest {
  private final Queue<Runnable> background = new ArrayDeque<>();
  private final Map<Vehicle, PaperReport> reports = new HashMap<>();
  private final List<Double> surroundings = new ArrayList<>();
  private boolean ready = true;
  private Runnable meanwhile = () -> {};
  private final PaperViewModel model =
      new PaperViewModel(
          new PlanCheck() {
            @Override
            public PaperReport check(Vehicle vehicle, double hottest, BooleanSupplier stale) {
              surroundings.add(hottest);
              meanwhile.run();
              if (stale.getAsBoolean()) {
                throw new CancellationException("edited");
              }
              return Optional.ofNullable(reports.get(vehicle))
                  .orElseThrow(() -> new IllegalStateException("no report"));
            }

            @Override
            public boolean ready() {
              return ready;
            }
          },
          new Worker(background::add, Runnable::run));

  private static final PlanFinding BURNS = of("W3", Severity.BURNS);
  private static final PlanFinding SECOND = of("W10", Severity.BURNS);
  private static final PlanFinding FAILS = of("L1", Severity.FAILS);
  private static final PlanFinding WEARS = of("G4", Severity.WEARS);
  private static final PlanFinding KNOW = of("K1", Severity.KNOW);

  private static PlanFinding of(String part, Severity severity) {
    return finding(part, severity, part + " is wrong.", "It follows.", "Mend " + part + ".");
  }

  private static final Vehicle FIRST = FakeVehicles.pumper();

  /** The pumper as it is after so many edits. */
  private static Vehicle edited(int times) {
    List<Part> parts = new ArrayList<>(FIRST.parts());
    parts.set(0, parts.get(0).withLabel("edit " + times));
    return FIRST.with(parts, FIRST.joins(), FIRST.circuits());
  }

  private void says(Vehicle vehicle, PlanFinding... findings) {
    reports.put(vehicle, new PaperReport(vehicle.name(), List.of(), List.of(findings), 128, 5, 57));
  }

  private void finish() {
    while (!background.isEmpty()) {
      background.remove().run();
    }
  }

  private void open(Vehicle vehicle, PlanFinding... findings) {
    says(vehicle, findings);
    model.show(vehicle);
    model.open();
    finish();
  }

  private List<String> targets() {
    return model.shown().stream().map(i -> i.target().orElse("")).toList();
  }

  private String chosen() {
    return model.target().orElse("");
  }

  @Test
  void nothingIsCheckedUntilThePlaceIsOpened() {
    assertThat(model.stageProperty().get()).isEqualTo(Stage.NO_VEHICLE);
    says(FIRST, BURNS);
    model.show(FIRST);
    finish();
    assertThat(surroundings).isEmpty();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.FIRST_CHECK);
    model.open();
    assertThat(model.checkingProperty().get()).isTrue();
    finish();
    assertThat(model.checkingProperty().get()).isFalse();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.CHECKED);
    model.close();
    model.open();
    finish();
    assertThat(surroundings).as("the same plan is not checked twice").containsExactly(57.0);
  }

  @Test
  void theVerdictCountsBySeverityAndTheOrderOfTheReportIsKept() {
    open(FIRST, BURNS, SECOND, FAILS, WEARS, KNOW);
    assertThat(model.verdictProperty().get())
        .isEqualTo("2 things can burn, 1 won’t work right, 1 works poorly");
    assertThat(targets()).containsExactly("W3", "W10", "L1", "G4");
    assertThat(model.groupsProperty().get())
        .extracting(PaperViewModel.Group::count)
        .containsExactly(2, 1, 1, 1);
    assertThat(chosen()).isEqualTo("W3");
  }

  @Test
  void aSingleSeverityIsAWholeSentence() {
    open(FIRST, FAILS);
    assertThat(model.verdictProperty().get()).isEqualTo("1 thing won’t work right");
    open(edited(1), WEARS, of("G2", Severity.WEARS));
    assertThat(model.verdictProperty().get()).isEqualTo("2 things work poorly");
    open(edited(2), KNOW);
    assertThat(model.verdictProperty().get()).isEqualTo("Nothing wrong");
    assertThat(model.extent())
        .startsWith("Checked: 5 circuits, 128 figures.")
        .contains("in the hottest place that wires run, beside the engine say: air of 57 C.");
  }

  @Test
  void theChoiceStaysAndWhatIsMendedVanishesWithALineOfWhatChanged() {
    open(FIRST, BURNS, SECOND, FAILS, WEARS);
    model.move(2);
    assertThat(chosen()).isEqualTo("L1");
    open(edited(1), SECOND, FAILS, WEARS);
    assertThat(chosen()).isEqualTo("L1");
    assertThat(model.changeProperty().get()).isEqualTo("1 fewer: W3.");
    open(edited(2), SECOND, WEARS);
    assertThat(chosen()).as("the next one after the mended one").isEqualTo("G4");
    open(edited(3), SECOND);
    assertThat(chosen()).as("none after it: the one before").isEqualTo("W10");
    open(edited(4), SECOND, FAILS);
    assertThat(model.changeProperty().get()).isEqualTo("1 more: L1.");
    open(edited(5), SECOND, FAILS);
    assertThat(model.changeProperty().get()).isEqualTo("Checked again: the same findings.");
    open(edited(6), WEARS);
    assertThat(model.changeProperty().get()).isEqualTo("2 fewer: W10, L1. 1 more: G4.");
  }

  @Test
  void findingsThatAreAlikeAreToldApart() {
    open(FIRST, BURNS, BURNS, FAILS);
    model.move(1);
    open(edited(1), BURNS, FAILS);
    assertThat(model.changeProperty().get()).isEqualTo("1 fewer: W3.");
    assertThat(chosen()).isEqualTo("L1");
  }

  @Test
  void aResultOfAnOlderEditIsDroppedAndTheOldFindingsStayUntilTheNewOnesAreThere() {
    open(FIRST, BURNS);
    says(edited(1), BURNS, FAILS);
    says(edited(2), WEARS);
    model.show(edited(1));
    model.show(edited(2));
    assertThat(targets()).containsExactly("W3");
    assertThat(model.checkingProperty().get()).isTrue();
    List<List<String>> seen = new ArrayList<>();
    model.groupsProperty().addListener(o -> seen.add(targets()));
    finish();
    assertThat(seen).as("the first edit's findings are never shown").containsExactly(List.of("G4"));
    assertThat(model.checkingProperty().get()).isFalse();
    assertThat(surroundings).hasSize(3);
  }

  @Test
  void anotherVehiclesFindingsDoNotStay() {
    open(FIRST, BURNS);
    Vehicle tractor =
        new Vehicle(
            "tractor",
            "Tractor",
            FIRST.systemVolts(),
            FIRST.grounded(),
            FIRST.parts(),
            FIRST.joins(),
            FIRST.circuits(),
            FIRST.note());
    says(tractor, WEARS);
    model.show(tractor);
    assertThat(model.shown()).isEmpty();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.FIRST_CHECK);
    finish();
    assertThat(targets()).containsExactly("G4");
    assertThat(model.changeProperty().get()).isEmpty();
  }

  @Test
  void whatKeepsItFromBeingSolvedIsListedWithTheWayThere() {
    int at = FIRST.parts().indexOf(FIRST.requirePart("W3"));
    reports.put(
        FIRST,
        new PaperReport(
            FIRST.name(),
            List.of(
                new VehicleCheck.Finding(
                    "wire W3", "0 m", "0.01 to 100 m", "parts[" + at + "].metres", "is 0 m long"),
                new VehicleCheck.Finding(
                    "circuit beacon", "", "", "circuits[0].loads", "has no loads"),
                new VehicleCheck.Finding("vehicle", "", "a battery", "parts", "has no battery")),
            List.of(),
            0,
            0,
            57));
    model.show(FIRST);
    model.open();
    finish();
    assertThat(model.stageProperty().get()).isEqualTo(Stage.UNSOLVED);
    assertThat(model.verdictProperty().get())
        .isEqualTo("Can’t be checked yet: mend 3 things first");
    assertThat(targets()).containsExactly("W3", FIRST.circuits().get(0).id(), "");
    assertThat(model.task()).startsWith("wire W3: is 0 m long");
    open(edited(1), WEARS);
    assertThat(model.changeProperty().get()).isEqualTo("Now it can be checked.");
  }

  @Test
  void whatIsWorthKnowingIsFoldedUntilAskedFor() {
    open(FIRST, WEARS, KNOW);
    assertThat(targets()).containsExactly("G4");
    model.toggleKnow();
    assertThat(targets()).containsExactly("G4", "K1");
    assertThat(chosen()).isEqualTo("K1");
    model.toggleKnow();
    assertThat(chosen()).isEqualTo("G4");
  }

  @Test
  void theFilterTakesPartsWordsAndCircuitsAndLooksIntoWhatIsFolded() {
    open(FIRST, BURNS, FAILS, KNOW);
    model.filterProperty().set("wrong k1");
    assertThat(targets()).containsExactly("K1");
    model.filterProperty().set("horn");
    assertThat(targets()).isEmpty();
    assertThat(model.chosenProperty().get()).isEmpty();
    model.filterProperty().set(FIRST.circuit("beacon").orElseThrow().name());
    assertThat(targets()).contains("L1");
    model.filterProperty().set("");
    assertThat(targets()).containsExactly("W3", "L1");
  }

  @Test
  void surroundingsAreCheckedWithinLimitsAndBadOnesAreTold() {
    open(FIRST, BURNS);
    for (String bad : List.of("80", "-41", "warm", "1e9", "NaN")) {
      assertThat(model.takeHottest(bad)).isFalse();
      assertThat(model.hottestProblemProperty().get())
          .isEqualTo("“" + bad + "” can’t be taken. Accepted: -40 to 79 C.");
    }
    finish();
    assertThat(surroundings).containsExactly(57.0);
    assertThat(model.takeHottest("70,5 °C")).isTrue();
    assertThat(model.hottestProblemProperty().get()).isEmpty();
    finish();
    assertThat(model.takeHottest("")).as("nothing is the usual").isTrue();
    finish();
    assertThat(surroundings).containsExactly(57.0, 70.5, 57.0);
  }

  @Test
  void waitingForTheRulesAndAFailedCheckAreToldAndTheNextEditTriesAgain() {
    ready = false;
    model.show(FIRST);
    model.open();
    assertThat(model.rulesAwaitedProperty().get()).isTrue();
    finish();
    assertThat(model.failureProperty().get()).isEqualTo("The check failed: no report");
    assertThat(model.checkingProperty().get()).isFalse();
    ready = true;
    open(edited(1), WEARS);
    assertThat(model.rulesAwaitedProperty().get()).isFalse();
    assertThat(model.failureProperty().get()).isEmpty();
    assertThat(targets()).containsExactly("G4");
  }

  @Test
  void detailsStayOpenForACardUntilTheyAreClosed() {
    open(FIRST, BURNS, FAILS);
    model.toggleDetails();
    model.move(1);
    assertThat(model.openedProperty().get()).hasSize(1);
    model.move(-1);
    model.toggleDetails();
    assertThat(model.openedProperty().get()).isEmpty();
  }

  @Test
  void aCheckThatAnEditMakesStaleIsGivenUpEvenIfTheEditIsUndone() {
    says(FIRST, BURNS);
    says(edited(1), FAILS);
    model.open();
    model.show(FIRST);
    meanwhile =
        () -> {
          meanwhile = () -> {};
          model.show(edited(1));
        };
    finish();
    assertThat(model.shown())
        .extracting(PaperItem::severity)
        .containsExactly(Optional.of(Severity.FAILS));
    assertThat(model.failureProperty().get()).isEmpty();
    assertThat(surroundings).hasSize(2);
    meanwhile =
        () -> {
          meanwhile = () -> {};
          model.show(edited(1));
        };
    model.show(FIRST);
    finish();
    assertThat(model.failureProperty().get()).isEmpty();
    assertThat(model.checkingProperty().get()).isFalse();
    assertThat(model.shown())
        .extracting(PaperItem::severity)
        .containsExactly(Optional.of(Severity.FAILS));
  }
}
