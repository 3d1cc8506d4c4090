package loopwright.generated;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * Programs killed by the system at random moments, so that nothing of them runs any more.
 *
 * <p>{@code -Dloopwright.kills=1000} is how many each test kills.
 */
public final class Killed {
  private static final int KILLS = Integer.getInteger("loopwright.kills", 12);

  /** The moment is thrown anew within so long behind a line. */
  private static final long LONGEST_MICROS = 2_000;

  private Killed() {}

  /** How many to kill. */
  public static int times() {
    return KILLS;
  }

  /** A program of its own on the class path of the tests. */
  public static Process program(Class<?> program, String... arguments) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                program.getName()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  /**
   * Runs a program, sends it all lines at once and kills it some moment after one of its own.
   *
   * @param program has a {@code main}
   * @param lines what is sent to it
   * @param most it is killed after one of its first lines, so many
   * @return the lines that came from it whole, up to the kill
   */
  public static List<String> after(
      Class<?> program, List<String> arguments, List<String> lines, int most, Random dice)
      throws IOException, InterruptedException {
    Process process = program(program, arguments.toArray(String[]::new));
    Thread sender = new Thread(() -> send(process.getOutputStream(), lines), "sender");
    sender.start();
    int last = 1 + dice.nextInt(most);
    long micros = (long) (dice.nextDouble() * LONGEST_MICROS);
    StringBuilder told = new StringBuilder();
    try (BufferedReader from =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      int count = 0;
      int c;
      while (count < last && (c = from.read()) >= 0) {
        told.append((char) c);
        count += c == '\n' ? 1 : 0;
      }
      long end = System.nanoTime() + TimeUnit.MICROSECONDS.toNanos(micros);
      while (System.nanoTime() < end) {
        Thread.onSpinWait();
      }
      // The process itself would close our end, and what it had told would be lost.
      process.toHandle().destroyForcibly();
      // What it had told by then has been told.
      while ((c = from.read()) >= 0) {
        told.append((char) c);
      }
    }
    process.waitFor();
    sender.join();
    List<String> whole = new ArrayList<>(List.of(told.toString().split("\n", -1)));
    whole.remove(whole.size() - 1);
    return whole;
  }

  private static void send(OutputStream to, List<String> lines) {
    try (to) {
      for (String line : lines) {
        to.write((line + "\n").getBytes(StandardCharsets.UTF_8));
        to.flush();
      }
    } catch (IOException e) {
      // It was killed before it had read them all.
    }
  }
}
