package loopwright.dist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * How fast the built program starts, held against a bare window of the same Java in the same run by
 * turns; what it takes of memory and, while nobody does anything, of a processor. The table goes to
 * {@code target/evidence/start.txt}. Seconds are not judged: they say as much about what else the
 * machine does.
 */
@EnabledIfSystemProperty(
    named = "loopwright.dist",
    matches = ".+",
    disabledReason = "no packages were made; mvn -Ppackage makes them")
class StartIT {
  private static final int ROUNDS = Integer.getInteger("loopwright.starts", 3);
  private static final int IDLE_SECONDS = 60;
  private static final int SETTLING_SECONDS = 20;
  private static final int MOST_MEGABYTES = 300;

  private static final Path IMAGE =
      Path.of(System.getProperty("loopwright.dist", "target/dist"), "loopwright");

  @TempDir Path folder;

  @Test
  void itStartsNotMuchLaterThanABareWindowAndThenRests() throws Exception {
    for (String needed : List.of("Xvfb", "xdotool")) {
      assumeTrue(
          Commands.linux() && Commands.found(needed),
          "only measured where " + needed + " is there");
    }
    List<Long> bare = new ArrayList<>();
    List<Long> whole = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      bare.add(ready("bare" + round, bareWindow()));
      whole.add(ready("whole" + round, List.of(launcher())));
    }
    String table =
        "ready to type, ms      best  median  of %d%nbare window          %6d  %6d%nLoopwright           %6d  %6d%nratio                %6.2f  %6.2f%n"
            .formatted(
                ROUNDS,
                best(bare),
                median(bare),
                best(whole),
                median(whole),
                (double) best(whole) / best(bare),
                (double) median(whole) / median(bare));
    table += atWork();
    Files.writeString(
        Files.createDirectories(Path.of("target", "evidence")).resolve("start.txt"), table);
    System.out.print(table);
    assertThat((double) median(whole) / median(bare)).as(table).isLessThan(6);
  }

  /** Memory with the first demo vehicle open, then with a case on it, then a minute's rest. */
  private String atWork() throws Exception {
    try (Program program = new Program(Files.createDirectories(folder.resolve("work")))) {
      program.openDisplay();
      Process running = program.start(List.of(launcher()));
      program.untilReady();
      String window = program.window("Loopwright");
      program.key(window, "Return");
      // The rules are compiled meanwhile, and what that left free is given back.
      TimeUnit.SECONDS.sleep(SETTLING_SECONDS);
      long open = residentMegabytes(running);
      program.key(window, "F3");
      program.type(window, "horn dead");
      program.key(window, "Return");
      Path cases = folder.resolve("work/data/loopwright/cases");
      program.until(() -> Files.exists(cases), "a case is kept");
      // What follows on each result is got ready meanwhile.
      TimeUnit.SECONDS.sleep(SETTLING_SECONDS);
      long ticks = ticks(running);
      TimeUnit.SECONDS.sleep(IDLE_SECONDS);
      double idle = (ticks(running) - ticks) / (double) IDLE_SECONDS;
      long megabytes = residentMegabytes(running);
      String line =
          "resident, MB: %d with a vehicle open, %d with a case%nidle over %d s: %.2f %% of one processor%n"
              .formatted(open, megabytes, IDLE_SECONDS, idle);
      assertThat(open).as(line).isLessThan(MOST_MEGABYTES);
      assertThat(idle).as(line).isLessThan(2);
      return line;
    }
  }

  private long ready(String name, List<String> command) throws Exception {
    try (Program program = new Program(Files.createDirectories(folder.resolve(name)))) {
      program.openDisplay();
      program.start(command);
      return program.untilReady();
    }
  }

  private static String launcher() {
    return IMAGE.resolve("bin").resolve("loopwright").toString();
  }

  private static List<String> bareWindow() {
    return List.of(
        IMAGE.resolve("lib/runtime/bin/java").toString(),
        "-XX:+UseSerialGC",
        "-cp",
        "target/test-classes:target/classes",
        "loopwright.app.BareWindow");
  }

  private static long best(List<Long> values) {
    return values.stream().mapToLong(v -> v).min().orElseThrow();
  }

  private static long median(List<Long> values) {
    return values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
  }

  /** Processor time so far in hundredths of a second: fields 14 and 15 of proc(5)'s stat. */
  private static long ticks(Process process) throws Exception {
    String stat = Files.readString(Path.of("/proc", Long.toString(process.pid()), "stat"));
    // The second field, a name in brackets, may hold blanks.
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return Long.parseLong(fields[11]) + Long.parseLong(fields[12]);
  }

  private static long residentMegabytes(Process process) throws Exception {
    return Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
        .findFirst()
        .orElseThrow();
  }
}
