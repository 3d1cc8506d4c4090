package loopwright.ui.shell;

import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** All keys on one page. */
final class KeysPage {
  private static final String[] GROUPS = {
    "everywhere",
    "entry",
    "case",
    "cases",
    "vehicle",
    "paper",
    "wiring",
    "prove",
    "ground",
    "practise",
    "explain"
  };

  private KeysPage() {}

  static Node make() {
    FlowPane groups = new FlowPane();
    groups.getStyleClass().add("key-groups");
    for (String group : GROUPS) {
      groups.getChildren().add(group(group));
    }
    VBox page = Parts.column("page", Parts.text(Texts.of("keys.title"), "page-title"), groups);
    ScrollPane scroll = Parts.scrolling(page);
    scroll.setId("keys");
    scroll.setFocusTraversable(true);
    return scroll;
  }

  /** A group: lines {@code key=what it does} in one text of the bundle. */
  private static VBox group(String name) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("key-grid");
    int row = 0;
    for (String line : Texts.of("keys." + name).split("\n")) {
      int cut = line.indexOf('=');
      grid.addRow(row++, Parts.keyCap(line.substring(0, cut)), Parts.line(line.substring(cut + 1)));
    }
    VBox box =
        Parts.column("card", Parts.line(Texts.of("keys." + name + ".title"), "side-title"), grid);
    box.getStyleClass().add("key-group");
    return box;
  }
}
