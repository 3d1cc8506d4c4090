package loopwright.casework.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import loopwright.knowledge.Context;
import loopwright.model.GroundedPole;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.model.WireSize;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A dead load in a vehicle made of each pattern is found with the practice meter. */
class PatternCasesTest {

  @ParameterizedTest
  @CsvSource({
    "lamp-switch,6,work-lamp,work lamp feed,open",
    "lamp-relay,12,floodlight,floodlight relay,coil-open",
    "horn,12,horn,horn button wire,open",
    "headlamps,24,dipped-beam,headlamp relay coil ground,open",
    "brake-turn,12,brake-lamp,brake lamp switch,stuck-open:contact:in-out",
    "flasher,12,left-turn-signal,flasher feed,open",
    "fan-driver,24,radiator-fan,radiator fan control wire,open",
    "fuel-pump,12,fuel-pump,fuel pump relay feed,open",
    "starter,12,starter-in-neutral,wire to the neutral switch,open",
    "clock-horn,6,clock,clock ground wire,open",
    "trailer-socket,12,trailer-left-turn,trailer wire to pin 1 (L),open",
    "main-relay,12,power-tell-tale,main relay coil feed,open"
  })
  void itsDeadLoadIsFound(String pattern, int volts, String circuit, String part, String mode)
      throws Problem {
    GroundedPole pole = volts == 12 ? GroundedPole.NEGATIVE : GroundedPole.POSITIVE;
    Vehicle vehicle =
        PatternsTest.with(
                pattern,
                volts,
                pole,
                NewVehicle.Key.NONE,
                NewVehicle.Return.BODY,
                WireSize.Unit.MM2)
            .vehicle();
    String truth =
        vehicle.parts().stream()
            .filter(p -> p.name().equals(part))
            .map(Part::id)
            .findFirst()
            .orElseThrow();
    ReadyCase ready =
        new ReadyCase(
            pattern,
            pattern,
            pattern,
            "dead",
            circuit,
            ComplaintKind.DEAD,
            Context.IN_SERVICE,
            "",
            List.of(new ReadyCase.Fault(truth, mode, Optional.empty())),
            "better");
    SimulatedMeter meter = new SimulatedMeter(vehicle, Bench.KNOWLEDGE, ready, pattern.hashCode());
    try (FindCase find =
        meter.following(
            Bench.desk()
                .open(
                    new CaseDesk.NewCase(
                        vehicle,
                        pattern,
                        circuit,
                        Optional.empty(),
                        ready.kind(),
                        ready.context(),
                        ready.meter()),
                    CaseDesk.Progress.SILENT))) {
      CaseView view = find.view();
      StringBuilder trail = new StringBuilder();
      for (int n = 0; n < 25 && view.move() == CaseView.Move.CHECK; n++) {
        CheckView check = view.next().orElseThrow();
        view = find.answer(check.id(), meter.read(check));
        trail.append("\n  ").append(check.id()).append(": ").append(view.said());
      }
      assertThat(view.move()).as(pattern + trail).isEqualTo(CaseView.Move.REPAIR);
      assertThat(view.suspects().get(0).parts()).as(pattern + trail).contains(truth);
    }
  }
}
