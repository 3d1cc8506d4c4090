package loopwright.solver;

import loopwright.model.Spread;

/**
 * A two-terminal piece of the network with one law between its volts and amperes. {@code a} and
 * {@code b} are node numbers; {@link Network#REFERENCE} is the battery's grounded post. Current
 * counts from a to b.
 */
public sealed interface Element {

  /** Id of the part it belongs to. */
  String part();

  /** Its role in that part, as the failure tables name it. */
  String role();

  /** Node at one end. */
  int a();

  /** Node at the other end. */
  int b();

  /** The same element between other nodes. */
  Element between(int a, int b);

  /** The uncertain values of its law, in the order the law takes them. */
  Spread[] values();

  /**
   * A plain resistance in ohms.
   *
   * @param ohms its resistance
   */
  record Resistor(String part, String role, int a, int b, Spread ohms) implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Resistor(part, role, na, nb, ohms);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {ohms};
    }
  }

  /**
   * A voltage source behind a resistance: node a is its positive post.
   *
   * @param volts open-circuit volts
   * @param ohms internal resistance in ohms
   */
  record Cell(String part, String role, int a, int b, Spread volts, Spread ohms)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Cell(part, role, na, nb, volts, ohms);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {volts, ohms};
    }
  }

  /**
   * A tungsten filament: current grows with about the 0.55th power of the volts (Standard Handbook
   * for Electrical Engineers, 11th ed., p. 22-8), and never more than its cold resistance lets
   * through.
   *
   * @param ratedVolts volts at which the rated current flows
   * @param amps rated current in amperes
   * @param coldOhms resistance when cold, in ohms
   */
  record Filament(
      String part, String role, int a, int b, double ratedVolts, Spread amps, Spread coldOhms)
      implements Element {
    /** Ohms when cold, from the hot ones and how many times those are the cold ones. */
    static Spread coldOhms(double ratedVolts, Spread amps, Spread ratio) {
      double hot = ratedVolts / amps.typical();
      return new Spread(hot / ratio.high(), hot / ratio.typical(), hot / ratio.low());
    }

    @Override
    public Element between(int na, int nb) {
      return new Filament(part, role, na, nb, ratedVolts, amps, coldOhms);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {amps, coldOhms};
    }
  }

  /**
   * A junction: nothing below its forward volts, a small resistance above. Node a is the anode.
   *
   * @param forwardVolts volts at which it begins to conduct
   * @param ohms slope above that, in ohms
   */
  record Junction(String part, String role, int a, int b, Spread forwardVolts, Spread ohms)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Junction(part, role, na, nb, forwardVolts, ohms);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {forwardVolts, ohms};
    }
  }

  /**
   * A contact of a switch, relay or driver.
   *
   * @param ohms resistance while closed, in ohms
   * @param gate what closes it
   */
  record Contact(String part, String role, int a, int b, Spread ohms, Gate gate)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Contact(part, role, na, nb, ohms, gate);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {ohms};
    }
  }

  /**
   * The coil of a relay.
   *
   * @param ohms its resistance in ohms
   * @param pullInVolts volts at or above which the contacts move
   * @param dropOutVolts volts at or below which they fall back
   */
  record Coil(
      String part, String role, int a, int b, Spread ohms, Spread pullInVolts, Spread dropOutVolts)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Coil(part, role, na, nb, ohms, pullInVolts, dropOutVolts);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {ohms, pullInVolts, dropOutVolts};
    }
  }

  /**
   * A fuse link.
   *
   * @param ohms cold resistance in ohms, holder included
   * @param blowsAt current in amperes above which it opens in the end
   */
  record Link(String part, String role, int a, int b, Spread ohms, Spread blowsAt)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Link(part, role, na, nb, ohms, blowsAt);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {ohms, blowsAt};
    }
  }

  /**
   * A motor: a low resistance while it stands, a higher apparent one once it runs.
   *
   * @param runOhms apparent resistance running, in ohms
   * @param stallOhms winding resistance, in ohms
   * @param startVolts volts across it at or above which it starts
   */
  record Motor(
      String part, String role, int a, int b, Spread runOhms, Spread stallOhms, Spread startVolts)
      implements Element {
    @Override
    public Element between(int na, int nb) {
      return new Motor(part, role, na, nb, runOhms, stallOhms, startVolts);
    }

    @Override
    public Spread[] values() {
      return new Spread[] {runOhms, stallOhms, startVolts};
    }
  }
}
