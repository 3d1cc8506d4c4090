package loopwright.ui.snapshot;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.stage.Stage;
import loopwright.evidence.Bench;
import loopwright.io.UnsavedFiles;
import loopwright.io.VehicleFiles;
import loopwright.ui.LoopSource;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakeLoops;
import loopwright.ui.fake.FakeMeters;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.fake.FakeVehicleLibrary;
import loopwright.ui.ground.GroundPage;
import loopwright.ui.practise.PractiseSource;
import loopwright.ui.shell.Fittings;
import loopwright.ui.shell.MainWindow;
import loopwright.ui.wiring.Keeping;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The whole window on a test's stage, with what works behind it until the test ends. A field of the
 * test, registered as an extension.
 */
public final class TestWindow implements AfterEachCallback {
  private final ExecutorService background = Executors.newCachedThreadPool();
  private Stage stage;

  /** Takes the stage that the test was given. */
  public void on(Stage given) {
    stage = given;
  }

  /** Where the window's long work runs. */
  public Executor background() {
    return background;
  }

  /** What a window needs, with fakes behind it. */
  public Fittings fittings() {
    return fittings(new FakeVehicleLibrary(), new FakeLoops());
  }

  /** The same with other vehicles and loops. */
  public Fittings fittings(VehicleLibrary library, LoopSource loops) {
    return new Fittings(
        new FakeCaseDesk(), library, loops, FakeMeters.both(), new FakePreferences(), background);
  }

  /** The page that checks grounds, with proofs that last as long as the test. */
  public GroundPage grounds() {
    return new GroundPage(
        Bench.groundDesk(new Bench.ProofsInMemory()), new FakePreferences(), background);
  }

  /** Drills on the vehicle at hand. */
  public static PractiseSource drills() {
    return new PractiseSource(
        Bench.practiseDesk(new Bench.DrillsInMemory()), List.of(), name -> Optional.empty());
  }

  /** A place for vehicles that are worked on. */
  public static Keeping keepingIn(Path folder) {
    return new Keeping(new VehicleFiles(), new UnsavedFiles(folder.resolve("unsaved")), folder);
  }

  /** Shows a window; it is made on its own thread. */
  public Scene open(Callable<MainWindow> window, int width, int height) {
    return WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          Scene scene = new Scene(window.call().root(), width, height);
          stage.setScene(scene);
          stage.show();
          return scene;
        });
  }

  @Override
  public void afterEach(ExtensionContext context) {
    background.shutdownNow();
  }

  /**
   * Waits until something is so, and all that follows at once is done. It is looked at on the
   * window's own thread: beside it a lookup walks through children that are being put in.
   */
  public static void until(Callable<Boolean> condition) throws TimeoutException {
    WaitForAsyncUtils.waitForFxEvents();
    WaitForAsyncUtils.waitFor(
        60, TimeUnit.SECONDS, () -> WaitForAsyncUtils.waitForAsyncFx(20_000, condition));
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** What a label says, by its selector; nothing where there is none. */
  public static String text(Scene scene, String label) {
    return scene.lookup(label) instanceof Label found ? found.getText() : "";
  }
}
