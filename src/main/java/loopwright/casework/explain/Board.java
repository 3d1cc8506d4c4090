package loopwright.casework.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loopwright.casework.Phrases;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A circuit on a board: a 12 V battery and parts between named nodes, every value exact. Node
 * {@link #FEED} is the battery's positive post, {@link #GROUND} its negative one.
 */
final class Board {
  static final String FEED = "feed";
  static final String GROUND = "ground";
  static final String CIRCUIT = "board";

  private static final int SYSTEM_VOLTS = 12;
  private static final double BATTERY_VOLTS = 12.6;
  private static final double BATTERY_OHMS = 0.01;

  /** A sound fuse in its holder, a closed switch. */
  private static final double CONTACT_OHMS = 0.01;

  private final Phrases phrases;
  private final List<Part> parts = new ArrayList<>();
  private final Map<String, List<TerminalRef>> nodes = new LinkedHashMap<>();
  private final List<LoadRef> loads = new ArrayList<>();
  private final Map<String, String> on = new LinkedHashMap<>();
  private Setting setting = Setting.REST;
  private TerminalRef red = new TerminalRef("BATT", "pos");
  private TerminalRef black = new TerminalRef("BATT", "neg");

  Board(Phrases phrases) {
    this.phrases = phrases;
    part(
        "BATT",
        "battery",
        new PartSpec.Battery(
            Optional.of(Estimate.exactly(BATTERY_VOLTS)),
            Optional.of(Estimate.exactly(BATTERY_OHMS))),
        FEED,
        GROUND);
  }

  private String named(String name) {
    return phrases.say("explain.part." + name);
  }

  /**
   * A part between nodes, one for each terminal of its spec.
   *
   * @param name key of what it is called
   */
  Board part(String id, String name, PartSpec spec, String... at) {
    parts.add(Part.of(id, named(name), spec));
    for (int i = 0; i < at.length; i++) {
      nodes
          .computeIfAbsent(at[i], n -> new ArrayList<>())
          .add(new TerminalRef(id, spec.terminals().get(i)));
    }
    if (spec.kind().isLoad()) {
      loads.add(LoadRef.parse(id));
    }
    return this;
  }

  Board fuse(String id, double amps, String a, String b) {
    return part(
        id, "fuse", new PartSpec.Fuse(amps, Optional.of(Estimate.exactly(CONTACT_OHMS))), a, b);
  }

  /** A switch that is on unless it is moved. */
  Board onOff(String id, String a, String b) {
    on.put(id, "on");
    setting = setting.with(id, "on");
    return part(
        id, "switch", PartSpec.Switch.onOff(Optional.of(Estimate.exactly(CONTACT_OHMS))), a, b);
  }

  /** A lamp of 12 V. */
  Board lamp(String id, double watts, String a, String b) {
    return part(
        id,
        "lamp",
        new PartSpec.Lamp(Optional.of((double) SYSTEM_VOLTS), Estimate.exactly(watts)),
        a,
        b);
  }

  Board load(String id, String name, PartKind kind, double amps, String a, String b) {
    return part(id, name, new PartSpec.PlainLoad(kind, Estimate.exactly(amps)), a, b);
  }

  /** A joint of a plug. */
  Board joint(String id, double ohms, String a, String b) {
    return part(
        id,
        "joint",
        new PartSpec.Connector(List.of("1"), Optional.of(Estimate.exactly(ohms))),
        a,
        b);
  }

  /** A ground point on metal that leads straight to the battery. */
  Board ground(String id, String name, double ohms, String lug) {
    return part(id, name, new PartSpec.Ground(Optional.of(Estimate.exactly(ohms))), lug, GROUND);
  }

  Board resistor(String id, String name, double ohms, String a, String b) {
    return part(id, name, new PartSpec.Sender(Spread.exactly(ohms)), a, b);
  }

  Board turned(String id, String position) {
    setting = setting.with(id, position);
    return this;
  }

  Board without(String part) {
    setting = setting.without(part);
    return this;
  }

  /** Where the leads of the meter lie. */
  Board leads(String red, String black) {
    this.red = TerminalRef.parse(red);
    this.black = TerminalRef.parse(black);
    return this;
  }

  Vehicle vehicle() {
    List<List<TerminalRef>> joins = nodes.values().stream().filter(n -> n.size() > 1).toList();
    return new Vehicle(
        CIRCUIT,
        named(CIRCUIT),
        SYSTEM_VOLTS,
        GroundedPole.NEGATIVE,
        parts,
        joins,
        List.of(new Circuit(CIRCUIT, named(CIRCUIT), loads, on, "")),
        "");
  }

  Setting setting() {
    return setting;
  }

  TerminalRef red() {
    return red;
  }

  TerminalRef black() {
    return black;
  }
}
