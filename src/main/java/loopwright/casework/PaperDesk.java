package loopwright.casework;

import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import loopwright.diagnosis.rulebook.Conclusion.Finding;
import loopwright.diagnosis.rulebook.Fact;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Knowledge;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.paper.Figure;
import loopwright.paper.PaperCheck;

/** Checks plans: the figures are worked out, the rules judge them, and it is put into words. */
public final class PaperDesk {
  /** Surroundings of the wires for which the chart of fuses holds, in degrees C. */
  public static final double USUAL_SURROUNDINGS = PaperCheck.USUAL_SURROUNDINGS;

  /** The coldest surroundings that are taken, in degrees C. */
  public static final double COLDEST_SURROUNDINGS = -40;

  /** The hottest surroundings that are taken, in degrees C: just below what PVC stands. */
  public static final double HOTTEST_SURROUNDINGS = 79;

  private final Knowledge knowledge;
  private final Supplier<RuleBook> rules;
  private final Phrases phrases;

  /**
   * A desk.
   *
   * @param rules the rules; asked for at the first check, since compiling takes seconds
   */
  public PaperDesk(Knowledge knowledge, Supplier<RuleBook> rules, Phrases phrases) {
    this.knowledge = knowledge;
    this.rules = rules;
    this.phrases = phrases;
  }

  /** Checks a vehicle's plan in the surroundings that the chart of fuses holds for. */
  public PaperReport check(Vehicle vehicle) {
    return check(vehicle, USUAL_SURROUNDINGS);
  }

  /**
   * Checks a vehicle's plan. May take a second or two: not on the window's thread.
   *
   * @param hottest surroundings of the wires at their hottest, in degrees C; below 80
   */
  public PaperReport check(Vehicle vehicle, double hottest) {
    return check(vehicle, hottest, () -> PaperCheck.figures(vehicle, knowledge, hottest));
  }

  /** A watch over a plan that is being edited. */
  public PlanWatch watch() {
    return new PlanWatch(this, new PaperCheck(knowledge));
  }

  PaperReport check(Vehicle vehicle, double hottest, Supplier<List<Figure>> solved) {
    List<VehicleCheck.Finding> unsolved = unsolvable(vehicle);
    if (!unsolved.isEmpty()) {
      return new PaperReport(vehicle.name(), unsolved, List.of(), 0, 0, hottest);
    }
    List<Figure> figures = solved.get();
    RuleBook book = rules.get();
    List<PlanFinding> findings = new ArrayList<>();
    try (RuleBook.Session session = book.open()) {
      session.state(facts(vehicle, figures));
      session.conclusions().stream()
          .filter(Finding.class::isInstance)
          .map(Finding.class::cast)
          .sorted(order(vehicle))
          .forEach(f -> findings.add(inWords(vehicle, book, f, figures.get(f.figure()))));
    }
    return new PaperReport(
        vehicle.name(), List.of(), findings, figures.size(), vehicle.circuits().size(), hottest);
  }

  /** What keeps the whole from being solved. One circuit that isn't finished yet does not. */
  private static List<VehicleCheck.Finding> unsolvable(Vehicle vehicle) {
    boolean powered = vehicle.parts().stream().anyMatch(p -> p.kind() == PartKind.BATTERY);
    VehicleCheck.Scope scope = powered ? VehicleCheck.Scope.PIECES : VehicleCheck.Scope.WHOLE;
    return VehicleCheck.check(vehicle, scope, Set.of());
  }

  private static List<Fact> facts(Vehicle vehicle, List<Figure> figures) {
    List<Fact> facts = new ArrayList<>();
    for (Part part : vehicle.parts()) {
      facts.add(new Fact.Piece(part.id(), part.kind(), part.title(), Set.of()));
    }
    for (int i = 0; i < figures.size(); i++) {
      Figure f = figures.get(i);
      facts.add(
          new Fact.PlanFigure(
              i,
              f.part(),
              vehicle.requirePart(LoadRef.parse(f.part()).part()).kind(),
              f.kind().word(),
              f.value(),
              f.limit(),
              f.with(),
              f.said()));
    }
    return facts;
  }

  private PlanFinding inWords(Vehicle vehicle, RuleBook book, Finding f, Figure figure) {
    boolean counted = figure.kind().unit() == Figure.Unit.COUNT;
    Part part = vehicle.requirePart(LoadRef.parse(f.part()).part());
    return new PlanFinding(
        f.part(),
        part.title(),
        f.severity(),
        f.rule(),
        book.words(f.rule(), f.key(), f.args()),
        book.words(f.rule(), f.consequence(), f.args()),
        book.words(f.rule(), f.cure(), f.args()),
        book.note(f.rule()).source(),
        counted ? "" : number(figure.value(), figure.kind().unit()),
        counted ? "" : number(figure.limit(), figure.kind().unit()),
        figure.at().equals(Setting.REST)
            ? List.of()
            : new Words(vehicle, phrases).setting(figure.at()),
        figure.with());
  }

  private String number(double value, Figure.Unit unit) {
    NumberFormat format = NumberFormat.getNumberInstance(phrases.locale());
    format.setGroupingUsed(false);
    format.setMaximumFractionDigits(Math.abs(value) < 1 ? 3 : Math.abs(value) < 100 ? 2 : 0);
    return format.format(value) + " " + unit.symbol();
  }

  /**
   * Worst first; among equals the parts in the vehicle's order, then the rules by name, then the
   * figures as they were worked out.
   */
  private static Comparator<Finding> order(Vehicle vehicle) {
    Map<String, Integer> places = new HashMap<>();
    for (Part part : vehicle.parts()) {
      places.put(part.id(), places.size());
    }
    return Comparator.comparing(Finding::severity)
        .thenComparing(f -> places.get(LoadRef.parse(f.part()).part()))
        .thenComparing(Finding::rule)
        .thenComparing(Finding::figure);
  }
}
