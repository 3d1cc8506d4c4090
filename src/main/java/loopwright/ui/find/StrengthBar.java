package loopwright.ui.find;

import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/** A bar whose length and hatching tell how strong. */
final class StrengthBar extends StackPane {
  private final Region fill = new Region();
  private final double share;

  StrengthBar(double share) {
    this.share = Math.max(0.02, Math.min(1, share));
    getStyleClass().add("strength");
    fill.getStyleClass().addAll("strength-fill", share >= 0.4 ? "strong" : "weak");
    fill.setManaged(false);
    getChildren().add(fill);
  }

  @Override
  protected void layoutChildren() {
    fill.resizeRelocate(0, 0, getWidth() * share, getHeight());
  }
}
