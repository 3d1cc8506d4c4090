package loopwright.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import loopwright.model.Setting;

/**
 * Finds operating points: linear steps until filaments and junctions agree, contacts, motors and
 * fuses moved one event after the other until nothing moves any more. The number of steps is
 * bounded and a state that comes back is recognised, so a buzzing relay ends as a result.
 *
 * <p>Threads that share a solver wait for each other; give each its own.
 */
public final class Solver {

  /** Greatest number of events (contacts, motors, fuses) in one search. */
  static final int MOST_EVENTS = 200;

  /** Greatest number of linear steps between two events. */
  static final int MOST_STEPS = 60;

  /**
   * Linear steps in which junctions flip all at once. After that the first wrong one flips alone,
   * which ends for every network of positive resistances (least-index rule for complementarity
   * problems, Murty 1974, from memory).
   */
  static final int ALL_AT_ONCE = 12;

  /**
   * Share of its healthy volts at which a motor certainly starts: below that its own starting
   * current may hold it down, which only a search from rest shows.
   */
  private static final double NEARLY_ALL = 0.97;

  /**
   * Volts above its forward volts at which a junction surely passes current: less may be the last
   * digits of a junction that nothing drives any more. Left out of account once steps go singly.
   */
  private static final double TRIFLE = 1e-9;

  /** Volts that may still change between two linear steps. */
  static final double SETTLED_VOLTS = 1e-9;

  /**
   * Volts by which what is taken up from a trail may differ from what would be solved: less than
   * what leaks over a switched-off circuit move, and far less than any threshold is known to.
   */
  static final double TAKEN_UP_VOLTS = 1e-7;

  /** Amperes by which any current may differ then: what leaks into a circuit or two. */
  static final double TAKEN_UP_AMPS = 1e-7;

  /** Linear steps from the volts of a trail before they count as of no use. */
  private static final int MOST_STEPS_FROM_TRAIL = 4;

  private final Network network;
  private final Kernel kernel;
  private final Optional<OperatingPoint> reference;
  private final Optional<Ties> ties;

  private Solver(Network network, Kernel kernel, Optional<OperatingPoint> reference) {
    this.network = network;
    this.kernel = kernel;
    this.reference = reference;
    this.ties = reference.map(r -> new Ties(r, network.nodes()));
  }

  /** A solver that factors the whole matrix in each linear step. */
  public static Solver full(Network network) {
    return new Solver(network, new FullKernel(network), Optional.empty());
  }

  /**
   * A solver that changes one factorisation, made at the healthy operating point of a setting.
   * Quick for variants of that setting and of those that move little.
   */
  public static Solver lowRank(Network network, Setting setting) {
    Variant healthy = Variant.healthy(network);
    FullKernel full = new FullKernel(network);
    OperatingPoint point =
        new Solver(network, full, Optional.empty())
            .solve(healthy, setting, Values.typical(healthy), History.NONE);
    Kernel kernel = new LowRankKernel(healthy, point, full);
    return new Solver(network, kernel, Optional.of(point.solvedBy(kernel)));
  }

  /** The healthy state that a low-rank solver starts from. */
  public Optional<OperatingPoint> reference() {
    return reference;
  }

  /** The network it solves variants of. */
  public Network network() {
    return network;
  }

  /** Share of linear steps in which a low-rank solver had to factor anew; 1 for a full one. */
  public double fallbackShare() {
    return kernel instanceof LowRankKernel low
        ? (double) low.fallbacks() / Math.max(1, low.solves())
        : 1;
  }

  /** Solves with typical values, nothing blown before. */
  public OperatingPoint solve(Variant variant, Setting setting) {
    return solve(variant, setting, Values.typical(variant), History.NONE);
  }

  /**
   * Finds the operating point that is reached from rest: all relays released, all motors standing.
   *
   * @param variant what to solve
   * @param setting positions of the controls and what is apart
   * @param values values of the elements
   * @param history fuses blown before
   */
  public OperatingPoint solve(Variant variant, Setting setting, Values values, History history) {
    return solve(variant, setting, values, history, new BitSet());
  }

  /**
   * Finds the operating point that is reached with these relays pulled in to begin with. With
   * hysteresis there may be another one than from rest.
   */
  public OperatingPoint solve(
      Variant variant, Setting setting, Values values, History history, BitSet pulledIn) {
    return solve(variant, setting, values, history, pulledIn, Trail.NONE);
  }

  /**
   * The same, quicker where a search in an earlier network settled at volts that still hold. Only a
   * low-rank solver takes them up.
   */
  public OperatingPoint solve(
      Variant variant,
      Setting setting,
      Values values,
      History history,
      BitSet pulledIn,
      Trail before) {
    Recall recall = new Recall(ties.isPresent() ? before : Trail.NONE);
    synchronized (kernel) {
      if (reference.isPresent()
          && reference.get().ending() == OperatingPoint.Ending.STEADY
          && pulledIn.isEmpty()) {
        BitSet released = reference.get().pulledIn();
        Optional<OperatingPoint> near =
            new Search(variant, setting, values, history, released, reference, recall).runFrom();
        if (near.isPresent()) {
          return near.get();
        }
      }
      return new Search(variant, setting, values, history, pulledIn, reference, recall).run();
    }
  }

  /**
   * The steady states a setting has: from rest and, where it differs, with every relay pulled in to
   * begin with.
   */
  public List<OperatingPoint> states(
      Variant variant, Setting setting, Values values, History history) {
    BitSet all = new BitSet();
    for (int e = 0; e < variant.size(); e++) {
      if (variant.element(e) instanceof Element.Coil) {
        all.set(e);
      }
    }
    OperatingPoint rest = solve(variant, setting, values, history);
    OperatingPoint held = solve(variant, setting, values, history, all);
    return rest.pulledIn().equals(held.pulledIn()) ? List.of(rest) : List.of(rest, held);
  }

  /** What a search may take up, and where it settles itself. */
  private static final class Recall {
    private final Trail before;
    private final List<double[]> settled = new ArrayList<>();
    private boolean solved;

    Recall(Trail before) {
      this.before = before;
    }

    /** The volts at which an earlier search settled after as many events. */
    Optional<double[]> next() {
      int at = settled.size();
      return at < before.settled().size()
          ? Optional.of(before.settled().get(at))
          : Optional.empty();
    }
  }

  /**
   * One search. Where a healthy state is known, it starts from the volts of that state, and only
   * elements that can differ from it are looked at: those that change with the volts, those that
   * the setting moves, those of the variant, and those with a value of their own.
   */
  private final class Search {
    private final Variant variant;
    private final Setting setting;
    private final Values values;
    private final int n;
    private final int[] lively;
    private final Layout layout;
    private final BitSet pulled;
    private final BitSet running = new BitSet();
    private final BitSet conducting = new BitSet();
    private final BitSet blown;
    private final Optional<OperatingPoint> known;
    private final Recall recall;
    private double[] siemens;
    private final double[] offset;
    // Volts at which each filament and junction was linearised last.
    private final double[] bentAt;
    private double[] volts;

    Search(
        Variant variant,
        Setting setting,
        Values values,
        History history,
        BitSet pulledBefore,
        Optional<OperatingPoint> known,
        Recall recall) {
      this.recall = recall;
      this.variant = variant;
      this.setting = setting;
      this.values = values;
      this.n = variant.size();
      this.pulled = (BitSet) pulledBefore.clone();
      this.blown = history.blown();
      this.layout = Layout.of(variant, setting);
      this.bentAt = new double[n];
      this.known = known;
      if (known.isPresent()) {
        siemens = known.get().siemensCopy(n);
        offset = known.get().offsetCopy(n);
        volts = known.get().voltsCopy();
        Layout before = network.layout(known.get().setting());
        lively = IntStream.range(0, n).filter(e -> mayDiffer(e, before)).toArray();
        for (int e : lively) {
          if (variant.element(e) instanceof Element.Junction
              && e < known.get().variant().size()
              && known.get().siemens(e) > 2 * Laws.BLOCKED) {
            conducting.set(e);
          }
        }
      } else {
        siemens = new double[n];
        offset = new double[n];
        volts = new double[network.nodes()];
        lively = IntStream.range(0, n).toArray();
      }
    }

    private boolean mayDiffer(int e, Layout before) {
      if (e >= variant.baseCount()
          || layout.differs(before, e)
          || variant.touched(e)
          || variant.removed(e)
          || !values.typicalIn(network, e)) {
        return true;
      }
      Element element = variant.element(e);
      return !(element instanceof Element.Resistor
          || element instanceof Element.Cell
          || element instanceof Element.Contact && layout.coilOf(e) < 0);
    }

    OperatingPoint run() {
      Set<Object> met = new HashSet<>();
      boolean oneByOne = false;
      List<String> buzzing = new ArrayList<>();
      for (int event = 0; event < MOST_EVENTS; event++) {
        settle();
        Object state =
            List.of((BitSet) pulled.clone(), (BitSet) running.clone(), (BitSet) blown.clone());
        if (!met.add(state)) {
          if (oneByOne) {
            buzzing.addAll(unsettledRelays());
            break;
          }
          // Relays that moved together may only have chased each other: move them singly now.
          oneByOne = true;
          met.clear();
          met.add(state);
        }
        if (!moveMotors() && !moveRelays(oneByOne) && !blowOne()) {
          break;
        }
        if (event == MOST_EVENTS - 1) {
          buzzing.addAll(unsettledRelays());
        }
      }
      return point(buzzing);
    }

    private OperatingPoint point(List<String> buzzing) {
      return new OperatingPoint(
          variant,
          setting,
          values,
          kernel,
          volts,
          siemens,
          offset,
          pulled,
          running,
          new History(blown),
          buzzing,
          Trail.of(recall.settled),
          recall.solved);
    }

    /**
     * Supposes that contacts, motors and junctions stand as in a known state, and keeps the result
     * only if every one of them agrees with that so clearly that it would have got there from rest
     * too.
     */
    Optional<OperatingPoint> runFrom() {
      OperatingPoint sound = known.orElseThrow();
      for (int e : lively) {
        if (e < sound.variant().size()
            && variant.element(e) instanceof Element.Motor
            && sound.running(e)) {
          running.set(e);
        }
      }
      settle();
      for (int e : lively) {
        Element element = variant.element(e);
        if (layout.off(e)) {
          if (pulled.get(e) || running.get(e)) {
            return Optional.empty();
          }
          continue;
        }
        double v = Math.abs(across(e));
        if (element instanceof Element.Coil) {
          boolean pulls = siemens[e] != 0 && v >= values.get(e, 1);
          if (pulls != pulled.get(e)) {
            return Optional.empty();
          }
        } else if (element instanceof Element.Motor) {
          boolean likeKnown =
              e < sound.variant().size()
                  && v >= NEARLY_ALL * Math.abs(sound.across(e))
                  && v >= values.get(e, 2);
          if (running.get(e) ? !likeKnown : v >= values.get(e, 2)) {
            return Optional.empty();
          }
        } else if (element instanceof Element.Link
            && !blown.get(e)
            && Math.abs(siemens[e] * across(e)) > values.get(e, 1)) {
          return Optional.empty();
        }
      }
      if (!pulled.isEmpty() && !pullsInFromRest()) {
        return Optional.empty();
      }
      return Optional.of(point(List.of()));
    }

    /**
     * Whether the relays that have pulled in would do so one after the other from rest. A relay
     * that feeds its own coil holds itself in, though nothing may be left that pulled it in.
     *
     * <p>Filaments and junctions are taken as they stand at the end; a relay that this leaves in
     * doubt counts as not pulling, and the search from rest decides.
     */
    private boolean pullsInFromRest() {
      double[] end = volts;
      BitSet endPulled = (BitSet) pulled.clone();
      double[] staged = siemens.clone();
      BitSet in = new BitSet();
      boolean reached = false;
      boolean moved = true;
      while (!reached && moved) {
        for (int e : lively) {
          int coil = layout.coilOf(e);
          if (coil >= 0 && endPulled.get(coil) && !layout.off(e)) {
            Element.Contact contact = (Element.Contact) variant.element(e);
            pulled.set(coil, in.get(coil));
            staged[e] = layout.closed(e, contact, pulled) ? 1 / values.get(e, 0) : 0;
          }
        }
        // A new array each time: the kernel knows what it holds by identity.
        double[] now = staged.clone();
        Optional<double[]> before = recall.next().filter(v -> holds(now, v));
        if (before.isPresent()) {
          volts = before.get();
        } else {
          recall.solved = true;
          kernel.load(variant, now, lively);
          volts = kernel.solve(offset);
          if (!kernel.addsUp(volts, offset)) {
            kernel.factorAnew();
            volts = kernel.solve(offset);
          }
        }
        recall.settled.add(volts);
        moved = false;
        boolean stray = false;
        for (int e : lively) {
          if (variant.element(e) instanceof Element.Coil && !layout.off(e) && siemens[e] != 0) {
            boolean pulls = Math.abs(across(e)) >= values.get(e, 1);
            if (pulls && endPulled.get(e) && !in.get(e)) {
              in.set(e);
              moved = true;
            }
            stray |= pulls && !endPulled.get(e);
          }
        }
        reached = in.equals(endPulled);
        moved &= !stray;
      }
      volts = end;
      pulled.clear();
      pulled.or(endPulled);
      return reached;
    }

    private List<String> unsettledRelays() {
      List<String> relays = new ArrayList<>();
      for (int e : lively) {
        if (variant.element(e) instanceof Element.Coil c && wanted(e) != pulled.get(e)) {
          relays.add(c.part());
        }
      }
      return relays.isEmpty() ? List.of("?") : relays;
    }

    private double across(int e) {
      Element element = variant.element(e);
      return at(element.a()) - at(element.b());
    }

    private double at(int node) {
      return node >= 0 ? volts[node] : 0;
    }

    private boolean wanted(int coil) {
      if (layout.off(coil)) {
        return false;
      }
      double v = Math.abs(across(coil));
      // A coil with an open winding has volts but no current, so no pull.
      if (siemens[coil] == 0) {
        return false;
      }
      if (v >= values.get(coil, 1)) {
        return true;
      }
      return v > values.get(coil, 2) && pulled.get(coil);
    }

    private boolean moveRelays(boolean oneByOne) {
      boolean moved = false;
      for (int e : lively) {
        if (variant.element(e) instanceof Element.Coil && wanted(e) != pulled.get(e)) {
          pulled.flip(e);
          moved = true;
          if (oneByOne) {
            return true;
          }
        }
      }
      return moved;
    }

    private boolean moveMotors() {
      boolean moved = false;
      for (int e : lively) {
        if (!layout.off(e) && variant.element(e) instanceof Element.Motor) {
          boolean starts = Math.abs(across(e)) >= values.get(e, 2);
          // A running motor stays running down to half of what it took to start it.
          boolean stops = Math.abs(across(e)) < values.get(e, 2) / 2;
          if (!running.get(e) && starts) {
            running.set(e);
            moved = true;
          } else if (running.get(e) && stops) {
            running.clear(e);
            moved = true;
          }
        }
      }
      return moved;
    }

    /** The link with the greatest overload goes first; the others may be spared by that. */
    private boolean blowOne() {
      int worst = -1;
      double most = 1;
      for (int e : lively) {
        if (!layout.off(e) && !blown.get(e) && variant.element(e) instanceof Element.Link) {
          double share = Math.abs(siemens[e] * across(e)) / values.get(e, 1);
          if (share > most) {
            most = share;
            worst = e;
          }
        }
      }
      if (worst < 0) {
        return false;
      }
      blown.set(worst);
      return true;
    }

    /** Linear steps until filaments and junctions agree with their volts. */
    private void settle() {
      if (recall.next().isEmpty() || !resumed(recall.next().get())) {
        recall.solved = true;
        solve();
      }
      recall.settled.add(volts);
    }

    private void solve() {
      // The quick answers of a changed base are put back into Kirchhoff's law once they have
      // settled. A junction that passes next to nothing may flip to and fro by their last digits.
      if (!steps(known.isPresent() ? ALL_AT_ONCE : MOST_STEPS)) {
        kernel.factorAnew();
        steps(MOST_STEPS);
      }
    }

    /**
     * Takes up volts of an earlier network. Whatever they come from, they are the answer if they
     * agree with the laws of all elements as they are now, since the answer is the only one: every
     * current grows with its volts. If they nearly do, linear steps start from there.
     *
     * @return whether it has settled; if not, all is as it was
     */
    private boolean resumed(double[] before) {
      double[] start = volts;
      double[] bent = bentAt.clone();
      BitSet conducted = (BitSet) conducting.clone();
      bend(ties.orElseThrow().filled(before));
      double[] mended = holds(siemens, volts) ? volts : untied();
      if (mended != volts) {
        bend(mended);
        if (!holds(siemens, volts)) {
          recall.solved = true;
          if (!steps(MOST_STEPS_FROM_TRAIL)) {
            volts = start;
            System.arraycopy(bent, 0, bentAt, 0, n);
            conducting.clear();
            conducting.or(conducted);
            return false;
          }
        }
      }
      return true;
    }

    /** Lays filaments and junctions to these volts. */
    private void bend(double[] at) {
      volts = at;
      // The kernel knows what it holds by identity.
      siemens = siemens.clone();
      Arrays.fill(bentAt, 0);
      linearise(1);
    }

    /**
     * Whether volts answer to Kirchhoff's current law, but for currents that can't move any node by
     * {@link #TAKEN_UP_VOLTS} nor change any current by {@link #TAKEN_UP_AMPS}: what leaks into a
     * circuit that was edited while it is off.
     */
    private boolean holds(double[] siemens, double[] at) {
      if (recall.before.certain()) {
        return true;
      }
      double amps = 0;
      double volts = 0;
      Balance balance = balance(siemens, at);
      for (int i = 0; i < at.length && volts <= TAKEN_UP_VOLTS; i++) {
        if (!(balance.share(i) <= 1)) {
          amps += Math.abs(balance.left()[i]);
          volts += Math.abs(balance.left()[i]) * ties.orElseThrow().ohms(i, variant, siemens);
        }
      }
      return volts <= TAKEN_UP_VOLTS && amps <= TAKEN_UP_AMPS;
    }

    private Balance balance(double[] siemens, double[] at) {
      return Balance.of(
          variant, siemens, at, OperatingPoint.offsetAmps(variant, offset, at.length));
    }

    /** The volts, but those of the known state at nodes that nothing holds any more. */
    private double[] untied() {
      double[] mended = volts.clone();
      Balance balance = balance(siemens, volts);
      for (int i = 0; i < mended.length; i++) {
        if (!(balance.share(i) <= 1)
            && Double.isInfinite(ties.orElseThrow().ohms(i, variant, siemens))) {
          mended[i] = ties.get().known(i);
        }
      }
      return mended;
    }

    /** Takes linear steps; false if they didn't settle or their end doesn't add up. */
    private boolean steps(int most) {
      for (int step = 0; step < most; step++) {
        linearise(step);
        kernel.load(variant, siemens, lively);
        volts = kernel.solve(offset);
        if (settled()) {
          if (!kernel.addsUp(volts, offset)) {
            return false;
          }
          if (settled()) {
            return true;
          }
        }
      }
      return false;
    }

    /** Whether no filament or junction sees other volts than it was linearised at. */
    private boolean settled() {
      for (int e : lively) {
        Element element = variant.element(e);
        if ((element instanceof Element.Filament || element instanceof Element.Junction)
            && !layout.off(e)
            && !(Math.abs(across(e) - bentAt[e]) < SETTLED_VOLTS)) {
          return false;
        }
      }
      return true;
    }

    /** Puts conductance and offset of each element for the present volts. */
    private void linearise(int step) {
      boolean flipped = false;
      for (int e : lively) {
        siemens[e] = 0;
        offset[e] = 0;
        if (layout.off(e)) {
          continue;
        }
        Element element = variant.element(e);
        if (element instanceof Element.Cell) {
          siemens[e] = 1 / values.get(e, 1);
          offset[e] = -values.get(e, 0) / values.get(e, 1);
        } else if (element instanceof Element.Filament f) {
          double v = across(e);
          double amps = values.get(e, 0);
          double cold = values.get(e, 1);
          if (step == 0 && v == 0 && known.isEmpty()) {
            // Start from the hot end: from there the steps close in from one side.
            v = f.ratedVolts();
          }
          if (v * bentAt[e] < 0) {
            // Past zero: from the hot end the steps would swing to and fro around it for long.
            v = 0;
          }
          bentAt[e] = v;
          double g = Laws.filamentSlope(v, f.ratedVolts(), amps, cold);
          siemens[e] = g;
          // A cold one is a plain resistor, to the last digit.
          offset[e] = g == 1 / cold ? 0 : Laws.filamentAmps(v, f.ratedVolts(), amps, cold) - g * v;
        } else if (element instanceof Element.Junction) {
          double forward = values.get(e, 0);
          double passes = step < ALL_AT_ONCE ? forward + TRIFLE : forward;
          bentAt[e] = across(e);
          if (bentAt[e] > passes != conducting.get(e) && !(flipped && step >= ALL_AT_ONCE)) {
            conducting.flip(e);
            flipped = true;
          }
          if (conducting.get(e)) {
            siemens[e] = 1 / values.get(e, 1);
            offset[e] = -forward / values.get(e, 1);
          } else {
            siemens[e] = Laws.BLOCKED;
          }
        } else if (element instanceof Element.Contact c) {
          if (layout.closed(e, c, pulled)) {
            siemens[e] = 1 / values.get(e, 0);
          }
        } else if (element instanceof Element.Link) {
          if (!blown.get(e)) {
            siemens[e] = 1 / values.get(e, 0);
          }
        } else if (element instanceof Element.Motor) {
          siemens[e] = 1 / values.get(e, running.get(e) ? 0 : 1);
        } else {
          siemens[e] = 1 / values.get(e, 0);
        }
      }
    }
  }
}
