package loopwright.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The texts of a folder of rules.
 *
 * @param texts text by path below that folder, with {@code /} between the names: {@code
 *     sense/ghost-volts/rule.drl}
 */
public record RuleFiles(SortedMap<String, String> texts) {

  private static final String BUNDLED = "/knowledge/rules";

  /** Most files in a folder, and the largest in bytes: far more than the program's own. */
  private static final int MOST_FILES = 2_000;

  private static final long MOST_BYTES = 50_000;

  /** Copies the map. */
  public RuleFiles {
    texts = Collections.unmodifiableSortedMap(new TreeMap<>(texts));
  }

  /**
   * The files below a folder.
   *
   * @throws UncheckedIOException naming the folder, if it can't be read
   */
  public static RuleFiles inFolder(Path root) {
    SortedMap<String, String> texts = new TreeMap<>();
    try (Stream<Path> paths = Files.walk(root)) {
      for (Path path : (Iterable<Path>) paths.filter(RuleFiles::belongs)::iterator) {
        if (texts.size() == MOST_FILES || Files.size(path) > MOST_BYTES) {
          throw new IOException("it holds more than 2,000 files or one of more than 50 kB");
        }
        String name = root.relativize(path).toString().replace('\\', '/');
        texts.put(name, Files.readString(path, StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("rules folder " + root + " cannot be read", e);
    } catch (UncheckedIOException e) {
      throw new UncheckedIOException("rules folder " + root + " cannot be read", e.getCause());
    }
    return new RuleFiles(texts);
  }

  /**
   * The rules that come with the program, from a folder of classes or from its jar.
   *
   * @throws IllegalStateException if the program was packed without them
   */
  public static RuleFiles bundled() {
    URL url = RuleFiles.class.getResource(BUNDLED);
    if (url == null) {
      throw new IllegalStateException("the program was packed without its rules: " + BUNDLED);
    }
    try {
      URI uri = url.toURI();
      return "jar".equals(uri.getScheme()) ? inJar(uri) : inFolder(Path.of(uri));
    } catch (URISyntaxException e) {
      throw new IllegalStateException("the rules lie at an odd place: " + url, e);
    }
  }

  /**
   * The rules inside a jar.
   *
   * @param folder address of the folder, {@code jar:file:...!/...}
   */
  static RuleFiles inJar(URI folder) {
    String address = folder.toString();
    int cut = address.indexOf("!/");
    Path jar = Path.of(URI.create(address.substring("jar:".length(), cut)));
    // A file system of its own: one that others hold open can be closed under us.
    try (FileSystem inside = FileSystems.newFileSystem(jar)) {
      return inFolder(inside.getPath(address.substring(cut + 1)));
    } catch (IOException e) {
      throw new UncheckedIOException("rules in " + jar + " cannot be read", e);
    }
  }

  /** The same without some folders, named {@code area/slug}. */
  public RuleFiles without(Predicate<String> folders) {
    SortedMap<String, String> kept = new TreeMap<>();
    for (Map.Entry<String, String> entry : texts.entrySet()) {
      int slash = entry.getKey().lastIndexOf('/');
      if (slash < 0 || !folders.test(entry.getKey().substring(0, slash))) {
        kept.put(entry.getKey(), entry.getValue());
      }
    }
    return new RuleFiles(kept);
  }

  /** The same with one text replaced or added. */
  public RuleFiles with(String path, String text) {
    SortedMap<String, String> more = new TreeMap<>(texts);
    more.put(path, text);
    return new RuleFiles(more);
  }

  private static boolean belongs(Path path) {
    String name = String.valueOf(path.getFileName());
    return Files.isRegularFile(path) && (name.endsWith(".drl") || name.endsWith(".properties"));
  }
}
