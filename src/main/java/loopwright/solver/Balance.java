package loopwright.solver;

/** Kirchhoff's current law: what volts leave over at each node, and how much rounding may. */
final class Balance {

  /** Greatest share by which the currents at a node may fail to add up to zero. */
  static final double TOLERANCE = 3e-14;

  private final double[] left;
  private final double[] scale;

  private Balance(int nodes) {
    left = new double[nodes];
    scale = new double[nodes];
  }

  /**
   * Adds the currents up.
   *
   * @param variant the elements
   * @param siemens conductance by element
   * @param volts by node
   * @param amps current into each node from elsewhere
   */
  static Balance of(Variant variant, double[] siemens, double[] volts, double[] amps) {
    int n = volts.length;
    Balance balance = new Balance(n);
    double[] left = balance.left;
    double[] scale = balance.scale;
    for (int i = 0; i < n; i++) {
      double leak = SparseSystem.LEAK * volts[i];
      left[i] = amps[i] - leak;
      scale[i] = Math.abs(amps[i]) + Math.abs(leak);
    }
    for (int e = 0; e < variant.size(); e++) {
      double g = siemens[e];
      if (g == 0) {
        continue;
      }
      Element element = variant.element(e);
      int a = element.a();
      int b = element.b();
      double va = a >= 0 ? volts[a] : 0;
      double vb = b >= 0 ? volts[b] : 0;
      double i = g * (va - vb);
      double s = g * (Math.abs(va) + Math.abs(vb));
      if (a >= 0) {
        left[a] -= i;
        scale[a] += s;
      }
      if (b >= 0) {
        left[b] += i;
        scale[b] += s;
      }
    }
    return balance;
  }

  /** Current left over at each node, in amperes. */
  double[] left() {
    return left;
  }

  /** What is left over at a node as a share of what rounding may leave. */
  double share(int node) {
    // A node's own volts times the conductance it sees bounds what rounding may leave over.
    return Math.abs(left[node]) / (TOLERANCE * scale[node] + 1e-12);
  }

  /** The greatest share. */
  double worst() {
    double worst = 0;
    for (int i = 0; i < left.length; i++) {
      worst = Math.max(worst, share(i));
    }
    return worst;
  }
}
