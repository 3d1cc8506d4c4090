package loopwright.casework.practise;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import loopwright.casework.LoopView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.Sketch;
import loopwright.diagnosis.CheckKind;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Three kinds of learner. */
enum Robots {
  /** Puts the leads anywhere, the meter on anything, and guesses. */
  RANDOM {
    @Override
    void play(Drilling drilling, long seed) throws Problem {
      Random random = new Random(seed);
      List<TerminalRef> points = reachable(drilling);
      Setting dead = drilling.on().without(drilling.vehicle().battery().id());
      List<Setting> settings = List.of(drilling.on(), Setting.REST, dead);
      List<PartView> parts = drilling.parts();
      for (int n = 0; n < 8; n++) {
        Setting setting = settings.get(random.nextInt(settings.size()));
        TerminalRef red = points.get(random.nextInt(points.size()));
        TerminalRef black = points.get(random.nextInt(points.size()));
        int what = random.nextInt(6);
        if (what == 5 && !red.equals(black)) {
          drilling.amps(red, black, setting);
        } else if (what < 3 && !red.equals(black)) {
          CheckKind kind = List.of(CheckKind.VOLTS, CheckKind.VOLTS, CheckKind.OHMS).get(what);
          drilling.take(measure(kind, red, black, setting), Optional.empty());
        } else {
          PartView part = parts.get(random.nextInt(parts.size()));
          if (part.checks().containsKey(CheckKind.LOOK)) {
            drilling.take(look(part.subject(), setting), Optional.empty());
          }
        }
      }
      List<String> circuit = new ArrayList<>(circuit(drilling));
      Collections.shuffle(circuit, random);
      accuse(drilling, circuit, 3);
    }
  },
  /** Reads volts from the battery along the way, and accuses what lies before the first bad one. */
  WALKER {
    @Override
    void play(Drilling drilling, long seed) throws Problem {
      Vehicle vehicle = drilling.vehicle();
      TerminalRef post = vehicle.groundedPost();
      List<String> suspects = new ArrayList<>();
      LoopView way = new Sketch(vehicle).of(drilling.circuit()).orElseThrow();
      LoadRef load = vehicle.circuit(drilling.circuit()).orElseThrow().loads().get(0);
      Set<TerminalRef> points = Set.copyOf(reachable(drilling));
      int loadAt = indexOf(way, load.part());
      double feed = 0;
      boolean found = false;
      for (int i = 0; i < way.stairs().size() && !found; i++) {
        if (i > 0) {
          suspects.add(way.pieces().get(i - 1).part());
        }
        Optional<TerminalRef> at = at(way.stairs().get(i), points, post);
        if (at.isEmpty()) {
          continue;
        }
        double volts =
            volts(drilling.take(measure(CheckKind.VOLTS, at.get(), post, drilling.on()), NONE));
        if (i == 0) {
          feed = Math.abs(volts);
        }
        // Before the load the battery's volts should stand, behind it next to none.
        found = i <= loadAt ? Math.abs(volts) < 0.9 * feed : Math.abs(volts) > 0.1 * feed;
        if (!found && i != loadAt) {
          suspects.clear();
        }
        if (found && i > loadAt) {
          // Volts behind the load are lost from there on.
          suspects.clear();
          way.pieces().subList(i, way.pieces().size()).forEach(p -> suspects.add(p.part()));
        }
      }
      accuse(drilling, suspects.isEmpty() ? List.of(load.part()) : suspects, 4);
    }
  },
  /** Follows the plan. */
  PERFECT {
    @Override
    void play(Drilling drilling, long seed) throws Problem {
      PractiseDesk.followPlan(drilling);
    }
  };

  private static final Optional<Expectation> NONE = Optional.empty();

  /** How a load that does what it should is shown. */
  static final String WORKS = "works";

  abstract void play(Drilling drilling, long seed) throws Problem;

  /** Accuses one after the other until the load works. */
  private static void accuse(Drilling drilling, List<String> suspects, int most) throws Problem {
    int tries = 0;
    for (String part : new LinkedHashSet<>(suspects)) {
      if (tries++ >= most) {
        return;
      }
      drilling.accuse(Set.of(part));
      LoadRef load = drilling.vehicle().circuit(drilling.circuit()).orElseThrow().loads().get(0);
      Step seen = drilling.take(look(load.toString(), drilling.on()), NONE);
      if (seen.shown().equals(WORKS)) {
        return;
      }
    }
  }

  private static Optional<TerminalRef> at(
      LoopView.Stair stair, Set<TerminalRef> points, TerminalRef post) {
    List<TerminalRef> there = new ArrayList<>(stair.others());
    there.add(0, stair.point());
    return there.contains(post)
        ? Optional.empty()
        : there.stream().filter(points::contains).findFirst();
  }

  private static int indexOf(LoopView way, String part) {
    return way.pieces().stream().map(LoopView.PieceView::part).toList().indexOf(part);
  }

  private static double volts(Step step) {
    return step.shown().equals("OL") ? 0 : Double.parseDouble(step.shown().split(" ")[0]);
  }

  private static List<TerminalRef> reachable(Drilling drilling) {
    return drilling.points().stream().filter(PointView::reachable).map(PointView::ref).toList();
  }

  private static Set<String> circuit(Drilling drilling) {
    return new Sketch(drilling.vehicle())
        .of(drilling.circuit()).orElseThrow().pieces().stream()
            .map(LoopView.PieceView::part)
            .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  static OwnCheck measure(CheckKind kind, TerminalRef red, TerminalRef black, Setting setting) {
    return new OwnCheck(kind, Optional.of(red), Optional.of(black), Optional.empty(), setting);
  }

  static OwnCheck look(String subject, Setting setting) {
    return new OwnCheck(
        CheckKind.LOOK, Optional.empty(), Optional.empty(), Optional.of(subject), setting);
  }
}
