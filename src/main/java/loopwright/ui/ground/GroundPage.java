package loopwright.ui.ground;

import java.util.Objects;
import java.util.concurrent.Executor;
import javafx.application.Platform;
import javafx.scene.Node;
import loopwright.casework.ground.GroundDesk;
import loopwright.model.Vehicle;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;
import loopwright.ui.Worker;
import loopwright.ui.prove.ProvePage;
import loopwright.ui.prove.ProvePlace;

/** Checking grounds as a page of the Prove place. */
public final class GroundPage implements ProvePage {
  private final GroundViewModel model;
  private GroundScreen screen;

  /**
   * A page.
   *
   * @param desk checks grounds
   * @param preferences for the meter in hand
   * @param background where work runs that takes a while
   */
  public GroundPage(GroundDesk desk, Preferences preferences, Executor background) {
    Objects.requireNonNull(background, "background");
    this.model = new GroundViewModel(desk, preferences, new Worker(background, Platform::runLater));
  }

  @Override
  public String title() {
    return Texts.of("ground.title");
  }

  @Override
  public Node make(ProvePlace place) {
    model.readBy(place.meter());
    screen = new GroundScreen(model, place.em());
    return screen;
  }

  @Override
  public void show(String name, Vehicle vehicle) {
    model.show(vehicle);
  }

  @Override
  public void opened() {
    model.opened();
  }

  @Override
  public String explains() {
    return "ground";
  }

  @Override
  public void takeFocus() {
    screen.takeFocus();
  }
}
