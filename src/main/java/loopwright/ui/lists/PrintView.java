package loopwright.ui.lists;

import java.io.File;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import loopwright.model.Language;
import loopwright.model.Units;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** Print and lists: one digit writes one file. */
final class PrintView extends VBox {
  /** Least width in em at which there is room for what each sheet is for. */
  private static final double WIDE_LEAST = 46;

  private final PrintViewModel model;
  private final Prints.Sheet first;
  private final Runnable back;
  private final ReadOnlyDoubleProperty em;
  private final List<KeyButton> buttons = new ArrayList<>();
  private final StackPane sheets = new StackPane();
  private final TextField folder = new TextField();

  /**
   * Makes the view.
   *
   * @param em pixels of one em
   * @param first the sheet that Enter writes at first
   * @param back goes back to where one came from
   */
  PrintView(PrintViewModel model, ReadOnlyDoubleProperty em, Prints.Sheet first, Runnable back) {
    this.em = em;
    this.model = model;
    this.first = first;
    this.back = back;
    setId("prints");
    getStyleClass().add("page");
    Label told = Parts.told(model.toldProperty());
    told.setId("prints-told");
    for (Prints.Sheet sheet : Prints.Sheet.values()) {
      buttons.add(button(sheet));
    }
    KeyButton paper = new KeyButton("", "P", model::otherPaper).styled("action");
    paper.setMinWidth(Region.USE_PREF_SIZE);
    Runnable named =
        () -> paper.setText(Texts.of("lists.paper", Texts.of(model.paperProperty().get())));
    model.paperProperty().addListener(o -> named.run());
    named.run();
    folder.setId("prints-folder");
    folder.getStyleClass().add("search-field");
    folder.setAccessibleText(Texts.of("lists.folder"));
    folder.setMinWidth(0);
    folder.textProperty().bindBidirectional(model.folderProperty());
    HBox.setHgrow(folder, Priority.ALWAYS);
    KeyButton choose =
        new KeyButton(Texts.of("lists.choose"), "Ctrl+O", this::chooseFolder).styled("action");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    KeyButton leave = new KeyButton(Texts.of("lists.back"), "Esc", back).styled("action");
    leave.setMinWidth(Region.USE_PREF_SIZE);
    Label title = Parts.text(Texts.of("lists.of", model.plan().vehicle().name()), "page-title");
    title.setMaxWidth(Double.MAX_VALUE);
    title.setMinWidth(0);
    HBox.setHgrow(title, Priority.ALWAYS);
    getChildren()
        .addAll(
            Parts.row("page-head", title, paper, leave),
            sheets,
            Parts.row(
                "choice-head", Parts.line(Texts.of("lists.folder"), "side-title"), folder, choose),
            told);
    widthProperty().addListener(o -> Platform.runLater(this::arrange));
    em.addListener(o -> arrange());
    arrange();
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
  }

  private KeyButton button(Prints.Sheet sheet) {
    String digit = Integer.toString(sheet.ordinal() + 1);
    KeyButton button =
        new KeyButton(Texts.of(sheet), digit, () -> model.print(sheet))
            .styled("action", "print-button");
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }

  /** With what each is for beside it where there is room, else the buttons alone. */
  private void arrange() {
    if (getWidth() / em.get() < WIDE_LEAST) {
      FlowPane flow = new FlowPane();
      flow.getStyleClass().add("print-sheets");
      flow.getChildren().addAll(buttons);
      sheets.getChildren().setAll(flow);
      return;
    }
    VBox rows = Parts.column("print-sheets");
    for (int i = 0; i < buttons.size(); i++) {
      Label what = Parts.text(whatIsIt(Prints.Sheet.values()[i]));
      HBox.setHgrow(what, Priority.ALWAYS);
      rows.getChildren().add(Parts.row("print-sheet", buttons.get(i), what));
    }
    sheets.getChildren().setAll(rows);
  }

  private String whatIsIt(Prints.Sheet sheet) {
    return switch (sheet) {
      case MAKING -> Texts.of("lists.what.making");
      case LABELS -> Texts.of("lists.what.labels");
      case DRAWINGS -> Texts.of("lists.what.drawings");
      case CHECK ->
          Texts.of(
              "lists.what.check",
              Units.inUse().temperature(model.plan().hottest(), Language.inUse().locale()));
      case KNOWN_GOOD -> Texts.of("lists.what.known");
      case BUYING -> Texts.of("lists.what.buying");
      case CUTTING -> Texts.of("lists.what.cutting");
      case ORDER -> whatOrder();
    };
  }

  private String whatOrder() {
    return model
        .plan()
        .circuit()
        .flatMap(model.plan().vehicle()::circuit)
        .map(c -> Texts.of("lists.what.order", c.name()))
        .orElseGet(() -> Texts.of("lists.what.orders"));
  }

  /** Puts the focus where hands go on. */
  void takeFocus() {
    buttons.get(first.ordinal()).requestFocus();
  }

  private void chooseFolder() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(Texts.of("lists.choose"));
    File now = new File(folder.getText());
    if (now.isDirectory()) {
      chooser.setInitialDirectory(now);
    }
    Optional.ofNullable(chooser.showDialog(getScene().getWindow()))
        .map(File::getPath)
        .ifPresent(folder::setText);
  }

  private void pressed(KeyEvent e) {
    boolean typing = e.getTarget() instanceof TextInputControl;
    boolean handled = true;
    if (e.getCode() == KeyCode.ESCAPE) {
      if (typing) {
        takeFocus();
      } else {
        back.run();
      }
    } else if (e.getCode() == KeyCode.O && e.isShortcutDown()) {
      chooseFolder();
    } else if (typing || e.isShortcutDown() || e.isAltDown()) {
      handled = false;
    } else if (e.getCode() == KeyCode.P) {
      model.otherPaper();
    } else if (e.getCode().isDigitKey()) {
      int digit = KeyNames.digit(e.getCode());
      handled = digit >= 1 && digit <= Prints.Sheet.values().length;
      if (handled) {
        model.print(Prints.Sheet.values()[digit - 1]);
      }
    } else {
      handled = false;
    }
    if (handled) {
      e.consume();
    }
  }
}
