package loopwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.WireSize;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;

/** Volts lost along one side of a load: which piece loses most, what it costs, what would do. */
final class Loss {

  /** Light goes with the 3.4th power of the volts (SAE J573 rerating exponents, from memory). */
  private static final double LIGHT_EXPONENT = 3.4;

  private final Plan plan;
  private final OperatingPoint point;

  Loss(Plan plan, OperatingPoint point) {
    this.plan = plan;
    this.point = point;
  }

  /** Volts that diodes in the wires take, which are there on purpose. */
  double ofDiodes(List<Integer> way) {
    return way.stream()
        .filter(e -> plan.part(plan.network().elements().get(e)).kind() == PartKind.DIODE)
        .mapToDouble(e -> Math.abs(point.across(e)))
        .sum();
  }

  Figure figure(
      String load,
      Figure.Kind kind,
      double lost,
      double limit,
      List<Integer> way,
      double whole,
      Element element) {
    String worst = "";
    double most = 0;
    for (int e : way) {
      Element piece = plan.network().elements().get(e);
      double drop = Math.abs(point.across(e));
      if (Plan.more(drop, most) && plan.part(piece).kind() != PartKind.DIODE) {
        most = drop;
        worst = plan.network().elements().get(e).part();
      }
    }
    double share = Math.max(0, 1 - lost / whole);
    return new Figure(
        load,
        kind,
        lost,
        limit,
        point.setting(),
        List.of(worst),
        List.of(most, 100 * cost(element, share), of(element), thinnest(way, lost - limit)));
  }

  /** What of the load's work the lost volts cost, 0 to 1. */
  private double cost(Element element, double share) {
    if (element instanceof Element.Filament) {
      return 1 - Math.pow(share, LIGHT_EXPONENT);
    }
    return plan.part(element).kind() == PartKind.HEATER ? 1 - share * share : 1 - share;
  }

  private String of(Element element) {
    if (element instanceof Element.Filament) {
      return "light";
    }
    if (element instanceof Element.Motor) {
      return "speed";
    }
    return plan.part(element).kind() == PartKind.HEATER ? "heat" : "current";
  }

  /**
   * The thinnest wire, in words, that brings the loss within its limit: for the wire that loses
   * most if that is enough, else the same factor for all wires of the way. Empty if the loss is
   * within its limit, or wires alone can't do it.
   *
   * @param excess volts too many
   */
  private String thinnest(List<Integer> way, double excess) {
    if (excess <= 0) {
      return "";
    }
    double copper = 0;
    double most = 0;
    Optional<Part> worst = Optional.empty();
    for (int e : way) {
      Part part = plan.part(plan.network().elements().get(e));
      if (part.spec() instanceof PartSpec.Wire w) {
        double drop = Math.abs(point.amps(e)) * plan.copperOhms(w);
        copper += drop;
        if (Plan.more(drop, most)) {
          most = drop;
          worst = Optional.of(part);
        }
      }
    }
    if (excess < most) {
      PartSpec.Wire wire = (PartSpec.Wire) worst.orElseThrow().spec();
      Optional<WireSize> size = WireSizes.atLeast(wire.size(), most / (most - excess));
      if (size.isPresent()) {
        return worst.get().id() + ": " + size.get();
      }
    }
    if (excess < copper) {
      double factor = copper / (copper - excess);
      List<String> sizes = new ArrayList<>();
      for (int e : way) {
        Part part = plan.part(plan.network().elements().get(e));
        if (part.spec() instanceof PartSpec.Wire w) {
          Optional<WireSize> size = WireSizes.atLeast(w.size(), factor);
          if (size.isEmpty()) {
            return "";
          }
          sizes.add(part.id() + ": " + size.get());
        }
      }
      return String.join(", ", sizes);
    }
    return "";
  }
}
