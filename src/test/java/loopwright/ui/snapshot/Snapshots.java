package loopwright.ui.snapshot;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javax.imageio.ImageIO;
import org.testfx.util.WaitForAsyncUtils;

/** Pictures of screens, under {@code target/screens}. */
public final class Snapshots {
  private static final Path FOLDER = Path.of("target", "screens");

  private Snapshots() {}

  /** Takes a picture of a scene as it stands. */
  public static WritableImage take(Scene scene, String name) {
    WaitForAsyncUtils.waitForFxEvents(3);
    // A card that finds its room short sets itself tighter on the next pulses.
    WaitForAsyncUtils.sleep(80, TimeUnit.MILLISECONDS);
    return takeSettled(scene, name);
  }

  /** Takes a picture of a scene that is laid out already. */
  static WritableImage takeSettled(Scene scene, String name) {
    WritableImage image =
        WaitForAsyncUtils.waitForAsyncFx(
            20_000,
            () -> {
              scene.getRoot().applyCss();
              scene.getRoot().layout();
              return scene.snapshot(null);
            });
    try {
      Files.createDirectories(FOLDER);
      ImageIO.write(
          SwingFXUtils.fromFXImage(image, null), "png", FOLDER.resolve(name + ".png").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return image;
  }
}
