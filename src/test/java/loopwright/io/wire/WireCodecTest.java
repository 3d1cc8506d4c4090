package loopwright.io.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import loopwright.casework.Answer;
import loopwright.casework.Band;
import loopwright.casework.FindCase;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.diagnosis.Warning;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WireCodecTest {
  /** One of each kind of line, in order. */
  static final List<String> GOOD =
      List.of(
          "{\"type\":\"reading\",\"id\":\"a1\",\"check\":\"c1\",\"value\":\"12.41 V\"}",
          "{\"type\":\"reading\",\"id\":7,\"check\":\"c1\",\"value\":12.40,\"unit\":\"V\"}",
          "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"OL\"}",
          "{\"type\":\"reading\",\"check\":\"c2\",\"seen\":\"off\"}",
          "{\"type\":\"reading\",\"check\":\"c1\",\"band\":{\"low\":0,\"high\":0.2,\"unit\":\"V\"}}",
          "{\"type\":\"reading\",\"check\":\"c1\",\"band\":{\"low\":1e6,\"high\":\"OL\",\"unit\":\"ohm\"}}",
          "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.load\",\"black\":\"BATT.neg\",\"value\":-12,\"unit\":\"mV\",\"setting\":{\"positions\":{\"S5\":\"on\"},\"apart\":[\"F1\"]}}",
          "{\"type\":\"reading\",\"kind\":\"wiggle\",\"look\":\"L1\",\"seen\":\"clicks\",\"setting\":{}}",
          "{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"cannot reach\"}",
          "{\"type\":\"withdraw\",\"reading\":3}",
          "{\"type\":\"correct\",\"reading\":3,\"value\":\"12.1 V\"}",
          "{\"type\":\"swapped\",\"part\":\"K1\",\"helped\":false}",
          "{\"type\":\"repaired\",\"part\":\"G4\"}",
          "{\"type\":\"why\",\"about\":\"next\"}",
          "{\"type\":\"why\",\"about\":\"W7/open\"}",
          "{\"type\":\"stop\",\"id\":\"z\"}",
          "{\"type\":\"meter\",\"id\":1}",
          "{\"type\":\"warning\",\"of\":\"smoke\"}",
          "{\"type\":\"isolated\",\"id\":\"i\"}",
          "{\"type\":\"gone\"}",
          "{\"type\":\"outlook\"}",
          "{\"type\":\"outlook\",\"check\":\"c1\",\"depth\":2}",
          "{\"type\":\"undo\",\"deed\":2,\"id\":\"u\"}");

  private final WireCodec codec = new WireCodec();

  private Request good(int line) {
    Told told = codec.read(GOOD.get(line));
    assertThat(told).as(GOOD.get(line)).isInstanceOf(Told.Good.class);
    return ((Told.Good) told).request();
  }

  @Test
  void everyKindOfLineIsReadAsWhatItSays() {
    assertThat(good(0)).isEqualTo(new Request.Answered("c1", new Answer.Text("12.41 V")));
    assertThat(good(1))
        .as("the last digit written is kept, since it tells the display's resolution")
        .isEqualTo(new Request.Answered("c1", new Answer.Text("12.40 V")));
    assertThat(good(2)).isEqualTo(new Request.Answered("c1", new Answer.Text("OL")));
    assertThat(good(3)).isEqualTo(new Request.Answered("c2", new Answer.Saw(Seen.OFF)));
    assertThat(good(4))
        .isEqualTo(new Request.Answered("c1", new Answer.Within(new Band(0, 0.2, Band.Unit.VOLT))));
    assertThat(good(5))
        .isEqualTo(
            new Request.Answered(
                "c1", new Answer.Within(new Band(1e6, Double.POSITIVE_INFINITY, Band.Unit.OHM))));
    assertThat(good(6))
        .isEqualTo(
            new Request.OwnReading(
                CheckKind.VOLTS,
                Optional.of(new TerminalRef("F3", "load")),
                Optional.of(new TerminalRef("BATT", "neg")),
                Optional.empty(),
                Optional.of(Setting.of(Map.of("S5", "on")).without("F1")),
                new Answer.Text("-12 mV")));
    assertThat(good(7))
        .isEqualTo(
            new Request.OwnReading(
                CheckKind.WIGGLE,
                Optional.empty(),
                Optional.empty(),
                Optional.of("L1"),
                Optional.of(Setting.REST),
                new Answer.Saw(Seen.CLICKS)));
    assertThat(good(8)).isEqualTo(new Request.Refuse("c1", FindCase.Refusal.CANT_REACH));
    assertThat(good(9)).isEqualTo(new Request.Withdraw(3));
    assertThat(good(10)).isEqualTo(new Request.Correct(3, new Answer.Text("12.1 V")));
    assertThat(good(11)).isEqualTo(new Request.Swapped("K1", FindCase.Helped.NO));
    assertThat(good(12)).isEqualTo(new Request.Repaired("G4"));
    assertThat(good(13)).isEqualTo(new Request.WhyNext());
    assertThat(good(14)).isEqualTo(new Request.WhyStill("W7/open"));
    assertThat(good(15)).isEqualTo(new Request.Stop());
    assertThat(good(16)).isEqualTo(new Request.Meter());
    assertThat(good(17)).isEqualTo(new Request.Warn(Warning.SMOKE));
    assertThat(good(18)).isEqualTo(new Request.Isolated());
    assertThat(good(19)).isEqualTo(new Request.Gone());
    assertThat(good(20)).isEqualTo(new Request.Outlook(Optional.empty(), 1));
    assertThat(good(21)).isEqualTo(new Request.Outlook(Optional.of("c1"), 2));
    assertThat(good(22)).isEqualTo(new Request.Undo(2));
    assertThat(GOOD).as("every line is looked at").hasSize(23);
  }

  @Test
  void theIdComesBackAsItWasWritten() {
    assertThat(codec.read(GOOD.get(0)).id()).contains(new ClientId("\"a1\""));
    assertThat(codec.read(GOOD.get(1)).id()).contains(new ClientId("7"));
    assertThat(codec.read("{\"type\":\"nonsense\",\"id\":\"q\"}").id())
        .as("a bad line is answered under its id too")
        .contains(new ClientId("\"q\""));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "line|",
        "line|{",
        "line|nonsense",
        "line|[1,2]",
        "line|\"text\"",
        "line|null",
        "line|{} {}",
        "line|{\"type\":\"stop\",\"type\":\"stop\"}",
        "line|{\"type\":\"reading\",\"check\":\"c1\",\"value\":NaN,\"unit\":\"V\"}",
        "line|{\"type\":\"stop\",\"id\":[[[[[[[[[[1]]]]]]]]]]}",
        "type|{}",
        "type|{\"type\":7}",
        "type|{\"type\":\"dance\"}",
        "more|{\"type\":\"stop\",\"more\":1}",
        "id|{\"type\":\"stop\",\"id\":\"\"}",
        "id|{\"type\":\"stop\",\"id\":1.5}",
        "id|{\"type\":\"stop\",\"id\":9007199254740993}",
        "id|{\"type\":\"stop\",\"id\":\"\\u0000\"}",
        "check|{\"type\":\"reading\",\"value\":\"1 V\"}",
        "check|{\"type\":\"reading\",\"check\":\"c1\",\"kind\":\"volts\",\"value\":\"1 V\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"1 V\",\"seen\":\"on\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":true}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":null}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":1e10,\"unit\":\"V\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":1e999999999,\"unit\":\"V\"}",
        "value|{\"type\":\"reading\",\"check\":\"c1\",\"value\":1e-999999999,\"unit\":\"V\"}",
        "unit|{\"type\":\"reading\",\"check\":\"c1\",\"value\":12}",
        "unit|{\"type\":\"reading\",\"check\":\"c1\",\"value\":12,\"unit\":\"W\"}",
        "unit|{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"12 V\",\"unit\":\"V\"}",
        "seen|{\"type\":\"reading\",\"check\":\"c1\",\"seen\":\"purple\"}",
        "band|{\"type\":\"reading\",\"check\":\"c1\",\"band\":[0,1]}",
        "band.high|{\"type\":\"reading\",\"check\":\"c1\",\"band\":{\"low\":0,\"unit\":\"V\"}}",
        "band.low|{\"type\":\"reading\",\"check\":\"c1\",\"band\":{\"low\":2,\"high\":1,\"unit\":\"V\"}}",
        "band.unit|{\"type\":\"reading\",\"check\":\"c1\",\"band\":{\"low\":0,\"high\":1,\"unit\":\"mV\"}}",
        "kind|{\"type\":\"reading\",\"kind\":\"amps\",\"value\":\"1 A\"}",
        "red|{\"type\":\"reading\",\"kind\":\"volts\",\"black\":\"B.neg\",\"value\":\"1 V\"}",
        "red|{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3\",\"black\":\"B.neg\",\"value\":\"1 V\"}",
        "black|{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.a\",\"black\":\".neg\",\"value\":\"1 V\"}",
        "value|{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.a\",\"black\":\"B.neg\",\"seen\":\"on\"}",
        "seen|{\"type\":\"reading\",\"kind\":\"look\",\"look\":\"L1\",\"value\":\"1 V\"}",
        "look|{\"type\":\"reading\",\"kind\":\"look\",\"seen\":\"on\"}",
        "setting.apart|{\"type\":\"reading\",\"kind\":\"look\",\"look\":\"L1\",\"seen\":\"on\",\"setting\":{\"apart\":\"F1\"}}",
        "setting.positions.S5|{\"type\":\"reading\",\"kind\":\"look\",\"look\":\"L1\",\"seen\":\"on\",\"setting\":{\"positions\":{\"S5\":1}}}",
        "setting.keys|{\"type\":\"reading\",\"kind\":\"look\",\"look\":\"L1\",\"seen\":\"on\",\"setting\":{\"keys\":1}}",
        "why|{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"tired\"}",
        "reading|{\"type\":\"withdraw\",\"reading\":0}",
        "reading|{\"type\":\"withdraw\",\"reading\":1.5}",
        "reading|{\"type\":\"withdraw\",\"reading\":\"1\"}",
        "helped|{\"type\":\"swapped\",\"part\":\"K1\",\"helped\":\"yes\"}",
        "part|{\"type\":\"repaired\"}",
        "about|{\"type\":\"why\"}",
        "of|{\"type\":\"warning\"}",
        "of|{\"type\":\"warning\",\"of\":\"noise\"}",
        "of|{\"type\":\"gone\",\"of\":\"smoke\"}"
      })
  void aBadLineIsNamedByItsField(String fieldAndLine) {
    int bar = fieldAndLine.indexOf('|');
    String line = fieldAndLine.substring(bar + 1);
    Told told = codec.read(line);
    assertThat(told).isInstanceOf(Told.Bad.class);
    Told.Bad bad = (Told.Bad) told;
    assertThat(bad.problem().field()).isEqualTo(fieldAndLine.substring(0, bar));
    assertThat(bad.problem().accepted()).isNotEmpty();
    String answer = codec.problem(bad.id(), bad.problem());
    assertThat(answer.length()).isLessThan(1000);
    assertThat(SchemaCheck.FROM_PROGRAM.defects(answer)).isEmpty();
  }

  @Test
  void theSchemaAcceptsEveryKindOfLine() {
    for (String line : GOOD) {
      assertThat(SchemaCheck.TO_PROGRAM.defects(line)).as(line).isEmpty();
      assertThat(SchemaCheck.FROM_PROGRAM.defects(line)).as(line).isNotEmpty();
    }
  }

  /**
   * The schema and the reader are written apart; they must agree on lines made by swapping fields
   * and values at random. What a schema can't say (the order of a band's limits, digits behind the
   * point) is left out of the comparison.
   */
  @Test
  void schemaAndReaderAgreeOnRandomLines() throws Exception {
    Random random = new Random(20_240_517);
    List<ObjectNode> seeds =
        GOOD.stream()
            .map(
                l -> {
                  try {
                    return (ObjectNode) Shapes.JSON.readTree(l);
                  } catch (Exception e) {
                    throw new IllegalStateException(e);
                  }
                })
            .toList();
    String[] values = {
      "1",
      "0",
      "-1",
      "1.0",
      "1.5",
      "2000000",
      "\"\"",
      "\"on\"",
      "\"c1\"",
      "\"V\"",
      "\"ohm\"",
      "\"F3.load\"",
      "\"F3\"",
      "true",
      "false",
      "null",
      "[]",
      "{}",
      "[\"F1\"]",
      "[1]",
      "{\"positions\":{}}",
      "{\"low\":0,\"high\":\"OL\",\"unit\":\"V\"}",
      "\"volts\"",
      "\"look\"",
      "\"reading\"",
      "\"stop\"",
      "\"" + "x".repeat(81) + "\"",
      "\"" + "x".repeat(41) + "\"",
      "\"cannot reach\"",
      "\"-OL\"",
      "1e10"
    };
    int good = 0;
    int bad = 0;
    for (int i = 0; i < 6000; i++) {
      ObjectNode line = seeds.get(random.nextInt(seeds.size())).deepCopy();
      ObjectNode other = seeds.get(random.nextInt(seeds.size()));
      for (int change = random.nextInt(3); change >= 0; change--) {
        List<String> names = new java.util.ArrayList<>();
        line.fieldNames().forEachRemaining(names::add);
        List<String> others = new java.util.ArrayList<>();
        other.fieldNames().forEachRemaining(others::add);
        switch (random.nextInt(3)) {
          case 0 -> {
            if (!names.isEmpty()) {
              line.remove(names.get(random.nextInt(names.size())));
            }
          }
          case 1 -> {
            String name = others.get(random.nextInt(others.size()));
            line.set(name, other.get(name));
          }
          default -> {
            if (!names.isEmpty()) {
              line.set(
                  names.get(random.nextInt(names.size())),
                  Shapes.JSON.readTree(values[random.nextInt(values.length)]));
            }
          }
        }
      }
      String text = line.toString();
      boolean taken = codec.read(text) instanceof Told.Good;
      List<String> defects = SchemaCheck.TO_PROGRAM.defects(text);
      assertThat(defects.isEmpty())
          .as(String.format(Locale.ROOT, "reader %s, schema %s: %s", taken, defects, text))
          .isEqualTo(taken);
      good += taken ? 1 : 0;
      bad += taken ? 0 : 1;
    }
    assertThat(good).as("enough good lines").isGreaterThan(500);
    assertThat(bad).as("enough bad lines").isGreaterThan(500);
  }

  @Test
  void randomBytesAreNeverMoreThanABadLine() {
    Random random = new Random(7);
    for (int i = 0; i < 5000; i++) {
      String seed = GOOD.get(random.nextInt(GOOD.size()));
      StringBuilder line = new StringBuilder(seed);
      for (int change = random.nextInt(4); change >= 0; change--) {
        int at = random.nextInt(line.length());
        switch (random.nextInt(3)) {
          case 0 -> line.setCharAt(at, (char) random.nextInt(0x250));
          case 1 -> line.deleteCharAt(at);
          default -> line.insert(at, (char) random.nextInt(128));
        }
      }
      Told told = codec.read(line.toString());
      if (told instanceof Told.Bad bad) {
        assertThat(SchemaCheck.FROM_PROGRAM.defects(codec.problem(bad.id(), bad.problem())))
            .isEmpty();
      }
    }
  }
}
