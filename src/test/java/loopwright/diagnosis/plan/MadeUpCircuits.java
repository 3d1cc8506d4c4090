package loopwright.diagnosis.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Searches as circuits of up to ten pieces pose them, made up from a seed: which piece is open or
 * has a bad contact, told by volts at the joints, volts across pieces, ohms with the battery apart
 * and looks at what works. Places that have to be opened are paid once; a change of what is
 * switched on or apart costs minutes.
 */
final class MadeUpCircuits {

  /** Shapes of circuits. */
  enum Shape {
    /** One loop, volts at its joints to the battery, each joint with minutes of its own. */
    PLAIN_LOOP,
    /** One loop whose joints lie at places to be opened, with bad contacts and ohms. */
    LOOP_TO_OPEN,
    /** A feed that parts into two or three branches with a load each, of which some work. */
    BRANCHED,
    /** A control loop whose relay switches a power loop. */
    RELAY
  }

  /**
   * A made-up circuit.
   *
   * @param shape its shape
   * @param problem the search
   * @param walk its volt checks in order from the battery, then all others
   */
  record MadeUp(Shape shape, PlanProblem problem, int[] walk) {}

  /** One way to fail. */
  private record Way(int piece, boolean open, double chance) {}

  /** A path of pieces that has to carry current, and whether a bad contact shows on it. */
  private interface Shows {
    int outcome(Way way);
  }

  private final Random random;
  private final List<Way> ways = new ArrayList<>();
  private final List<Outcomes> checks = new ArrayList<>();
  private final List<WorkCosts.Work> work = new ArrayList<>();
  private double[] access = {};

  private MadeUpCircuits(long seed) {
    random = new Random(seed);
  }

  static MadeUp of(Shape shape, int pieces, long seed) {
    return new MadeUpCircuits(seed * 31 + shape.ordinal()).make(shape, pieces);
  }

  private MadeUp make(Shape shape, int pieces) {
    boolean plain = shape == Shape.PLAIN_LOOP;
    for (int p = 0; p < pieces; p++) {
      double rate = Math.exp(random.nextGaussian());
      ways.add(new Way(p, true, rate));
      if (!plain && random.nextInt(3) == 0) {
        ways.add(new Way(p, false, rate * random.nextDouble()));
      }
    }
    access = new double[plain ? 0 : Math.max(1, pieces / 2)];
    for (int a = 0; a < access.length; a++) {
      access[a] = random.nextInt(3) == 0 ? 2 + 8 * random.nextDouble() : random.nextDouble();
    }
    switch (shape) {
      case PLAIN_LOOP -> loop(0, pieces, 0, true);
      case LOOP_TO_OPEN -> {
        loop(0, pieces, 0, false);
        ohms(0, pieces, 2);
      }
      case BRANCHED -> branches(pieces);
      case RELAY -> relay(pieces);
    }
    double[][] change = {
      {0, 0.3, 2 + random.nextDouble()},
      {0.3, 0, 2 + random.nextDouble()},
      {1.5, 1.7, 0}
    };
    double[] chances = ways.stream().mapToDouble(Way::chance).toArray();
    int[] blamed = ways.stream().mapToInt(Way::piece).toArray();
    PlanProblem problem =
        new PlanProblem(
            chances,
            blamed,
            checks,
            new WorkCosts(work, change, access, 0),
            PlanProblem.End.CERTAIN);
    int[] walk = new int[checks.size()];
    for (int c = 0; c < walk.length; c++) {
      walk[c] = c;
    }
    return new MadeUp(shape, problem, walk);
  }

  private void add(double minutes, int setting, List<Integer> places, Shows shows) {
    checks.add(Outcomes.classes(ways.stream().mapToInt(shows::outcome).toArray()));
    work.add(new WorkCosts.Work(minutes, setting, places));
  }

  /** Places at a joint: none in a plain loop, else one for some joints. */
  private List<Integer> place(int joint) {
    return access.length == 0 || random.nextBoolean() ? List.of() : List.of(joint % access.length);
  }

  private double minutes(boolean plain) {
    return plain ? 0.4 + 3 * random.nextDouble() : 0.4 + 0.3 * random.nextDouble();
  }

  /** Volts at the joints of pieces from..to: 0 full, 1 none, 2 low behind a bad contact. */
  private void loop(int from, int to, int setting, boolean plain) {
    for (int joint = from; joint < to - 1; joint++) {
      int at = joint;
      add(
          minutes(plain),
          setting,
          place(joint),
          w -> w.piece() > at || w.piece() < from || w.piece() >= to ? 0 : w.open() ? 1 : 2);
    }
    if (!plain) {
      for (int piece = from; piece < to; piece++) {
        int at = piece;
        if (random.nextInt(3) == 0) {
          // Volts across one piece that should carry current.
          add(
              minutes(false) + 0.2,
              setting,
              place(piece),
              w -> w.piece() != at ? 0 : w.open() ? 1 : 2);
        }
      }
    }
  }

  /** Ohms over a stretch, with the battery apart. */
  private void ohms(int from, int to, int setting) {
    for (int k = 0; k < 3; k++) {
      int a = from + random.nextInt(to - from);
      int b = a + 1 + random.nextInt(to - a);
      add(
          0.9 + random.nextDouble(),
          setting,
          place(a),
          w -> w.piece() < a || w.piece() >= b ? 0 : w.open() ? 1 : 2);
    }
  }

  private void branches(int pieces) {
    int trunk = 1 + random.nextInt(Math.max(1, pieces / 2));
    int second = trunk + Math.max(1, (pieces - trunk) / 2);
    loop(0, trunk + 1, 0, false);
    loop(trunk, second, 0, false);
    if (second < pieces) {
      loop(second, pieces, 1, false);
    }
    // Does the other branch's load work? One look that tells trunk from branch.
    add(0.2, 1, List.of(), w -> w.piece() >= trunk && w.piece() < second ? 0 : w.open() ? 1 : 2);
    if (pieces > 4) {
      ohms(trunk, pieces, 2);
    }
  }

  private void relay(int pieces) {
    int control = Math.max(1, pieces / 2);
    loop(0, control, 0, false);
    loop(control, pieces, 0, false);
    // The relay is heard to click, or not.
    add(0.2, 0, List.of(), w -> w.piece() < control ? 1 : 0);
    // The contact bridged by its second throw: the load comes on if the control side is to blame.
    add(0.8, 1, place(control), w -> w.piece() < control ? 0 : w.open() ? 1 : 2);
    ohms(0, pieces, 2);
  }
}
