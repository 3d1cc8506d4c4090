package loopwright.ui.widget;

import java.util.function.Function;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.Region;

/** A row whose words are broken to the width of its list, so that this never scrolls sideways. */
public final class FatCell<T> extends ListCell<T> {
  private final Function<T, Region> face;

  /**
   * A row of a list.
   *
   * @param face what an item looks like; its accessible text names the row
   */
  public FatCell(ListView<T> list, Function<T, Region> face) {
    this.face = face;
    setPrefWidth(0);
    list.widthProperty().addListener(o -> fit());
    graphicProperty().addListener(o -> fit());
    insetsProperty().addListener(o -> fit());
    fontProperty().addListener(o -> fit());
  }

  /** A row that is words alone. */
  public static <T> FatCell<T> words(ListView<T> list, Function<T, String> words) {
    return new FatCell<>(
        list,
        item -> {
          Label said = Parts.text(words.apply(item));
          said.setAccessibleText(said.getText());
          return said;
        });
  }

  @Override
  protected void updateItem(T item, boolean empty) {
    super.updateItem(item, empty);
    Region shown = empty || item == null ? null : face.apply(item);
    setGraphic(shown);
    setAccessibleText(shown == null ? "" : shown.getAccessibleText());
  }

  /** Beside a scroll bar: whether there will be one isn't known when rows are measured. */
  private double room() {
    double inside = getListView().getWidth() - snappedLeftInset() - snappedRightInset();
    return Math.max(0, inside - Parts.FINGER);
  }

  private void fit() {
    if (getGraphic() instanceof Region shown && getListView() != null) {
      shown.setPrefWidth(room());
    }
  }

  /** As high as its words are when they are broken. */
  @Override
  protected double computePrefHeight(double width) {
    return getGraphic() instanceof Region shown && getListView() != null
        ? shown.prefHeight(room()) + snappedTopInset() + snappedBottomInset()
        : super.computePrefHeight(width);
  }
}
