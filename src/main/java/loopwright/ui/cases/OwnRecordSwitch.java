package loopwright.ui.cases;

import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import loopwright.ui.Preferences;

/** Whether what a vehicle had before counts in its cases; found again next time. */
public final class OwnRecordSwitch {
  private static final String NO = "no";

  private final BooleanProperty counts;

  /**
   * Takes up what was chosen before; it counts until told otherwise.
   *
   * @param told hears whether it counts, now and whenever that changes
   */
  public OwnRecordSwitch(Preferences preferences, Consumer<Boolean> told) {
    counts =
        new SimpleBooleanProperty(
            preferences.read(Preferences.Item.OWN_RECORD).filter(NO::equals).isEmpty());
    told.accept(counts.get());
    counts.addListener(
        (o, was, is) -> {
          preferences.keep(Preferences.Item.OWN_RECORD, is ? "yes" : NO);
          told.accept(is);
        });
  }

  /** Whether it counts. */
  public BooleanProperty countsProperty() {
    return counts;
  }
}
