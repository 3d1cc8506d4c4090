package loopwright.casework.sheet;

import loopwright.io.VehicleFile;
import loopwright.model.Vehicle;

/** A small trailer: battery, fuse, switch, plug and socket, lamp, frame; six wires. */
public final class Trailer {
  private static final String TEXT =
      """
      { "format": "loopwright-vehicle", "version": 1, "id": "trailer", "name": "Hose trailer",
        "system_volts": 12, "grounded": "negative",
        "parts": [
          {"id": "BATT", "kind": "battery"},
          {"id": "F3", "kind": "fuse", "amps": 10},
          {"id": "S1", "kind": "switch", "positions": ["off", "on"], "terminals": ["in", "out"],
           "contacts": [{"between": ["in", "out"], "closed_in": ["on"]}]},
          {"id": "C1", "kind": "connector", "cavities": ["1", "2"], "spare": ["2a", "2b"]},
          {"id": "L1", "kind": "lamp", "watts": 21},
          {"id": "FRAME", "kind": "body"},
          {"id": "W1", "kind": "wire", "from": "BATT.pos", "to": "F3.feed", "size": "10 AWG",
           "metres": 1.5, "colour": "red"},
          {"id": "W2", "kind": "wire", "name": "switch feed", "label": "SW", "from": "F3.load",
           "to": "S1.in", "size": "14 AWG", "metres": 2, "colour": "red/white", "loom": "rail"},
          {"id": "W3", "kind": "wire", "label": "LP", "from": "S1.out", "to": "C1.1a",
           "size": "16 AWG", "metres": {"about": 3, "low": 2.5, "high": 4}, "colour": "green"},
          {"id": "W4", "kind": "wire", "label": "LP", "from": "C1.1b", "to": "L1.in",
           "size": "1.5 mm2", "metres": 0.4, "colour": "green/black"},
          {"id": "W5", "kind": "wire", "from": "L1.out", "to": "FRAME.metal", "size": "16 AWG",
           "metres": 0.3, "colour": "black"},
          {"id": "ST1", "kind": "strap", "from": "FRAME.metal", "to": "BATT.neg",
           "size": "25 mm2", "metres": 0.4}
        ],
        "circuits": [{"id": "lamp", "name": "work lamp", "loads": ["L1"], "on": {"S1": "on"}}] }
      """;

  private Trailer() {}

  /** The trailer, read from its text. */
  public static Vehicle vehicle() {
    return VehicleFile.read(TEXT, "trailer.json").orThrow();
  }
}
