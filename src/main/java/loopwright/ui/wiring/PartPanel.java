package loopwright.ui.wiring;

import java.io.File;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.model.Access;
import loopwright.model.Part;
import loopwright.model.Photo;
import loopwright.model.Said;
import loopwright.ui.Texts;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;

/** Label, place, note, access and photos of the chosen part. */
final class PartPanel extends StackPane {
  private static final double THUMB = 6;

  private final PartViewModel model;
  private final ReadOnlyDoubleProperty em;
  private final Consumer<Ask> ask;
  private Optional<TextField> first = Optional.empty();
  private Optional<Part> shown = Optional.empty();

  PartPanel(PartViewModel model, ReadOnlyDoubleProperty em, Consumer<Ask> ask) {
    this.model = model;
    this.em = em;
    this.ask = ask;
    setId("part");
    show();
  }

  void takeFocus() {
    first.ifPresent(TextField::requestFocus);
  }

  /** Shows the chosen part, unless it is shown already. */
  void show() {
    Optional<Part> part = model.part();
    if (part.equals(shown) && !getChildren().isEmpty()) {
      return;
    }
    boolean sameId = part.map(Part::id).equals(shown.map(Part::id));
    int focused = sameId ? focusedField() : -1;
    shown = part;
    first = Optional.empty();
    getChildren()
        .setAll(
            part.<Node>map(p -> Parts.scrolling(form(p)))
                .orElseGet(() -> Parts.text(Texts.of("wiring.part.none"), "muted")));
    if (focused >= 0) {
      applyCss();
      layout();
      lookupAll(".part-field").stream().skip(focused).findFirst().ifPresent(Node::requestFocus);
    }
  }

  private int focusedField() {
    int i = 0;
    for (Node field : lookupAll(".part-field")) {
      if (field.isFocused()) {
        return i;
      }
      i++;
    }
    return -1;
  }

  private VBox form(Part part) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("part-grid");
    int row = 0;
    row = line(grid, row, "wiring.part.label", part.label(), model::label);
    row = line(grid, row, "wiring.part.where", part.where(), model::where);
    row = line(grid, row, "wiring.part.note", part.note(), model::note);
    row = line(grid, row, "wiring.part.apart", number(part.apartMinutes()), model::apart);
    row = line(grid, row, "wiring.part.swap", number(part.swapMinutes()), model::swap);
    for (String terminal : part.spec().terminals()) {
      row = terminal(grid, row, part, terminal);
    }
    return Parts.column("panel-body", Parts.text(part.title(), "case-title"), grid, photos(part));
  }

  private static String number(Optional<Double> minutes) {
    return minutes.map(Said::number).orElse("");
  }

  private int line(
      GridPane grid, int row, String key, String text, Function<String, Optional<String>> take) {
    Label problem = problem();
    TextField field = field(Texts.of(key), text, take, problem);
    grid.addRow(row, Parts.line(Texts.of(key)), field, problem);
    GridPane.setHgrow(field, Priority.ALWAYS);
    return row + 1;
  }

  private static Label problem() {
    Label problem = Parts.text("", "status-problem");
    problem.visibleProperty().bind(problem.textProperty().isNotEmpty());
    problem.managedProperty().bind(problem.visibleProperty());
    return problem;
  }

  private TextField field(
      String name, String text, Function<String, Optional<String>> take, Label problem) {
    TextField field = new TextField(text);
    field.getStyleClass().addAll("search-field", "part-field");
    field.setAccessibleText(name);
    if (first.isEmpty()) {
      first = Optional.of(field);
    }
    Runnable commit =
        () -> {
          if (!field.getText().strip().equals(text)) {
            problem.setText(take.apply(field.getText().strip()).orElse(""));
          }
        };
    field.setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            commit.run();
            e.consume();
          }
        });
    field
        .focusedProperty()
        .addListener(
            (o, was, is) -> {
              if (!is && field.getScene() != null) {
                commit.run();
              }
            });
    return field;
  }

  private int terminal(GridPane grid, int row, Part part, String terminal) {
    Access access = part.access(terminal);
    Label problem = problem();
    TextField minutes =
        field(
            Texts.of("wiring.part.reachMinutes", terminal),
            access.minutes() == 0 ? "" : Said.shown(access.minutes()),
            t -> model.reachMinutes(terminal, t),
            problem);
    minutes.setPromptText(Texts.of("wiring.part.minutes"));
    minutes.setPrefColumnCount(4);
    TextField how =
        field(
            Texts.of("wiring.part.reachHow", terminal),
            access.how(),
            t -> model.reachHow(terminal, t),
            problem);
    how.setPromptText(Texts.of("wiring.part.how"));
    how.setPrefColumnCount(24);
    KeyButton reach =
        button(
            access.reachable() ? "wiring.part.reachable" : "wiring.part.buried",
            () -> model.turnReachable(terminal));
    KeyButton photo = button("wiring.part.photo", () -> askPhoto(part, Optional.of(terminal)));
    FlowPane line = new FlowPane(minutes, how, reach, photo);
    line.getStyleClass().add("actions");
    grid.addRow(row, Parts.line(Texts.of("wiring.part.reach", terminal)), line, problem);
    return row + 1;
  }

  /** A button without a key of its own. */
  private static KeyButton button(String key, Runnable action) {
    KeyButton button = new KeyButton(Texts.of(key), "", action).styled("wide");
    button.setGraphic(null);
    return button;
  }

  // Photos.

  private FlowPane photos(Part part) {
    FlowPane all = new FlowPane();
    all.getStyleClass().add("actions");
    KeyButton add = button("wiring.part.photoOfPart", () -> askPhoto(part, Optional.empty()));
    add.setId("add-photo");
    all.getChildren().add(add);
    part.photos().forEach(p -> all.getChildren().add(photo(p)));
    return all;
  }

  private VBox photo(Photo photo) {
    Optional<File> file = model.file(photo);
    String of = photo.terminal().orElse("");
    KeyButton remove = button("wiring.part.photoOff", () -> model.detach(photo));
    VBox box = Parts.column("photo");
    if (file.isPresent()) {
      double size = THUMB * em.get();
      Image image = new Image(file.get().toURI().toString(), 2 * size, 2 * size, true, true, true);
      ImageView view = new ImageView(image);
      view.setFitHeight(size);
      view.setPreserveRatio(true);
      view.setAccessibleText(Texts.of("wiring.part.photoAlt", photo.file(), of));
      box.getChildren().add(view);
    } else {
      box.getChildren()
          .add(Parts.text(Texts.of("wiring.part.photoMissing", photo.file()), "status-problem"));
    }
    box.getChildren()
        .addAll(Parts.line(of.isEmpty() ? photo.file() : of + ": " + photo.file()), remove);
    return box;
  }

  private void askPhoto(Part part, Optional<String> terminal) {
    ask.accept(
        Ask.file(
            Texts.of("wiring.ask.photo", terminal.map(t -> part.id() + "." + t).orElse(part.id())),
            path -> model.attach(path, terminal)));
  }
}
