package loopwright.solver;

/** Factors the whole matrix anew for each linear step. Plain; the oracle of the fast path. */
final class FullKernel implements Kernel {
  private final int nodes;
  private SparseSystem system;
  private Variant orderedFor;
  private double[] loaded;

  FullKernel(int nodes) {
    this.nodes = nodes;
  }

  @Override
  public void load(Variant variant, double[] siemens) {
    loaded = siemens;
    int count = variant.size();
    int[] a = new int[count + Network.SPARES];
    int[] b = new int[count + Network.SPARES];
    double[] g = java.util.Arrays.copyOf(siemens, count + Network.SPARES);
    for (int e = 0; e < count; e++) {
      a[e] = variant.element(e).a();
      b[e] = variant.element(e).b();
    }
    if (orderedFor != variant) {
      system = new SparseSystem(nodes, a, b);
      orderedFor = variant;
    }
    system.factor(count, a, b, g);
  }

  @Override
  public boolean holds(double[] siemens) {
    return loaded == siemens;
  }

  @Override
  public double[] solve(double[] amps) {
    return system.solve(amps);
  }

  @Override
  public double[] column(int into, int outOf) {
    double[] amps = new double[nodes];
    if (into >= 0) {
      amps[into] += 1;
    }
    if (outOf >= 0) {
      amps[outOf] -= 1;
    }
    return system.solve(amps);
  }
}
