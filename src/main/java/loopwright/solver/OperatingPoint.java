package loopwright.solver;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import loopwright.model.Setting;
import loopwright.model.Spread;

/**
 * A consistent state of a variant in one setting: volts at every node, current in every element,
 * which contacts are closed, which fuses have blown, which motors run.
 */
public final class OperatingPoint {

  /** How the search for a consistent state ended. */
  public enum Ending {
    /** One state that agrees with itself. */
    STEADY,
    /** Contacts chase each other for ever: a buzzing relay. The volts are those of one moment. */
    BUZZING
  }

  private final Variant variant;
  private final Setting setting;
  private final Values values;
  private final Kernel kernel;
  private final double[] volts;
  private final double[] siemens;
  private final double[] offset;
  private final BitSet pulledIn;
  private final BitSet running;
  private final History history;
  private final Ending ending;
  private final List<String> buzzing;
  private final Trail trail;
  private final boolean solved;

  OperatingPoint(
      Variant variant,
      Setting setting,
      Values values,
      Kernel kernel,
      double[] volts,
      double[] siemens,
      double[] offset,
      BitSet pulledIn,
      BitSet running,
      History history,
      List<String> buzzing,
      Trail trail,
      boolean solved) {
    this.variant = variant;
    this.setting = setting;
    this.values = values;
    this.kernel = kernel;
    this.volts = volts;
    this.siemens = siemens;
    this.offset = offset;
    this.pulledIn = pulledIn;
    this.running = running;
    this.history = history;
    this.ending = buzzing.isEmpty() ? Ending.STEADY : Ending.BUZZING;
    this.buzzing = List.copyOf(buzzing);
    this.trail = trail;
    this.solved = solved;
  }

  /** The same, further questions answered by another kernel. */
  OperatingPoint solvedBy(Kernel other) {
    return new OperatingPoint(
        variant, setting, values, other, volts, siemens, offset, pulledIn, running, history,
        buzzing, trail, solved);
  }

  /** What was solved. */
  public Variant variant() {
    return variant;
  }

  /** In which setting. */
  public Setting setting() {
    return setting;
  }

  /** With which values. */
  public Values values() {
    return values;
  }

  /** Volts of a node against the battery's grounded post. */
  public double volts(int node) {
    return node >= 0 ? volts[node] : 0;
  }

  double[] voltsCopy() {
    return volts.clone();
  }

  /** Slope conductances by element, with room for more elements. */
  double[] siemensCopy(int size) {
    return Arrays.copyOf(siemens, size);
  }

  /** Current that offsets of elements put into each node. */
  static double[] offsetAmps(Variant variant, double[] offset, int nodes) {
    double[] amps = new double[nodes];
    for (int e = 0; e < offset.length; e++) {
      if (offset[e] != 0) {
        Element element = variant.element(e);
        if (element.a() >= 0) {
          amps[element.a()] -= offset[e];
        }
        if (element.b() >= 0) {
          amps[element.b()] += offset[e];
        }
      }
    }
    return amps;
  }

  /** Currents at no volts by element, with room for more elements. */
  double[] offsetCopy(int size) {
    return Arrays.copyOf(offset, size);
  }

  /** Volts from one node to another, red to black. */
  public double volts(int red, int black) {
    return volts(red) - volts(black);
  }

  /** Volts across an element, a to b. */
  public double across(int element) {
    Element e = variant.element(element);
    return volts(e.a()) - volts(e.b());
  }

  /** Current through an element from a to b, in amperes. */
  public double amps(int element) {
    return siemens[element] * across(element) + offset[element];
  }

  /** Slope conductance of an element in siemens; 0 where it carries no current. */
  public double siemens(int element) {
    return siemens[element];
  }

  /** Whether the relay that this coil element moves has pulled in. */
  public boolean pulledIn(int coilElement) {
    return pulledIn.get(coilElement);
  }

  /** Numbers of the coil elements that have pulled in. */
  public BitSet pulledIn() {
    return (BitSet) pulledIn.clone();
  }

  /** Whether this motor element runs rather than stands. */
  public boolean running(int motorElement) {
    return running.get(motorElement);
  }

  /** Fuses blown up to and including this state. */
  public History history() {
    return history;
  }

  /** Whether the state is steady or buzzing. */
  public Ending ending() {
    return ending;
  }

  /** Ids of the relays that buzz. */
  public List<String> buzzing() {
    return buzzing;
  }

  /** What a search in an edited network may take up. */
  public Trail trail() {
    return trail;
  }

  /** Whether anything had to be solved; else all was taken up from a trail. */
  public boolean solved() {
    return solved;
  }

  /** Amperes below which an element carries none to speak of: less than any lamp, coil or clock. */
  private static final double NO_AMPS = 1e-4;

  /**
   * Whether all that changes of the same network concern carries no current here, before or after.
   * These volts then answer to Kirchhoff's law with the changes too, so that no current anywhere
   * differs by more than leaks do. Volts may: those of points that hang on what is cut.
   */
  public boolean idle(List<? extends Change> changes) {
    for (Change change : changes) {
      boolean carries =
          change instanceof Change.Remove r
              ? carries(r.element())
              : change instanceof Change.Replace r
                  ? carries(r.element()) || mayCarry(r.by())
                  : mayCarry(((Change.Add) change).element());
      if (carries) {
        return false;
      }
    }
    return true;
  }

  private boolean carries(int e) {
    return Math.abs(amps(e)) > NO_AMPS || pulledIn.get(e);
  }

  /** Whether an element that is put in might carry current at these volts. */
  private boolean mayCarry(Element element) {
    if (element instanceof Element.Cell) {
      return true;
    }
    if (setting.apart().contains(element.part())
        || Layout.surelyOpen(element, variant.base(), setting)) {
      return false;
    }
    // Which of its values is the resistance doesn't matter: none is greater than it needs.
    double least = Double.MAX_VALUE;
    for (Spread spread : element.values()) {
      least = Math.min(least, spread.low());
    }
    double v = Math.abs(volts(element.a()) - volts(element.b()));
    return v > NO_AMPS * Math.max(least, LEAST_OHMS);
  }

  /** Resistance that no element is reckoned below, in ohms. */
  private static final double LEAST_OHMS = 1e-3;

  /**
   * Resistance that the network shows between two nodes, in ohms: volts per ampere of a small test
   * current, everything in parallel included.
   */
  public double ohmsSeen(int red, int black) {
    if (red == black) {
      return 0;
    }
    double[] column = column(red, black);
    return value(column, red) - value(column, black);
  }

  /**
   * How the volts from red to black change with each element's uncertain values: {@code
   * result[e][k]} is the derivative by the k-th value of element e. Adjoint network (Director and
   * Rohrer 1969, from memory): one further solve for all.
   */
  public double[][] sensitivities(int red, int black) {
    double[][] result = new double[variant.size()][];
    double[] column = red == black ? new double[volts.length] : column(red, black);
    for (int e = 0; e < result.length; e++) {
      result[e] = new double[values.count(e)];
      if (siemens[e] == 0 && offset[e] == 0) {
        continue;
      }
      Element element = variant.element(e);
      double gain = value(column, element.a()) - value(column, element.b());
      if (gain == 0) {
        continue;
      }
      double[] slopes = Laws.slopes(element, this, e);
      for (int k = 0; k < slopes.length; k++) {
        // A value that lets more current through from a to b pulls a down and lifts b.
        result[e][k] = -gain * slopes[k];
      }
    }
    return result;
  }

  /** Volts of all nodes for one ampere from one to another; other threads may solve meanwhile. */
  private double[] column(int into, int outOf) {
    synchronized (kernel) {
      if (!kernel.holds(siemens)) {
        kernel.load(variant, siemens, variant.all());
      }
      return kernel.column(into, outOf);
    }
  }

  private static double value(double[] column, int node) {
    return node >= 0 ? column[node] : 0;
  }
}
