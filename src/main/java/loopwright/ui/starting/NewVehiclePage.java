package loopwright.ui.starting;

import java.util.Map;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.NewVehicle;
import loopwright.casework.pattern.Pattern;
import loopwright.model.Vehicle;
import loopwright.ui.LoopSource;
import loopwright.ui.Texts;
import loopwright.ui.widget.FatCell;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.Parts;
import loopwright.ui.wiring.WiringDesk;
import loopwright.ui.wiring.WiringPage;

/** Begins a vehicle: first what it is, then what needs power, with a live count of the parts. */
public final class NewVehiclePage implements WiringPage {
  private final Basis basis;
  private final LoopSource loops;
  private Runnable focus = () -> {};

  /**
   * Makes the page.
   *
   * @param loops draws what would come out
   */
  public NewVehiclePage(Basis basis, LoopSource loops) {
    this.basis = basis;
    this.loops = loops;
  }

  @Override
  public String title() {
    return Texts.of("starting.new.title");
  }

  @Override
  public String key() {
    return "Ctrl+N";
  }

  @Override
  public Needs needs() {
    return Needs.NOTHING;
  }

  @Override
  public Node open(WiringDesk desk) {
    StackPane page = new StackPane();
    page.setId("new-vehicle");
    new Steps(page, desk).first();
    return page;
  }

  @Override
  public void takeFocus() {
    focus.run();
  }

  /** The two pages, and the way from one to the other. */
  private final class Steps {
    private final StackPane page;
    private final WiringDesk desk;
    private final NewVehicleViewModel model;

    Steps(StackPane page, WiringDesk desk) {
      this.page = page;
      this.desk = desk;
      this.model = new NewVehicleViewModel(basis, desk.worker().another(), loops);
    }

    void first() {
      FormPane fields = new FormPane(model.form());
      KeyButton next =
          new KeyButton(Texts.of("starting.new.next"), "Enter", () -> second(0)).styled("primary");
      show(
          Texts.of("starting.new.first"),
          fields,
          next,
          Optional.empty(),
          Texts.of("starting.keys"));
      focus = fields::takeFocus;
      focus.run();
    }

    void second(int marked) {
      ListView<NewVehicleViewModel.Entry> list = new ListView<>(model.entries());
      list.setId("needs");
      list.getStyleClass().add("fat-list");
      list.setCellFactory(l -> new FatCell<>(l, this::face));
      list.setAccessibleText(Texts.of("starting.new.second"));
      list.getSelectionModel().select(Math.min(marked, Math.max(0, model.entries().size() - 1)));
      PreviewPane preview = new PreviewPane(model.maker(), desk.emProperty());
      HBox both = Parts.row("answer-pane");
      AnswerPane.beside(both, list, preview);
      KeyButton make =
          new KeyButton(Texts.of("starting.new.make"), "Enter", this::make).styled("primary");
      show(
          Texts.of("starting.new.second"),
          both,
          make,
          Optional.of(
              new KeyButton(Texts.of("starting.back"), "Esc", this::first).styled("action")),
          Texts.of("starting.new.keys"));
      list.addEventFilter(
          KeyEvent.KEY_PRESSED,
          e -> {
            int at = list.getSelectionModel().getSelectedIndex();
            if (e.getCode() == KeyCode.SPACE) {
              model.toggle(at);
              list.getSelectionModel().select(at);
            } else if (e.getCode() == KeyCode.RIGHT && at >= 0) {
              NewVehicle.Row row = model.entries().get(at).row();
              answer(at, NewVehicleViewModel.pattern(row), row.answers());
            } else if (e.getCode() == KeyCode.K && e.isShortcutDown()) {
              pick();
            } else {
              return;
            }
            e.consume();
          });
      focus = () -> Platform.runLater(list::requestFocus);
      focus.run();
    }

    private void pick() {
      int end = model.entries().size();
      PatternPicker picker = new PatternPicker(basis, pattern -> answer(end, pattern, Map.of()));
      picker.addEventFilter(
          KeyEvent.KEY_PRESSED,
          e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
              second(end);
              e.consume();
            }
          });
      page.getChildren().setAll(picker);
      focus = picker::takeFocus;
      focus.run();
    }

    private void answer(int at, Pattern pattern, Map<String, String> given) {
      model.before(at, vehicle -> answer(at, pattern, given, vehicle));
    }

    private void answer(int at, Pattern pattern, Map<String, String> given, Vehicle vehicle) {
      PreviewMaker maker = new PreviewMaker(desk.worker().another(), loops);
      AnswerPane pane = new AnswerPane(pattern, vehicle, basis, given, maker, desk.emProperty());
      KeyButton take =
          new KeyButton(
                  Texts.of("starting.take"),
                  "Enter",
                  () -> {
                    if (maker.previewProperty().get().problem().isEmpty()) {
                      model.put(at, new NewVehicle.Row(pattern.id(), pane.form().given()));
                      second(at);
                    }
                  })
              .styled("primary");
      show(
          pattern.title(basis),
          pane,
          take,
          Optional.of(
              new KeyButton(Texts.of("starting.back"), "Esc", () -> second(at)).styled("action")),
          Texts.of("starting.keys"));
      focus = pane::takeFocus;
      focus.run();
    }

    private void show(
        String title, Node body, KeyButton enter, Optional<KeyButton> escape, String keys) {
      page.getChildren().setAll(new StepPage(title, body, enter, escape, keys));
    }

    private void make() {
      model
          .outcome()
          .ifPresent(
              outcome -> {
                desk.begin(outcome.vehicle());
                desk.close(outcome.circuits().keySet().stream().findFirst());
              });
    }

    private HBox face(NewVehicleViewModel.Entry entry) {
      String mark = Texts.of(entry.taken() ? "starting.taken" : "starting.left");
      Label sign = Parts.line(mark, "need-mark");
      sign.setMinWidth(Region.USE_PREF_SIZE);
      HBox row =
          Parts.signed(sign, model.name(entry), Parts.text(model.pattern(entry), "form-source"));
      row.setAccessibleText(mark + " " + model.name(entry));
      return row;
    }
  }
}
