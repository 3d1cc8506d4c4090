package loopwright.casework.table;

import java.util.List;
import java.util.Optional;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.WireSize;

/**
 * Parts as they begin. Values that must be given hold a stand-in, which the column asked for puts
 * right before the part reaches the vehicle.
 */
final class Blanks {
  private static final Estimate TO_BE_GIVEN = Estimate.of(1);
  private static final TerminalRef NOWHERE = new TerminalRef("?", "?");

  private Blanks() {}

  static PartSpec of(PartKind kind) {
    return switch (kind) {
      case BATTERY -> new PartSpec.Battery(Optional.empty(), Optional.empty());
      case WIRE, STRAP ->
          new PartSpec.Wire(
              kind,
              NOWHERE,
              NOWHERE,
              new WireSize(WireSize.Unit.MM2, 1),
              TO_BE_GIVEN,
              Optional.empty(),
              "",
              "");
      case FUSE -> new PartSpec.Fuse(1, Optional.empty());
      case SWITCH -> PartSpec.Switch.onOff(Optional.empty());
      case RELAY ->
          new PartSpec.Relay(
              false,
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              PartSpec.Suppression.NONE,
              Optional.empty());
      case LAMP -> new PartSpec.Lamp(Optional.empty(), TO_BE_GIVEN);
      case DUAL_LAMP ->
          new PartSpec.DualLamp("tail", TO_BE_GIVEN, "stop", TO_BE_GIVEN, Optional.empty());
      case LED -> new PartSpec.Led(Optional.empty(), TO_BE_GIVEN);
      case DIODE -> new PartSpec.Diode(Optional.empty());
      case MOTOR -> new PartSpec.Motor(TO_BE_GIVEN, Optional.empty());
      case HEATER, SOLENOID, HORN, ELECTRONICS -> new PartSpec.PlainLoad(kind, TO_BE_GIVEN);
      case SENDER -> new PartSpec.Sender(Spread.exactly(1));
      case DRIVER -> new PartSpec.Driver(Optional.empty(), "");
      case CONNECTOR -> new PartSpec.Connector(List.of("1"), Optional.empty());
      case SPLICE -> new PartSpec.Splice(List.of("a", "b"), Optional.empty());
      case GROUND -> new PartSpec.Ground(Optional.empty());
      case BODY -> new PartSpec.Body();
    };
  }
}
