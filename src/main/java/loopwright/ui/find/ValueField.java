package loopwright.ui.find;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.TextField;
import javafx.scene.control.TextFormatter;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;

/** The field that a value is typed or pasted into, and the keys that set its unit. */
public final class ValueField extends TextField {
  private final EntryViewModel entry;

  /**
   * A field.
   *
   * @param entry the value while it is typed
   */
  public ValueField(EntryViewModel entry) {
    this.entry = entry;
    getStyleClass().add("value-field");
    setAccessibleText(Texts.of("access.value"));
    setTextFormatter(new TextFormatter<>(ValueField::accepted));
    textProperty().addListener((o, was, is) -> entry.type(is));
    entry
        .textProperty()
        .addListener(
            (o, was, is) -> {
              if (!getText().equals(is)) {
                setText(is);
                end();
              }
            });
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
  }

  private static TextFormatter.Change accepted(TextFormatter.Change change) {
    Optional<String> text = EntryViewModel.pasted(change.getControlNewText());
    if (text.isPresent() && !text.get().equals(change.getControlNewText())) {
      change.setRange(0, change.getControlText().length());
      change.setText(text.get());
      change.selectRange(text.get().length(), text.get().length());
    }
    return text.isPresent() ? change : null;
  }

  private void pressed(KeyEvent e) {
    if (e.getCode() == KeyCode.BACK_SPACE && getSelection().getLength() == 0) {
      entry.back();
      e.consume();
    }
  }

  /** Takes the focus, the cursor behind what is typed. */
  public void takeFocus() {
    requestFocus();
    end();
  }

  /**
   * The key of a unit.
   *
   * @param set sets the unit
   */
  public KeyButton unitKey(EntryUnit unit, Consumer<EntryUnit> set) {
    String cap = String.valueOf(Character.toUpperCase(unit.key()));
    KeyButton key =
        new KeyButton(
                unit.word(),
                cap,
                () -> {
                  set.accept(unit);
                  takeFocus();
                })
            .styled("unit-key");
    if (cap.equals(unit.word())) {
      key.setText("");
    }
    key.setMinWidth(USE_PREF_SIZE);
    return key;
  }
}
