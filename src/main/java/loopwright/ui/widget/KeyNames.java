package loopwright.ui.widget;

import java.util.Arrays;
import java.util.stream.Collectors;
import loopwright.ui.Texts;

/** Keys as they are printed on a keyboard of the language in use. */
final class KeyNames {
  private KeyNames() {}

  /** A combination such as {@code Ctrl+F} or {@code Shift F9}, as printed there. */
  static String printed(String keys) {
    return Arrays.stream(keys.split("(?<=[ +])|(?=[ +])"))
        .map(key -> Texts.has("keycap." + key) ? Texts.of("keycap." + key) : key)
        .collect(Collectors.joining());
  }
}
