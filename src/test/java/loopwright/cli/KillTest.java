package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CircuitLoops;
import loopwright.casework.PaperDesk;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.record.CaseArchive;
import loopwright.evidence.Bench;
import loopwright.io.journal.FileCaseStore;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A conversation in a program of its own, killed in the middle. */
class KillTest {
  @TempDir Path folder;

  @Test
  void whatWasAnsweredIsOnDiskWhenTheProgramIsKilled() throws Exception {
    for (int answered = 0; answered <= 3; answered++) {
      Path cases = folder.resolve("after-" + answered);
      Process process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  Program.class.getName(),
                  cases.toString())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (BufferedReader from =
              new BufferedReader(
                  new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
          OutputStream to = process.getOutputStream()) {
        assertThat(from.readLine()).contains("\"ready\"");
        assertThat(from.readLine()).contains("\"state\"");
        for (int i = 1; i <= answered; i++) {
          String line =
              "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"G4.lug\",\"black\":\"BATT.neg\","
                  + "\"value\":\"12."
                  + i
                  + " V\"}\n";
          to.write(line.getBytes(StandardCharsets.UTF_8));
          to.flush();
          assertThat(from.readLine()).contains("\"seq\":" + i + ",");
        }
        process.destroyForcibly().waitFor();
      }
      CaseStore.Loaded loaded = new FileCaseStore(cases).load("beacon-1");
      loaded.journal().close();
      assertThat(loaded.missing()).isEmpty();
      assertThat(loaded.events()).hasSize(answered + 1);
      for (int i = 1; i <= answered; i++) {
        assertThat(((CaseEvent.Taken) loaded.events().get(i)).reading()).isEqualTo(i);
        assertThat(((CaseEvent.Taken) loaded.events().get(i)).answer().toString())
            .contains("12." + i + " V");
      }
      TestWorld again =
          new TestWorld(new FileCaseStore(cases), "{\"type\":\"why\",\"about\":\"next\"}");
      assertThat(again.run("find", "--resume", "beacon-1", "--jsonl")).isZero();
      assertThat(again.outLines().get(1)).contains("\"seq\":" + answered + ",");
    }
  }

  /** The program that is killed: scripted cases on a real disk. */
  static final class Program {
    private Program() {}

    public static void main(String[] args) {
      ScriptedDesk desk = new ScriptedDesk(new FileCaseStore(Path.of(args[0])));
      CliWorld world =
          new CliWorld() {
            @Override
            public Opening openVehicle(String name) {
              return new Opening.Opened(Shed.pumper(), "pumper", List.of());
            }

            @Override
            public List<String> demoVehicles() {
              return List.of("pumper");
            }

            @Override
            public CaseArchive archive() {
              throw new AssertionError("no kept case is looked at here");
            }

            @Override
            public PaperDesk paperDesk() {
              return Bench.paperDesk();
            }

            @Override
            public GroundDesk groundDesk() {
              return Bench.groundDesk(new Bench.ProofsInMemory());
            }

            @Override
            public ProveDesk proveDesk() {
              return Bench.proveDesk(Bench.desk(), new Bench.ProofsInMemory());
            }

            @Override
            public CaseDesk desk() {
              return desk;
            }

            @Override
            public List<ReadyCase> readyCases() {
              return List.of();
            }

            @Override
            public SimulatedMeter practiceMeter(ReadyCase ready, Vehicle vehicle) {
              throw new AssertionError("no ready-made case is opened here");
            }

            @Override
            public CircuitLoops loops(Vehicle vehicle) {
              throw new AssertionError("no circuit is drawn here");
            }

            @Override
            public InputStream in() {
              return System.in;
            }

            @Override
            public PrintStream out() {
              return System.out;
            }

            @Override
            public PrintStream err() {
              return System.err;
            }

            @Override
            public Clock clock() {
              return Clock.systemUTC();
            }
          };
      System.exit(
          Cli.run(new String[] {"find", "pumper", "--complaint", "beacon dead", "--jsonl"}, world));
    }
  }
}
