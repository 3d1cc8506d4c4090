package loopwright.ui.widget;

import java.util.Arrays;
import java.util.stream.Collectors;
import javafx.scene.input.KeyCode;
import loopwright.ui.Texts;

/** Keys as they are printed on a keyboard of the language in use. */
public final class KeyNames {
  private KeyNames() {}

  /** The digit on one of the digit keys, those of the number pad among them. */
  public static int digit(KeyCode key) {
    String name = key.getName();
    return Character.digit(name.charAt(name.length() - 1), 10);
  }

  /** A combination such as {@code Ctrl+F} or {@code Shift F9}, as printed there. */
  static String printed(String keys) {
    return Arrays.stream(keys.split("(?<=[ +])|(?=[ +])"))
        .map(key -> Texts.has("keycap." + key) ? Texts.of("keycap." + key) : key)
        .collect(Collectors.joining());
  }
}
