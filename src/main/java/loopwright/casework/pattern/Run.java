package loopwright.casework.pattern;

import java.util.ArrayList;
import java.util.List;
import loopwright.model.WireSize;

/** Wires that carry the same current behind the same fuse and so have one size. */
final class Run {
  private final Side side;
  private final double fuse;
  private final List<String> wires = new ArrayList<>();
  private WireSize size;
  private boolean thicker;

  Run(Side side, double fuse, WireSize size) {
    this.side = side;
    this.fuse = fuse;
    this.size = size;
  }

  Side side() {
    return side;
  }

  /** Rating of the fuse that protects it in amperes; 0 where none does. */
  double fuse() {
    return fuse;
  }

  /** Ids of its wires. */
  List<String> wires() {
    return wires;
  }

  WireSize size() {
    return size;
  }

  /** Whether it was made thicker than its fuse asks for, so that fewer volts are lost. */
  boolean thicker() {
    return thicker;
  }

  void grow(WireSize to) {
    size = to;
    thicker = true;
  }
}
