package loopwright.ui.prove;

import javafx.beans.property.ReadOnlyDoubleProperty;
import loopwright.ui.find.MeterViewModel;

/** What a page may ask of the Prove place. */
public interface ProvePlace {

  /** Pixels of one em. */
  ReadOnlyDoubleProperty em();

  /** The person's own meter, if it sends its readings. */
  MeterViewModel meter();

  /** Goes to Find the fault with a kept case of the vehicle shown. */
  void findFault(String caseId);
}
