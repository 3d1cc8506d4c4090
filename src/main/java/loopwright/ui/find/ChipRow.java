package loopwright.ui.find;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.HBox;

/**
 * Chips side by side, whole ones alone, as many as there is room for: the one that matters now, and
 * those before it rather than those after it.
 */
final class ChipRow extends HBox {
  private int now;

  ChipRow() {
    getStyleClass().add("chips");
    setMinWidth(0);
    setPrefWidth(0);
  }

  /** The chip of this number, from 0, is the one that matters. */
  void show(int number) {
    now = number;
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    List<Node> chips = getChildren();
    int last = Math.max(0, Math.min(now, chips.size() - 1));
    int first = last;
    double used = chips.isEmpty() ? 0 : width(last);
    while (first > 0 && used + getSpacing() + width(first - 1) <= getWidth()) {
      first--;
      used += getSpacing() + width(first);
    }
    double x = 0;
    for (int i = 0; i < chips.size(); i++) {
      Node chip = chips.get(i);
      double width = Math.min(width(i), getWidth());
      chip.setVisible(i >= first && x + width <= getWidth());
      if (chip.isVisible()) {
        double height = Math.max(chip.minHeight(-1), chip.prefHeight(-1));
        chip.resizeRelocate(snapPositionX(x), (getHeight() - height) / 2, width, height);
        x += width + getSpacing();
      }
    }
  }

  private double width(int chip) {
    return getChildren().get(chip).prefWidth(-1);
  }
}
