package loopwright.ui.shell;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import loopwright.model.Language;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
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

  static Node make(ShellViewModel shell) {
    FlowPane groups = new FlowPane();
    groups.getStyleClass().add("key-groups");
    for (String group : GROUPS) {
      groups.getChildren().add(group(group));
    }
    VBox page =
        Parts.column(
            "page", Parts.text(Texts.of("keys.title"), "page-title"), choices(shell), groups);
    ScrollPane scroll = Parts.scrolling(page);
    scroll.setId("keys");
    scroll.setFocusTraversable(true);
    return scroll;
  }

  /** What is set here, since it is seldom changed. */
  private static Node choices(ShellViewModel shell) {
    KeyButton language = new KeyButton("", Texts.of("language.key"), () -> nextLanguage(shell));
    language.setId("language");
    Label note = Parts.line("");
    note.setId("language-note");
    Runnable show =
        () -> {
          Language chosen = shell.languageProperty().get();
          language.setText(Texts.of("language.choice", Texts.of(chosen)));
          language.setAccessibleText(
              Texts.of("access.button", language.getText(), Texts.of("language.key")));
          note.setText(
              chosen == Language.inUse() ? "" : Texts.in(chosen, "language.fromNextStart"));
        };
    shell.languageProperty().addListener(o -> show.run());
    show.run();
    return Parts.row("language-row", language, note);
  }

  /** The next of the languages. */
  static void nextLanguage(ShellViewModel shell) {
    Language[] all = Language.values();
    Language now = shell.languageProperty().get();
    shell.languageProperty().set(all[(now.ordinal() + 1) % all.length]);
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
