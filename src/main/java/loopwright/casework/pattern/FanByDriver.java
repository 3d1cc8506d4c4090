package loopwright.casework.pattern;

/** A radiator fan that a temperature control switches on. */
final class FanByDriver extends ByDriver {
  FanByDriver() {
    super("fan-driver", "fan");
  }
}
