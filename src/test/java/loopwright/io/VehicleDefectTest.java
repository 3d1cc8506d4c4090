package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** Each way in which a vehicle does not hold together, with what is said about it. */
class VehicleDefectTest {
  @Test
  void aSecondPartOfTheSameNameIsADuplicate() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}",
            "\"kind\": \"body\"}, {\"id\": \"F1\", \"kind\": \"body\", \"spare\": [\"metal\"]}"),
        expected(
            "body F1",
            "F1",
            "a name that no other part has",
            "parts[6].id (line 10)",
            "the name F1 is taken by parts[1]"));
  }

  @Test
  void aSecondCircuitOfTheSameNameIsADuplicate() {
    check(
        Vehicles.small(
            "\"on\": {\"S1\": \"on\"}}",
            "\"on\": {\"S1\": \"on\"}},\n{\"id\": \"lamp\", \"loads\": [\"L1\"], \"on\": {\"S1\": \"on\"}}"),
        expected(
            "circuit lamp",
            "lamp",
            "a name that no other circuit has",
            "circuits[1].id (line 20)",
            "the name lamp is taken by circuits[0]"));
  }

  @Test
  void aTerminalWithNothingOnItIsDangling() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}",
            "\"kind\": \"body\"},\n{\"id\": \"D1\", \"kind\": \"diode\", \"spare\": [\"anode\"]}"),
        expected(
            "diode D1",
            "D1.cathode",
            "a wire or a join on it, or named in spare",
            "parts[6] (line 11)",
            "nothing lies on its terminal cathode, must have a wire or a join on it or be named in spare"));
  }

  @Test
  void aWireEndOnAnUnknownTerminalNamesTheNearest() {
    check(
        Vehicles.small("\"from\": \"F1.load\"", "\"from\": \"F1.laod\""),
        expected(
            "wire W2",
            "F1.laod",
            "one of feed, load",
            "parts[7].from (line 12)",
            "from is F1.laod, but fuse F1 has only feed, load; did you mean F1.load?"));
  }

  @Test
  void aWireEndOnAnUnknownPartNamesTheNearest() {
    check(
        Vehicles.small("\"to\": \"G1.lug\"", "\"to\": \"G11.lug\""),
        expected(
            "wire W4",
            "G11.lug",
            "a terminal of a part of this vehicle",
            "parts[9].to (line 14)",
            "to is G11.lug, but there is no part G11; did you mean G1.lug?"));
  }

  @Test
  void aJoinOfAnUnknownPartNamesTheNearest() {
    check(
        Vehicles.small("[\"G1.metal\", \"BODY.metal\"]", "[\"G1.metal\", \"BDOY.metal\"]"),
        expected(
            "joins[0]",
            "BDOY.metal",
            "a terminal of a part of this vehicle",
            "joins[0][1] (line 17)",
            "entry 1 is BDOY.metal, but there is no part BDOY; did you mean BODY.metal?"));
  }

  @Test
  void aWireEndOnAWireIsUnknown() {
    check(
        Vehicles.small(
            "\"size\": \"18 AWG\", \"metres\": 0.3}",
            "\"size\": \"18 AWG\", \"metres\": 0.3},\n{\"id\": \"W5\", \"kind\": \"wire\", \"from\": \"L1.out\", \"to\": \"W4.to\", \"size\": \"18 AWG\", \"metres\": 1}"),
        expected(
            "wire W5",
            "W4.to",
            "a terminal of a part that has terminals",
            "parts[10].to (line 15)",
            "to is W4.to, but a wire has no terminals of its own; name the terminal its end lies on"));
  }

  @Test
  void aLoadWithoutFeedSaysThatTheFeedIsMissing() {
    check(
        Vehicles.small("\"closed_in\": [\"on\"]", "\"closed_in\": [\"off\"]"),
        expected(
            "circuit lamp",
            "no feed",
            "a conducting way from BATT.pos through the load to BATT.neg",
            "circuits[0].loads[0] (line 19)",
            "load L1 has no feed: no way from BATT.pos to it with S1 on"));
  }

  @Test
  void aLoadWithoutReturnSaysThatTheReturnIsMissing() {
    check(
        Vehicles.small("\"kind\": \"ground\"}", "\"kind\": \"ground\", \"spare\": [\"metal\"]}")
            .replace("[[\"G1.metal\", \"BODY.metal\"]]", "[]"),
        expected(
            "circuit lamp",
            "no return",
            "a conducting way from BATT.pos through the load to BATT.neg",
            "circuits[0].loads[0] (line 19)",
            "load L1 has no return: no way from it to BATT.neg with S1 on"));
  }

  @Test
  void aReturnByWayOfTheFeedIsNone() {
    check(
        Vehicles.small(
                "\"to\": \"G1.lug\", \"size\": \"18 AWG\"",
                "\"to\": \"F1.load\", \"size\": \"18 AWG\"")
            .replace("\"kind\": \"ground\"}", "\"kind\": \"ground\", \"spare\": [\"lug\"]}"),
        expected(
            "circuit lamp",
            "no return",
            "a conducting way from BATT.pos through the load to BATT.neg",
            "circuits[0].loads[0] (line 19)",
            "load L1 has no return: no way from it to BATT.neg with S1 on"));
  }

  @Test
  void aDiodeAgainstTheCurrentBlocksTheLoop() {
    check(
        Vehicles.small(
                "\"kind\": \"body\"}", "\"kind\": \"body\"}, {\"id\": \"D1\", \"kind\": \"diode\"}")
            .replace("\"to\": \"F1.feed\"", "\"to\": \"D1.cathode\"")
            .replace("\"joins\": [", "\"joins\": [[\"D1.anode\", \"F1.feed\"], "),
        expected(
            "circuit lamp",
            "blocked by a diode",
            "a conducting way from BATT.pos through the load to BATT.neg",
            "circuits[0].loads[0] (line 19)",
            "load L1 gets no current: a diode or LED blocks its loop with S1 on"));
  }

  @Test
  void aLengthOfZeroIsRefused() {
    check(
        Vehicles.small("\"metres\": 2", "\"metres\": 0"),
        expected(
            "wire W2",
            "0 m",
            "more than 0 and at most 100 m",
            "parts[7].metres (line 12)",
            "metres is 0 m, must be more than 0 and at most 100 m"));
  }

  @Test
  void aNegativeLengthIsRefused() {
    check(
        Vehicles.small("\"metres\": 2", "\"metres\": -2"),
        expected(
            "wire W2",
            "-2 m",
            "more than 0 and at most 100 m",
            "parts[7].metres (line 12)",
            "metres is -2 m, must be more than 0 and at most 100 m"));
  }

  @Test
  void aNegativeLowLimitOfALengthIsRefused() {
    check(
        Vehicles.small("\"metres\": 2", "\"metres\": {\"about\": 2, \"low\": -1, \"high\": 3}"),
        expected(
            "wire W2",
            "-1 m",
            "more than 0 and at most 100 m",
            "parts[7].metres (line 12)",
            "metres is -1 m, must be more than 0 and at most 100 m"));
  }

  @Test
  void aLengthOfTwoHundredMetresIsRefused() {
    check(
        Vehicles.small("\"metres\": 2", "\"metres\": 200"),
        expected(
            "wire W2",
            "200 m",
            "more than 0 and at most 100 m",
            "parts[7].metres (line 12)",
            "metres is 200 m, must be more than 0 and at most 100 m"));
  }

  @Test
  void batteryVoltsThatDoNotFitTheSystemAreRefused() {
    check(
        Vehicles.small("\"volts\": 12.6", "\"volts\": 25.2"),
        expected(
            "battery BATT",
            "25.2 V",
            "3.6 to 15.6 V",
            "parts[0].volts (line 5)",
            "volts is 25.2 V, must be 3.6 to 15.6 V"));
  }

  @Test
  void amperesBeyondAnyFuseAreRefused() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": 10000"),
        expected(
            "fuse F1",
            "10000 A",
            "0.1 to 500 A",
            "parts[1].amps (line 6)",
            "amps is 10000 A, must be 0.1 to 500 A"));
  }

  @Test
  void aLowLimitOfWattsOutOfRangeIsRefused() {
    check(
        Vehicles.small("\"watts\": 21", "\"watts\": {\"about\": 21, \"low\": 0.01, \"high\": 22}"),
        expected(
            "lamp L1",
            "0.01 W",
            "0.1 to 2000 W",
            "parts[3].watts (line 8)",
            "watts is 0.01 W, must be 0.1 to 2000 W"));
  }

  @Test
  void negativeOhmsAreRefused() {
    check(
        Vehicles.small("\"kind\": \"ground\"", "\"kind\": \"ground\", \"ohms\": -1"),
        expected(
            "ground G1",
            "-1 ohm",
            "0.000001 to 10000000 ohm",
            "parts[4].ohms (line 9)",
            "ohms is -1 ohm, must be 0.000001 to 10000000 ohm"));
  }

  @Test
  void limitsOutOfOrderAreRefused() {
    check(
        Vehicles.small("\"watts\": 21", "\"watts\": {\"about\": 21, \"low\": 22, \"high\": 23}"),
        expected(
            "lamp L1",
            "low 22, about 21, high 23",
            "low <= about <= high",
            "parts[3].watts (line 8)",
            "watts has low 22, about 21, high 23, must be in rising order"));
  }

  @Test
  void aRelayThatDropsOutAbovePullInIsRefused() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}",
            "\"kind\": \"body\"}, {\"id\": \"K1\", \"kind\": \"relay\", \"pull_in_volts\": 3, \"drop_out_volts\": 7, \"spare\": [\"86\", \"85\", \"30\", \"87\"]}"),
        expected(
            "relay K1",
            "7 V",
            "less than pull_in_volts, 3 V",
            "parts[6].drop_out_volts (line 10)",
            "drop_out_volts is 7 V, must be less than pull_in_volts, 3 V"));
  }

  @Test
  void aMotorThatStallsAtLessThanItRunsOnIsRefused() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}",
            "\"kind\": \"body\"}, {\"id\": \"M1\", \"kind\": \"motor\", \"amps\": 5, \"stall_amps\": 2, \"spare\": [\"in\", \"out\"]}"),
        expected(
            "motor M1",
            "2 A",
            "at least amps, 5 A",
            "parts[6].stall_amps (line 10)",
            "stall_amps is 2 A, must be at least amps, 5 A"));
  }

  @Test
  void aContactOnAnUnknownTerminalIsRefused() {
    check(
        Vehicles.small(
            "[\"on\"]}]}",
            "[\"on\"]}, {\"between\": [\"in\", \"uot\"], \"closed_in\": [\"on\"]}]}"),
        expected(
            "switch S1",
            "uot",
            "one of in, out",
            "parts[2].contacts[1].between[1] (line 7)",
            "contacts[1] names the terminal uot, must be one of in, out; did you mean out?"));
  }

  @Test
  void aContactClosedInAnUnknownPositionIsRefused() {
    check(
        Vehicles.small("\"closed_in\": [\"on\"]", "\"closed_in\": [\"on\", \"no\"]"),
        expected(
            "switch S1",
            "no",
            "one of off, on",
            "parts[2].contacts[0].closed_in (line 7)",
            "contacts[0] names the position no, must be one of off, on; did you mean on?"));
  }

  @Test
  void aContactOfATerminalWithItselfIsRefused() {
    check(
        Vehicles.small(
            "[\"on\"]}]}", "[\"on\"]}, {\"between\": [\"in\", \"in\"], \"closed_in\": [\"on\"]}]}"),
        expected(
            "switch S1",
            "in-in",
            "two different terminals",
            "parts[2].contacts[1].between (line 7)",
            "contacts[1] joins in to itself, must join two different terminals"));
  }

  @Test
  void aCircuitWithAnUnknownControlIsRefused() {
    check(
        Vehicles.small("\"on\": {\"S1\": \"on\"}", "\"on\": {\"S2\": \"on\"}"),
        expected(
            "circuit lamp",
            "S2",
            "a switch or driver of this vehicle",
            "circuits[0].on.S2 (line 19)",
            "on names the control S2, but there is no part S2; did you mean S1?"));
  }

  @Test
  void aCircuitThatSetsAFuseIsRefused() {
    check(
        Vehicles.small("\"on\": {\"S1\": \"on\"}", "\"on\": {\"F1\": \"on\", \"S1\": \"on\"}"),
        expected(
            "circuit lamp",
            "F1",
            "a switch or driver of this vehicle",
            "circuits[0].on.F1 (line 19)",
            "on names the control F1, but fuse F1 has no positions; did you mean S1?"));
  }

  @Test
  void aCircuitWithAnUnknownPositionIsRefused() {
    check(
        Vehicles.small("\"on\": {\"S1\": \"on\"}", "\"on\": {\"S1\": \"onn\"}"),
        expected(
            "circuit lamp",
            "onn",
            "one of off, on",
            "circuits[0].on.S1 (line 19)",
            "on sets S1 to onn, must be one of off, on; did you mean on?"));
  }

  @Test
  void aCircuitWithAnUnknownLoadIsRefused() {
    check(
        Vehicles.small("\"loads\": [\"L1\"]", "\"loads\": [\"L2\"]"),
        expected(
            "circuit lamp",
            "L2",
            "a load of this vehicle",
            "circuits[0].loads[0] (line 19)",
            "names the load L2, but there is no part L2; did you mean L1?"));
  }

  @Test
  void aCircuitWhoseLoadIsAFuseIsRefused() {
    check(
        Vehicles.small("\"loads\": [\"L1\"]", "\"loads\": [\"F1\"]"),
        expected(
            "circuit lamp",
            "F1",
            "a lamp, motor or other load",
            "circuits[0].loads[0] (line 19)",
            "names the load F1, but fuse F1 is not a load"));
  }

  @Test
  void aFilamentOfASingleLampIsRefused() {
    check(
        Vehicles.small("\"loads\": [\"L1\"]", "\"loads\": [\"L1:tail\"]"),
        expected(
            "circuit lamp",
            "L1:tail",
            "L1",
            "circuits[0].loads[0] (line 19)",
            "names the load L1:tail, but lamp L1 has no filaments to choose from"));
  }

  @Test
  void anUnknownFilamentIsRefused() {
    check(
        Vehicles.small(
                "{\"id\": \"L1\", \"kind\": \"lamp\", \"watts\": 21}",
                "{\"id\": \"L1\", \"kind\": \"dual-lamp\", \"filaments\": [{\"name\": \"in\", \"watts\": 5}, {\"name\": \"stop\", \"watts\": 21}], \"spare\": [\"stop\"]}")
            .replace("\"from\": \"L1.out\"", "\"from\": \"L1.common\"")
            .replace("\"loads\": [\"L1\"]", "\"loads\": [\"L1:tail\"]"),
        expected(
            "circuit lamp",
            "L1:tail",
            "L1:in or L1:stop",
            "circuits[0].loads[0] (line 19)",
            "names the load L1:tail, must name a filament: L1:in or L1:stop"));
  }

  @Test
  void aVehicleWithoutABatteryIsRefused() {
    check(
        Vehicles.small(
                "{\"id\": \"BATT\", \"kind\": \"battery\", \"volts\": 12.6}",
                "{\"id\": \"BATT\", \"kind\": \"connector\", \"cavities\": [\"1\"], \"spare\": [\"1a\", \"1b\"]}")
            .replace("\"BATT.pos\"", "\"BATT.1a\"")
            .replace("\"BATT.neg\"", "\"BATT.1b\""),
        expected(
            "vehicle",
            "no battery",
            "at least 1 battery",
            "parts (line 4)",
            "has no battery, must have at least 1"));
  }

  @Test
  void aVehicleWithoutCircuitsIsRefused() {
    check(
        Vehicles.small("{\"id\": \"lamp\", \"loads\": [\"L1\"], \"on\": {\"S1\": \"on\"}}", ""),
        expected(
            "vehicle",
            "no circuits",
            "at least 1 circuit",
            "circuits (line 18)",
            "has no circuits, must have at least 1"));
  }

  @Test
  void aSystemOfThirteenVoltsIsRefused() {
    check(
        Vehicles.small("\"system_volts\": 12", "\"system_volts\": 13"),
        expected(
            "vehicle",
            "13",
            "6, 12 or 24",
            "system_volts (line 3)",
            "system_volts is 13, must be 6, 12 or 24"));
  }

  @Test
  void aWireFromATerminalToItselfIsRefused() {
    check(
        Vehicles.small(
            "\"metres\": 0.3}",
            "\"metres\": 0.3}, {\"id\": \"W5\", \"kind\": \"wire\", \"from\": \"S1.in\", \"to\": \"S1.in\", \"size\": \"18 AWG\", \"metres\": 1}"),
        expected(
            "wire W5",
            "S1.in",
            "two different terminals",
            "parts[10].to (line 14)",
            "both ends lie on S1.in, must lie on two different terminals"));
  }

  @Test
  void aWireBetweenJoinedTerminalsIsRefused() {
    check(
        Vehicles.small("\"joins\": [", "\"joins\": [[\"F1.load\", \"S1.in\"], "),
        expected(
            "wire W2",
            "F1.load and S1.in",
            "two terminals that are not joined",
            "parts[7].to (line 12)",
            "its ends F1.load and S1.in are joined to each other, must lie on two different nodes"));
  }

  @Test
  void aJoinOfOneTerminalIsRefused() {
    check(
        Vehicles.small(
            "[\"G1.metal\", \"BODY.metal\"]", "[\"G1.metal\", \"BODY.metal\"], [\"G1.lug\"]"),
        expected(
            "joins[1]",
            "a list of 1",
            "a list of at least 2 terminals",
            "joins[1] (line 17)",
            "is a list of 1, must be a list of at least 2 terminals"));
  }

  @Test
  void aTerminalTwiceInAJoinIsRefused() {
    check(
        Vehicles.small(
            "[\"G1.metal\", \"BODY.metal\"]", "[\"G1.metal\", \"BODY.metal\", \"G1.metal\"]"),
        expected(
            "joins[0]",
            "G1.metal",
            "each terminal once",
            "joins[0][2] (line 17)",
            "G1.metal stands in it twice, must stand once"));
  }

  @Test
  void accessToAnUnknownTerminalIsRefused() {
    check(
        Vehicles.small(
            "\"kind\": \"ground\"}",
            "\"kind\": \"ground\", \"access\": {\"lgu\": {\"minutes\": 1}}}"),
        expected(
            "ground G1",
            "lgu",
            "one of lug, metal",
            "parts[4].access.lgu (line 9)",
            "access names the terminal lgu, must be one of lug, metal; did you mean lug?"));
  }

  @Test
  void aSpareTerminalThatDoesNotExistIsRefused() {
    check(
        Vehicles.small("\"kind\": \"ground\"}", "\"kind\": \"ground\", \"spare\": [\"lgu\"]}"),
        expected(
            "ground G1",
            "lgu",
            "one of lug, metal",
            "parts[4].spare (line 9)",
            "spare names the terminal lgu, must be one of lug, metal; did you mean lug?"));
  }

  @Test
  void negativeMinutesAreRefused() {
    check(
        Vehicles.small(
            "\"kind\": \"ground\"}",
            "\"kind\": \"ground\", \"access\": {\"lug\": {\"minutes\": -1}}, \"swap_minutes\": -2}"),
        expected(
            "ground G1",
            "-1",
            "0 or more minutes",
            "parts[4].access.lug.minutes (line 9)",
            "access minutes of lug is -1, must be 0 or more"),
        expected(
            "ground G1",
            "-2 minutes",
            "0 to 1440 minutes",
            "parts[4].swap_minutes (line 9)",
            "swap_minutes is -2 minutes, must be 0 to 1440 minutes"));
  }

  private static Defect expected(
      String object, String value, String limit, String place, String what) {
    String whole = "cart.json, " + place;
    return new Defect(object, value, limit, whole, object + ": " + what + " [" + whole + "]");
  }

  private static void check(String json, Defect... expected) {
    ReadResult<Vehicle> result = VehicleFile.read(json, "cart.json");
    assertThat(result.defects()).isEqualTo(List.of(expected));
  }
}
