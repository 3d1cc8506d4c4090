package loopwright.io.instrument;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Supplier;

/** A meter on a loopback port that does what its script says, for each connection anew. */
public final class SimulatedInstrument implements AutoCloseable {

  /** Serves one connection until it returns or fails; the connection is closed then. */
  public interface Script {
    /** Serves. */
    void serve(Lines in, OutputStream out) throws IOException, InterruptedException;
  }

  /** Answers a command. */
  public interface Answers {
    /** The answer with its line end; empty for none. */
    String to(String command) throws IOException, InterruptedException;
  }

  /** Lines that come in. */
  public record Lines(InputStream in) {
    /** The next; empty at the end. */
    public String next() throws IOException {
      StringBuilder line = new StringBuilder();
      for (int b = in.read(); b >= 0 && b != '\n'; b = in.read()) {
        line.append((char) b);
      }
      return line.toString();
    }
  }

  private final ServerSocket server;
  private final List<Socket> open = new CopyOnWriteArrayList<>();
  private final List<String> commands;

  /** Begins to listen on any free port of the loopback. */
  SimulatedInstrument(Script script, List<String> commands) throws IOException {
    this.commands = commands;
    server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Thread thread = new Thread(() -> accept(script), "simulated instrument");
    thread.setDaemon(true);
    thread.start();
  }

  private void accept(Script script) {
    while (!server.isClosed()) {
      try {
        Socket socket = server.accept();
        open.add(socket);
        Thread thread = new Thread(() -> serve(script, socket), "simulated connection");
        thread.setDaemon(true);
        thread.start();
      } catch (IOException e) {
        return;
      }
    }
  }

  private static void serve(Script script, Socket socket) {
    try (socket) {
      script.serve(new Lines(socket.getInputStream()), socket.getOutputStream());
    } catch (IOException | InterruptedException e) {
      // The other side is gone, as tests want it to be now and then.
    }
  }

  /** Speaks SCPI; it says who it is by itself. */
  public static SimulatedInstrument scpi(Answers answers) throws IOException {
    List<String> commands = new CopyOnWriteArrayList<>();
    return new SimulatedInstrument(
        (in, out) -> {
          for (String command = in.next(); !command.isEmpty(); command = in.next()) {
            commands.add(command);
            String answer =
                command.equals("*IDN?") ? "SHED,BENCH METER,0,1.0\n" : answers.to(command);
            out.write(answer.getBytes(StandardCharsets.UTF_8));
          }
        },
        commands);
  }

  /** Sends by itself, a text every so many milliseconds, and understands nothing. */
  public static SimulatedInstrument sending(long every, Supplier<String> texts) throws IOException {
    return new SimulatedInstrument(
        (in, out) -> {
          while (true) {
            out.write(texts.get().getBytes(StandardCharsets.UTF_8));
            Thread.sleep(every);
          }
        },
        List.of());
  }

  /** The port. */
  public int port() {
    return server.getLocalPort();
  }

  /** Commands that came, in order; none of a meter that sends by itself. */
  public List<String> commands() {
    return commands;
  }

  /** Pulls the plug of all connections; new ones are served. */
  public void unplug() throws IOException {
    for (Socket socket : open) {
      socket.close();
    }
  }

  @Override
  public void close() throws IOException {
    server.close();
    unplug();
  }
}
