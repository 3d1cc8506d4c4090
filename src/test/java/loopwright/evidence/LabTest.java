package loopwright.evidence;

import java.util.*;
import loopwright.bench.HiddenTruth;
import loopwright.casework.*;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.*;
import loopwright.solver.*;
import org.junit.jupiter.api.Test;

class LabTest {
  @Test
  void lab() throws Exception {
    Vehicle v = Bench.vehicle("pumper");
    Network net = Bench.network(v);
    long t0 = System.nanoTime();
    Bench.rules();
    System.out.printf("rules %.0f ms%n", (System.nanoTime() - t0) / 1e6);
    for (String[] f : new String[][] {{"G4", "on-paint"}, {"L5", "burnt-out"}, {"F3","blown"}}) {
      Part part = v.requirePart(f[0]);
      Failure failure = Failure.of(net, part, Bench.KNOWLEDGE.faults()).stream().filter(x -> x.name().equals(f[1])).findFirst().orElseThrow();
      t0 = System.nanoTime();
      FindCase c = Bench.desk().open(new CaseDesk.NewCase(v, "pumper", "beacon", Optional.empty(), ComplaintKind.DEAD, Context.IN_SERVICE, "basic"), CaseDesk.Progress.SILENT);
      System.out.printf("open %.0f ms%n", (System.nanoTime() - t0) / 1e6);

      HiddenTruth truth = new HiddenTruth(net, List.of(failure), Map.of(failure, 1200.0), Bench.KNOWLEDGE.meter("basic").orElseThrow(), HiddenTruth.Draw.WITHIN, new Random(1));
      truth.run(v.circuit("beacon").orElseThrow().onSetting());
      Player p = new Player(v, truth);
      CaseView view = c.view();
      int n = 0;
      while (view.move() == CaseView.Move.CHECK && n++ < 20) {
        CheckView k = view.next().orElseThrow();
        Answer a = p.answer(k);
        System.out.println("  " + k.id() + "  healthy " + k.healthyWords() + "  -> " + a + " | " + k.because());
        t0 = System.nanoTime();
        view = c.answer(k.id(), a);
        System.out.printf("     %.0f ms %s%n", (System.nanoTime() - t0) / 1e6, view.said());
        for (SuspectView s : view.suspects().subList(0, Math.min(4, view.suspects().size()))) System.out.printf("        %.3f %s %s%n", s.belief(), s.title(), s.modes());
      }
      System.out.println(view.status() + " " + view.move() + " " + view.repair());
    }
  }
}
