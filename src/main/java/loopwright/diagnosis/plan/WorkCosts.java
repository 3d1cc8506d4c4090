package loopwright.diagnosis.plan;

import java.util.List;

/**
 * Minutes made up of reading, of changing the setting, and of opening places. A place that was
 * opened stays open: access is paid once.
 */
public final class WorkCosts implements Costs {

  /** Most places that can be opened. */
  public static final int MOST_PLACES = 64;

  /**
   * The work of one check.
   *
   * @param minutes for the reading itself; above 0
   * @param setting number of the setting it is made in
   * @param places numbers of the places that must be open for it
   */
  public record Work(double minutes, int setting, List<Integer> places) {
    /** Copies the list. */
    public Work {
      if (!(minutes > 0)) {
        throw new IllegalArgumentException("a check takes " + minutes + " min; must be above 0");
      }
      places = List.copyOf(places);
    }
  }

  private record Standing(int setting, long open) implements Setup {}

  private final List<Work> checks;
  private final double[][] change;
  private final double[] access;
  private final int startSetting;

  /**
   * Puts costs together.
   *
   * @param checks work of each check
   * @param change minutes from setting to setting; 0 from one to itself
   * @param access minutes to open each place
   * @param startSetting the setting before the first check
   * @throws IllegalArgumentException if a check names a setting or place that isn't there
   */
  public WorkCosts(List<Work> checks, double[][] change, double[] access, int startSetting) {
    if (access.length > MOST_PLACES) {
      throw new IllegalArgumentException(
          access.length + " places to open; at most " + MOST_PLACES + " can be counted");
    }
    for (int c = 0; c < checks.size(); c++) {
      Work work = checks.get(c);
      if (work.setting() < 0 || work.setting() >= change.length) {
        throw new IllegalArgumentException("check " + c + " needs setting " + work.setting());
      }
      for (int place : work.places()) {
        if (place < 0 || place >= access.length) {
          throw new IllegalArgumentException("check " + c + " needs place " + place);
        }
      }
    }
    this.checks = List.copyOf(checks);
    this.change = new double[change.length][];
    for (int s = 0; s < change.length; s++) {
      this.change[s] = change[s].clone();
    }
    this.access = access.clone();
    this.startSetting = startSetting;
  }

  @Override
  public Setup start() {
    return new Standing(startSetting, 0);
  }

  @Override
  public double minutes(int check, Setup setup) {
    Standing now = (Standing) setup;
    Work work = checks.get(check);
    double minutes = work.minutes() + change[now.setting()][work.setting()];
    for (int place : work.places()) {
      if ((now.open() >> place & 1) == 0) {
        minutes += access[place];
      }
    }
    return minutes;
  }

  @Override
  public Setup after(int check, Setup setup) {
    Work work = checks.get(check);
    long open = ((Standing) setup).open();
    for (int place : work.places()) {
      open |= 1L << place;
    }
    return new Standing(work.setting(), open);
  }

  @Override
  public double leastMinutes(int check) {
    return checks.get(check).minutes();
  }
}
