package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.generated.Killed;
import loopwright.io.journal.FileCaseStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A conversation in a program of its own, killed in the middle. */
class KillTest {
  @TempDir Path folder;

  @Test
  void whatWasAnsweredIsOnDiskWhenTheProgramIsKilled() throws Exception {
    for (int answered = 0; answered <= 3; answered++) {
      Path cases = folder.resolve("after-" + answered);
      Process process = Killed.program(Program.class, cases.toString());
      try (BufferedReader from =
              new BufferedReader(
                  new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
          OutputStream to = process.getOutputStream()) {
        assertThat(from.readLine()).contains("\"ready\"");
        assertThat(from.readLine()).contains("\"state\"");
        for (int i = 1; i <= answered; i++) {
          String line = reading(i) + "\n";
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

  private static String reading(int i) {
    return "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"G4.lug\",\"black\":\"BATT.neg\","
        + "\"value\":\"12."
        + i
        + " V\"}";
  }

  @Test
  void aProgramKilledAtAnyMomentKeepsEveryReadingThatWasAnswered() throws Exception {
    Random dice = new Random(1_968);
    int most = 40;
    List<String> lines = IntStream.rangeClosed(1, 200).mapToObj(KillTest::reading).toList();
    int answered = 0;
    int torn = 0;
    for (int kill = 0; kill < Killed.times(); kill++) {
      Path cases = folder.resolve("kill-" + kill);
      List<String> told = Killed.after(Program.class, List.of(cases.toString()), lines, most, dice);
      // The first two lines come unasked.
      int known = Math.max(0, told.size() - 2);
      CaseStore store = new FileCaseStore(cases);
      CaseStore.Read kept = store.read("beacon-1");
      int readings = kept.events().size() - 1;
      assertThat(readings).as("kill %d, with %d answered", kill, known).isBetween(known, 200);
      for (int i = 1; i <= readings; i++) {
        CaseEvent.Taken taken = (CaseEvent.Taken) kept.events().get(i);
        assertThat(taken.reading()).isEqualTo(i);
        assertThat(taken.answer()).isEqualTo(new Answer.Text("12." + i + " V"));
      }
      assertThat(kept.missing()).matches("|The last line was cut off while it was written .*");
      TestWorld again = new TestWorld(store, reading(readings + 1));
      assertThat(again.run("find", "--resume", "beacon-1", "--jsonl")).isZero();
      assertThat(again.outLines().get(2)).contains("\"seq\":" + (readings + 1) + ",");
      answered += known;
      torn += kept.missing().isEmpty() ? 0 : 1;
    }
    System.out.printf(
        "%d kills: %d readings answered, none lost; %d last lines cut off%n",
        Killed.times(), answered, torn);
  }

  /** The program that is killed: scripted cases on a real disk. */
  static final class Program {
    private Program() {}

    public static void main(String[] args) {
      CaseStore cases = new FileCaseStore(Path.of(args[0]));
      TestWorld world = new TestWorld(cases, System.in, System.out, System.err);
      System.exit(world.run("find", "pumper", "--complaint", "beacon dead", "--jsonl"));
    }
  }
}
