package loopwright.ui.ground;

import loopwright.casework.ground.GroundRow;
import loopwright.ui.Texts;

/** How a ground stands, as a sign before its name. */
enum GroundMark {
  GOOD,
  BAD,
  CANT_TELL,
  /** It was never proven. */
  OPEN,
  /** No load proves it. */
  NONE,
  /** Something was changed since it was proven. */
  CHANGED;

  static GroundMark of(GroundRow row) {
    if (!row.since().isEmpty()) {
      return CHANGED;
    }
    return row.result().map(r -> valueOf(r.verdict().name())).orElse(row.provable() ? OPEN : NONE);
  }

  /** The sign. */
  String sign() {
    return Texts.of(this);
  }

  /** The same in words, for who can't see it. */
  String words() {
    return Texts.of("GroundMark." + name() + ".words");
  }
}
