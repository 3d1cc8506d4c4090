package loopwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.knowledge.Knowledge;
import loopwright.model.Circuit;
import loopwright.model.Setting;
import loopwright.model.Vehicle;

/**
 * What each circuit draws from the battery when it is switched on by itself, and the smallest of
 * the fuses for first power that carries it, the moment of switching on included.
 */
public final class BringUp {

  /** Fuses that a plan is brought up with, in amperes, smallest first. Common practice. */
  public static final List<Double> FUSES = List.of(5.0, 7.5, 10.0);

  /**
   * One circuit.
   *
   * @param circuit the circuit
   * @param amps what the battery gives with it on by itself, in amperes
   * @param fuse the smallest fuse that carries it; empty if none does
   * @param cranks whether it turns an engine
   */
  public record Draw(Circuit circuit, double amps, Optional<Double> fuse, boolean cranks) {}

  private BringUp() {}

  /** All circuits of a vehicle that can be solved, in its order. */
  public static List<Draw> draws(Vehicle vehicle, Knowledge knowledge) {
    Plan plan = new Plan(vehicle, knowledge.typicals(), knowledge.wireFuses());
    InrushFigures inrush = new InrushFigures(plan);
    inrush.add();
    return draws(plan, inrush);
  }

  static List<Draw> draws(Plan plan, InrushFigures inrush) {
    List<Draw> draws = new ArrayList<>();
    for (Circuit circuit : plan.vehicle().circuits()) {
      Setting on = circuit.onSetting();
      double amps = plan.batteryAmps(plan.point(on));
      boolean cranks = plan.cranks(on);
      Optional<Double> fuse =
          FUSES.stream().filter(f -> !cranks && amps <= f && inrush.outlasts(f, on)).findFirst();
      draws.add(new Draw(circuit, amps, fuse, cranks));
    }
    return draws;
  }
}
