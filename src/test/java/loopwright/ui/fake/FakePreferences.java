package loopwright.ui.fake;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import loopwright.ui.Preferences;

/** Preferences that last as long as the test. */
public final class FakePreferences implements Preferences {
  private final Map<Item, String> kept = new LinkedHashMap<>();

  @Override
  public Optional<String> read(Item item) {
    return Optional.ofNullable(kept.get(item));
  }

  @Override
  public void keep(Item item, String value) {
    kept.put(item, value);
  }
}
