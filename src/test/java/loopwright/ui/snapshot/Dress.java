package loopwright.ui.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.stage.Stage;
import loopwright.model.Language;
import loopwright.ui.Look;
import loopwright.ui.TextSize;
import loopwright.ui.shell.MainWindow;
import org.testfx.util.WaitForAsyncUtils;

/**
 * How a window is looked at: in which look, text size and width.
 *
 * @param width pixels; 1024 is the least that a window can have
 */
public record Dress(Look look, TextSize size, int width) {
  /** The least room in em. */
  public static final Dress NARROWEST = new Dress(Look.PAPER, TextSize.LARGEST, 1024);

  /**
   * Every size and width in the paper look; in English the ends of the scale in the others too,
   * since their colours are the same in any language. With {@code -Dscreens=night-100-1280} those
   * alone whose name begins so.
   */
  public static List<Dress> all() {
    String wanted = System.getProperty("screens", "");
    List<Dress> all = new ArrayList<>();
    for (Look look : Look.values()) {
      for (TextSize size : TextSize.values()) {
        for (int width : new int[] {1024, 1280}) {
          Dress dress = new Dress(look, size, width);
          boolean usual =
              look == Look.PAPER || Language.inUse() == Language.ENGLISH && dress.atAnEnd();
          if (wanted.isEmpty() ? usual : dress.toString().startsWith(wanted)) {
            all.add(dress);
          }
        }
      }
    }
    return all;
  }

  private boolean atAnEnd() {
    return size == TextSize.NORMAL && width == 1280 || size == TextSize.LARGEST && width == 1024;
  }

  /** Whether pictures are taken: at the ends of the scale, or where it was asked for. */
  public boolean pictured() {
    return atAnEnd() || !System.getProperty("screens", "").isEmpty();
  }

  /** Pixels. */
  public int height() {
    return width == 1024 ? 700 : 800;
  }

  /** Dresses a window that is on a stage. */
  public void on(MainWindow window, Stage stage) throws TimeoutException {
    WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          window.shell().lookProperty().set(look);
          window.shell().textSizeProperty().set(size);
        });
    size(stage);
  }

  /** Makes a stage as wide and high; it is so with the next pulse. */
  public void size(Stage stage) throws TimeoutException {
    WaitForAsyncUtils.waitForAsyncFx(
        20_000,
        () -> {
          stage.setWidth(width);
          stage.setHeight(height());
        });
    WaitForAsyncUtils.waitFor(
        20,
        TimeUnit.SECONDS,
        () -> stage.getScene().getWidth() == width && stage.getScene().getHeight() == height());
  }

  /** Gives up a stage's size: tests share it, and else all that follow would have this one. */
  public static void off(Stage stage) {
    WaitForAsyncUtils.waitForAsyncFx(20_000, stage::sizeToScene);
  }

  @Override
  public String toString() {
    String language = Language.inUse() == Language.ENGLISH ? "" : "-" + Language.inUse().code();
    return look.name().toLowerCase(Locale.ROOT) + "-" + size.percent() + "-" + width + language;
  }
}
