package loopwright.casework.feed;

import java.util.Locale;
import loopwright.casework.Phrases;
import loopwright.meter.MeterFunction;

/** The states of a meter in words. */
public final class MeterWords {
  private final Phrases phrases;

  /** In a language. */
  public MeterWords(Locale locale) {
    phrases = new Phrases(locale);
  }

  /** A state, in a sentence without its full stop. */
  public String of(MeterState state) {
    if (state instanceof MeterState.Steady steady) {
      return phrases.say("meter.steady", steady.text());
    }
    if (state instanceof MeterState.Taken taken) {
      return phrases.say("meter.taken", taken.text());
    }
    if (state instanceof MeterState.Moving moving) {
      return phrases.say("meter.moving", moving.text());
    }
    if (state instanceof MeterState.Unfit unfit) {
      return unfit(unfit);
    }
    if (state instanceof MeterState.Garbled garbled) {
      return phrases.say("meter.garbled", garbled.line());
    }
    if (state instanceof MeterState.Silent silent) {
      return phrases.say("meter.silent", Long.toString(silent.since().toSeconds()));
    }
    if (state instanceof MeterState.Gone gone) {
      return phrases.say("meter.gone", gone.why());
    }
    return phrases.say("meter.connecting");
  }

  private String unfit(MeterState.Unfit unfit) {
    String asked =
        phrases.say(
            switch (unfit.asked()) {
              case VOLTS_DC -> "meter.asksVolts";
              case OHMS -> "meter.asksOhms";
              case DIODE -> "meter.asksDiode";
            });
    if (unfit.shown().isEmpty()) {
      return phrases.say("meter.noUnit");
    }
    return unfit.shown().equals("A") && unfit.asked() == MeterFunction.VOLTS_DC
        ? phrases.say("meter.amperes", asked)
        : phrases.say("meter.unfit", unfit.shown(), asked);
  }
}
