package loopwright.casework.practise;

import java.util.List;
import loopwright.casework.Problem;

/** Where drills that were played are kept, on this machine only. Implemented by the io room. */
public interface PractiseLog {
  /**
   * Writes one and forces it to disk.
   *
   * @throws Problem if it can't be written
   */
  void append(Practised practised) throws Problem;

  /**
   * All that are kept, in order.
   *
   * @throws Problem if they can't be read
   */
  List<Practised> read() throws Problem;
}
