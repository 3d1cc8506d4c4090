package loopwright.cli;

import java.io.PrintStream;
import loopwright.casework.CaseDesk;

/** Says each step on the log, and every fifth of the way. */
final class ToldProgress implements CaseDesk.Progress {
  private static final int PARTS = 5;

  private final PrintStream err;
  private String last = "";
  private int part;

  ToldProgress(PrintStream err) {
    this.err = err;
  }

  @Override
  public synchronized void at(String step, double share) {
    int now = (int) (share * PARTS);
    if (!step.equals(last) || now > part) {
      last = step;
      part = now;
      err.println(step + ", " + Math.round(share * 100) + " %");
    }
  }

  @Override
  public boolean cancelled() {
    return false;
  }
}
