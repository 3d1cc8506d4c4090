package loopwright.casework.feed;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;

/** Where a meter is connected, as a person says it. No file names one. */
public sealed interface MeterPort {

  /**
   * A network connection.
   *
   * @param host name or address
   * @param port 1 to 65535
   */
  record Tcp(String host, int port) implements MeterPort {
    @Override
    public String words() {
      return "tcp:" + host + ":" + port;
    }
  }

  /**
   * A serial line, 8 bits, no parity, 1 stop bit.
   *
   * @param path the device, for instance {@code /dev/ttyUSB0} or {@code COM3}
   * @param baud bits a second, 300 to 921600
   */
  record Serial(String path, int baud) implements MeterPort {
    @Override
    public String words() {
      return "serial:" + path + "," + baud;
    }
  }

  /** Bits a second if none are said. */
  int USUAL_BAUD = 9600;

  /** What is accepted. */
  static String accepted() {
    return Phrases.inUse().say("meter.port");
  }

  /** The port as it is written. */
  String words();

  /**
   * Understands a port.
   *
   * @throws Problem if it is none
   */
  static MeterPort parse(String text) throws Problem {
    String said = text.strip();
    Matcher tcp =
        Pattern.compile("(?i)tcp:([\\w.-]{1,255}|\\[[0-9a-f:.]{2,45}]):(\\d{1,5})").matcher(said);
    if (tcp.matches()) {
      int port = Integer.parseInt(tcp.group(2));
      if (port >= 1 && port <= 65_535) {
        return new Tcp(tcp.group(1), port);
      }
    }
    Matcher serial =
        Pattern.compile("(?i)serial:([^,\\p{Cntrl}]{1,255})(?:,(\\d{3,6}))?").matcher(said);
    if (serial.matches() && !serial.group(1).isBlank()) {
      int baud = serial.group(2) == null ? USUAL_BAUD : Integer.parseInt(serial.group(2));
      if (baud >= 300 && baud <= 921_600) {
        return new Serial(serial.group(1).strip(), baud);
      }
    }
    throw new Problem(
        "meter port",
        Phrases.inUse().say("meter.port.field"),
        said.length() > 80 ? said.substring(0, 80) + "..." : said,
        accepted());
  }
}
