package loopwright.paper;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Change;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Variant;

/**
 * The moment of switching on: filaments still cold, motors still standing. Fuses must outlast it,
 * contacts must stand it. The loop's own resistance limits it, so it is solved, not multiplied.
 */
final class InrushFigures {

  /** What draws the inrush, and how long that lasts in seconds. Common practice. */
  private enum Moment {
    LAMP("lamp", 0.01),
    MOTOR("motor", 0.3);

    private final String word;
    private final double seconds;

    Moment(String word, double seconds) {
      this.word = word;
      this.seconds = seconds;
    }

    /** What an element is in that moment, if it is of those that draw it. */
    Optional<Element> of(Element element) {
      if (this == LAMP && element instanceof Element.Filament f) {
        return Optional.of(new Element.Resistor(f.part(), f.role(), f.a(), f.b(), f.coldOhms()));
      }
      if (this == MOTOR && element instanceof Element.Motor m) {
        return Optional.of(new Element.Resistor(m.part(), m.role(), m.a(), m.b(), m.stallOhms()));
      }
      return Optional.empty();
    }
  }

  /**
   * Times its rating that a contact stands while it makes: 120 A for 3 s of a plug-in relay of 25 A
   * (data sheet).
   */
  private static final double STANDS = 120.0 / 25;

  /** Times its rating up to which a fuse holds for hours. */
  private static final double HOLDS = 1.1;

  private final Plan plan;
  private final Map<Integer, Figure> contacts = new LinkedHashMap<>();
  private final Map<Integer, Figure> fuses = new LinkedHashMap<>();
  private final Map<Moment, Variant> variants = new HashMap<>();
  private final Map<Setting, Map<Moment, Double>> battery = new HashMap<>();

  InrushFigures(Plan plan) {
    this.plan = plan;
    for (Moment moment : Moment.values()) {
      variants.put(moment, at(moment));
    }
  }

  private Variant at(Moment moment) {
    List<Change> changes = new ArrayList<>();
    for (int e = 0; e < plan.network().elements().size(); e++) {
      int number = e;
      moment
          .of(plan.network().elements().get(e))
          .ifPresent(then -> changes.add(new Change.Replace(number, then)));
    }
    return Variant.healthy(plan.network()).with(changes);
  }

  void add() {
    for (Setting setting : plan.alone()) {
      if (plan.cranks(setting)) {
        continue;
      }
      for (Moment moment : Moment.values()) {
        if (draws(moment, plan.point(setting))) {
          moment(moment, plan.states().of(variants.get(moment), moment.word, setting));
        }
      }
    }
    contacts.values().forEach(plan::add);
    fuses.values().forEach(plan::add);
  }

  /**
   * Whether a fuse in the battery's lead would outlast the moment of switching a circuit on. Asked
   * after the figures were added.
   *
   * @param amps rating of the fuse in amperes
   */
  boolean outlasts(double amps, Setting on) {
    return battery.getOrDefault(on, Map.of()).entrySet().stream()
        .allMatch(m -> FuseTimes.least(m.getValue() / amps) >= m.getKey().seconds);
  }

  private boolean draws(Moment moment, OperatingPoint point) {
    for (int e = 0; e < plan.network().elements().size(); e++) {
      if (moment.of(plan.network().elements().get(e)).isPresent()
          && Math.abs(point.amps(e)) > 0.01) {
        return true;
      }
    }
    return false;
  }

  private void moment(Moment moment, OperatingPoint point) {
    battery
        .computeIfAbsent(point.setting(), s -> new EnumMap<>(Moment.class))
        .put(moment, plan.batteryAmps(point));
    for (int e = 0; e < plan.network().elements().size(); e++) {
      Element element = plan.network().elements().get(e);
      Part part = plan.part(element);
      double amps = Plan.amps(point, e);
      if (part.spec() instanceof PartSpec.Fuse f && amps > HOLDS * f.amps()) {
        Figure figure =
            new Figure(
                part.id(),
                Figure.Kind.INRUSH_SECONDS,
                FuseTimes.least(amps / f.amps()),
                moment.seconds,
                point.setting(),
                List.of(),
                List.of(amps, moment.word));
        fuses.merge(
            e, figure, (a, b) -> Plan.more(a.value() / a.limit(), b.value() / b.limit()) ? b : a);
      } else if (element instanceof Element.Contact && Plan.rating(part).isPresent()) {
        Figure figure =
            new Figure(
                part.id(),
                Figure.Kind.CONTACT_INRUSH_AMPS,
                amps,
                STANDS * Plan.rating(part).get(),
                point.setting(),
                List.of(),
                List.of(Plan.contact(element)));
        contacts.merge(e, figure, (a, b) -> Plan.more(b.value(), a.value()) ? b : a);
      }
    }
  }
}
