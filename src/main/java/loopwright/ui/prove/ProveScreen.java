package loopwright.ui.prove;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import loopwright.model.Vehicle;
import loopwright.ui.Texts;
import loopwright.ui.find.MeterViewModel;
import loopwright.ui.widget.KeyButton;
import loopwright.ui.widget.KeyNames;
import loopwright.ui.widget.Parts;

/** The Prove place: pages chosen by Ctrl and a number. */
public final class ProveScreen extends VBox {
  private final Map<ProvePage, Node> pages = new LinkedHashMap<>();
  private final HBox tabs = Parts.row("page-tabs");
  private final StackPane body = new StackPane();
  private final MeterViewModel meter;
  private Optional<ProvePage> shown;

  /**
   * Makes the screen.
   *
   * @param pages in the order of their numbers
   * @param em pixels of one em
   * @param meter the person's own meter
   * @param findFault goes to Find the fault with a kept case
   */
  public ProveScreen(
      List<ProvePage> pages,
      ReadOnlyDoubleProperty em,
      MeterViewModel meter,
      Consumer<String> findFault) {
    ProvePlace place =
        new ProvePlace() {
          @Override
          public ReadOnlyDoubleProperty em() {
            return em;
          }

          @Override
          public MeterViewModel meter() {
            return meter;
          }

          @Override
          public void findFault(String caseId) {
            findFault.accept(caseId);
          }
        };
    this.meter = meter;
    setId("prove");
    pages.forEach(p -> this.pages.put(p, p.make(place)));
    shown = pages.stream().findFirst();
    VBox.setVgrow(body, Priority.ALWAYS);
    body.setMinHeight(0);
    // A single page needs no tabs, and its room is dear.
    getChildren().setAll(pages.size() > 1 ? List.of(tabs, body) : List.of(body));
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    show();
  }

  /** Another vehicle is at hand, or the same one edited. */
  public void show(String name, Vehicle vehicle) {
    pages.keySet().forEach(p -> p.show(name, vehicle));
    if (getScene() != null) {
      opened();
    }
  }

  /** The place comes into sight. */
  public void opened() {
    meter.connect();
    shown.ifPresent(ProvePage::opened);
  }

  /** The explaining page that belongs to the page shown. */
  public String explains() {
    return shown.map(ProvePage::explains).orElse("loaded");
  }

  /** Turns to the page of that number, from 1 on; nothing happens without one. */
  public void turnTo(int number) {
    if (number >= 1 && number <= pages.size()) {
      go(List.copyOf(pages.keySet()).get(number - 1));
    }
  }

  /** Puts the focus where hands go on. */
  public void takeFocus() {
    shown.ifPresentOrElse(ProvePage::takeFocus, this::requestFocus);
  }

  private void show() {
    tabs.getChildren().setAll(Parts.keyCap(Texts.of("wiring.ctrl")));
    int number = 1;
    for (ProvePage page : pages.keySet()) {
      KeyButton tab =
          new KeyButton(page.title(), Integer.toString(number++), () -> go(page))
              .styled("page-tab");
      tab.setFocusTraversable(false);
      if (shown.filter(page::equals).isPresent()) {
        tab.getStyleClass().add("picked");
      }
      tabs.getChildren().add(tab);
    }
    body.getChildren().setAll(shown.map(pages::get).map(List::of).orElse(List.of()));
  }

  private void go(ProvePage page) {
    shown = Optional.of(page);
    show();
    page.opened();
    page.takeFocus();
  }

  private void pressed(KeyEvent e) {
    if (!e.isShortcutDown() || !e.getCode().isDigitKey()) {
      return;
    }
    int number = KeyNames.digit(e.getCode());
    if (number >= 1 && number <= pages.size()) {
      turnTo(number);
      e.consume();
    }
  }
}
