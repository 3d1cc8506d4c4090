package loopwright.ui.shell;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
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

  private static final String SIZES = "S";
  private static final String LENGTHS = "L";
  private static final String DEGREES = "T";

  /** What each key makes of the units. */
  private static final Map<String, UnaryOperator<Units>> NEXT =
      Map.of(
          SIZES, now -> new Units(nextSize(now), now.feet(), now.fahrenheit()),
          LENGTHS, now -> new Units(now.size(), !now.feet(), now.fahrenheit()),
          DEGREES, now -> new Units(now.size(), now.feet(), !now.fahrenheit()));

  private KeysPage() {}

  static Node make(ShellViewModel shell) {
    FlowPane groups = new FlowPane();
    groups.getStyleClass().add("key-groups");
    groups.setMinWidth(0);
    for (String group : GROUPS) {
      VBox keys = group(group);
      keys.maxWidthProperty().bind(groups.widthProperty());
      groups.getChildren().add(keys);
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
          String key = e.getCharacter().toUpperCase(Locale.ROOT);
          if (NEXT.containsKey(key)) {
            nextUnits(shell, key);
            e.consume();
          }
        });
    scroll.setAccessibleText(Texts.of("keys.title"));
    return scroll;
  }

  /** What is set here, since it is seldom changed. */
  private static Node choices(ShellViewModel shell) {
    KeyButton language = choice("language", "Shift F9", () -> nextLanguage(shell));
    KeyButton size = choice("units-size", SIZES, () -> nextUnits(shell, SIZES));
    KeyButton length = choice("units-length", LENGTHS, () -> nextUnits(shell, LENGTHS));
    KeyButton degrees = choice("units-degrees", DEGREES, () -> nextUnits(shell, DEGREES));
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
    row.setMinWidth(0);
    note.setWrapText(true);
    for (Region each : List.of(language, size, length, degrees, note)) {
      each.maxWidthProperty().bind(row.widthProperty());
    }
    return row;
  }

  private static KeyButton choice(String id, String key, Runnable action) {
    KeyButton button = new KeyButton("", key, action);
    button.setWrapText(true);
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

  private static void nextUnits(ShellViewModel shell, String key) {
    shell.unitsProperty().set(NEXT.get(key).apply(shell.unitsProperty().get()));
  }

  /** As written, then AWG beside it, then mm2. */
  private static Optional<WireSize.Unit> nextSize(Units now) {
    return now.size().isEmpty()
        ? Optional.of(WireSize.Unit.AWG)
        : now.size().filter(u -> u == WireSize.Unit.AWG).map(u -> WireSize.Unit.MM2);
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
      grid.addRow(row++, Parts.keyCap(line.substring(0, cut)), Parts.text(line.substring(cut + 1)));
    }
    VBox box =
        Parts.column("card", Parts.text(Texts.of("keys." + name + ".title"), "side-title"), grid);
    box.getStyleClass().add("key-group");
    return box;
  }
}
