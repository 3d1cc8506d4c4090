package loopwright.ui.cases;

import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import loopwright.casework.CaseEvent;
import loopwright.casework.record.CaseRecord;
import loopwright.ui.ReadyCases;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** The kept cases: look for one, take it up again, print it, export them, put a photo to one. */
public final class CasesScreen extends VBox {
  /** Ems of height that both lists need. */
  private static final double ROOM_FOR_BOTH = 26;

  private final CasesViewModel model;
  private final Consumer<CaseEvent.Opened> reopen;
  private final Consumer<ReadyCases.Entry> practise;
  private final BiConsumer<CaseRow, Path> attach;
  private final ListView<CaseRow> list = new ListView<>();
  private final ListView<ReadyCases.Entry> ready = new ListView<>();
  private final TextField search = new TextField();
  private final TextField photo = new TextField();
  private final HBox photoRow;
  private final FlowPane actions;
  private final ReadOnlyDoubleProperty em;
  private boolean untouched;

  /**
   * Whether the cases to practise on are gone through; where room is short, they alone are seen.
   */
  private boolean practising;

  /**
   * Makes the screen.
   *
   * @param model its view model
   * @param reopen takes a case up again
   * @param attach puts a photo to a case
   * @param readyCases cases to practise on; may be none
   * @param practise opens one of them
   * @param em pixels of one em
   */
  public CasesScreen(
      CasesViewModel model,
      Consumer<CaseEvent.Opened> reopen,
      BiConsumer<CaseRow, Path> attach,
      List<ReadyCases.Entry> readyCases,
      Consumer<ReadyCases.Entry> practise,
      ReadOnlyDoubleProperty em) {
    this.model = model;
    this.em = em;
    this.reopen = reopen;
    this.practise = practise;
    this.attach = attach;
    setId("cases");
    getStyleClass().add("page");
    photoRow = photoRow();
    keptList();
    Label told = Parts.told(model.toldProperty());
    told.setId("cases-told");
    told.managedProperty().bind(told.textProperty().isNotEmpty());
    actions = actions();
    getChildren().addAll(head(), list, photoRow, told, actions);
    if (!readyCases.isEmpty()) {
      readyList(readyCases);
      Label there = Parts.text(Texts.of("cases.ready"), "section-line", "cases-ready");
      there.setOnMouseClicked(e -> goTo(ready));
      getChildren().addAll(there, ready);
      list.focusedProperty().addListener((o, was, is) -> seen(is, false));
      search.focusedProperty().addListener((o, was, is) -> seen(is, false));
      ready.focusedProperty().addListener((o, was, is) -> seen(is, true));
      list.getItems().addListener((ListChangeListener<CaseRow>) c -> arrange());
      heightProperty().addListener(o -> arrange());
      em.addListener(o -> arrange());
    }
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    addEventFilter(KeyEvent.KEY_TYPED, this::typed);
  }

  private void seen(boolean focused, boolean ofReady) {
    if (focused) {
      practising = ofReady;
      arrange();
    }
  }

  /** Where room is short, one of the two lists is seen, with what belongs to it. */
  private void arrange() {
    boolean both = getHeight() / em.get() >= ROOM_FOR_BOTH || list.getItems().isEmpty();
    Parts.shown(ready, both || practising);
    Parts.shown(list, both || !practising);
    Parts.shown(actions, list.isVisible());
  }

  /** Goes to one of the two lists, seen or not. */
  private void goTo(ListView<?> to) {
    practising = to == ready;
    arrange();
    to.requestFocus();
  }

  private HBox head() {
    Label title = Parts.line(Texts.of("cases.title"), "page-title", "pressable");
    title.setOnMouseClicked(e -> goTo(list));
    title.setMinWidth(Region.USE_PREF_SIZE);
    search.setId("cases-search");
    search.getStyleClass().add("search-field");
    search.setPromptText(Texts.of("cases.search"));
    search.setAccessibleText(Texts.of("cases.search"));
    search.setMinWidth(0);
    search.textProperty().bindBidirectional(model.searchProperty());
    HBox.setHgrow(search, Priority.ALWAYS);
    return Parts.row("choice-head", title, search, Parts.keyCap("Ctrl+F"));
  }

  private void keptList() {
    list.setItems(model.shown());
    list.setId("kept");
    list.getStyleClass().add("fat-list");
    list.setCellFactory(
        l -> new FatCell<>(l, row -> Parts.entry(row.title(), row.state(), row.lines())));
    Label none = Parts.text("", "muted");
    none.textProperty()
        .bind(
            Bindings.when(model.searchProperty().isEmpty())
                .then(Texts.of("cases.none"))
                .otherwise(Texts.of("cases.noneFits")));
    list.setPlaceholder(none);
    list.setAccessibleText(Texts.of("cases.title"));
    list.getSelectionModel()
        .selectedIndexProperty()
        .addListener(
            (o, was, is) -> {
              if (is.intValue() >= 0) {
                model.chosenProperty().set(is.intValue());
              }
            });
    model
        .chosenProperty()
        .addListener((o, was, is) -> list.getSelectionModel().select(is.intValue()));
    model
        .shown()
        .addListener(
            (ListChangeListener<CaseRow>)
                c -> {
                  list.getSelectionModel().select(model.chosenProperty().get());
                  // The list is read while the screen is already up: whoever has a case of their
                  // own goes on with that, not with one to practise on.
                  if (untouched && !model.shown().isEmpty() && ready.isFocused()) {
                    goTo(list);
                  }
                });
    VBox.setVgrow(list, Priority.ALWAYS);
  }

  private void readyList(List<ReadyCases.Entry> readyCases) {
    ready.setId("ready");
    ready.getStyleClass().add("fat-list");
    ready.getItems().setAll(readyCases);
    ready.setCellFactory(
        l -> new FatCell<>(l, e -> Parts.entry(e.title(), e.vehicleName(), List.of(e.story()))));
    ready.setAccessibleText(Texts.of("cases.ready"));
    ready.getSelectionModel().select(0);
    ready.setOnMouseClicked(
        e -> {
          if (e.getClickCount() == 2) {
            chosenReady().ifPresent(practise);
          }
        });
    VBox.setVgrow(ready, Priority.ALWAYS);
  }

  private HBox photoRow() {
    photo.setId("cases-photo");
    photo.getStyleClass().add("search-field");
    photo.setPromptText(Texts.of("cases.photo"));
    photo.setAccessibleText(Texts.of("cases.photo"));
    photo.setMinWidth(0);
    HBox.setHgrow(photo, Priority.ALWAYS);
    KeyButton choose =
        new KeyButton(Texts.of("cases.choosePhoto"), "Ctrl+O", this::choosePhoto).styled("action");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    HBox row = Parts.row("choice-head", photo, choose);
    Parts.shown(row, false);
    return row;
  }

  private FlowPane actions() {
    KeyButton own = new KeyButton("", "O", model::switchOwnRecord).styled("action", "wide");
    own.setId("own-record");
    own.textProperty()
        .bind(
            Bindings.when(model.ownCountsProperty())
                .then(Texts.of("cases.ownOn"))
                .otherwise(Texts.of("cases.ownOff")));
    FlowPane actions = new FlowPane();
    actions.getStyleClass().add("actions");
    actions
        .getChildren()
        .addAll(
            new KeyButton(Texts.of("cases.open"), "Enter", this::open).styled("primary"),
            action("cases.print", "P", model::print),
            action("cases.export", "E", model::export),
            action("cases.addPhoto", "A", this::askForPhoto),
            action("cases.toFolder", "F", this::chooseFolder),
            own);
    return actions;
  }

  private static KeyButton action(String key, String cap, Runnable action) {
    return new KeyButton(Texts.of(key), cap, action).styled("action", "wide");
  }

  private void open() {
    model.chosen().flatMap(CaseRow::record).map(CaseRecord::opened).ifPresent(reopen);
  }

  private void askForPhoto() {
    if (model.chosen().flatMap(CaseRow::record).isPresent()) {
      Parts.shown(photoRow, true);
      photo.requestFocus();
    }
  }

  private void takePhoto() {
    try {
      Path path = Path.of(photo.getText().strip());
      model.chosen().ifPresent(row -> attach.accept(row, path));
      photo.clear();
      leavePhoto();
    } catch (InvalidPathException e) {
      model.failed(e);
    }
  }

  private void leavePhoto() {
    Parts.shown(photoRow, false);
    goTo(list);
  }

  private void choosePhoto() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(Texts.of("cases.choosePhoto"));
    File file = chooser.showOpenDialog(getScene().getWindow());
    if (file != null) {
      photo.setText(file.getPath());
      photo.requestFocus();
    }
  }

  private void chooseFolder() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(Texts.of("cases.toFolder"));
    File now = model.folder().toFile();
    if (now.isDirectory()) {
      chooser.setInitialDirectory(now);
    }
    Optional.ofNullable(chooser.showDialog(getScene().getWindow()))
        .map(File::toPath)
        .ifPresent(model::takeFolder);
  }

  private void pressed(KeyEvent e) {
    untouched = false;
    boolean handled = true;
    if (e.isShortcutDown()) {
      handled = shortcut(e.getCode());
    } else if (e.getTarget() == photo) {
      handled = inPhoto(e.getCode());
    } else if (e.getTarget() instanceof TextInputControl) {
      handled = inSearch(e.getCode());
    } else {
      handled = !e.isAltDown() && inLists(e.getCode());
    }
    if (handled) {
      e.consume();
    }
  }

  private boolean shortcut(KeyCode code) {
    if (code == KeyCode.F) {
      search.requestFocus();
      search.selectAll();
      return true;
    }
    boolean choosing = code == KeyCode.O && photoRow.isVisible();
    if (choosing) {
      choosePhoto();
    }
    return choosing;
  }

  private boolean inPhoto(KeyCode code) {
    if (code == KeyCode.ENTER) {
      takePhoto();
    } else if (code == KeyCode.ESCAPE) {
      leavePhoto();
    }
    return code == KeyCode.ENTER || code == KeyCode.ESCAPE;
  }

  private boolean inSearch(KeyCode code) {
    if (code == KeyCode.ESCAPE) {
      search.clear();
    }
    boolean leaves = code == KeyCode.ESCAPE || code == KeyCode.ENTER || code == KeyCode.DOWN;
    if (leaves) {
      goTo(list);
    }
    return leaves;
  }

  private boolean inLists(KeyCode code) {
    boolean handled = true;
    switch (code) {
      case DOWN -> {
        handled = atEnd(list) && !ready.getItems().isEmpty();
        if (handled) {
          goTo(ready);
        }
      }
      case UP -> {
        handled =
            ready.isFocused()
                && ready.getSelectionModel().getSelectedIndex() <= 0
                && !list.getItems().isEmpty();
        if (handled) {
          goTo(list);
        }
      }
      case ENTER -> {
        if (ready.isFocused()) {
          chosenReady().ifPresent(practise);
        } else {
          open();
        }
      }
      default -> handled = false;
    }
    return handled;
  }

  /** Letters act when they are typed: else they would still be typed into what opens on them. */
  private void typed(KeyEvent e) {
    if (e.getTarget() instanceof TextInputControl || e.isShortcutDown() || e.isAltDown()) {
      return;
    }
    boolean handled = true;
    switch (e.getCharacter().toLowerCase(Locale.ROOT)) {
      case "p" -> model.print();
      case "e" -> model.export();
      case "a" -> askForPhoto();
      case "f" -> chooseFolder();
      case "o" -> model.switchOwnRecord();
      default -> handled = false;
    }
    if (handled) {
      e.consume();
    }
  }

  /** Whether the arrow down has nowhere to go within a list that has the focus. */
  private static boolean atEnd(ListView<?> list) {
    return list.isFocused()
        && list.getSelectionModel().getSelectedIndex() >= list.getItems().size() - 1;
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    untouched = true;
    if (list.getItems().isEmpty() && !ready.getItems().isEmpty()) {
      goTo(ready);
    } else {
      goTo(list);
    }
  }

  private Optional<ReadyCases.Entry> chosenReady() {
    return Optional.ofNullable(ready.getSelectionModel().getSelectedItem());
  }
}
