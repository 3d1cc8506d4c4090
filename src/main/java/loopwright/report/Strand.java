package loopwright.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loopwright.casework.CircuitDrawing;
import loopwright.casework.CircuitDrawing.DrawnLoop;
import loopwright.casework.LoopView.PieceView;
import loopwright.casework.LoopView.Stair;
import loopwright.model.TerminalRef;

/**
 * A stretch of a loop to draw: what an earlier stretch shows already is left out at both ends.
 *
 * @param title what runs in it
 * @param pieces its pieces
 * @param nodes the nodes before, between and after them; one more than pieces
 */
record Strand(String title, List<Piece> pieces, List<Node> nodes) {

  /**
   * A piece with its value.
   *
   * @param drop the volts lost in it, in words
   */
  record Piece(PieceView view, String drop) {}

  /**
   * A node with its number, the same wherever it is drawn.
   *
   * @param volts what it shows, in words
   */
  record Node(int number, Stair stair, String volts) {}

  /** The stretches of a circuit; the first is a whole loop from post to post. */
  static List<Strand> of(CircuitDrawing drawing) {
    Map<Set<TerminalRef>, Integer> numbers = new LinkedHashMap<>();
    Set<List<Object>> drawn = new HashSet<>();
    List<Strand> strands = new ArrayList<>();
    for (DrawnLoop loop : drawing.loops()) {
      List<PieceView> all = loop.view().pieces();
      int from = 0;
      while (from < all.size() && drawn.contains(way(all.get(from)))) {
        from++;
      }
      int to = all.size();
      while (to > from && drawn.contains(way(all.get(to - 1)))) {
        to--;
      }
      if (from == to) {
        continue;
      }
      List<Piece> pieces = new ArrayList<>();
      List<Node> nodes = new ArrayList<>();
      for (int i = from; i <= to; i++) {
        Stair stair = loop.view().stairs().get(i);
        Set<TerminalRef> terminals = new TreeSet<>(stair.others());
        terminals.add(stair.point());
        int number = numbers.computeIfAbsent(terminals, t -> numbers.size() + 1);
        nodes.add(new Node(number, stair, loop.volts().get(i)));
        if (i < to) {
          pieces.add(new Piece(all.get(i), loop.drops().get(i)));
          drawn.add(way(all.get(i)));
        }
      }
      strands.add(new Strand(loop.view().title() + ", " + loop.amps(), pieces, nodes));
    }
    return strands;
  }

  private static List<Object> way(PieceView piece) {
    return List.of(piece.part(), piece.in(), piece.out());
  }
}
