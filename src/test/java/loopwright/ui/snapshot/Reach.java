package loopwright.ui.snapshot;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javafx.geometry.Bounds;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.IndexedCell;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListCell;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.skin.TableColumnHeader;
import javafx.scene.text.Text;
import loopwright.ui.drawing.LoopDrawing;
import loopwright.ui.drawing.LoopPlan;

/** What a scene offers to those who can't see it, don't see it well, or have big fingers. */
public final class Reach {
  private Reach() {}

  /** What can take the focus or be pressed but has no name or no role for a screen reader. */
  public static Set<String> nameless(Scene scene) {
    Set<String> found = new TreeSet<>();
    walk(
        scene.getRoot(),
        node -> {
          boolean row =
              node instanceof ListCell<?> cell && !cell.isEmpty() && !ofAControl(cell.getParent());
          if (!(node.isFocusTraversable() || node instanceof ButtonBase || row)) {
            return;
          }
          AccessibleRole role = node.getAccessibleRole();
          // A pane's role is that of a group.
          if (role == null || role == AccessibleRole.NODE) {
            found.add("no role: " + name(node));
          }
          Object text = node.queryAccessibleAttribute(AccessibleAttribute.TEXT);
          boolean named =
              node.getAccessibleText() != null && !node.getAccessibleText().isBlank()
                  || (node instanceof ButtonBase || row) && text instanceof String t && !t.isBlank()
                  || node instanceof TextInputControl input
                      && input.getPromptText() != null
                      && !input.getPromptText().isBlank();
          if (!named) {
            found.add("no name: " + name(node));
          }
        });
    return found;
  }

  /**
   * Words that are cut off: what shows less than its text, lies beside what it is seen through, or
   * is less high than its words.
   */
  public static Set<String> cutOff(Scene scene) {
    Set<String> found = new TreeSet<>();
    walk(
        scene.getRoot(),
        node -> {
          if (node instanceof TextField field
              && !field.getStyleClass().contains("cell-editor")
              && field.getHeight() < field.prefHeight(-1) - 1) {
            found.add("squeezed, " + name(node));
          }
          if (!(node instanceof Labeled labeled) || labeled.getText() == null || givesWay(node)) {
            return;
          }
          for (Node child : labeled.getChildrenUnmodifiable()) {
            if (!(child instanceof Text shown) || !shown.isVisible() || shown.getText().isEmpty()) {
              continue;
            }
            if (shown.getText().length() < labeled.getText().length()) {
              found.add(
                  String.format("%s as %s, %s", labeled.getText(), shown.getText(), name(node)));
            } else if (beside(scene, shown)) {
              found.add(String.format("%s beside, %s", labeled.getText(), name(node)));
            } else if (shown.getLayoutBounds().getHeight() > labeled.getHeight() + 2) {
              found.add(String.format("%s squeezed, %s", labeled.getText(), name(node)));
            }
          }
        });
    return found;
  }

  private static boolean beside(Scene scene, Text shown) {
    Bounds at = shown.localToScene(shown.getLayoutBounds());
    boolean clipped = false;
    boolean out = false;
    for (Node n = shown; n != null; n = n.getParent()) {
      if (n instanceof ScrollPane pane && pane.getHbarPolicy() != ScrollPane.ScrollBarPolicy.NEVER
          || n instanceof TableView) {
        return false;
      }
      if (n.getClip() != null) {
        clipped = true;
        Bounds through = n.localToScene(n.getClip().getBoundsInParent());
        out |= at.getMinX() < through.getMinX() - 1 || at.getMaxX() > through.getMaxX() + 1;
      }
    }
    return out
        || at.getMinX() < -1
        || at.getMaxX() > scene.getWidth() + 1
        || !clipped && (at.getMinY() < -1 || at.getMaxY() > scene.getHeight() + 1);
  }

  /**
   * What may be shortened because it stands elsewhere in full: the open case's name in the bar, the
   * last result where room is short (among the readings), and tables, whose user makes the columns
   * wider.
   */
  private static boolean givesWay(Node node) {
    return "where".equals(node.getId())
        || "said".equals(node.getId())
        || node instanceof TableCell
        || node.getParent() != null && node.getParent().getStyleClass().contains("column-header");
  }

  /**
   * What can be pressed but is less high or wide than a finger needs. Left out are the editor of a
   * table's cell, since the cell is pressed, and the edges between a table's columns, by which they
   * are made wider.
   *
   * @param least pixels
   */
  public static Set<String> tooSmall(Scene scene, double least) {
    Set<String> found = new TreeSet<>();
    walk(
        scene.getRoot(),
        node -> {
          if (pressed(node)) {
            Bounds at = node.localToScene(node.getLayoutBounds());
            String words = node instanceof Labeled labeled ? labeled.getText() : "";
            note(found, least, at.getWidth(), at.getHeight(), name(node) + " " + words);
          }
          if (node instanceof LoopDrawing drawing) {
            drawing.planProperty().get().stream()
                .flatMap(LoopPlan::allPieces)
                .filter(piece -> takes(drawing, piece, 0, 0))
                .forEach(
                    piece ->
                        note(
                            found,
                            least,
                            reach(drawing, piece, 1, 0) + reach(drawing, piece, -1, 0),
                            reach(drawing, piece, 0, 1) + reach(drawing, piece, 0, -1),
                            "drawn " + piece.view().part()));
          }
        });
    return found;
  }

  private static void note(
      Set<String> found, double least, double width, double height, String what) {
    if (width < least - 0.5 || height < least - 0.5) {
      found.add(String.format(Locale.ROOT, "%.0f x %.0f: %s", width, height, what));
    }
  }

  /** How many pixels a press may lie off a drawn piece's middle and still take it. */
  private static double reach(LoopDrawing drawing, LoopPlan.Piece piece, int right, int down) {
    double off = 0;
    while (takes(drawing, piece, right * (off + 0.5), down * (off + 0.5))) {
      off += 0.5;
    }
    return off;
  }

  private static boolean takes(
      LoopDrawing drawing, LoopPlan.Piece piece, double right, double down) {
    double em = drawing.emProperty().get();
    LoopPlan.Box cell = piece.cell();
    double x = cell.centreX() * em + right;
    double y = (cell.y() + cell.height() / 2) * em + down;
    return drawing.aimedAt(x, y).equals(Optional.of(piece));
  }

  private static boolean pressed(Node node) {
    if (node instanceof IndexedCell<?> cell) {
      return !cell.isEmpty() && !(cell.getParent() instanceof ComboBoxBase);
    }
    if (node instanceof TableColumnHeader header) {
      return header.getTableColumn() != null && header.getTableColumn().isSortable();
    }
    if (node instanceof TextInputControl) {
      return !(node.getParent() instanceof TableCell);
    }
    if (node instanceof ScrollBar || node.getParent() instanceof ScrollBar) {
      return node instanceof ScrollBar || node.getStyleClass().contains("thumb");
    }
    return node instanceof ButtonBase
        || node instanceof ComboBoxBase
        || node instanceof Slider
        || (node.getOnMouseClicked() != null || node.getOnMousePressed() != null)
            && !ofAControl(node)
            && !node.getStyleClass().contains("viewport")
            && !node.getStyleClass().contains("loop-canvas");
  }

  /** Parts of what is pressed as a whole, and edges of columns. */
  private static boolean ofAControl(Node node) {
    for (Node n = node; n != null; n = n.getParent()) {
      if (n instanceof Slider || n instanceof ComboBoxBase || n instanceof TableView) {
        return true;
      }
    }
    return false;
  }

  private static String name(Node node) {
    return node.getClass().getSimpleName() + " #" + node.getId() + " " + node.getStyleClass();
  }

  private static void walk(Node node, java.util.function.Consumer<Node> look) {
    if (!node.isVisible() || node.isDisabled()) {
      return;
    }
    look.accept(node);
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> walk(child, look));
    }
  }
}
