package loopwright.ui.snapshot;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import javafx.scene.Scene;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import loopwright.io.Png;
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
      write(image, FOLDER.resolve(name + ".png"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return image;
  }

  /** As PNG (ISO/IEC 15948), unfiltered: the toolkit's own writer takes longer than all else. */
  private static void write(WritableImage image, Path file) throws IOException {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] row = new int[width];
    ByteBuffer pixels = ByteBuffer.allocate(height * (1 + 3 * width));
    for (int y = 0; y < height; y++) {
      image.getPixelReader().getPixels(0, y, width, 1, PixelFormat.getIntArgbInstance(), row, 0, 0);
      pixels.put((byte) 0);
      for (int p : row) {
        pixels.put((byte) (p >> 16)).put((byte) (p >> 8)).put((byte) p);
      }
    }
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream deflating = new DeflaterOutputStream(packed, new Deflater(1))) {
      deflating.write(pixels.array());
    }
    ByteBuffer head = ByteBuffer.allocate(13).putInt(width).putInt(height);
    head.put(new byte[] {8, 2, 0, 0, 0});
    try (DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
      out.writeLong(Png.SIGNATURE);
      Png.chunk(out, "IHDR", head.array());
      Png.chunk(out, "IDAT", packed.toByteArray());
      Png.chunk(out, "IEND", new byte[0]);
    }
  }
}
