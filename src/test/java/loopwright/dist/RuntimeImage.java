package loopwright.dist;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/**
 * The Java that goes into a package: the modules that the program needs, JavaFX among them, and an
 * archive of their classes as they lie in memory, which saves a third of the time to start. JavaFX
 * goes in as modules because Java 17 takes classes of a class path from such an archive only as
 * long as nobody moves the folder.
 */
final class RuntimeImage {
  /**
   * What {@code jdeps} finds in the libraries; besides the words and figures of other languages,
   * and jars read as file systems.
   */
  private static final String JDK_MODULES =
      "java.base,java.compiler,java.desktop,java.logging,java.management,java.naming,"
          + "java.scripting,java.sql,jdk.localedata,jdk.unsupported,jdk.unsupported.desktop,"
          + "jdk.zipfs";

  private static final String JAVAFX_MODULES =
      "javafx.base,javafx.controls,javafx.fxml,javafx.graphics,javafx.swing";

  private final Path target;
  private final Path folder;

  /**
   * @param target the build's folder, with the libraries in {@code lib}
   */
  RuntimeImage(Path target) {
    this.target = target;
    this.folder = target.resolve("runtime");
  }

  /** Makes it anew. */
  Path make() throws IOException, InterruptedException {
    Commands.delete(folder);
    Commands.tool(
        "jlink",
        "--module-path",
        String.join(java.io.File.pathSeparator, javafx().map(Path::toString).toList()),
        "--add-modules",
        JDK_MODULES + "," + JAVAFX_MODULES,
        "--include-locales=en,de",
        "--strip-debug",
        "--no-man-pages",
        "--no-header-files",
        "--output",
        folder.toString());
    for (Path jar : javafx().toList()) {
      takeNativeLibraries(jar);
    }
    archiveClasses(classes());
    return folder;
  }

  /** Whether a library lies in this Java and is not needed beside it. */
  static boolean holds(Path jar) {
    return jar.getFileName().toString().startsWith("javafx-");
  }

  private Stream<Path> javafx() throws IOException {
    // Those without the platform in their names are empty.
    return Commands.list(target.resolve("lib"))
        .filter(RuntimeImage::holds)
        .filter(jar -> jar.getFileName().toString().matches(".*\\d-[a-z].*\\.jar"));
  }

  /** Beside Java's own, where JavaFX looks first; else it would unpack them in the user's home. */
  private void takeNativeLibraries(Path jar) throws IOException {
    Path place = folder.resolve(Commands.windows() ? "bin" : "lib");
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : (Iterable<JarEntry>) file.stream()::iterator) {
        if (entry.getName().matches("[^/]+\\.(so|dll|dylib)")) {
          try (InputStream in = file.getInputStream(entry)) {
            Files.copy(in, place.resolve(entry.getName()), StandardCopyOption.REPLACE_EXISTING);
          }
        }
      }
    }
  }

  /** Names of the classes that the window takes, as the Java machine lists them. */
  private List<String> classes() throws IOException, InterruptedException {
    Path list = target.resolve("classes.list");
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:DumpLoadedClassList=" + list,
                "-Dloopwright.home=" + target.resolve("rehearsal"),
                "-cp",
                System.getProperty("java.class.path")));
    command.addAll(List.of(System.getProperty("headless.args").split(" ")));
    command.add(Rehearsal.class.getName());
    Commands.run(command);
    return Files.readAllLines(list);
  }

  /** Lambdas of classes that lie outside this Java make 17.0.15 fail. */
  private static boolean archived(String line) {
    return !line.startsWith("@lambda-proxy")
        || line.matches("@lambda-proxy (java|javax|javafx|jdk|sun|com/sun)/.*");
  }

  private void archiveClasses(List<String> loaded) throws IOException, InterruptedException {
    Path list = target.resolve("runtime-classes.list");
    Files.write(
        list, loaded.stream().filter(RuntimeImage::archived).toList(), StandardCharsets.UTF_8);
    Commands.run(
        List.of(
            folder.resolve("bin").resolve("java").toString(),
            "-Xshare:dump",
            "-Xlog:cds=off",
            "-Xlog:cds+heap=off",
            "-XX:SharedClassListFile=" + list));
  }
}
