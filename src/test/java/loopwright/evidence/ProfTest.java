package loopwright.evidence;

import java.util.*;
import loopwright.casework.*;
import loopwright.diagnosis.ComplaintKind;
import loopwright.knowledge.Context;
import loopwright.model.*;
import org.junit.jupiter.api.Test;

class ProfTest {
  @Test
  void prof() throws Exception {
    Vehicle v = Bench.vehicle("pumper");
    Bench.rules();
    Thread main = Thread.currentThread();
    Map<String, Integer> self = new HashMap<>(), incl = new HashMap<>();
    boolean[] on = {false};
    Thread t =
        new Thread(
            () -> {
              while (true) {
                try {
                  Thread.sleep(5);
                } catch (InterruptedException e) {
                  return;
                }
                if (!on[0]) continue;
                StackTraceElement[] st = main.getStackTrace();
                Set<String> seen = new HashSet<>();
                if (st.length > 0)
                  self.merge(st[0].getClassName() + "." + st[0].getMethodName(), 1, Integer::sum);
                for (StackTraceElement e : st)
                  if (e.getClassName().startsWith("loopwright")
                      && seen.add(
                          e.getClassName() + "." + e.getMethodName() + ":" + e.getLineNumber()))
                    incl.merge(
                        e.getClassName().replace("loopwright.", "")
                            + "."
                            + e.getMethodName()
                            + ":"
                            + e.getLineNumber(),
                        1,
                        Integer::sum);
              }
            });
    t.setDaemon(true);
    t.start();
    for (int i = 0; i < 3; i++) {
      on[0] = i == 2;
      double c0 = LabTest.cpu();
      Bench.desk()
          .open(
              new CaseDesk.NewCase(
                  v,
                  "pumper",
                  "beacon",
                  Optional.empty(),
                  ComplaintKind.DEAD,
                  Context.IN_SERVICE,
                  "basic"),
              CaseDesk.Progress.SILENT)
          .close();
      System.out.printf("open %.0f%n", LabTest.cpu() - c0);
    }
    on[0] = false;
    self.entrySet().stream()
        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
        .limit(15)
        .forEach(System.out::println);
    System.out.println("--");
    incl.entrySet().stream()
        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
        .limit(45)
        .forEach(System.out::println);
  }
}
