package loopwright.casework;

import java.util.Objects;

/**
 * A photo as a page shows it.
 *
 * @param jpeg the picture as a JPEG file
 * @param width in its own pixels
 * @param height in its own pixels
 */
public record Picture(byte[] jpeg, int width, int height) {
  /** Rejects what is no picture. */
  public Picture {
    Objects.requireNonNull(jpeg, "jpeg");
    if (width < 1 || height < 1) {
      throw new IllegalArgumentException("picture of " + width + " by " + height + " pixels");
    }
  }
}
