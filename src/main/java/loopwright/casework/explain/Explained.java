package loopwright.casework.explain;

import java.util.List;
import java.util.Optional;
import loopwright.casework.LoopView;
import loopwright.model.TerminalRef;

/**
 * A page as its controls stand.
 *
 * @param id its name
 * @param title its title
 * @param words a few sentences, this board's figures in them
 * @param tryThis what to try
 * @param controls what can be moved
 * @param figures what this board shows, in the order told
 * @param loop the circuit: volts of a sound board as healthy, this board's as measured
 * @param red where the red lead lies
 * @param black where the black lead lies
 */
public record Explained(
    String id,
    String title,
    String words,
    String tryThis,
    List<Moved> controls,
    List<Figure> figures,
    Optional<LoopView> loop,
    TerminalRef red,
    TerminalRef black) {

  /**
   * A control where it stands.
   *
   * @param id its name
   * @param name what it is, in words
   * @param stops where it can stand
   * @param stop number of the stop where it stands, from 0
   */
  public record Moved(String id, String name, List<Stop> stops, int stop) {
    /** Copies the list. */
    public Moved {
      stops = List.copyOf(stops);
    }
  }

  /**
   * Where a control can stand.
   *
   * @param id its name
   * @param text the same in words
   */
  public record Stop(String id, String text) {}

  /** Copies the lists. */
  public Explained {
    controls = List.copyOf(controls);
    figures = List.copyOf(figures);
  }
}
