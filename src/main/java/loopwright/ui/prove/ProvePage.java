package loopwright.ui.prove;

import javafx.scene.Node;
import loopwright.model.Vehicle;

/** A page of the Prove place. Used on the window's thread. */
public interface ProvePage {

  /** What it does, as its tab says it. */
  String title();

  /**
   * Makes what is shown; called once.
   *
   * @param place the place that it stands in
   */
  Node make(ProvePlace place);

  /**
   * Another vehicle is at hand, or the same one edited. Costs nothing until the page is {@link
   * #opened}.
   *
   * @param name how the vehicle is found again
   */
  void show(String name, Vehicle vehicle);

  /** The page comes into sight: takes up what was kept meanwhile. */
  void opened();

  /** The explaining page that belongs to it. */
  default String explains() {
    return "loaded";
  }

  /** Puts the focus where hands go on. */
  void takeFocus();
}
