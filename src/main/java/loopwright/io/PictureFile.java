package loopwright.io;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import loopwright.casework.Picture;

/**
 * Reads a picture no larger than a page can show. Of a huge one only every so many pixels are ever
 * held; one of more than {@link #MOST_PIXELS} is not read at all.
 */
public final class PictureFile {
  /** Longest side of what is shown, in pixels: 170 in an inch over the width of a page. */
  static final int SIDE = 1_200;

  /** Largest picture read, in pixels: twice what a good phone takes. */
  static final long MOST_PIXELS = 100_000_000;

  private PictureFile() {}

  /** The picture; empty if the file can't be read or holds none. */
  public static Optional<Picture> read(Path file) {
    try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
      Iterator<ImageReader> readers = in == null ? null : ImageIO.getImageReaders(in);
      if (readers == null || !readers.hasNext()) {
        return Optional.empty();
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        return read(reader, ExifTurn.of(file));
      } finally {
        reader.dispose();
      }
    } catch (IOException | RuntimeException e) {
      // Readers meet a spoilt picture with either.
      return Optional.empty();
    }
  }

  private static Optional<Picture> read(ImageReader reader, ExifTurn turn) throws IOException {
    int width = reader.getWidth(0);
    int height = reader.getHeight(0);
    if ((long) width * height > MOST_PIXELS) {
      return Optional.empty();
    }
    int step = Math.max(1, Math.max(width, height) / (2 * SIDE));
    ImageReadParam param = reader.getDefaultReadParam();
    param.setSourceSubsampling(step, step, 0, 0);
    BufferedImage shown = fitted(reader.read(0, param), turn);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageIO.write(shown, "jpg", out);
    }
    return Optional.of(new Picture(bytes.toByteArray(), shown.getWidth(), shown.getHeight()));
  }

  /** Turned upright, no longer than {@link #SIDE}, on white. */
  private static BufferedImage fitted(BufferedImage read, ExifTurn turn) {
    double scale = Math.min(1, (double) SIDE / Math.max(read.getWidth(), read.getHeight()));
    int width = Math.max(1, (int) Math.round(scale * read.getWidth()));
    int height = Math.max(1, (int) Math.round(scale * read.getHeight()));
    BufferedImage fitted =
        turn.swapsSides()
            ? new BufferedImage(height, width, BufferedImage.TYPE_INT_RGB)
            : new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D on = fitted.createGraphics();
    on.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    on.setColor(Color.WHITE);
    on.fillRect(0, 0, fitted.getWidth(), fitted.getHeight());
    AffineTransform place = turn.upright(width, height);
    place.scale((double) width / read.getWidth(), (double) height / read.getHeight());
    on.drawImage(read, place, null);
    on.dispose();
    return fitted;
  }
}
