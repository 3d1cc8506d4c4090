package loopwright.casework.pattern;

import java.util.List;
import java.util.Optional;

/** The patterns there are, in the order in which they are offered. */
public final class Patterns {
  private static final List<Pattern> ALL =
      List.of(
          new LampBySwitch(),
          new LampByRelay(),
          new HornByRelay(),
          new HeadAndDip(),
          new BrakeThroughStalk(),
          new TurnSignals(),
          new FanByDriver(),
          new FuelPumpByUnit(),
          new StarterWithInterlock(),
          new ClockAndHorn(),
          new TrailerSocket(),
          new MainRelay());

  private Patterns() {}

  /** All of them. */
  public static List<Pattern> all() {
    return ALL;
  }

  /** The one with this id. */
  public static Optional<Pattern> find(String id) {
    return ALL.stream().filter(p -> p.id().equalsIgnoreCase(id.strip())).findFirst();
  }
}
