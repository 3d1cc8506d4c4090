package loopwright.casework;

import java.util.List;
import loopwright.model.Setting;

/**
 * How to set the vehicle up for a check.
 *
 * @param setting the setting itself
 * @param change only what changes from the last set-up, in words; empty if nothing does
 * @param whole the whole set-up in words
 */
public record SettingView(Setting setting, List<String> change, List<String> whole) {
  /** Copies the lists. */
  public SettingView {
    change = List.copyOf(change);
    whole = List.copyOf(whole);
  }
}
