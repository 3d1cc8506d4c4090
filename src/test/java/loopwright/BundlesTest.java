package loopwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Bundles of words: a key that stands twice silently has the words that stand last. */
class BundlesTest {

  /** Properties that remember each key as often as it is read. */
  private static final class Keys extends Properties {
    private static final long serialVersionUID = 1;
    private final transient List<Object> twice = new ArrayList<>();

    @Override
    public synchronized Object put(Object key, Object value) {
      if (containsKey(key)) {
        twice.add(key);
      }
      return super.put(key, value);
    }
  }

  @Test
  void noKeyStandsTwice() throws IOException {
    int read = 0;
    for (String root : List.of("src/main/resources", "knowledge")) {
      try (Stream<Path> files = Files.walk(Path.of(root))) {
        for (Path file : files.filter(f -> f.toString().endsWith(".properties")).toList()) {
          Keys keys = new Keys();
          try (Reader text = Files.newBufferedReader(file)) {
            keys.load(text);
          }
          assertThat(keys.twice).as("%s", file).isEmpty();
          read += keys.size();
        }
      }
    }
    assertThat(read).isGreaterThan(1000);
  }
}
