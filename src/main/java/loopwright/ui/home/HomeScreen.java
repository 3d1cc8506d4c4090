package loopwright.ui.home;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** The first screen: one key for each thing somebody may have come for. */
public final class HomeScreen extends StackPane {
  /** Narrower than this, in ems, each thing has a line of its own. */
  private static final double ROOM_FOR_TWO = 60;

  /** Ems beside the widest column of things. */
  private static final double MARGINS = 3;

  /**
   * Something that somebody may have come for.
   *
   * @param id its name
   * @param title what it is called
   * @param is what it is, in a line
   * @param go goes there
   */
  public record Errand(String id, String title, String is, Runnable go) {}

  private final HomeViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final Consumer<Recent> goOn;
  private final Runnable another;
  private final List<KeyButton> buttons = new ArrayList<>();
  private final FlowPane errands = new FlowPane();
  private final ListView<Recent> recents = new ListView<>();
  private final ScrollPane scroll;
  private boolean untouched = true;

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param em pixels of one em
   * @param vehicle what the vehicle at hand is called; empty without one
   * @param all what somebody may have come for, in the order of its keys from 1 on
   * @param another chooses another vehicle
   * @param goOn goes on with what was begun before
   */
  public HomeScreen(
      HomeViewModel model,
      ReadOnlyDoubleProperty em,
      ObservableValue<String> vehicle,
      List<Errand> all,
      Runnable another,
      Consumer<Recent> goOn) {
    this.model = model;
    this.em = em;
    this.another = another;
    this.goOn = goOn;
    setId("home");
    all.forEach(this::errand);
    errands.setId("home-errands");
    errands.getStyleClass().add("home-errands");
    list();
    Label at = Parts.text("", "home-vehicle");
    at.setId("home-vehicle");
    at.textProperty()
        .bind(
            vehicle.map(
                name -> name.isEmpty() ? Texts.of("home.noVehicle") : Texts.of("home.at", name)));
    KeyButton change = new KeyButton(Texts.of("home.another"), "V", another).styled("action");
    change.setId("home-another");
    FlowPane hand = new FlowPane(at, change);
    hand.getStyleClass().add("home-hand");
    VBox page =
        Parts.column(
            "page",
            Parts.text(Texts.of("home.title"), "page-title"),
            hand,
            errands,
            Parts.text(Texts.of("home.recent"), "side-title"),
            recents);
    VBox.setVgrow(recents, Priority.ALWAYS);
    scroll = Parts.scrolling(page);
    scroll.setFitToHeight(true);
    getChildren().add(scroll);
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    widthProperty().addListener(o -> arrange());
    em.addListener(o -> arrange());
    arrange();
  }

  private void errand(Errand errand) {
    String key = Integer.toString(buttons.size() + 1);
    KeyButton button =
        new KeyButton(errand.title() + ": " + errand.is(), key, errand.go()).styled("home-errand");
    button.setId("home-" + errand.id());
    VBox words =
        Parts.column(
            "home-words", Parts.text(errand.title(), "home-errand-title"), Parts.text(errand.is()));
    HBox face = Parts.row("home-face", button.getGraphic(), words);
    HBox.setHgrow(words, Priority.ALWAYS);
    face.maxWidthProperty().bind(button.prefWidthProperty().subtract(em.multiply(2)));
    face.prefWidthProperty().bind(face.maxWidthProperty());
    button.setGraphic(face);
    button.setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    // Else its height is asked for without a width, and every word breaks.
    button.setWrapText(true);
    buttons.add(button);
    errands.getChildren().add(button);
  }

  private void list() {
    recents.setId("home-recents");
    recents.getStyleClass().addAll("fat-list", "home-recents");
    recents.setItems(model.recents());
    recents.setCellFactory(
        l -> new FatCell<>(l, r -> Parts.entry(r.title(), r.state(), List.of(r.detail()))));
    recents.setAccessibleText(Texts.of("home.recent"));
    recents.setPlaceholder(Parts.text(none(), "muted"));
    recents.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            chosen().ifPresent(goOn);
          }
        });
    model
        .recents()
        .addListener(
            (ListChangeListener<Recent>)
                c -> {
                  recents.getSelectionModel().selectFirst();
                  // It is read while the screen is already up.
                  if (untouched) {
                    takeFocus();
                  }
                });
  }

  private String none() {
    Optional<KeyButton> first =
        buttons.stream().filter(b -> b.getId().equals("home-first")).findFirst();
    return first
        .map(b -> Texts.of("home.noneYet", Integer.toString(buttons.indexOf(b) + 1)))
        .orElse(Texts.of("home.none"));
  }

  private Optional<Recent> chosen() {
    return Optional.ofNullable(recents.getSelectionModel().getSelectedItem());
  }

  private void arrange() {
    double room = getWidth() / em.get() - MARGINS;
    double each = room >= ROOM_FOR_TWO ? room / 2 - 1 : room;
    errands.setPrefWrapLength(room * em.get());
    buttons.forEach(b -> b.setPrefWidth(Math.max(0, each * em.get())));
  }

  /** It comes into sight: what was begun before is read again. */
  public void opened() {
    model.refresh();
  }

  /** Puts the focus on the case that isn't finished, or else on the first thing. */
  public void takeFocus() {
    untouched = true;
    // Before its first styling a scroll pane doesn't hold its content yet.
    scroll.applyCss();
    if (model.recents().stream().anyMatch(Recent::unfinished)) {
      recents.requestFocus();
    } else {
      buttons.get(0).requestFocus();
    }
  }

  private void pressed(KeyEvent e) {
    untouched = false;
    if (e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean handled = true;
    if (e.getCode() == KeyCode.ENTER) {
      if (e.getTarget() instanceof ButtonBase button) {
        button.fire();
      } else {
        chosen().ifPresent(goOn);
      }
    } else if (e.getCode() == KeyCode.V) {
      another.run();
    } else if (e.getCode().isDigitKey()) {
      int number = KeyNames.digit(e.getCode()) - 1;
      if (number >= 0 && number < buttons.size()) {
        buttons.get(number).fire();
      }
    } else {
      handled = false;
    }
    if (handled) {
      e.consume();
    }
  }
}
