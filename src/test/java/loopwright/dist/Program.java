package loopwright.dist;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/** A program in a home and on a display of its own; nothing of the user's is read or written. */
final class Program implements AutoCloseable {
  private static final Pattern READY = Pattern.compile("ready to type after (\\d+) ms");
  private static final int SECONDS = 60;
  private static final int LOOK = 3;

  private final Path folder;
  private final Path output;
  private final List<Process> running = new ArrayList<>();
  private String display = "";

  Program(Path folder) throws IOException {
    this.folder = folder;
    this.output = folder.resolve("output.txt");
  }

  /** Opens a display that nobody sees. */
  void openDisplay() throws Exception {
    Path number = folder.resolve("display.txt");
    Process server =
        new ProcessBuilder(
                "Xvfb", "-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp")
            .redirectOutput(number.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    running.add(server);
    until(() -> Files.readString(number).endsWith("\n"), "a display");
    display = ":" + Files.readString(number).strip();
  }

  /** Starts it and lets it tell when somebody could type. */
  Process start(List<String> command) throws IOException {
    ProcessBuilder builder = builder(command.toArray(String[]::new));
    builder.redirectErrorStream(true).redirectOutput(output.toFile());
    builder
        .environment()
        .put(
            "JAVA_TOOL_OPTIONS",
            "-Dprism.order=sw -Dloopwright.ready=" + System.currentTimeMillis());
    Process process = builder.start();
    running.add(process);
    return process;
  }

  /** Waits for a window and says its number. */
  String window(String name) throws Exception {
    String[] found = {""};
    until(
        () -> {
          Process search =
              builder("xdotool", "search", "--onlyvisible", "--name", "^" + name + "$").start();
          found[0] = new String(search.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
          return !found[0].isBlank();
        },
        "a window named " + name);
    return found[0].lines().findFirst().orElseThrow();
  }

  /** Waits until the program says that it would take a key, and how many milliseconds that took. */
  long untilReady() throws Exception {
    until(() -> READY.matcher(Files.readString(output)).find(), "ready to type");
    Matcher said = READY.matcher(Files.readString(output));
    assertThat(said.find()).isTrue();
    return Long.parseLong(said.group(1));
  }

  /** Presses a key and looks what came of it, as a person does. */
  void key(String window, String key) throws Exception {
    said("xdotool", "windowfocus", window, "key", key);
    TimeUnit.SECONDS.sleep(LOOK);
  }

  /** Types letters and looks what came of it. */
  void type(String window, String letters) throws Exception {
    said("xdotool", "windowfocus", window, "type", letters);
    TimeUnit.SECONDS.sleep(LOOK);
  }

  /** Keeps a picture of the display in {@code target/screens} and sees that something is on it. */
  void picture(String name) throws Exception {
    Path file = Files.createDirectories(Path.of("target", "screens")).resolve(name + ".png");
    said("import", "-window", "root", file.toString());
    BufferedImage image = ImageIO.read(file.toFile());
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y += 2) {
      for (int x = 0; x < image.getWidth(); x += 2) {
        colours.add(image.getRGB(x, y));
      }
    }
    assertThat(colours).as("colours on " + file).hasSizeGreaterThan(20);
  }

  /** What a program says that ends well. */
  String said(Path launcher, String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of(arguments));
    command.add(0, launcher.toString());
    return said(command.toArray(String[]::new));
  }

  /** What a program says that ends well. */
  String said(String... command) throws Exception {
    File into = Files.createTempFile(folder, "said", ".txt").toFile();
    Process process = builder(command).redirectErrorStream(true).redirectOutput(into).start();
    running.add(process);
    assertThat(process.waitFor(SECONDS, TimeUnit.SECONDS)).as(String.join(" ", command)).isTrue();
    String said = Files.readString(into.toPath());
    assertThat(process.exitValue()).as(said).isZero();
    return said;
  }

  /** Waits for something. */
  void until(Callable<Boolean> condition, String what) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (!condition.call()) {
      assertThat(System.nanoTime()).as(what + "; the program said " + soFar()).isLessThan(end);
      TimeUnit.MILLISECONDS.sleep(50);
    }
  }

  private String soFar() throws IOException {
    return Files.exists(output) ? Files.readString(output) : "nothing";
  }

  private ProcessBuilder builder(String... command) {
    ProcessBuilder builder = new ProcessBuilder(command).directory(new File("").getAbsoluteFile());
    Map<String, String> environment = builder.environment();
    environment.put("DISPLAY", display);
    environment.put("HOME", folder.resolve("home").toString());
    environment.put("XDG_DATA_HOME", folder.resolve("data").toString());
    environment.put("XDG_CONFIG_HOME", folder.resolve("config").toString());
    environment.put("XDG_CACHE_HOME", folder.resolve("cache").toString());
    return builder;
  }

  @Override
  public void close() {
    // The display last.
    for (int i = running.size() - 1; i >= 0; i--) {
      running.get(i).destroyForcibly();
    }
  }
}
