package loopwright.casework;

import java.util.Objects;
import loopwright.diagnosis.Seen;

/** What the person answers to a check. */
public sealed interface Answer {

  /** The answer as it was given. */
  String words();

  /**
   * A value as it stood on the display, with its unit: {@code 12.41 V}, {@code 35 mV}, {@code 4.7
   * kohm}, {@code OL}. The last digit written tells the display's resolution. A decimal comma is
   * accepted.
   */
  record Text(String text) implements Answer {
    /** Rejects a missing text. */
    public Text {
      Objects.requireNonNull(text, "text");
    }

    @Override
    public String words() {
      return text;
    }
  }

  /** Something seen, heard or felt. */
  record Saw(Seen seen) implements Answer {
    /** Rejects a missing observation. */
    public Saw {
      Objects.requireNonNull(seen, "seen");
    }

    @Override
    public String words() {
      return seen.word();
    }
  }

  /** A value known only to lie within a band, for instance from a fat button. */
  record Within(Band band) implements Answer {
    /** Rejects a missing band. */
    public Within {
      Objects.requireNonNull(band, "band");
    }

    @Override
    public String words() {
      return Figures.range(band.low(), band.high(), band.unit());
    }
  }
}
