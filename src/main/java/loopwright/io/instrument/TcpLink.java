package loopwright.io.instrument;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import loopwright.casework.feed.MeterPort;
import loopwright.io.FileWords;

/** A meter on the network. */
final class TcpLink implements Link {
  private static final int CONNECT = 3_000;

  private final Socket socket;

  private TcpLink(Socket socket) {
    this.socket = socket;
  }

  static Link open(MeterPort.Tcp to) throws IOException {
    Socket socket = new Socket();
    try {
      InetSocketAddress address = new InetSocketAddress(to.host(), to.port());
      if (address.isUnresolved()) {
        throw new IOException(FileWords.say("meter.no-host", to.host()));
      }
      socket.connect(address, CONNECT);
      socket.setSoTimeout(WAIT);
      socket.setTcpNoDelay(true);
      return new TcpLink(socket);
    } catch (ConnectException | SocketTimeoutException e) {
      socket.close();
      throw new IOException(FileWords.say("meter.silent", to.words()), e);
    } catch (IOException e) {
      socket.close();
      throw e;
    }
  }

  @Override
  public int read(byte[] into) throws IOException {
    try {
      int n = socket.getInputStream().read(into);
      if (n < 0) {
        throw new IOException(FileWords.say("meter.closed"));
      }
      return n;
    } catch (SocketTimeoutException e) {
      return 0;
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    socket.getOutputStream().write(bytes);
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
