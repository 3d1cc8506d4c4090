package loopwright.ui.fake;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.application.Application;
import javafx.stage.Stage;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;

/** Shows the window with invented vehicles and cases. */
public final class FakeWindow {
  private FakeWindow() {}

  public static void main(String[] args) {
    Application.launch(App.class, args);
  }

  /** The application that is launched. */
  public static final class App extends Application {
    private final ExecutorService background =
        Executors.newCachedThreadPool(
            task -> {
              Thread thread = new Thread(task, "background");
              thread.setDaemon(true);
              return thread;
            });

    @Override
    public void start(Stage stage) {
      new MainWindow(
              new Fittings(
                  new FakeCaseDesk(1500),
                  new FakeVehicleLibrary(),
                  new FakeLoops(),
                  FakeMeters.both(),
                  new FakePreferences(),
                  background))
          .show(stage);
    }
  }
}
