package loopwright.ui.wiring;

import javafx.scene.Node;

/**
 * A page that takes the Wiring place for a while, for instance to add a circuit by pattern. Used on
 * the window's thread.
 */
public interface WiringPage {

  /** What it does, as the button says it. */
  String title();

  /** The key that opens it, as {@link javafx.scene.input.KeyCombination} spells it: Ctrl+N. */
  String key();

  /** Whether it works on a vehicle that is open; else it can be opened without one. */
  Needs needs();

  /** What must be there before a page can be opened. */
  enum Needs {
    NOTHING,
    /** A vehicle that is open, which it may edit. */
    VEHICLE,
    /** A vehicle that is open; nothing is edited, so the Vehicle place offers it as well. */
    TO_READ
  }

  /**
   * Begins anew. The page stays until it calls {@link WiringDesk#close}, or Escape reaches the
   * place unused.
   *
   * @param desk what it works on
   * @return what is shown in place of the tables
   */
  Node open(WiringDesk desk);

  /** Puts the focus where hands go on. */
  void takeFocus();
}
