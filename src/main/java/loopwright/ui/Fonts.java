package loopwright.ui;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import javafx.scene.text.Font;

/** The typeface that comes with the program; made to be told apart at a distance. */
public final class Fonts {
  /** Name of the family. */
  public static final String FAMILY = "Atkinson Hyperlegible Next";

  private static boolean loaded;

  private Fonts() {}

  /** Loads the typeface once. */
  public static synchronized void load() {
    if (loaded) {
      return;
    }
    for (String file : new String[] {"Regular", "Bold"}) {
      String path = "/loopwright/ui/fonts/AtkinsonHyperlegibleNext-" + file + ".ttf";
      try (InputStream in = Fonts.class.getResourceAsStream(path)) {
        if (in == null || Font.loadFont(in, 16) == null) {
          throw new IllegalStateException("typeface can't be read: " + path);
        }
      } catch (IOException e) {
        throw new UncheckedIOException("typeface can't be read: " + path, e);
      }
    }
    loaded = true;
  }
}
