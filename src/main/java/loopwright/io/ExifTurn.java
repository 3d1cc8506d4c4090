package loopwright.io;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * How a camera was held: quarter turns to the right that bring its picture upright (CIPA DC-008,
 * tag 0112 hex; the mirrored ways, which no camera writes, count as upright).
 */
enum ExifTurn {
  NONE,
  RIGHT,
  HALF,
  LEFT;

  private static final int HEAD = 65_536;
  private static final int APP1 = 0xffe1;
  private static final int SCAN = 0xffda;
  private static final int ORIENTATION = 0x0112;
  private static final int ENTRY = 12;
  private static final String MARK = "Exif\0\0";

  /** The turn that a JPEG file asks for; none for any other file, and where it says none. */
  static ExifTurn of(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return of(ByteBuffer.wrap(in.readNBytes(HEAD)));
    } catch (IndexOutOfBoundsException e) {
      // Cut off, or offsets that lead nowhere.
      return NONE;
    }
  }

  private static ExifTurn of(ByteBuffer jpeg) {
    int at = 2;
    while (at + 4 < jpeg.limit()) {
      int marker = jpeg.getChar(at);
      int length = jpeg.getChar(at + 2);
      if (marker < 0xff00 || marker == SCAN || length < 2) {
        return NONE;
      }
      if (marker == APP1 && length > 2 + MARK.length() + 8) {
        byte[] mark = new byte[MARK.length()];
        jpeg.get(at + 4, mark);
        if (new String(mark, StandardCharsets.ISO_8859_1).equals(MARK)) {
          return inExif(jpeg.position(at + 4 + MARK.length()).slice());
        }
      }
      at += 2 + length;
    }
    return NONE;
  }

  private static ExifTurn inExif(ByteBuffer tiff) {
    tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int directory = tiff.getInt(4);
    int entries = tiff.getChar(directory);
    for (int i = 0; i < entries; i++) {
      int entry = directory + 2 + i * ENTRY;
      if (tiff.getChar(entry) == ORIENTATION) {
        return switch (tiff.getChar(entry + 8)) {
          case 3 -> HALF;
          case 6 -> RIGHT;
          case 8 -> LEFT;
          default -> NONE;
        };
      }
    }
    return NONE;
  }

  boolean swapsSides() {
    return this == RIGHT || this == LEFT;
  }

  /** Brings a picture of these sides upright, its corner at the origin. */
  AffineTransform upright(int width, int height) {
    AffineTransform turn =
        switch (this) {
          case NONE -> new AffineTransform();
          case RIGHT -> AffineTransform.getTranslateInstance(height, 0);
          case HALF -> AffineTransform.getTranslateInstance(width, height);
          case LEFT -> AffineTransform.getTranslateInstance(0, width);
        };
    turn.quadrantRotate(ordinal());
    return turn;
  }
}
