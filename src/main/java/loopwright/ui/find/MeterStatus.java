package loopwright.ui.find;

import java.util.function.Function;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.util.Duration;
import loopwright.ui.Texts;

/** How the person's own meter stands; takes no room while none is connected. */
public final class MeterStatus extends Label {
  /** How often it is looked at the meter, in milliseconds. */
  private static final double LOOK = 200;

  /**
   * For a field in which Enter takes the steady reading.
   *
   * @param look done a few times a second while it is shown
   */
  public static MeterStatus takenByEnter(MeterViewModel meter, Runnable look) {
    return new MeterStatus(meter, look, said -> Texts.of("entry.meterSteady", said));
  }

  /**
   * Makes it.
   *
   * @param look done a few times a second while it is shown
   * @param steady what to say of a steady reading
   */
  MeterStatus(MeterViewModel meter, Runnable look, Function<String, String> steady) {
    setId("meter-status");
    getStyleClass().add("meter-status");
    setWrapText(true);
    textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> {
                  String said = meter.saidProperty().get();
                  return meter.steadyProperty().get() ? steady.apply(said) : said;
                },
                meter.saidProperty(),
                meter.steadyProperty()));
    visibleProperty().bind(textProperty().isNotEmpty());
    managedProperty().bind(visibleProperty());
    Timeline looks = new Timeline(new KeyFrame(Duration.millis(LOOK), e -> look.run()));
    looks.setCycleCount(Animation.INDEFINITE);
    sceneProperty()
        .addListener(
            (o, was, is) -> {
              if (is == null) {
                looks.stop();
              } else {
                looks.play();
              }
            });
  }
}
