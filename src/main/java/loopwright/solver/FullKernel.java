package loopwright.solver;

/** Factors the whole matrix anew for each linear step. Plain; the oracle of the fast path. */
final class FullKernel implements Kernel {
  private final int[] place;
  private SparseSystem system;
  private Variant laidOutFor;
  private double[] loaded;

  FullKernel(Network network) {
    place = network.order();
  }

  private static int[] ends(Variant variant, boolean first) {
    int[] ends = new int[variant.size()];
    for (int e = 0; e < ends.length; e++) {
      ends[e] = first ? variant.element(e).a() : variant.element(e).b();
    }
    return ends;
  }

  @Override
  public void load(Variant variant, double[] siemens, int[] lively) {
    loaded = siemens;
    if (laidOutFor != variant) {
      int[] a = ends(variant, true);
      int[] b = ends(variant, false);
      if (system == null || !system.aim(a, b)) {
        system = new SparseSystem(place, a, b);
      }
      laidOutFor = variant;
    }
    system.factor(siemens);
  }

  @Override
  public boolean holds(double[] siemens) {
    return loaded == siemens;
  }

  @Override
  public double[] solve(double[] offset) {
    return system.solve(OperatingPoint.offsetAmps(laidOutFor, offset, place.length));
  }

  @Override
  public boolean addsUp(double[] volts, double[] offset) {
    return true;
  }

  @Override
  public void factorAnew() {
    // It always does.
  }

  @Override
  public double[] column(int into, int outOf) {
    double[] amps = new double[place.length];
    if (into >= 0) {
      amps[into] += 1;
    }
    if (outOf >= 0) {
      amps[outOf] -= 1;
    }
    return system.solve(amps);
  }
}
