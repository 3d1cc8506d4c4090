package loopwright.solver;

import java.util.BitSet;

/**
 * Which way everything stands that can stand two ways. Elements are named by number.
 *
 * @param pulled coils that have pulled in
 * @param running motors that run
 * @param conducting junctions that conduct
 * @param blown links that have blown
 */
record Stand(BitSet pulled, BitSet running, BitSet conducting, BitSet blown) {

  /** As in a solved point. */
  static Stand of(OperatingPoint point) {
    BitSet running = new BitSet();
    BitSet conducting = new BitSet();
    for (int e = 0; e < point.variant().size(); e++) {
      if (point.variant().element(e) instanceof Element.Motor && point.running(e)) {
        running.set(e);
      } else if (point.variant().element(e) instanceof Element.Junction
          && point.siemens(e) > 2 * Laws.BLOCKED) {
        conducting.set(e);
      }
    }
    return new Stand(point.pulledIn(), running, conducting, point.history().blown());
  }

  /** The same with these links blown and no others. */
  Stand blown(History history) {
    return new Stand(pulled, running, conducting, history.blown());
  }

  /** The same with one element the other way. */
  Stand flipped(Element element, int e) {
    Stand other =
        new Stand(
            (BitSet) pulled.clone(),
            (BitSet) running.clone(),
            (BitSet) conducting.clone(),
            (BitSet) blown.clone());
    if (element instanceof Element.Coil) {
      other.pulled.flip(e);
    } else if (element instanceof Element.Motor) {
      other.running.flip(e);
    } else if (element instanceof Element.Junction) {
      other.conducting.flip(e);
    } else {
      other.blown.flip(e);
    }
    return other;
  }
}
