package loopwright.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/** What making packages asks of the system. */
final class Commands {
  private static final long MINUTES = 5;

  private Commands() {}

  /** Runs a tool of this Java. */
  static void tool(String name, String... arguments) {
    ToolProvider tool =
        ToolProvider.findFirst(name)
            .orElseThrow(() -> new IllegalStateException("this Java has no " + name));
    int code = tool.run(System.out, System.err, arguments);
    if (code != 0) {
      throw new IllegalStateException(name + " ended with " + code);
    }
  }

  /** Runs a program, its output with ours. */
  static void run(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).inheritIO().start();
    if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new IllegalStateException(command.get(0) + " didn't end");
    }
    if (process.exitValue() != 0) {
      throw new IllegalStateException(command.get(0) + " ended with " + process.exitValue());
    }
  }

  /** Whether a program lies on the path. */
  static boolean found(String program) {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  static boolean windows() {
    return System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("win");
  }

  static boolean linux() {
    return System.getProperty("os.name").equals("Linux");
  }

  /** What lies in a folder, by name. */
  static Stream<Path> list(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList().stream();
    }
  }

  /** Removes a folder with all that is in it, if it is there. */
  static void delete(Path folder) throws IOException {
    if (Files.notExists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
