package loopwright.casework.pattern;

/** A fuel pump that an engine control unit switches on. */
final class FuelPumpByUnit extends ByDriver {
  FuelPumpByUnit() {
    super("fuel-pump", "fuel-pump");
  }
}
