package loopwright.io.instrument;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import loopwright.casework.feed.MeterPort;
import loopwright.io.FileWords;

/** A meter on a serial line. */
final class SerialLink implements Link {
  private static final int DATA_BITS = 8;
  private static final int WRITE_WAIT = 1_000;

  private final SerialPort port;

  private SerialLink(SerialPort port) {
    this.port = port;
  }

  static Link open(MeterPort.Serial to) throws IOException {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(to.path());
    } catch (SerialPortInvalidPortException e) {
      throw new IOException(FileWords.say("meter.no-device", to.path()), e);
    } catch (LinkageError e) {
      throw new IOException(FileWords.say("meter.no-serial"), e);
    }
    port.setComPortParameters(to.baud(), DATA_BITS, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setComPortTimeouts(
        SerialPort.TIMEOUT_READ_SEMI_BLOCKING | SerialPort.TIMEOUT_WRITE_BLOCKING,
        WAIT,
        WRITE_WAIT);
    if (!port.openPort()) {
      throw new IOException(FileWords.say("meter.unopened", to.path()));
    }
    return new SerialLink(port);
  }

  @Override
  public int read(byte[] into) throws IOException {
    int n = port.readBytes(into, into.length);
    if (n < 0) {
      throw new IOException(FileWords.say("meter.unplugged"));
    }
    return n;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    if (port.writeBytes(bytes, bytes.length) < 0) {
      throw new IOException(FileWords.say("meter.unplugged"));
    }
  }

  @Override
  public void close() {
    port.closePort();
  }
}
