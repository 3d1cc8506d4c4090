package loopwright.paper;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.solver.Element;
import loopwright.solver.OperatingPoint;

/**
 * What fuses and contacts that serve several circuits carry: one circuit at a time, those that are
 * likely on together (all that may be on for long), and all.
 */
final class TotalFigures {

  /** Share of a rating that may be used for long. Common practice. */
  private static final double LASTING = 0.8;

  /** One circuit in so many makes what serves them a main one. */
  private static final int MAIN = 3;

  private final Plan plan;

  TotalFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    Map<Integer, Set<Circuit>> serves = serves();
    Setting likely = plan.likely();
    OperatingPoint on = plan.point(likely);
    OperatingPoint all = plan.point(plan.together(c -> true));
    Map<String, Figure> figures = new LinkedHashMap<>();
    serves.forEach(
        (e, circuits) -> {
          Element element = plan.network().elements().get(e);
          Optional<Double> rating = rating(element);
          if (rating.isEmpty() || circuits.size() < 2) {
            return;
          }
          Circuit greatest =
              circuits.stream()
                  .max(Comparator.comparingDouble(c -> Plan.about(alone(c, e))))
                  .orElseThrow();
          Figure figure =
              new Figure(
                  element.part(),
                  Figure.Kind.TOTAL_AMPS,
                  Math.abs(on.amps(e)),
                  LASTING * rating.get(),
                  likely,
                  List.of(greatest.loads().get(0).toString()),
                  List.of(
                      alone(greatest, e),
                      Math.abs(all.amps(e)),
                      circuits.size(),
                      rating.get(),
                      MAIN * circuits.size() >= plan.vehicle().circuits().size()
                          ? "main"
                          : "some"));
          figures.merge(element.part(), figure, (a, b) -> Plan.more(b.value(), a.value()) ? b : a);
        });
    figures.values().forEach(plan::add);
  }

  private double alone(Circuit circuit, int e) {
    return Plan.amps(plan.point(circuit.onSetting()), e);
  }

  /** The circuits whose loads' current passes an element. */
  private Map<Integer, Set<Circuit>> serves() {
    Map<Integer, Set<Circuit>> serves = new TreeMap<>();
    for (Circuit circuit : plan.vehicle().circuits()) {
      if (plan.cranks(circuit.onSetting())) {
        continue;
      }
      OperatingPoint point = plan.point(circuit.onSetting());
      for (LoadRef load : circuit.loads()) {
        for (int e : CurrentWay.through(plan, point, plan.network().loadElement(load)).elements()) {
          serves.computeIfAbsent(e, k -> new LinkedHashSet<>()).add(circuit);
        }
      }
    }
    return serves;
  }

  private Optional<Double> rating(Element element) {
    Part part = plan.part(element);
    if (part.spec() instanceof PartSpec.Fuse f) {
      return Optional.of(f.amps());
    }
    return element instanceof Element.Contact ? Plan.rating(part) : Optional.empty();
  }
}
