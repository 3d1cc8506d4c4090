package loopwright.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * What kind of part it is, with the values that kind has. A value the owner doesn't know is left
 * empty; the usual one of the trade, with its spread, then stands in (see {@link Typicals}).
 */
public sealed interface PartSpec {

  /** The kind, for files and fault tables. */
  PartKind kind();

  /** The names of this part's terminals, in the order of the loop where there is one. */
  List<String> terminals();

  /**
   * A starter battery. Terminals {@code pos} and {@code neg}.
   *
   * @param volts rest voltage in volts; empty: usual for the vehicle's system voltage
   * @param ohms internal resistance in ohms
   * @param ampHours what it holds when full, at the 20 h rate, in ampere-hours
   * @param chargeIdleAmps most that what charges it gives at idle, in amperes; 0 for a dynamo that
   *     cuts in above idle
   * @param chargeAmps the same at working speed
   */
  record Battery(
      Optional<Estimate> volts,
      Optional<Estimate> ohms,
      Optional<Double> ampHours,
      Optional<Double> chargeIdleAmps,
      Optional<Double> chargeAmps)
      implements PartSpec {
    /** A battery whose capacity and charging aren't known. */
    public Battery(Optional<Estimate> volts, Optional<Estimate> ohms) {
      this(volts, ohms, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** This battery with another rest voltage. */
    public Battery withVolts(Optional<Estimate> volts) {
      return new Battery(volts, ohms, ampHours, chargeIdleAmps, chargeAmps);
    }

    /** This battery with another internal resistance. */
    public Battery withOhms(Optional<Estimate> ohms) {
      return new Battery(volts, ohms, ampHours, chargeIdleAmps, chargeAmps);
    }

    /** This battery with another capacity. */
    public Battery withAmpHours(Optional<Double> ampHours) {
      return new Battery(volts, ohms, ampHours, chargeIdleAmps, chargeAmps);
    }

    /** This battery charged otherwise at idle. */
    public Battery withChargeIdleAmps(Optional<Double> chargeIdleAmps) {
      return new Battery(volts, ohms, ampHours, chargeIdleAmps, chargeAmps);
    }

    /** This battery charged otherwise at working speed. */
    public Battery withChargeAmps(Optional<Double> chargeAmps) {
      return new Battery(volts, ohms, ampHours, chargeIdleAmps, chargeAmps);
    }

    @Override
    public PartKind kind() {
      return PartKind.BATTERY;
    }

    @Override
    public List<String> terminals() {
      return List.of("pos", "neg");
    }
  }

  /**
   * A wire with a contact at each end; or, as {@link PartKind#STRAP}, a braid or cable of the
   * ground side. It has no probe points of its own: its ends lie on other parts' terminals.
   *
   * @param kind {@link PartKind#WIRE} or {@link PartKind#STRAP}
   * @param from the terminal one end lies on
   * @param to the terminal the other end lies on
   * @param size conductor size
   * @param metres length in metres, more than zero
   * @param endOhms resistance of one end contact in ohms
   * @param colour colour as on the vehicle; may be empty
   * @param loom the loom it runs in, for shorts to its neighbours; may be empty
   */
  record Wire(
      PartKind kind,
      TerminalRef from,
      TerminalRef to,
      WireSize size,
      Estimate metres,
      Optional<Estimate> endOhms,
      String colour,
      String loom)
      implements PartSpec {
    /** Rejects other kinds and lengths that are not above zero. */
    public Wire {
      if (kind != PartKind.WIRE && kind != PartKind.STRAP) {
        throw new IllegalArgumentException("a wire's kind is wire or strap, not " + kind.word());
      }
      Objects.requireNonNull(colour, "colour");
      Objects.requireNonNull(loom, "loom");
    }

    /** This wire as a strap, or back. */
    public Wire withKind(PartKind kind) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire between other terminals. */
    public Wire withEnds(TerminalRef from, TerminalRef to) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire with a conductor of another size. */
    public Wire withSize(WireSize size) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire with another length in metres. */
    public Wire withMetres(Estimate metres) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire with other resistance of one end contact. */
    public Wire withEndOhms(Optional<Estimate> endOhms) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire in another colour. */
    public Wire withColour(String colour) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    /** This wire in another loom. */
    public Wire withLoom(String loom) {
      return new Wire(kind, from, to, size, metres, endOhms, colour, loom);
    }

    @Override
    public List<String> terminals() {
      return List.of();
    }
  }

  /**
   * A fuse with its holder. Terminals {@code feed} and {@code load}.
   *
   * @param amps rating in amperes
   * @param ohms cold resistance in ohms, holder included
   */
  record Fuse(double amps, Optional<Estimate> ohms) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.FUSE;
    }

    @Override
    public List<String> terminals() {
      return List.of("feed", "load");
    }
  }

  /**
   * One contact of a switch: closed in some of its positions.
   *
   * @param a terminal
   * @param b terminal
   * @param closedIn positions in which a and b are joined
   */
  record SwitchContact(String a, String b, Set<String> closedIn) {
    /** Copies the positions. */
    public SwitchContact {
      closedIn = Set.copyOf(closedIn);
    }

    /** The name fault tables and explanations use: {@code a-b}. */
    public String role() {
      return a + "-" + b;
    }
  }

  /** What moves a switch. */
  enum Control {
    /** A hand. */
    MANUAL("manual"),
    /** The ignition or main key. */
    KEY("key"),
    /** A foot on a pedal. */
    PEDAL("pedal"),
    /** The clutch pedal. */
    CLUTCH("clutch"),
    /** The gear lever standing in neutral. */
    NEUTRAL("neutral"),
    /** Pressure of oil, brake fluid, air or water. */
    PRESSURE("pressure"),
    /** Temperature. */
    TEMPERATURE("temperature");

    private final String word;

    Control(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * A switch of any number of poles and positions.
   *
   * @param terminals terminal names
   * @param positions position names; the first is the position at rest
   * @param contacts which terminals are joined in which positions
   * @param control what moves it
   * @param momentary whether it springs back to rest
   * @param ohms resistance of one closed contact in ohms
   * @param amps contact rating in amperes
   */
  record Switch(
      List<String> terminals,
      List<String> positions,
      List<SwitchContact> contacts,
      Control control,
      boolean momentary,
      Optional<Estimate> ohms,
      Optional<Double> amps)
      implements PartSpec {
    /** Copies the lists. */
    public Switch {
      terminals = List.copyOf(terminals);
      positions = List.copyOf(positions);
      contacts = List.copyOf(contacts);
      Objects.requireNonNull(control, "control");
    }

    /**
     * A plain switch by hand between {@code in} and {@code out}, at rest off.
     *
     * @param ohms resistance when closed in ohms
     */
    public static Switch onOff(Optional<Estimate> ohms) {
      return new Switch(
          List.of("in", "out"),
          List.of("off", "on"),
          List.of(new SwitchContact("in", "out", Set.of("on"))),
          Control.MANUAL,
          false,
          ohms,
          Optional.empty());
    }

    @Override
    public PartKind kind() {
      return PartKind.SWITCH;
    }

    /** The position at rest. */
    public String rest() {
      return positions.get(0);
    }

    /** This switch with other terminals. */
    public Switch withTerminals(List<String> terminals) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch with other positions. */
    public Switch withPositions(List<String> positions) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch with other contacts. */
    public Switch withContacts(List<SwitchContact> contacts) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch moved by something else. */
    public Switch withControl(Control control) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch that springs back or stays. */
    public Switch withMomentary(boolean momentary) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch with another resistance of one closed contact. */
    public Switch withOhms(Optional<Estimate> ohms) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }

    /** This switch with another contact rating. */
    public Switch withAmps(Optional<Double> amps) {
      return new Switch(terminals, positions, contacts, control, momentary, ohms, amps);
    }
  }

  /** What keeps a relay coil's switch-off spike down. */
  enum Suppression {
    NONE("none"),
    RESISTOR("resistor"),
    /** A diode whose cathode is at 85. */
    DIODE_CATHODE_85("diode-cathode-85"),
    /** A diode whose cathode is at 86. */
    DIODE_CATHODE_86("diode-cathode-86");

    private final String word;

    Suppression(String word) {
      this.word = word;
    }

    /** The word used in files. */
    public String word() {
      return word;
    }
  }

  /**
   * A relay with terminals by DIN 72552: coil 85 and 86, contact 30 to 87, and 30 to 87a at rest
   * where it has one.
   *
   * @param changeover whether terminal 87a exists
   * @param coilOhms coil resistance in ohms
   * @param pullInVolts coil voltage at which the contact moves
   * @param dropOutVolts coil voltage at which it falls back
   * @param contactOhms resistance of the closed contact in ohms
   * @param suppression what lies across the coil
   * @param amps contact rating in amperes
   */
  record Relay(
      boolean changeover,
      Optional<Estimate> coilOhms,
      Optional<Estimate> pullInVolts,
      Optional<Estimate> dropOutVolts,
      Optional<Estimate> contactOhms,
      Suppression suppression,
      Optional<Double> amps)
      implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.RELAY;
    }

    @Override
    public List<String> terminals() {
      return changeover ? List.of("86", "85", "30", "87", "87a") : List.of("86", "85", "30", "87");
    }

    /** This relay with or without terminal 87a. */
    public Relay withChangeover(boolean changeover) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with another coil resistance. */
    public Relay withCoilOhms(Optional<Estimate> coilOhms) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with another voltage at which the contact moves. */
    public Relay withPullInVolts(Optional<Estimate> pullInVolts) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with another voltage at which the contact falls back. */
    public Relay withDropOutVolts(Optional<Estimate> dropOutVolts) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with another resistance of the closed contact. */
    public Relay withContactOhms(Optional<Estimate> contactOhms) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with something else across its coil. */
    public Relay withSuppression(Suppression suppression) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }

    /** This relay with another contact rating. */
    public Relay withAmps(Optional<Double> amps) {
      return new Relay(
          changeover, coilOhms, pullInVolts, dropOutVolts, contactOhms, suppression, amps);
    }
  }

  /**
   * A filament lamp in its socket. Terminals {@code in} and {@code out}.
   *
   * @param ratedVolts voltage at which it takes its rated power
   * @param watts rated power in watts
   */
  record Lamp(Optional<Double> ratedVolts, Estimate watts) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.LAMP;
    }

    @Override
    public List<String> terminals() {
      return List.of("in", "out");
    }
  }

  /**
   * A lamp with two filaments and one common contact. Terminals: the two filaments' names, and
   * {@code common}.
   *
   * @param first name of the first filament and its terminal, for instance {@code tail}
   * @param firstWatts its rated power in watts
   * @param second name of the second, for instance {@code stop}
   * @param secondWatts its rated power in watts
   * @param ratedVolts voltage at which they take their rated power
   */
  record DualLamp(
      String first,
      Estimate firstWatts,
      String second,
      Estimate secondWatts,
      Optional<Double> ratedVolts)
      implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.DUAL_LAMP;
    }

    @Override
    public List<String> terminals() {
      return List.of(first, second, "common");
    }
  }

  /**
   * A light-emitting diode lamp with its series resistor. Terminals {@code in} (anode side) and
   * {@code out}.
   *
   * @param forwardVolts volts at which it begins to conduct
   * @param amps current at the system voltage in amperes
   */
  record Led(Optional<Estimate> forwardVolts, Estimate amps) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.LED;
    }

    @Override
    public List<String> terminals() {
      return List.of("in", "out");
    }
  }

  /**
   * A silicon diode in a wire. Terminals {@code anode} and {@code cathode}.
   *
   * @param forwardVolts volts across it while it conducts
   */
  record Diode(Optional<Estimate> forwardVolts) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.DIODE;
    }

    @Override
    public List<String> terminals() {
      return List.of("anode", "cathode");
    }
  }

  /**
   * A motor. Terminals {@code in} and {@code out}.
   *
   * @param amps running current at the system voltage in amperes
   * @param stallAmps current when it stands in amperes
   */
  record Motor(Estimate amps, Optional<Estimate> stallAmps) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.MOTOR;
    }

    @Override
    public List<String> terminals() {
      return List.of("in", "out");
    }
  }

  /**
   * A load that is a plain resistance at work: heater, solenoid, horn or electronics. Terminals
   * {@code in} and {@code out}.
   *
   * @param kind which of the four
   * @param amps current at the system voltage in amperes
   */
  record PlainLoad(PartKind kind, Estimate amps) implements PartSpec {
    /** Rejects other kinds. */
    public PlainLoad {
      switch (kind) {
        case HEATER, SOLENOID, HORN, ELECTRONICS -> {}
        default -> throw new IllegalArgumentException(kind.word() + " is not a plain load");
      }
    }

    @Override
    public List<String> terminals() {
      return List.of("in", "out");
    }
  }

  /**
   * A sender: a resistor whose value follows a level, temperature or pressure. Terminals {@code in}
   * and {@code out}.
   *
   * @param ohms resistance over its whole travel
   */
  record Sender(Spread ohms) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.SENDER;
    }

    @Override
    public List<String> terminals() {
      return List.of("in", "out");
    }
  }

  /**
   * An open-collector output that joins {@code out} to {@code ground} while it is commanded on. Its
   * positions are {@code off} and {@code on}.
   *
   * @param ohms resistance while on, in ohms
   * @param command in words, when it is on, for instance "coolant above 92 C"
   */
  record Driver(Optional<Estimate> ohms, String command) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.DRIVER;
    }

    @Override
    public List<String> terminals() {
      return List.of("out", "ground");
    }
  }

  /**
   * A plug and its socket. Each cavity has two sides, {@code 1a} on the socket (feed) side and
   * {@code 1b} on the plug (load) side.
   *
   * @param cavities cavity names, for instance 1, 2, 3
   * @param ohms resistance of one mated pair in ohms
   */
  record Connector(List<String> cavities, Optional<Estimate> ohms) implements PartSpec {
    /** Copies the list. */
    public Connector {
      cavities = List.copyOf(cavities);
    }

    @Override
    public PartKind kind() {
      return PartKind.CONNECTOR;
    }

    @Override
    public List<String> terminals() {
      List<String> names = new ArrayList<>();
      for (String cavity : cavities) {
        names.add(cavity + "a");
        names.add(cavity + "b");
      }
      return names;
    }
  }

  /**
   * Several conductors joined in one place: a splice, a bus bar or the bar of a fuse block. Each
   * leg has its own joint to the middle.
   *
   * @param legs terminal names, one a leg
   * @param ohms resistance of one leg's joint in ohms
   */
  record Splice(List<String> legs, Optional<Estimate> ohms) implements PartSpec {
    /** Copies the list. */
    public Splice {
      legs = List.copyOf(legs);
    }

    @Override
    public PartKind kind() {
      return PartKind.SPLICE;
    }

    @Override
    public List<String> terminals() {
      return legs;
    }
  }

  /**
   * A ground point: ring terminals on a stud ({@code lug}) bolted to bare metal ({@code metal}).
   *
   * @param ohms resistance from the lug to the metal in ohms
   */
  record Ground(Optional<Estimate> ohms) implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.GROUND;
    }

    @Override
    public List<String> terminals() {
      return List.of("lug", "metal");
    }
  }

  /**
   * A piece of metal that carries return current: body, frame, engine block. Terminal {@code
   * metal}.
   */
  record Body() implements PartSpec {
    @Override
    public PartKind kind() {
      return PartKind.BODY;
    }

    @Override
    public List<String> terminals() {
      return List.of("metal");
    }
  }

  /** The positions of a part that can be set; empty for parts that cannot. The first is at rest. */
  default List<String> positions() {
    if (this instanceof Switch s) {
      return s.positions();
    }
    return this instanceof Driver ? List.of("off", "on") : List.of();
  }

  /** The names of what does work in this part: its filaments, or one empty name. */
  default SortedSet<String> functions() {
    if (this instanceof DualLamp d) {
      return new TreeSet<>(Set.of(d.first(), d.second()));
    }
    return kind().isLoad() ? new TreeSet<>(Set.of("")) : new TreeSet<>();
  }
}
