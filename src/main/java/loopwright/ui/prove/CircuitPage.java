package loopwright.ui.prove;

import java.util.concurrent.Executor;
import javafx.application.Platform;
import javafx.scene.Node;
import loopwright.casework.prove.ProveDesk;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** The page "Prove a circuit": first power, one thing at a time. */
public final class CircuitPage implements ProvePage {
  private final CircuitViewModel model;
  private CircuitScreen screen;

  /**
   * Makes the page.
   *
   * @param desk takes up proofs
   * @param preferences tells the meter used last
   * @param background where work runs that may take a while
   */
  public CircuitPage(ProveDesk desk, Preferences preferences, Executor background) {
    model = new CircuitViewModel(desk, preferences, new Worker(background, Platform::runLater));
  }

  @Override
  public String title() {
    return Texts.of("prove.circuit");
  }

  @Override
  public Node make(ProvePlace place) {
    model.findFaultIn(place::findFault);
    model.readBy(place.meter());
    screen = new CircuitScreen(model, place.em());
    return screen;
  }

  @Override
  public void show(String name, Vehicle vehicle) {
    model.show(name, vehicle);
  }

  @Override
  public void opened() {
    model.opened();
  }

  @Override
  public void takeFocus() {
    screen.takeFocus();
  }
}
