package loopwright.dist;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import javafx.css.Stylesheet;
import loopwright.app.Main;

/**
 * Makes an application folder with its own Java and, where {@code dpkg-deb} and {@code fakeroot}
 * are there, a Debian package of it, in {@code target/dist}. {@code mvn -Ppackage} runs it.
 */
public final class Packages {
  private static final List<String> JAVA_OPTIONS =
      List.of(
          // Some 40 MB less than the usual collector, and its threads don't compete with the
          // window.
          "-XX:+UseSerialGC",
          "-Xms24m",
          "-XX:MaxNewSize=16m",
          "-XX:MinHeapFreeRatio=10",
          "-XX:MaxHeapFreeRatio=20",
          // What the compilers of rules and code leave free is given back; older Javas can't.
          "-XX:+IgnoreUnrecognizedVMOptions",
          "-XX:TrimNativeHeapInterval=5000");

  private final Path target;
  private final String version;
  private final Path dist;

  private Packages(Path target, String version) {
    this.target = target;
    this.version = version.replace("-SNAPSHOT", "");
    this.dist = target.resolve("dist");
  }

  /**
   * @param args the build's folder, the program's version
   */
  public static void main(String[] args) throws Exception {
    new Packages(Path.of(args[0]), args[1]).make();
  }

  private void make() throws IOException, InterruptedException {
    Path runtime = new RuntimeImage(target).make();
    Path staging = stage();
    Commands.delete(dist);
    List<String> folder = new ArrayList<>(about());
    Collections.addAll(
        folder,
        "--type",
        "app-image",
        "--runtime-image",
        runtime.toString(),
        "--input",
        staging.toString(),
        "--main-jar",
        "loopwright.jar",
        "--main-class",
        Main.class.getName(),
        "--icon",
        icon());
    JAVA_OPTIONS.forEach(option -> Collections.addAll(folder, "--java-options", option));
    Commands.tool("jpackage", folder.toArray(String[]::new));
    if (Commands.linux() && Commands.found("dpkg-deb") && Commands.found("fakeroot")) {
      debian();
    } else {
      System.out.println("No Debian package: that takes dpkg-deb and fakeroot.");
    }
  }

  private void debian() {
    List<String> debian = new ArrayList<>(about());
    Collections.addAll(
        debian,
        "--type",
        "deb",
        "--app-image",
        dist.resolve(name()).toString(),
        "--resource-dir",
        Path.of("src", "test", "dist").toString(),
        "--license-file",
        Path.of("src", "main", "resources", "META-INF", "LICENSE").toString(),
        "--linux-deb-maintainer",
        "loopwright@example.org",
        "--linux-menu-group",
        "Education;Science;Electronics;",
        "--linux-app-category",
        "electronics",
        "--linux-shortcut");
    Commands.tool("jpackage", debian.toArray(String[]::new));
  }

  private List<String> about() {
    return List.of(
        "--name",
        name(),
        "--app-version",
        version,
        "--vendor",
        "Loopwright",
        "--copyright",
        "Apache-2.0",
        "--description",
        "Finds electrical faults in home-wired 6, 12 and 24 V vehicles, check by check",
        "--dest",
        dist.toString());
  }

  /** On Linux it is typed in a terminal too. */
  private static String name() {
    return Commands.linux() ? "loopwright" : "Loopwright";
  }

  private String icon() {
    return target.resolve("classes/loopwright/ui/icon.png").toString();
  }

  /** The program and its libraries, but for those that lie in its Java. */
  private Path stage() throws IOException {
    Path staging = target.resolve("staging");
    Commands.delete(staging);
    Files.createDirectories(staging.resolve("lib"));
    readStyles(Files.copy(target.resolve("loopwright.jar"), staging.resolve("loopwright.jar")));
    for (Path jar : Commands.list(target.resolve("lib")).toList()) {
      if (!RuntimeImage.holds(jar)) {
        Files.copy(jar, staging.resolve("lib").resolve(jar.getFileName()));
      }
    }
    return staging;
  }

  /** Lays each style sheet beside itself as the toolkit reads it, which takes the first of both. */
  private void readStyles(Path jar) throws IOException {
    try (FileSystem inside = FileSystems.newFileSystem(jar)) {
      Path styles = inside.getPath("loopwright", "ui");
      for (Path sheet : Commands.list(styles).filter(f -> f.toString().endsWith(".css")).toList()) {
        Path css = target.resolve("classes").resolve(sheet.toString());
        Path read = Files.createTempFile("style", ".bss");
        Stylesheet.convertToBinary(css.toFile(), read.toFile());
        Files.move(
            read, sheet.resolveSibling(sheet.getFileName().toString().replace(".css", ".bss")));
      }
    }
  }
}
