package loopwright.ui.snapshot;

import java.util.Set;
import java.util.TreeSet;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.text.Text;

/** What a scene offers to those who can't see it or don't see it well. */
public final class Reach {
  private Reach() {}

  /** What can take the focus or be pressed but has no name or no role for a screen reader. */
  public static Set<String> nameless(Scene scene) {
    Set<String> found = new TreeSet<>();
    walk(
        scene.getRoot(),
        node -> {
          if (!(node.isFocusTraversable() || node instanceof ButtonBase)) {
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
                  || node instanceof ButtonBase && text instanceof String t && !t.isBlank()
                  || node instanceof TextInputControl input
                      && input.getPromptText() != null
                      && !input.getPromptText().isBlank();
          if (!named) {
            found.add("no name: " + name(node));
          }
        });
    return found;
  }

  /** Words that are cut off: a label that shows less than its text. */
  public static Set<String> cutOff(Scene scene) {
    Set<String> found = new TreeSet<>();
    walk(
        scene.getRoot(),
        node -> {
          if (node instanceof Labeled labeled
              && (node instanceof Label || node instanceof ButtonBase)
              && labeled.getText() != null
              && !givesWay(labeled)) {
            for (Node child : labeled.getChildrenUnmodifiable()) {
              if (child instanceof Text shown
                  && shown.isVisible()
                  && shown.getText().length() < labeled.getText().length()
                  && !shown.getText().isEmpty()) {
                found.add(
                    String.format("%s as %s, %s", labeled.getText(), shown.getText(), name(node)));
              }
            }
          }
        });
    return found;
  }

  /**
   * What may be shortened because it stands elsewhere in full: the open case's name in the bar, the
   * last result where room is short (among the readings), headings of columns, which their user
   * makes wider, names in lists (beside the list once chosen), and tabs, which keep their keys.
   */
  private static boolean givesWay(Node node) {
    return "where".equals(node.getId())
        || "said".equals(node.getId())
        || node.getStyleClass().contains("form-source")
        || node.getStyleClass().contains("entry-title")
        || node.getStyleClass().contains("page-tab")
        || node.getParent() != null && node.getParent().getStyleClass().contains("column-header");
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
