package loopwright.io;

import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/** PNG pictures (ISO/IEC 15948), chunk by chunk. */
public final class Png {
  /** What every file begins with. */
  public static final long SIGNATURE = 0x89504E470D0A1A0AL;

  private Png() {}

  /** Writes one chunk with its length and check sum. */
  public static void chunk(DataOutputStream out, String type, byte[] data) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 sum = new CRC32();
    sum.update(name);
    sum.update(data);
    out.writeInt(data.length);
    out.write(name);
    out.write(data);
    out.writeInt((int) sum.getValue());
  }
}
