package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.model.Vehicle;

/** Small vehicles of the tests, as text. */
final class Vehicles {
  /**
   * Every kind of part once.
   *
   * <pre>
   * BATT.pos -W1- BUS - F3 - C1 - S5 - SP - D1 - K1.86 .. K1.85 - DRV - G1
   *               |                    SP - L1 -- G1,  SP - E1 - SND - G1
   *               BUS - F4 - K1.30 .. K1.87 - M1 - G1
   * G1.metal = BODY - ST1 - BATT.neg;  SP - L7:tail, L7:stop - common - G1; SP - LED - G1
   * </pre>
   */
  static final String ALL_KINDS =
      """
      { "format": "loopwright-vehicle", "version": 1, "id": "mule", "name": "Yard mule",
        "note": "invented", "system_volts": 12, "grounded": "negative",
        "parts": [
          {"id": "BATT", "kind": "battery", "name": "battery", "volts": 12.6,
           "ohms": {"about": 0.012, "low": 0.008, "high": 0.02}, "amp_hours": 60,
           "charge_idle_amps": 0, "charge_amps": 30, "where": "under the seat",
           "access": {"pos": {"minutes": 0.2, "how": "lift the cover", "reachable": true}},
           "apart_minutes": 1, "swap_minutes": 10},
          {"id": "BUS", "kind": "splice", "legs": ["a", "b", "c", "d", "e"], "ohms": 0.001},
          {"id": "F3", "kind": "fuse", "amps": 10, "ohms": 0.012},
          {"id": "F4", "kind": "fuse", "amps": 20},
          {"id": "C1", "kind": "connector", "cavities": ["1", "2"], "ohms": 0.005, "spare": ["2a", "2b"]},
          {"id": "S5", "kind": "switch", "control": "key", "positions": ["off", "on"],
           "terminals": ["in", "out"],
           "contacts": [{"between": ["in", "out"], "closed_in": ["on"]}],
           "momentary": false, "ohms": 0.01, "amps": 15},
          {"id": "K1", "kind": "relay", "changeover": true, "coil_ohms": 80, "pull_in_volts": 7,
           "drop_out_volts": 3, "contact_ohms": 0.005, "suppression": "diode-cathode-86",
           "amps": 40, "spare": ["87a"]},
          {"id": "D1", "kind": "diode", "forward_volts": 0.7},
          {"id": "DRV", "kind": "driver", "ohms": 0.1, "command": "coolant above 92 C"},
          {"id": "L1", "kind": "lamp", "watts": 21, "rated_volts": 12},
          {"id": "L7", "kind": "dual-lamp", "rated_volts": 12,
           "filaments": [{"name": "tail", "watts": 5}, {"name": "stop", "watts": 21}]},
          {"id": "LED", "kind": "led", "forward_volts": 2, "amps": 0.02},
          {"id": "M1", "kind": "motor", "amps": 5, "stall_amps": 25},
          {"id": "H1", "kind": "heater", "amps": 4},
          {"id": "Y1", "kind": "solenoid", "amps": 4},
          {"id": "HN", "kind": "horn", "amps": 4},
          {"id": "E1", "kind": "electronics", "amps": 0.1},
          {"id": "SND", "kind": "sender", "ohms": {"low": 3, "about": 60, "high": 110}},
          {"id": "SP", "kind": "splice", "legs": ["a", "b", "c"]},
          {"id": "G1", "kind": "ground", "ohms": 0.001},
          {"id": "BODY", "kind": "body"},
          {"id": "W1", "kind": "wire", "from": "BATT.pos", "to": "BUS.a", "size": "10 AWG",
           "metres": 1.5, "end_ohms": 0.001, "colour": "red", "loom": "dash"},
          {"id": "ST1", "kind": "strap", "from": "BODY.metal", "to": "BATT.neg", "size": "25 mm2",
           "metres": {"about": 0.4, "low": 0.3, "high": 0.5}}
        ],
        "joins": [
          ["BUS.b", "F3.feed"], ["BUS.c", "F4.feed"], ["F3.load", "C1.1a"], ["C1.1b", "S5.in"],
          ["S5.out", "SP.a"], ["SP.b", "D1.anode"], ["D1.cathode", "K1.86"],
          ["K1.85", "DRV.out"], ["F4.load", "K1.30"], ["K1.87", "M1.in"],
          ["SP.c", "L1.in", "L7.tail", "L7.stop", "LED.in", "H1.in", "E1.in"],
          ["BUS.d", "Y1.in"], ["BUS.e", "HN.in"], ["E1.out", "SND.in"],
          ["G1.lug", "L1.out", "L7.common", "LED.out", "M1.out", "H1.out", "Y1.out", "HN.out",
           "SND.out", "DRV.ground"],
          ["G1.metal", "BODY.metal"]
        ],
        "circuits": [
          {"id": "work", "name": "Work lamp", "loads": ["L1", "L7:tail"], "on": {"S5": "on"}},
          {"id": "all", "name": "Rest", "note": "n",
           "loads": ["L7:stop", "LED", "M1", "H1", "Y1", "HN", "E1"],
           "on": {"S5": "on", "DRV": "on"}}
        ] }
      """;

  /**
   * One lamp behind a fuse and a switch; the file's line numbers matter to the tests.
   *
   * <pre>
   * BATT.pos -W1- F1 -W2- S1 -W3- L1 -W4- G1 = BODY -ST1- BATT.neg
   * </pre>
   */
  static final String SMALL =
      """
      {
      "format": "loopwright-vehicle", "version": 1, "id": "cart", "name": "Cart",
      "system_volts": 12, "grounded": "negative",
      "parts": [
      {"id": "BATT", "kind": "battery", "volts": 12.6},
      {"id": "F1", "kind": "fuse", "amps": 10},
      {"id": "S1", "kind": "switch", "positions": ["off", "on"], "terminals": ["in", "out"], "contacts": [{"between": ["in", "out"], "closed_in": ["on"]}]},
      {"id": "L1", "kind": "lamp", "watts": 21},
      {"id": "G1", "kind": "ground"},
      {"id": "BODY", "kind": "body"},
      {"id": "W1", "kind": "wire", "from": "BATT.pos", "to": "F1.feed", "size": "12 AWG", "metres": 1},
      {"id": "W2", "kind": "wire", "from": "F1.load", "to": "S1.in", "size": "18 AWG", "metres": 2},
      {"id": "W3", "kind": "wire", "from": "S1.out", "to": "L1.in", "size": "18 AWG", "metres": 3},
      {"id": "W4", "kind": "wire", "from": "L1.out", "to": "G1.lug", "size": "18 AWG", "metres": 0.3},
      {"id": "ST1", "kind": "strap", "from": "BODY.metal", "to": "BATT.neg", "size": "25 mm2", "metres": 0.4}
      ],
      "joins": [["G1.metal", "BODY.metal"]],
      "circuits": [
      {"id": "lamp", "loads": ["L1"], "on": {"S1": "on"}}
      ]
      }
      """;

  private Vehicles() {}

  static Vehicle allKinds() {
    return VehicleFile.read(ALL_KINDS, "mule.json").orThrow();
  }

  /** The small vehicle's file with one piece of text changed. */
  static String small(String piece, String by) {
    assertThat(SMALL).as("the piece to change").contains(piece);
    return SMALL.replace(piece, by);
  }

  /** What is wrong with the small vehicle after the change; never nothing. */
  static List<Defect> defects(String piece, String by) {
    ReadResult<Vehicle> result = VehicleFile.read(small(piece, by), "cart.json");
    assertThat(result).isInstanceOf(ReadResult.Refused.class);
    return result.defects();
  }

  /** A vehicle of so many relay-fed lamps on one bus and one ground, each a circuit. */
  static String rows(int count) {
    StringBuilder parts = new StringBuilder();
    StringBuilder circuits = new StringBuilder();
    StringBuilder bus = new StringBuilder("\"BATT.pos\"");
    StringBuilder ground = new StringBuilder("\"BODY.metal\", \"BATT.neg\"");
    StringBuilder joins = new StringBuilder();
    for (int i = 0; i < count; i++) {
      parts.append(
          """
          {"id": "F%1$d", "kind": "fuse", "amps": 10},
          {"id": "S%1$d", "kind": "switch", "positions": ["off", "on"], "terminals": ["a", "b"],
           "contacts": [{"between": ["a", "b"], "closed_in": ["on"]}]},
          {"id": "K%1$d", "kind": "relay"},
          {"id": "L%1$d", "kind": "lamp", "watts": 21},
          {"id": "W%1$d", "kind": "wire", "from": "K%1$d.87", "to": "L%1$d.in", "size": "18 AWG",
           "metres": 1},
          """
              .formatted(i));
      bus.append(", \"F%d.feed\"".formatted(i));
      ground.append(", \"L%1$d.out\", \"K%1$d.85\"".formatted(i));
      joins.append(
          ", [\"F%1$d.load\", \"S%1$d.a\", \"K%1$d.30\"], [\"S%1$d.b\", \"K%1$d.86\"]"
              .formatted(i));
      circuits.append(
          "%2$s{\"id\": \"c%1$d\", \"loads\": [\"L%1$d\"], \"on\": {\"S%1$d\": \"on\"}}"
              .formatted(i, i == 0 ? "" : ", "));
    }
    return """
        {"format": "loopwright-vehicle", "version": 1, "id": "rows", "system_volts": 12,
         "grounded": "negative", "parts": [%s {"id": "BATT", "kind": "battery"},
         {"id": "BODY", "kind": "body"}], "joins": [[%s], [%s]%s], "circuits": [%s]}
        """
        .formatted(parts, bus, ground, joins, circuits);
  }
}
