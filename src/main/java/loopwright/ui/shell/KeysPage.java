package loopwright.ui.shell;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.model.WireSize;
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

  private static final Map<String, String> NEXT_SIZE =
      Map.of("written", "awg", "awg", "mm2", "mm2", "written");
  private static final Map<String, String> NEXT_LENGTH = Map.of("m", "ft", "ft", "m");
  private static final Map<String, String> NEXT_DEGREES = Map.of("c", "f", "f", "c");

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
    scroll.addEventHandler(
        KeyEvent.KEY_TYPED,
        e -> {
          if (nextUnit(shell, e.getCharacter().toLowerCase(Locale.ROOT))) {
            e.consume();
          }
        });
    scroll.setAccessibleText(Texts.of("keys.title"));
    return scroll;
  }

  /** What is set here, since it is seldom changed. */
  private static Node choices(ShellViewModel shell) {
    KeyButton language = choice("language", "language.key", () -> nextLanguage(shell));
    KeyButton size = choice("units-size", "units.size.key", () -> change(shell, NEXT_SIZE));
    KeyButton length = choice("units-length", "units.length.key", () -> change(shell, NEXT_LENGTH));
    KeyButton degrees =
        choice("units-degrees", "units.degrees.key", () -> change(shell, NEXT_DEGREES));
    Label note = Parts.line("");
    note.setId("language-note");
    Runnable show =
        () -> {
          Language chosen = shell.languageProperty().get();
          Units units = shell.unitsProperty().get();
          say(language, "language.choice", Texts.of(chosen));
          say(size, "units.size", Texts.of(sizeWords(units)));
          say(length, "units.length", units.lengthUnit());
          say(degrees, "units.degrees", units.degreeUnit(Language.inUse().locale()));
          boolean same = chosen == Language.inUse() && units.equals(Units.inUse());
          note.setText(same ? "" : Texts.in(chosen, "language.fromNextStart"));
        };
    shell.languageProperty().addListener(o -> show.run());
    shell.unitsProperty().addListener(o -> show.run());
    show.run();
    FlowPane row = new FlowPane(language, size, length, degrees, note);
    row.getStyleClass().add("language-row");
    return row;
  }

  private static KeyButton choice(String id, String key, Runnable action) {
    KeyButton button = new KeyButton("", Texts.of(key), action);
    button.setId(id);
    return button;
  }

  private static String sizeWords(Units units) {
    return units
        .size()
        .map(u -> u == WireSize.Unit.AWG ? "units.size.awg" : "units.size.mm2")
        .orElse("units.size.written");
  }

  private static void say(KeyButton button, String key, String value) {
    button.setText(Texts.of(key, value));
    button.setAccessibleText(button.getText());
  }

  /** Takes the next of the names of one of the units. */
  private static void change(ShellViewModel shell, Map<String, String> next) {
    Units now = shell.unitsProperty().get();
    Arrays.stream(now.names().split(","))
        .filter(next::containsKey)
        .findFirst()
        .flatMap(name -> now.with(next.get(name)))
        .ifPresent(shell.unitsProperty()::set);
  }

  /** The next of the units of lengths, sizes or temperatures, by the key's letter. */
  static boolean nextUnit(ShellViewModel shell, String letter) {
    switch (letter) {
      case "s" -> change(shell, NEXT_SIZE);
      case "l" -> change(shell, NEXT_LENGTH);
      case "t" -> change(shell, NEXT_DEGREES);
      default -> {
        return false;
      }
    }
    return true;
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
