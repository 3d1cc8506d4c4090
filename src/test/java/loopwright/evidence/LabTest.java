package loopwright.evidence;

import java.lang.management.*;
import java.util.*;
import loopwright.bench.HiddenTruth;
import loopwright.casework.*;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.*;
import loopwright.solver.*;
import org.junit.jupiter.api.Test;

class LabTest {
  static double cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e6;
  }

  @Test
  void lab() throws Exception {
    String name = System.getProperty("lab.vehicle", "pumper");
    Vehicle v = Bench.vehicle(name);
    Network net = Bench.network(v);
    double t0 = cpu();
    Bench.rules();
    System.out.printf("rules %.0f ms%n", cpu() - t0);
    for (String spec :
        System.getProperty("lab.faults", "beacon:G4/on-paint,beacon:L5/burnt-out,beacon:F3/blown")
            .split(",")) {
      String circuit = spec.substring(0, spec.indexOf(':'));
      String part0 = spec.substring(spec.indexOf(':') + 1, spec.indexOf('/'));
      String mode = spec.substring(spec.indexOf('/') + 1);
      Part part = v.requirePart(part0);
      Failure failure =
          Failure.of(net, part, Bench.KNOWLEDGE.faults()).stream()
              .filter(x -> x.name().equals(mode))
              .findFirst()
              .orElseThrow();
      System.out.println("=== " + spec);
      t0 = cpu();
      FindCase c =
          Bench.desk()
              .open(
                  new CaseDesk.NewCase(
                      v,
                      name,
                      circuit,
                      Optional.empty(),
                      ComplaintKind.valueOf(System.getProperty("lab.kind", "DEAD")),
                      Context.IN_SERVICE,
                      "basic"),
                  CaseDesk.Progress.SILENT);
      System.out.printf("open %.0f ms%n", cpu() - t0);
      HiddenTruth truth =
          new HiddenTruth(
              net,
              List.of(failure),
              Map.of(failure, Double.parseDouble(System.getProperty("lab.ohms", "1200"))),
              Bench.KNOWLEDGE.meter("basic").orElseThrow(),
              HiddenTruth.Draw.WITHIN,
              1);
      truth.run(v.circuit(circuit).orElseThrow().onSetting());
      Player p = new Player(v, truth);
      CaseView view = c.view();
      int n = 0;
      while (view.move() == CaseView.Move.CHECK && n++ < 20) {
        CheckView k = view.next().orElseThrow();
        Answer a = p.answer(k);
        System.out.println(
            "  " + k.id() + "  healthy " + k.healthyWords() + "  -> " + a + " | " + k.because());
        t0 = cpu();
        view = c.answer(k.id(), a);
        System.out.printf("     %.0f ms %s%n", cpu() - t0, view.said());
        for (SuspectView s : view.suspects().subList(0, Math.min(4, view.suspects().size())))
          System.out.printf("        %.3f %s %s%n", s.belief(), s.title(), s.modes());
      }
      System.out.println(view.status() + " " + view.move() + " " + view.repair());
    }
  }
}
