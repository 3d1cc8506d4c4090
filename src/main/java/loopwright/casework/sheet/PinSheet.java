package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A pinout list: for each cavity of a connector the wires on the socket (feed) side, those on the
 * plug side, and their colours. Several wires in one cell are parted by spaces, commas, plus signs
 * or slashes, several colours by commas or plus signs. A wire is named by its short name or by what
 * is written on it.
 */
public final class PinSheet extends Sheet<PinColumn> {
  private PinSheet(String text, String file) {
    super(text, file, PinColumn.class);
  }

  /**
   * Reads a list from a text.
   *
   * @param file what defects call it
   */
  public static PinSheet read(String text, String file) {
    return new PinSheet(text, file);
  }

  /** The list held against a vehicle, with the columns taken as given. */
  public PinPreview preview(Vehicle vehicle, Mapping<PinColumn> mapping) {
    return preview(vehicle, mapping, Set.of());
  }

  /**
   * The list held against a vehicle, with the columns taken as given.
   *
   * @param connectors ids of the connectors it is about, other rows being left out; all if empty
   */
  public PinPreview preview(Vehicle vehicle, Mapping<PinColumn> mapping, Set<String> connectors) {
    return new PinReading(this, vehicle, mapping, connectors).preview();
  }

  /**
   * The pinout list of some connectors of a vehicle.
   *
   * @param connectors their ids; all if empty
   */
  public static String text(Vehicle vehicle, Set<String> connectors) {
    StringBuilder text =
        new StringBuilder(
            SheetText.line(List.of(PinColumn.values()).stream().map(PinColumn::word).toList()));
    Pins pins = new Pins(vehicle);
    for (Part part : vehicle.parts()) {
      if (part.spec() instanceof PartSpec.Connector connector
          && (connectors.isEmpty() || connectors.contains(part.id()))) {
        for (String cavity : connector.cavities()) {
          List<Part> in = pins.in(part.id(), cavity);
          List<Part> out = pins.out(part.id(), cavity);
          text.append(
              SheetText.line(
                  List.of(
                      part.id(),
                      cavity,
                      Pins.names(in),
                      Pins.names(out),
                      String.join(", ", Pins.colours(in, out)))));
        }
      }
    }
    return text.toString();
  }

  /** Which wires lie on which terminal of a vehicle. */
  static final class Pins {
    private final Map<TerminalRef, List<Part>> on = new HashMap<>();

    Pins(Vehicle vehicle) {
      for (Part part : vehicle.parts()) {
        if (part.spec() instanceof PartSpec.Wire wire) {
          on.computeIfAbsent(wire.from(), x -> new ArrayList<>()).add(part);
          on.computeIfAbsent(wire.to(), x -> new ArrayList<>()).add(part);
        }
      }
    }

    /** Wires on a terminal. */
    List<Part> on(TerminalRef at) {
      return on.getOrDefault(at, List.of());
    }

    /** Wires on the socket side of a cavity. */
    List<Part> in(String connector, String cavity) {
      return on(new TerminalRef(connector, cavity + "a"));
    }

    /** Wires on the plug side of a cavity. */
    List<Part> out(String connector, String cavity) {
      return on(new TerminalRef(connector, cavity + "b"));
    }

    /** Colours on both sides of a cavity, each once. */
    static Set<String> colours(List<Part> in, List<Part> out) {
      Set<String> colours = new LinkedHashSet<>();
      for (List<Part> side : List.of(in, out)) {
        side.forEach(p -> colours.add(((PartSpec.Wire) p.spec()).colour()));
      }
      colours.remove("");
      return colours;
    }

    static String names(List<Part> wires) {
      return String.join(" ", wires.stream().map(Part::id).toList());
    }

    /** The wire of this name or, where only one has it, of this label. */
    static Optional<Part> named(String name, List<Part> wires) {
      Optional<Part> byId = wires.stream().filter(p -> p.id().equalsIgnoreCase(name)).findFirst();
      return byId.or(
          () -> wires.stream().filter(p -> p.label().equalsIgnoreCase(name)).findFirst());
    }
  }
}
