package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Blocks of a graph, against graphs drawn by hand and a plain search. */
class BlocksTest {

  @Test
  void twoRingsThatMeetInANodeAreTwoBlocks() {
    // 0-1-2-0 and 2-3-4-2; 4-5 hangs on; 6-6 is a loop at one node; 7-8 lies apart
    int[] a = {0, 1, 2, 2, 3, 4, 4, 6, 7};
    int[] b = {1, 2, 0, 3, 4, 2, 5, 6, 8};
    int[] block = Blocks.of(9, a, b);
    assertThat(block[1]).isEqualTo(block[0]);
    assertThat(block[2]).isEqualTo(block[0]);
    assertThat(block[4]).isEqualTo(block[3]);
    assertThat(block[5]).isEqualTo(block[3]);
    assertThat(block[7]).isEqualTo(-1);
    assertThat(List.of(block[0], block[3], block[6], block[8])).doesNotHaveDuplicates();
    assertThat(block[6]).isNotNegative();
  }

  @Test
  void twoEdgesBetweenTheSameNodesMakeARing() {
    int[] block = Blocks.of(3, new int[] {0, 1, 1}, new int[] {1, 0, 2});
    assertThat(block[0]).isEqualTo(block[1]).isNotEqualTo(block[2]);
  }

  /** Two edges share a block exactly if taking any one node away leaves a way between them. */
  @Test
  void blocksAreThoseOfAPlainSearch() {
    Random random = new Random(21);
    for (int run = 0; run < 150; run++) {
      int nodes = 2 + random.nextInt(6);
      int edges = 1 + random.nextInt(8);
      int[] a = new int[edges];
      int[] b = new int[edges];
      for (int e = 0; e < edges; e++) {
        a[e] = random.nextInt(nodes);
        b[e] = (a[e] + 1 + random.nextInt(nodes - 1)) % nodes;
      }
      int[] block = Blocks.of(nodes, a, b);
      for (int e = 0; e < edges; e++) {
        for (int f = 0; f < e; f++) {
          boolean together = true;
          for (int cut = 0; cut < nodes; cut++) {
            together &= connected(nodes, a, b, e, f, cut);
          }
          assertThat(block[e] == block[f])
              .as("run %d, edges %d and %d", run, e, f)
              .isEqualTo(together && ring(nodes, a, b, e, f));
        }
      }
    }
  }

  /** Whether a way leads from one edge to another that doesn't pass the node cut out. */
  private static boolean connected(int nodes, int[] a, int[] b, int from, int to, int cut) {
    boolean[] met = new boolean[nodes];
    if (a[from] != cut) {
      met[a[from]] = true;
    }
    if (b[from] != cut) {
      met[b[from]] = true;
    }
    for (int round = 0; round < nodes; round++) {
      for (int e = 0; e < a.length; e++) {
        if (a[e] != cut && b[e] != cut && (met[a[e]] || met[b[e]])) {
          met[a[e]] = true;
          met[b[e]] = true;
        }
      }
    }
    return met[a[to]] || met[b[to]];
  }

  /** Whether neither edge is a bridge: a bridge is a block of its own. */
  private static boolean ring(int nodes, int[] a, int[] b, int one, int two) {
    return !bridge(nodes, a, b, one) && !bridge(nodes, a, b, two);
  }

  private static boolean bridge(int nodes, int[] a, int[] b, int edge) {
    boolean[] met = new boolean[nodes];
    met[a[edge]] = true;
    for (int round = 0; round < nodes; round++) {
      for (int e = 0; e < a.length; e++) {
        if (e != edge && (met[a[e]] || met[b[e]])) {
          met[a[e]] = true;
          met[b[e]] = true;
        }
      }
    }
    return !met[b[edge]];
  }
}
