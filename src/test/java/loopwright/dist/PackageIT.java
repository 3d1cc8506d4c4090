package loopwright.dist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * Starts what {@code mvn -Ppackage} has made: the application folder, and what is in the Debian
 * package, each in a home of its own.
 */
@EnabledIfSystemProperty(
    named = "loopwright.dist",
    matches = ".+",
    disabledReason = "no packages were made; mvn -Ppackage makes them")
class PackageIT {
  private static final Path DIST = Path.of(System.getProperty("loopwright.dist", "target/dist"));

  @TempDir Path folder;
  private Program program;

  @BeforeEach
  void home() throws IOException {
    program = new Program(folder);
  }

  @AfterEach
  void end() {
    program.close();
  }

  @Test
  void theFoldersWindowTakesKeysAndClosesByOne() throws Exception {
    playInTheWindow(image(), "package-folder");
  }

  @Test
  void theDebianPackagesWindowDoesTheSame() throws Exception {
    playInTheWindow(unpacked(), "package-debian");
  }

  @Test
  void aTerminalIsAnsweredByTheFolder() throws Exception {
    assertThat(program.said(image(), "--help")).startsWith("Usage: loopwright");
    assertThat(program.said(image(), "vehicle", "pumper")).contains("Light pumper");
    assertThat(program.said(image(), "check", "tractor")).contains("tractor");
  }

  @Test
  void theDebianPackageIsNamedInTheMenuAndHasAPicture() throws Exception {
    Path launcher = unpacked();
    Path lib = launcher.getParent().resolveSibling("lib");
    assertThat(lib.resolve("loopwright-loopwright.desktop"))
        .content()
        .contains("Name=Loopwright\n")
        .contains("Exec=/opt/loopwright/bin/loopwright\n")
        .contains("Icon=/opt/loopwright/lib/loopwright.png\n")
        .contains("Categories=Education;Science;Electronics;\n")
        .doesNotContain("APPLICATION_");
    assertThat(lib.resolve("loopwright.png")).isNotEmptyFile();
  }

  /** The first demo vehicle, the next look, a complaint; then out. */
  private void playInTheWindow(Path launcher, String picture) throws Exception {
    for (String needed : List.of("Xvfb", "xdotool", "xprop", "import")) {
      assumeTrue(Commands.found(needed), "a window is only tried where " + needed + " is there");
    }
    program.openDisplay();
    Process running = program.start(List.of(launcher.toString()));
    String window = program.window("Loopwright");
    assertThat(program.said("xprop", "-id", window, "WM_NAME")).contains("\"Loopwright\"");
    program.untilReady();
    Path settings = folder.resolve("config").resolve("loopwright").resolve("settings.properties");
    program.key(window, "Return");
    program.until(() -> "pumper".equals(setting(settings, "vehicle")), "the vehicle is open");
    program.key(window, "F9");
    program.until(() -> "NIGHT".equals(setting(settings, "look")), "the look is kept");
    program.key(window, "F3");
    program.type(window, "horn dead");
    program.key(window, "Return");
    Path cases = folder.resolve("data").resolve("loopwright").resolve("cases");
    program.until(() -> anyFileSays(cases, "\"horn\""), "a case about the horn is kept");
    program.picture(picture);
    program.key(window, "ctrl+q");
    assertThat(running.waitFor(60, TimeUnit.SECONDS)).as("closes by its key").isTrue();
    assertThat(running.exitValue()).isZero();
  }

  private static String setting(Path file, String name) throws IOException {
    Properties kept = new Properties();
    if (Files.exists(file)) {
      kept.load(Files.newBufferedReader(file));
    }
    return kept.getProperty(name);
  }

  private static boolean anyFileSays(Path place, String words) throws IOException {
    if (Files.notExists(place)) {
      return false;
    }
    try (Stream<Path> files = Files.walk(place)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (Files.readString(file).contains(words)) {
          return true;
        }
      }
    }
    return false;
  }

  private static Path image() {
    assumeTrue(Commands.linux(), "tried on Linux only");
    return DIST.resolve("loopwright").resolve("bin").resolve("loopwright");
  }

  private Path unpacked() throws Exception {
    assumeTrue(
        Commands.linux() && Commands.found("dpkg-deb") && Commands.found("fakeroot"),
        "a Debian package is only made where dpkg-deb and fakeroot are there");
    try (Stream<Path> made = Files.list(DIST)) {
      Path debian = made.filter(f -> f.toString().endsWith(".deb")).findFirst().orElseThrow();
      Path place = folder.resolve("unpacked");
      Commands.run(List.of("dpkg-deb", "-x", debian.toString(), place.toString()));
      return place.resolve("opt/loopwright/bin/loopwright");
    }
  }
}
