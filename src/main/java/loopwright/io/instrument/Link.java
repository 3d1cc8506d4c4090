package loopwright.io.instrument;

import java.io.Closeable;
import java.io.IOException;

/** Bytes to and from a meter. */
interface Link extends Closeable {
  /** Longest time that a read waits, in milliseconds. */
  int WAIT = 100;

  /**
   * Reads what is there, waiting {@link #WAIT} at most.
   *
   * @return how many bytes; 0 if none came
   * @throws IOException if the meter is gone; the message says why
   */
  int read(byte[] into) throws IOException;

  /**
   * Sends bytes.
   *
   * @throws IOException if the meter is gone
   */
  void write(byte[] bytes) throws IOException;

  /** Connects; made anew for each try. */
  @FunctionalInterface
  interface Opener {
    /**
     * Connects.
     *
     * @throws IOException if that can't be done; the message says why in words
     */
    Link open() throws IOException;
  }
}
