package loopwright.diagnosis;

/** The normal distribution, and small symmetric matrices that go with it. */
final class Normal {

  private Normal() {}

  /**
   * Chance that a standard normal value lies above x. Abramowitz and Stegun 7.1.26, error below
   * 1.5e-7; beyond 6 the asymptotic form, so that it never is quite zero too early.
   */
  static double above(double x) {
    if (Double.isNaN(x)) {
      return 0.5;
    }
    if (x < 0) {
      return 1 - above(-x);
    }
    if (x > 6) {
      return Math.exp(-x * x / 2) / (x * Math.sqrt(2 * Math.PI));
    }
    double z = x / Math.sqrt(2);
    double t = 1 / (1 + 0.3275911 * z);
    double poly =
        t
            * (0.254829592
                + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
    return 0.5 * poly * Math.exp(-z * z);
  }

  /** Inverse of a symmetric positive definite matrix by Cholesky. */
  static double[][] inverse(double[][] c) {
    int n = c.length;
    double[][] l = cholesky(c);
    double[][] inverse = new double[n][n];
    double[] y = new double[n];
    for (int col = 0; col < n; col++) {
      for (int i = 0; i < n; i++) {
        double s = i == col ? 1 : 0;
        for (int j = 0; j < i; j++) {
          s -= l[i][j] * y[j];
        }
        y[i] = s / l[i][i];
      }
      for (int i = n - 1; i >= 0; i--) {
        double s = y[i];
        for (int j = i + 1; j < n; j++) {
          s -= l[j][i] * inverse[j][col];
        }
        inverse[i][col] = s / l[i][i];
      }
    }
    return inverse;
  }

  /** Natural log of the determinant. */
  static double lastLogDeterminant(double[][] c) {
    double[][] l = cholesky(c);
    double log = 0;
    for (int i = 0; i < l.length; i++) {
      log += 2 * Math.log(l[i][i]);
    }
    return log;
  }

  private static double[][] cholesky(double[][] c) {
    int n = c.length;
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double s = c[i][j];
        for (int k = 0; k < j; k++) {
          s -= l[i][k] * l[j][k];
        }
        if (i == j) {
          // Rounding may leave a twin reading without any variance of its own.
          l[i][i] = Math.sqrt(Math.max(s, 1e-12));
        } else {
          l[i][j] = s / l[j][j];
        }
      }
    }
    return l;
  }
}
