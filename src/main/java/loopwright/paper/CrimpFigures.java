package loopwright.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loopwright.knowledge.WireEnds;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** Terminals with more than one wire: in one crimp, in one cavity, on one stud. */
final class CrimpFigures {

  /** How many times the copper of its fellow a wire in one crimp may have. Common practice. */
  private static final double UNLIKE = 5;

  /** Size from which a wire ends in a ring on a stud or bolt, in mm2. Common practice. */
  private static final double RING = 8;

  private final Plan plan;

  CrimpFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    Map<TerminalRef, List<Part>> wires = new LinkedHashMap<>();
    for (Part part : plan.vehicle().parts()) {
      if (part.spec() instanceof PartSpec.Wire w) {
        wires.computeIfAbsent(w.from(), k -> new ArrayList<>()).add(part);
        wires.computeIfAbsent(w.to(), k -> new ArrayList<>()).add(part);
      }
    }
    wires.forEach(this::add);
  }

  private void add(TerminalRef at, List<Part> wires) {
    if (wires.size() < 2) {
      return;
    }
    PartKind kind = plan.part(at.part()).kind();
    List<String> ids = wires.stream().map(Part::id).toList();
    double thin = wires.stream().mapToDouble(CrimpFigures::mm2).min().orElseThrow();
    double thick = wires.stream().mapToDouble(CrimpFigures::mm2).max().orElseThrow();
    if (kind == PartKind.GROUND
        || kind == PartKind.BATTERY
        || kind == PartKind.BODY
        || thick >= RING) {
      count(at, Figure.Kind.RINGS, ids, WireEnds.ON_A_STUD);
      return;
    }
    count(at, Figure.Kind.CRIMPED, ids, WireEnds.IN_ONE_CRIMP);
    plan.add(
        new Figure(
            at.part(),
            Figure.Kind.UNLIKE_CRIMPED,
            thick / thin,
            UNLIKE,
            Setting.REST,
            ids,
            List.of(at.terminal())));
  }

  private static double mm2(Part wire) {
    return ((PartSpec.Wire) wire.spec()).size().mm2();
  }

  private void count(TerminalRef at, Figure.Kind kind, List<String> wires, int most) {
    plan.add(
        new Figure(
            at.part(), kind, wires.size(), most, Setting.REST, wires, List.of(at.terminal())));
  }
}
