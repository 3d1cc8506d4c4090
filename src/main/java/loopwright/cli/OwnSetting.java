package loopwright.cli;

import java.util.List;
import loopwright.casework.FindCase;
import loopwright.casework.SettingView;
import loopwright.model.Setting;

/** The set-up of a reading that names none. */
final class OwnSetting {
  private OwnSetting() {}

  /** The circuit's own set-up. */
  static Setting circuits(FindCase findCase) {
    List<SettingView> settings = findCase.settings();
    return settings.isEmpty() ? Setting.REST : settings.get(0).setting();
  }

  /** The set-up last asked for, since the vehicle stands in it; else the circuit's own. */
  static Setting asked(FindCase findCase) {
    return findCase
        .view()
        .next()
        .map(check -> check.set().setting())
        .orElseGet(() -> circuits(findCase));
  }
}
