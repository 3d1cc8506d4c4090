package loopwright.evidence;

import java.util.*;
import loopwright.model.*;
import loopwright.solver.*;
import org.junit.jupiter.api.Test;

class LabTest {
  @Test
  void lab() throws Exception {
    Vehicle v = Bench.vehicle("pumper");
    Network net = Bench.network(v);
    Setting on = v.circuit("beacon").orElseThrow().onSetting();
    List<Variant> all = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (Part p : v.parts()) for (Failure f : Failure.of(net, p, Bench.KNOWLEDGE.faults())) {
      all.add(Variant.healthy(net).with(f.changes(net, f.continuum().map(c -> Spread.exactly(c.typical())).orElse(Spread.exactly(0)))));
      names.add(p.id() + "/" + f.name());
    }
    System.out.println("failures " + all.size() + " nodes " + net.nodes() + " elements " + net.elements().size());
    for (int rep = 0; rep < 3; rep++) {
      Solver low = Solver.lowRank(net, on);
      Solver full = Solver.full(net);
      long t0 = System.nanoTime();
      for (Variant x : all) low.solve(x, on);
      long t1 = System.nanoTime();
      for (Variant x : all) full.solve(x, on);
      long t2 = System.nanoTime();
      System.out.printf("low %.1f us full %.1f us fallback %.3f%n", (t1 - t0) / 1e3 / all.size(), (t2 - t1) / 1e3 / all.size(), low.fallbackShare());
    }
    double worst = 0; String who = "";
    Solver low = Solver.lowRank(net, on); Solver full = Solver.full(net);
    Map<String,Integer> fb = new TreeMap<>();
    for (int i = 0; i < all.size(); i++) {
      double before = low.fallbackShare();
      OperatingPoint a = low.solve(all.get(i), on), b = full.solve(all.get(i), on);
      for (int n = 0; n < net.nodes(); n++) { double d = Math.abs(a.volts(n) - b.volts(n)); if (d > worst) { worst = d; who = names.get(i) + " node " + net.terminals(n) + " " + a.volts(n) + " " + b.volts(n); } }
    }
    System.out.println("worst " + worst + " " + who);
  }
}
