package loopwright.ui.widget;

import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import loopwright.ui.Texts;

/** A button that shows the key which does the same. */
public final class KeyButton extends Button {
  /**
   * Makes a button.
   *
   * @param text what it does
   * @param key the key, as printed on it
   * @param action what happens
   */
  public KeyButton(String text, String key, Runnable action) {
    super(text);
    Label cap = Parts.keyCap(key);
    setGraphic(cap);
    setContentDisplay(ContentDisplay.RIGHT);
    getStyleClass().add("key-button");
    setAccessibleText(Texts.of("access.button", text, KeyNames.printed(key)));
    setMnemonicParsing(false);
    setOnAction(e -> action.run());
  }

  /** Adds style classes. */
  public KeyButton styled(String... classes) {
    getStyleClass().addAll(classes);
    return this;
  }

  // The preferred size too: where room is kept for a button, it is its least one.

  @Override
  protected double computeMinWidth(double height) {
    return forAFinger(super.computeMinWidth(height));
  }

  @Override
  protected double computePrefWidth(double height) {
    return forAFinger(super.computePrefWidth(height));
  }

  @Override
  protected double computeMinHeight(double width) {
    return forAFinger(super.computeMinHeight(width));
  }

  @Override
  protected double computePrefHeight(double width) {
    return forAFinger(super.computePrefHeight(width));
  }

  private static double forAFinger(double length) {
    return Math.max(Parts.FINGER, length);
  }
}
