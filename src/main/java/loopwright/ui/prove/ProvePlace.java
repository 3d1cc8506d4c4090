package loopwright.ui.prove;

import javafx.beans.property.ReadOnlyDoubleProperty;

/** What a page may ask of the Prove place. */
public interface ProvePlace {

  /** Pixels of one em. */
  ReadOnlyDoubleProperty em();

  /** Goes to Find the fault with a kept case of the vehicle shown. */
  void findFault(String caseId);
}
