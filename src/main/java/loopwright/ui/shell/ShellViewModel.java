package loopwright.ui.shell;

import java.util.Arrays;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.SimpleObjectProperty;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.ui.Look;
import loopwright.ui.Preferences;
import loopwright.ui.TextSize;

/** The frame: which view is open, which look, how large the text. */
public final class ShellViewModel {

  /** The views of the window. */
  public enum Place {
    HOME,
    VEHICLE,
    FIND,
    CASES,
    PAPER,
    WIRING,
    PROVE,
    PRACTISE,
    EXPLAIN,
    KEYS
  }

  private final ObjectProperty<Place> place = new SimpleObjectProperty<>(Place.VEHICLE);
  private final ObjectProperty<Look> look;
  private final ObjectProperty<TextSize> textSize;
  private final ObjectProperty<Language> language;
  private final ObjectProperty<Units> units;
  private final ReadOnlyDoubleWrapper em = new ReadOnlyDoubleWrapper();

  /** Starts with what was kept. */
  public ShellViewModel(Preferences preferences) {
    look =
        new SimpleObjectProperty<>(
            preferences
                .read(Preferences.Item.LOOK)
                .flatMap(
                    name ->
                        Arrays.stream(Look.values()).filter(l -> l.name().equals(name)).findFirst())
                .orElse(Look.PAPER));
    textSize =
        new SimpleObjectProperty<>(
            preferences
                .read(Preferences.Item.TEXT_SIZE)
                .flatMap(
                    name ->
                        Arrays.stream(TextSize.values())
                            .filter(s -> s.name().equals(name))
                            .findFirst())
                .orElse(TextSize.NORMAL));
    language =
        new SimpleObjectProperty<>(
            preferences
                .read(Preferences.Item.LANGUAGE)
                .flatMap(Language::of)
                .orElse(Language.inUse()));
    units =
        new SimpleObjectProperty<>(
            preferences
                .read(Preferences.Item.UNITS)
                .flatMap(Units.inUse()::with)
                .orElse(Units.inUse()));
    em.set(textSize.get().pixels());
    look.addListener((o, was, is) -> preferences.keep(Preferences.Item.LOOK, is.name()));
    language.addListener((o, was, is) -> preferences.keep(Preferences.Item.LANGUAGE, is.code()));
    units.addListener((o, was, is) -> preferences.keep(Preferences.Item.UNITS, is.names()));
    textSize.addListener(
        (o, was, is) -> {
          em.set(is.pixels());
          preferences.keep(Preferences.Item.TEXT_SIZE, is.name());
        });
  }

  /** The open view. */
  public ObjectProperty<Place> placeProperty() {
    return place;
  }

  /** The look. */
  public ObjectProperty<Look> lookProperty() {
    return look;
  }

  /** The text size. */
  public ObjectProperty<TextSize> textSizeProperty() {
    return textSize;
  }

  /** The language chosen; the one in use is that of the start. */
  public ObjectProperty<Language> languageProperty() {
    return language;
  }

  /** The units chosen; those in use are those of the start. */
  public ObjectProperty<Units> unitsProperty() {
    return units;
  }

  /** Pixels of one em. */
  public ReadOnlyDoubleProperty emProperty() {
    return em.getReadOnlyProperty();
  }
}
