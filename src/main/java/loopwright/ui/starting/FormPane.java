package loopwright.ui.starting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;
import loopwright.casework.pattern.Question;
import loopwright.knowledge.PatternValues;
import loopwright.ui.Texts;
import loopwright.ui.widget.Parts;

/** The questions one below the other, the usual answers filled in. Up, down and Tab move. */
final class FormPane extends ScrollPane {
  private final FormViewModel model;
  private final VBox column = Parts.column("form-column");
  private final Map<String, Row> rows = new LinkedHashMap<>();

  /** One question with its field. */
  private final class Row extends VBox {
    private final Question.Form form;
    private final Node field;
    private final Label wrong = Parts.text("", "entry-status", "status-problem");
    private final Label source = Parts.text("", "form-source");
    private Question question;

    Row(Question question) {
      this.question = question;
      this.form = question.form();
      getStyleClass().add("form-row");
      if (form instanceof Question.Form.OneOf one) {
        field =
            new ChoiceField(question.text(), one.choices(), id -> model.type(this.question, id));
      } else {
        TextField text = new TextField();
        text.getStyleClass().add("form-field");
        text.setAccessibleText(question.text());
        text.textProperty().addListener((o, was, is) -> model.type(this.question, is));
        text.focusedProperty()
            .addListener(
                (o, was, is) -> {
                  if (is) {
                    Platform.runLater(text::selectAll);
                  }
                });
        field = text;
      }
      field.setId("ask-" + question.id());
      field
          .focusedProperty()
          .addListener(
              (o, was, is) -> {
                if (is) {
                  reveal(this);
                }
              });
      wrong.managedProperty().bind(wrong.textProperty().isNotEmpty());
      source.managedProperty().bind(source.textProperty().isNotEmpty());
      getChildren().setAll(Parts.text(question.text(), "form-question"), field, wrong, source);
    }

    void show(Question now) {
      question = now;
      String shown = model.shown(now);
      if (field instanceof TextField text) {
        if (!text.getText().equals(shown)) {
          text.setText(shown);
        }
      } else {
        ((ChoiceField) field).show(shown);
      }
      String why = model.wrong(now).map(w -> Texts.of("starting.accepted", w)).orElse("");
      wrong.setText(why);
      // That something is common practice needs no line of its own here; the preview says it.
      boolean usual =
          shown.equals(now.usual())
              && !now.source().isEmpty()
              && !now.source().equals(PatternValues.COMMON_PRACTICE);
      source.setText(usual ? Texts.of("starting.usual", now.source()) : "");
    }
  }

  FormPane(FormViewModel model) {
    this.model = model;
    setContent(column);
    Parts.scrollDown(this);
    model.onChange(this::show);
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    show();
  }

  /** Shows what the fields hold now. */
  void show() {
    List<Node> shown = new ArrayList<>();
    List<Question> questions = model.questionsProperty().get();
    rows.keySet().removeIf(id -> questions.stream().noneMatch(q -> q.id().equals(id)));
    for (Question question : questions) {
      Row row = rows.get(question.id());
      if (row == null || !row.form.equals(question.form())) {
        row = new Row(question);
        rows.put(question.id(), row);
      }
      row.show(question);
      shown.add(row);
    }
    if (!column.getChildren().equals(shown)) {
      column.getChildren().setAll(shown);
    }
  }

  /** Puts the focus into the first field. */
  void takeFocus() {
    rows.values().stream()
        .filter(r -> column.getChildren().indexOf(r) == 0)
        .findFirst()
        .ifPresent(
            r ->
                Platform.runLater(
                    () -> {
                      if (getScene() == null) {
                        return;
                      }
                      // A scrolling pane that isn't laid out in its window yet has no content
                      // that could take the focus, and doesn't know how far to scroll.
                      getScene().getRoot().applyCss();
                      getScene().getRoot().layout();
                      r.field.requestFocus();
                    }));
  }

  private void pressed(KeyEvent e) {
    boolean down = e.getCode() == KeyCode.DOWN;
    if ((down || e.getCode() == KeyCode.UP) && !e.isShortcutDown()) {
      List<Node> all = column.getChildren();
      for (int i = 0; i < all.size(); i++) {
        if (((Row) all.get(i)).field.isFocused()) {
          int next = i + (down ? 1 : -1);
          if (next >= 0 && next < all.size()) {
            ((Row) all.get(next)).field.requestFocus();
          }
          e.consume();
          return;
        }
      }
    }
  }

  /** Scrolls so that a row is seen. */
  private void reveal(Node row) {
    double whole = column.getHeight() - getViewportBounds().getHeight();
    if (whole <= 0) {
      return;
    }
    Bounds at = row.getBoundsInParent();
    double top = getVvalue() * whole;
    double bottom = top + getViewportBounds().getHeight();
    if (at.getMinY() < top) {
      setVvalue(at.getMinY() / whole);
    } else if (at.getMaxY() > bottom) {
      setVvalue((at.getMaxY() - getViewportBounds().getHeight()) / whole);
    }
  }
}
