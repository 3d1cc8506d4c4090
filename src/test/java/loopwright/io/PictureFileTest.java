package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import loopwright.casework.Picture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures for a page: small, upright, in bounded memory. */
class PictureFileTest {
  @TempDir Path folder;

  /** The left half black, the right half white. */
  private static byte[] jpeg(int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D on = image.createGraphics();
    on.setColor(Color.WHITE);
    on.fillRect(width / 2, 0, width, height);
    on.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "jpg", bytes);
    return bytes.toByteArray();
  }

  /** A picture as a camera writes it: how it was held stands in front. */
  private static byte[] held(byte[] jpeg, int orientation) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.write(jpeg, 0, 2);
    out.writeShort(0xffe1);
    out.writeShort(2 + 6 + 8 + 2 + 12 + 4);
    out.write("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1));
    out.writeInt(8);
    out.writeShort(1);
    out.writeShort(0x0112);
    out.writeShort(3);
    out.writeInt(1);
    out.writeShort(orientation);
    out.writeShort(0);
    out.writeInt(0);
    out.write(jpeg, 2, jpeg.length - 2);
    return bytes.toByteArray();
  }

  /** A black picture of one bit a pixel, as small a file as its size allows. */
  private static byte[] png(int width, int height) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    DataOutputStream heads = new DataOutputStream(head);
    heads.writeInt(width);
    heads.writeInt(height);
    heads.write(new byte[] {1, 0, 0, 0, 0});
    Png.chunk(out, "IHDR", head.toByteArray());
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    try (DeflaterOutputStream packed = new DeflaterOutputStream(data)) {
      byte[] row = new byte[1 + (width + 7) / 8];
      // No reader comes to the pixels of the very largest.
      for (int y = 0; y < Math.min(height, 10_000); y++) {
        packed.write(row);
      }
    }
    Png.chunk(out, "IDAT", data.toByteArray());
    Png.chunk(out, "IEND", new byte[0]);
    return bytes.toByteArray();
  }

  private Path file(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  @ParameterizedTest
  @CsvSource({
    "1, 3000, 1500, 1200, 600, 1100, 300",
    "3, 300, 200, 300, 200, 10, 100",
    "6, 300, 200, 200, 300, 100, 290",
    "8, 300, 200, 200, 300, 100, 10",
    "5, 300, 200, 300, 200, 290, 100"
  })
  void aPhotoStandsUprightAndIsNoLargerThanAPageShows(
      int orientation, int width, int height, int shownWidth, int shownHeight, int x, int y)
      throws IOException {
    Path file = file("held.jpg", held(jpeg(width, height), orientation));
    Picture picture = PictureFile.read(file).orElseThrow();
    assertThat(picture.width()).isEqualTo(shownWidth);
    assertThat(picture.height()).isEqualTo(shownHeight);
    BufferedImage shown = ImageIO.read(new ByteArrayInputStream(picture.jpeg()));
    assertThat(shown.getWidth()).isEqualTo(shownWidth);
    assertThat(new Color(shown.getRGB(x, y)).getGreen()).as("the white half").isGreaterThan(200);
    int acrossX = shownWidth - 1 - x;
    int acrossY = shownHeight - 1 - y;
    assertThat(new Color(shown.getRGB(acrossX, acrossY)).getGreen()).isLessThan(50);
  }

  @Test
  void aHugePictureTakesLittleMemoryAndAMonsterIsNotRead() throws IOException {
    Path huge = file("huge.png", png(10_000, 9_900));
    Path monster = file("monster.png", png(60_000, 60_000));
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    long before = threads.getThreadAllocatedBytes(thread);
    Picture picture = PictureFile.read(huge).orElseThrow();
    assertThat(Math.max(picture.width(), picture.height())).isEqualTo(PictureFile.SIDE);
    assertThat(PictureFile.read(monster)).isEmpty();
    long bytes = threads.getThreadAllocatedBytes(thread) - before;
    assertThat(bytes).as("99 million pixels would be 300 MB").isLessThan(100_000_000);
  }

  @Test
  void whatIsNoPictureIsNotShown() throws IOException {
    byte[] whole = held(jpeg(300, 200), 6);
    assertThat(PictureFile.read(file("a.jpg", new byte[] {1, 2, 3}))).isEmpty();
    assertThat(PictureFile.read(folder.resolve("none.jpg"))).isEmpty();
    for (int cut = 0; cut < 600; cut += 7) {
      // Nothing is thrown, whether the rest still makes a picture or not.
      PictureFile.read(file("cut.jpg", Arrays.copyOf(whole, cut)));
    }
  }
}
