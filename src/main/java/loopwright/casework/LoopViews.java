package loopwright.casework;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Loop;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Workbench;
import loopwright.diagnosis.rulebook.Conclusion;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Units;
import loopwright.model.Vehicle;

/** Turns a traced loop into what is drawn: pieces, nodes, the voltage staircase. */
final class LoopViews {
  private final Vehicle vehicle;
  private final Workbench bench;
  private final Function<Check, double[]> healthy;
  private final Words words;
  private final Setting on;

  LoopViews(
      Vehicle vehicle,
      Workbench bench,
      Function<Check, double[]> healthy,
      Words words,
      Setting on) {
    this.vehicle = vehicle;
    this.bench = bench;
    this.healthy = healthy;
    this.words = words;
    this.on = on;
  }

  LoopView view(Loop loop, String title, Findings findings, List<Reading> readings) {
    return view(loop, title, Optional.of(findings), readings);
  }

  /** The loop of a circuit that nobody complains of: nothing suspected, nothing measured. */
  LoopView view(Loop loop, String title) {
    return view(loop, title, Optional.empty(), List.of());
  }

  private LoopView view(Loop loop, String title, Optional<Findings> known, List<Reading> readings) {
    Findings findings = known.orElse(Findings.NONE);
    Map<String, Double> belief = new HashMap<>();
    findings.parts().forEach(p -> belief.put(p.part(), p.belief()));
    List<LoopView.PieceView> pieces = new ArrayList<>();
    for (Loop.Piece piece : loop.pieces()) {
      Part part = vehicle.requirePart(piece.part());
      boolean cleared = findings.cleared().containsKey(part.id());
      boolean condemned =
          findings.group().contains(part.id())
              || findings.conclusions().stream()
                  .anyMatch(
                      c ->
                          c instanceof Conclusion.CondemnedBy k
                              && k.suspect().part().equals(part.id()));
      List<Integer> by = new ArrayList<>();
      if (cleared) {
        findings.cleared().get(part.id()).forEach(w -> w.readings().forEach(by::add));
      }
      pieces.add(
          new LoopView.PieceView(
              part.id(),
              part.title(),
              part.label(),
              part.kind(),
              own(part, piece.in()),
              own(part, piece.out()),
              detail(part),
              condemned
                  ? LoopView.Standing.CONDEMNED
                  : cleared ? LoopView.Standing.CLEARED : LoopView.Standing.HELD,
              belief.getOrDefault(part.id(), 0.0),
              by.stream().distinct().sorted().toList()));
    }
    List<LoopView.Stair> stairs = new ArrayList<>();
    for (int node : loop.nodes()) {
      stairs.add(stair(node, readings));
    }
    List<LoopView> branches = new ArrayList<>();
    for (Loop branch : loop.branches()) {
      branches.add(view(branch, words.part(branch.title()), known, readings));
    }
    return new LoopView(title, pieces, stairs, branches);
  }

  private Optional<TerminalRef> own(Part part, int node) {
    return bench.network().terminals(node).stream()
        .filter(t -> t.part().equals(part.id()))
        .findFirst();
  }

  private LoopView.Stair stair(int node, List<Reading> readings) {
    TerminalRef post = vehicle.groundedPost();
    List<TerminalRef> terminals = bench.network().terminals(node);
    TerminalRef point =
        terminals.stream()
            .filter(t -> vehicle.access(t).reachable())
            .findFirst()
            .orElse(terminals.isEmpty() ? post : terminals.get(0));
    boolean reachable = terminals.stream().anyMatch(t -> vehicle.access(t).reachable());
    Band healthy = new Band(0, 0, Band.Unit.VOLT);
    if (!terminals.contains(post)) {
      double[] band = this.healthy.apply(Check.measure(CheckKind.VOLTS, point, post, on));
      healthy = new Band(band[0], band[1], Band.Unit.VOLT);
    }
    List<LoopView.Measured> measured = new ArrayList<>();
    for (Reading r : readings) {
      if (r.check().kind() == CheckKind.VOLTS
          && r.check().setting().equals(on)
          && r.check().black().filter(post::equals).isPresent()
          && r.check().red().filter(terminals::contains).isPresent()
          && r.value() instanceof Reading.Value.Number n) {
        measured.add(new LoopView.Measured(r.id(), n.value()));
      }
    }
    List<TerminalRef> others = new ArrayList<>(terminals);
    others.remove(point);
    return new LoopView.Stair(point, others, healthy, measured, reachable);
  }

  /** Size or rating in words; empty for kinds that have none. */
  static String detail(Part part) {
    PartSpec spec = part.spec();
    if (spec instanceof PartSpec.Wire w) {
      return Units.inUse().size(w.size())
          + ", "
          + Units.inUse().length(w.metres().about(), 1)
          + (w.colour().isEmpty() ? "" : " " + w.colour());
    }
    if (spec instanceof PartSpec.Fuse f) {
      return plain(f.amps()) + " A";
    }
    if (spec instanceof PartSpec.Lamp l) {
      return plain(l.watts().about()) + " W";
    }
    if (spec instanceof PartSpec.DualLamp d) {
      return plain(d.firstWatts().about()) + "/" + plain(d.secondWatts().about()) + " W";
    }
    if (spec instanceof PartSpec.Motor m) {
      return plain(m.amps().about()) + " A";
    }
    if (spec instanceof PartSpec.PlainLoad p) {
      return plain(p.amps().about()) + " A";
    }
    return "";
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }
}
