package loopwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;

/** Each way in which a vehicle file is not in the format, with what is said about it. */
class VehicleShapeDefectTest {
  @Test
  void aTextWhereANumberBelongsIsTheWrongType() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": \"ten\""),
        expected(
            "fuse F1",
            "\"ten\"",
            "a number",
            "parts[1].amps (line 6)",
            "amps is the text \"ten\", must be a number"));
  }

  @Test
  void aNumberWhereATextBelongsIsTheWrongType() {
    check(
        Vehicles.small("\"name\": \"Cart\"", "\"name\": 7"),
        expected("vehicle", "7", "a text", "name (line 2)", "name is 7, must be a text"));
  }

  @Test
  void nullIsTheWrongType() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": null"),
        expected(
            "fuse F1",
            "null",
            "a number",
            "parts[1].amps (line 6)",
            "amps is null, must be a number"));
  }

  @Test
  void anObjectWhereAListBelongsIsTheWrongType() {
    check(
        Vehicles.small("\"joins\": [[\"G1.metal\", \"BODY.metal\"]]", "\"joins\": {}"),
        expected(
            "vehicle",
            "an object",
            "a list in brackets",
            "joins (line 17)",
            "joins is an object, must be a list in brackets"));
  }

  @Test
  void aMissingFieldIsNamed() {
    check(
        Vehicles.small(", \"amps\": 10", ""),
        expected(
            "fuse F1",
            "missing",
            "a number",
            "parts[1].amps (line 6)",
            "field \"amps\" is missing, must be a number"));
  }

  @Test
  void anUnknownFieldNamesTheNearestKnownOne() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": 10, \"ohm\": 1"),
        expected(
            "fuse F1",
            "field \"ohm\"",
            "known fields: id, kind, name, label, amps, ohms, where, access, apart_minutes, swap_minutes, spare, note, photos",
            "parts[1].ohm (line 6)",
            "unknown field \"ohm\"; did you mean \"ohms\"?"));
  }

  @Test
  void anUnknownKindNamesTheNearest() {
    check(
        Vehicles.small("\"kind\": \"fuse\"", "\"kind\": \"fues\""),
        expected(
            "part F1",
            "\"fues\"",
            "one of battery, wire, strap, fuse, switch, relay, lamp, dual-lamp, led, diode, motor, heater, solenoid, horn, electronics, sender, driver, connector, splice, ground, body",
            "parts[1].kind (line 6)",
            "kind is \"fues\", must be one of battery, wire, strap, fuse, switch, relay, lamp, dual-lamp, led, diode, motor, heater, solenoid, horn, electronics, sender, driver, connector, splice, ground, body; did you mean \"fuse\"?"));
  }

  @Test
  void aNumberThatIsNoNumberIsRefused() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": NaN"),
        expected(
            "fuse F1",
            "NaN",
            "a finite number",
            "parts[1].amps (line 6)",
            "amps is NaN, must be a finite number"));
  }

  @Test
  void anInfiniteNumberIsRefused() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": -Infinity"),
        expected(
            "fuse F1",
            "-Infinity",
            "a finite number",
            "parts[1].amps (line 6)",
            "amps is -Infinity, must be a finite number"));
  }

  @Test
  void aNumberTooLargeToHoldIsRefused() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": 1e999"),
        expected(
            "fuse F1",
            "1e999",
            "a finite number",
            "parts[1].amps (line 6)",
            "amps is 1e999, must be a finite number"));
  }

  @Test
  void aFieldThatStandsTwiceIsRefused() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": 10, \"amps\": 20"),
        expected(
            "fuse F1",
            "\"amps\" twice",
            "each field once",
            "parts[1].amps (line 6)",
            "field \"amps\" stands here twice, must stand once"));
  }

  @Test
  void anotherFormatIsRefused() {
    check(
        Vehicles.small("loopwright-vehicle", "something-else"),
        expected(
            "vehicle",
            "\"something-else\"",
            "\"loopwright-vehicle\"",
            "format (line 2)",
            "format is \"something-else\", must be \"loopwright-vehicle\""));
  }

  @Test
  void anotherVersionIsRefused() {
    check(
        Vehicles.small("\"version\": 1", "\"version\": 0"),
        expected("vehicle", "0", "1", "version (line 2)", "version is 0, must be 1"));
  }

  @Test
  void aNameWithASpaceIsRefused() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}", "\"kind\": \"body\"}, {\"id\": \"F 1\", \"kind\": \"body\"}"),
        expected(
            "parts[6]",
            "\"F 1\"",
            "1 to 40 letters, digits or _ + / # * - without spaces, dots and colons",
            "parts[6].id (line 10)",
            "id is \"F 1\", must be 1 to 40 letters, digits or _ + / # * - without spaces, dots and colons"));
  }

  @Test
  void aWireSizeThatIsNoneIsRefused() {
    check(
        Vehicles.small("\"12 AWG\"", "\"12 gauge\""),
        expected(
            "wire W1",
            "\"12 gauge\"",
            "4/0 to 40 AWG, or 0.05 to 300 mm2",
            "parts[6].size (line 11)",
            "size is \"12 gauge\", must be 4/0 to 40 AWG or 0.05 to 300 mm2, written 18 AWG, 2/0 AWG or 1.5 mm2"));
  }

  @Test
  void aWireSizeThatNobodyMakesIsRefused() {
    check(
        Vehicles.small("\"12 AWG\"", "\"99 AWG\""),
        expected(
            "wire W1",
            "\"99 AWG\"",
            "4/0 to 40 AWG, or 0.05 to 300 mm2",
            "parts[6].size (line 11)",
            "size is \"99 AWG\", must be 4/0 to 40 AWG or 0.05 to 300 mm2, written 18 AWG, 2/0 AWG or 1.5 mm2"));
  }

  @Test
  void aTerminalWithoutItsPartIsRefused() {
    check(
        Vehicles.small("\"to\": \"G1.lug\"", "\"to\": \"G1\""),
        expected(
            "wire W4",
            "\"G1\"",
            "part.terminal, for instance F3.load",
            "parts[9].to (line 14)",
            "to is \"G1\", must be part.terminal, for instance F3.load"));
  }

  @Test
  void controlCharactersInATextAreRefused() {
    check(
        Vehicles.small("\"Cart\"", "\"Ca\\u001b[2Jrt\""),
        expected(
            "vehicle",
            "\"Ca?[2Jrt\"",
            "printable text",
            "name (line 2)",
            "name is \"Ca?[2Jrt\", must hold no control characters"));
  }

  @Test
  void aClassNameInAFileIsAnUnknownField() {
    check(
        Vehicles.small("\"amps\": 10", "\"amps\": 10, \"@class\": \"java.lang.ProcessBuilder\""),
        expected(
            "fuse F1",
            "field \"@class\"",
            "known fields: id, kind, name, label, amps, ohms, where, access, apart_minutes, swap_minutes, spare, note, photos",
            "parts[1].@class (line 6)",
            "unknown field \"@class\""));
  }

  @Test
  void aTypedPairInAFileIsTheWrongType() {
    check(
        Vehicles.small(
            "\"kind\": \"body\"}", "\"kind\": \"body\"}, [\"java.util.ArrayList\", [1]]"),
        expected(
            "parts[6]",
            "a list of 2",
            "an object",
            "parts[6] (line 10)",
            "is a list of 2, must be an object in braces"));
  }

  @Test
  void anUnknownWordIsRefused() {
    check(
        Vehicles.small("\"grounded\": \"negative\"", "\"grounded\": \"minus\""),
        expected(
            "vehicle",
            "\"minus\"",
            "one of negative, positive",
            "grounded (line 3)",
            "grounded is \"minus\", must be one of negative, positive"));
  }

  @Test
  void aSwitchOfOnePositionIsRefused() {
    check(
        Vehicles.small("[\"off\", \"on\"]", "[\"off\"]"),
        expected(
            "switch S1",
            "1 items",
            "a list of 2 to 1000",
            "parts[2].positions (line 7)",
            "positions has 1, must be a list of 2 to 1000"));
  }

  @Test
  void aTextOverTenThousandCharactersIsRefused() {
    check(
        Vehicles.small("\"Cart\"", "\"" + "x".repeat(10_001) + "\""),
        expected(
            "vehicle",
            "10001 characters",
            "at most 10,000 characters",
            "name (line 2)",
            "name has 10001 characters, must have at most 10,000"));
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
