package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import loopwright.casework.CaseEvent;
import loopwright.io.wire.SchemaCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineTalkTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final MemoryStore store = new MemoryStore();

  private List<JsonNode> talk(byte[] input) throws IOException {
    TestWorld world = new TestWorld(store, input);
    assertThat(world.run("find", "pumper", "--complaint", "beacon dead", "--jsonl"))
        .as(world.errText())
        .isZero();
    List<JsonNode> lines = new ArrayList<>();
    for (String line : world.outLines()) {
      assertThat(SchemaCheck.FROM_PROGRAM.defects(line)).as(line).isEmpty();
      lines.add(JSON.readTree(line));
    }
    return lines;
  }

  private List<JsonNode> talk(String... lines) throws IOException {
    return talk((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private List<CaseEvent> events() {
    return store.cases.get("beacon-1");
  }

  private static String reading(String check, String value) {
    return "{\"type\":\"reading\",\"check\":\"" + check + "\",\"value\":\"" + value + "\"}";
  }

  @Test
  void aWholeCaseIsTalkedThroughInLines() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"reading\",\"id\":\"a\",\"check\":\"c1\",\"value\":12.40,\"unit\":\"V\"}",
            "{\"type\":\"reading\",\"id\":2,\"check\":\"c2\",\"seen\":\"off\"}",
            "{\"type\":\"reading\",\"check\":\"c3\",\"band\":{\"low\":11.9,\"high\":12.7,\"unit\":\"V\"}}",
            "{\"type\":\"repaired\",\"part\":\"G4\"}",
            "{\"type\":\"reading\",\"check\":\"p1\",\"seen\":\"on\"}",
            reading("c1", "12.4 V"));
    assertThat(lines.stream().map(l -> l.get("type").textValue()))
        .as("one line each, and none after the end")
        .containsExactly("ready", "state", "state", "state", "state", "state", "state");
    assertThat(lines.stream().skip(1).map(l -> l.get("next").textValue()))
        .containsExactly("check", "check", "check", "repair", "proof", "end");
    assertThat(lines.stream().skip(1).map(l -> l.get("seq").intValue()))
        .containsExactly(0, 1, 2, 3, 4, 5);
    assertThat(lines.stream().skip(1).map(l -> l.get("re").toString()))
        .containsExactly("null", "\"a\"", "2", "null", "null", "null");
    JsonNode ready = lines.get(0);
    assertThat(ready.get("schema").textValue()).isEqualTo("find-lines-1");
    assertThat(ready.get("case").textValue()).isEqualTo("beacon-1");
    assertThat(ready.get("suspects").intValue()).isEqualTo(3);
    assertThat(ready.get("points").findValuesAsText("point")).contains("F3.load", "BATT.neg");
    assertThat(ready.get("circuits").get(0).get("id").textValue()).isEqualTo("beacon");
    JsonNode check = lines.get(1).get("check");
    assertThat(check.get("check").textValue()).isEqualTo("c1");
    assertThat(check.get("red").get("point").textValue()).isEqualTo("F3.load");
    assertThat(check.get("healthy").get("low").doubleValue()).isEqualTo(12);
    assertThat(check.get("because").textValue()).isNotEmpty();
    JsonNode state = lines.get(2).get("state");
    assertThat(state.get("status").textValue()).isEqualTo("searching");
    assertThat(state.get("cleared").get(0).get("part").textValue()).isEqualTo("F3");
    assertThat(state.get("readings").get(0).get("value").textValue()).isEqualTo("12.40 V");
    assertThat(
            state
                .get("loop")
                .get("stairs")
                .get(1)
                .get("measured")
                .get(0)
                .get("volts")
                .doubleValue())
        .isEqualTo(12.4);
    JsonNode repair = lines.get(4);
    assertThat(repair.get("state").get("status").textValue()).isEqualTo("isolated");
    assertThat(repair.get("repair").get("suspect").get("parts").get(0).textValue()).isEqualTo("G4");
    assertThat(repair.has("check")).isFalse();
    assertThat(lines.get(6).get("state").get("status").textValue()).isEqualTo("healthy");
    assertThat(events()).hasSize(6);
  }

  @Test
  void whereTheVoltsGoStandsBesideTheLoop() throws IOException {
    List<JsonNode> lines =
        talk(
            reading("c1", "12.40 V"),
            "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"L1.out\",\"black\":\"BATT.neg\",\"value\":\"3.1 V\"}");
    assertThat(lines.get(2).get("state").has("drops")).as("one point is no share").isFalse();
    JsonNode drops = lines.get(3).get("state").get("drops");
    double sum = 0;
    for (JsonNode share : drops) {
      sum += share.get("measured").doubleValue();
    }
    JsonNode first = drops.get(0);
    double given = 12.4 + first.get("measured").doubleValue();
    assertThat(sum)
        .as("the shares add up to what the battery gives")
        .isEqualTo(given, within(1e-9));
    assertThat(first.get("side").textValue()).isEqualTo("feed");
    JsonNode last = drops.get(drops.size() - 1);
    assertThat(last.get("side").textValue()).isEqualTo("return");
    assertThat(last.get("from").textValue()).isEqualTo("L1.out");
    assertThat(last.get("measured").doubleValue()).isEqualTo(3.1);
    assertThat(drops.findValues("worst").stream().map(JsonNode::booleanValue))
        .as("one share is the worst: the way back")
        .containsOnlyOnce(true);
    assertThat(last.get("worst").booleanValue()).isTrue();
  }

  @Test
  void theFirstCheckComesUnasked() throws IOException {
    List<JsonNode> lines = talk(new byte[0]);
    assertThat(lines).hasSize(2);
    assertThat(lines.get(1).get("check").get("check").textValue()).isEqualTo("c1");
    assertThat(events()).as("the case is kept").hasSize(1);
  }

  @Test
  void ownReadingsRefusalsSwapsAndCorrectionsAreAnswered() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"reading\",\"kind\":\"ohms\",\"red\":\"L1.out\",\"black\":\"BATT.neg\",\"value\":\"OL\",\"setting\":{\"apart\":[\"BATT\"]}}",
            "{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"never reachable\"}",
            "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"L1.out\",\"black\":\"BATT.neg\",\"value\":\"12.3 V\"}",
            "{\"type\":\"correct\",\"reading\":2,\"value\":\"0.01 V\"}",
            "{\"type\":\"withdraw\",\"reading\":1}",
            "{\"type\":\"swapped\",\"part\":\"L1\",\"helped\":true}",
            "{\"type\":\"stop\"}");
    assertThat(lines).hasSize(9);
    assertThat(lines.get(5).get("repair").get("suspect").get("parts").get(0).textValue())
        .isEqualTo("L1");
    assertThat(lines.get(8).get("next").textValue()).isEqualTo("end");
    assertThat(events().stream().map(e -> e.getClass().getSimpleName()))
        .containsExactly(
            "Opened", "Taken", "Refused", "Taken", "Corrected", "Withdrawn", "Swapped", "Stopped");
    assertThat(((CaseEvent.Taken) events().get(3)).check().setting().positions())
        .as("a reading without a set-up stands in the circuit's own")
        .containsEntry("S5", "on");
  }

  @Test
  void aMendIsTakenBackByItsNumber() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"undo\",\"deed\":1}",
            "{\"type\":\"repaired\",\"part\":\"G4\"}",
            "{\"type\":\"undo\",\"deed\":1}");
    assertThat(lines.get(2).get("type").textValue()).isEqualTo("problem");
    assertThat(lines.get(3).get("state").get("deeds").get(0).get("part").textValue())
        .isEqualTo("G4");
    assertThat(lines.get(4).get("state").get("deeds")).isEmpty();
    assertThat(lines.get(4).get("next")).isEqualTo(lines.get(1).get("next"));
  }

  @Test
  void smokeStopsTheChecksUntilItIsGone() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"gone\"}",
            "{\"type\":\"warning\",\"id\":\"w\",\"of\":\"smoke\"}",
            "{\"type\":\"isolated\"}",
            "{\"type\":\"gone\"}");
    assertThat(lines.get(2).get("type").textValue()).isEqualTo("problem");
    JsonNode warned = lines.get(3);
    assertThat(warned.get("re").textValue()).isEqualTo("w");
    assertThat(warned.get("next").textValue()).isEqualTo("make-safe");
    assertThat(warned.has("check")).isFalse();
    assertThat(warned.get("state").get("warnings").get(0).textValue()).isEqualTo("smoke");
    assertThat(warned.get("state").get("makeSafe").get(0).textValue()).contains("Isolate");
    assertThat(lines.get(4).get("next").textValue()).isEqualTo("stuck");
    assertThat(lines.get(5).get("next").textValue()).isEqualTo("check");
    assertThat(lines.get(5).get("state").get("warnings")).isEmpty();
    assertThat(events().stream().map(e -> e.getClass().getSimpleName()))
        .containsExactly("Opened", "Warned", "Isolated", "Gone");
  }

  @Test
  void aQuestionIsAnsweredAndChangesNothing() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"why\",\"id\":\"w\",\"about\":\"next\"}",
            "{\"type\":\"why\",\"about\":\"G4\"}",
            "{\"type\":\"why\",\"about\":\"Q9\"}");
    assertThat(lines.get(2).get("why").get(0).textValue()).contains("splits the loop");
    assertThat(lines.get(2).get("re").textValue()).isEqualTo("w");
    assertThat(lines.get(2).get("seq").intValue()).isZero();
    assertThat(lines.get(3).get("why").get(0).textValue()).contains("G4");
    assertThat(lines.get(4).get("type").textValue()).isEqualTo("problem");
    assertThat(events()).hasSize(1);
  }

  @Test
  void whyASuspectIsHeldIsToldInNumbersToo() throws IOException {
    List<JsonNode> lines = talk(reading("c1", "12.4 V"), "{\"type\":\"why\",\"about\":\"G4\"}");
    assertThat(lines.get(2).has("against")).isFalse();
    JsonNode against = lines.get(3).get("against").get(0);
    assertThat(against.get("reading").intValue()).isEqualTo(1);
    assertThat(against.get("suspect").get("high").doubleValue()).isEqualTo(12.7);
    assertThat(against.get("healthy").get("unit").textValue()).isEqualTo("V");
    assertThat(against.get("needed").get("low").doubleValue()).isEqualTo(4.1);
    assertThat(against.get("needed").get("high").textValue()).isEqualTo("OL");
    assertThat(against.get("modes").get(0).get("can").textValue()).isEqualTo("gives");
  }

  @Test
  void whatTheResultsWouldLeaveIsToldAsData() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"outlook\"}",
            "{\"type\":\"outlook\",\"check\":\"c1\",\"depth\":2}",
            "{\"type\":\"outlook\",\"check\":\"c9\"}",
            "{\"type\":\"outlook\",\"depth\":3}");
    JsonNode outlook = lines.get(2).get("outlook");
    assertThat(outlook.get("check").textValue()).isEqualTo("c1");
    assertThat(outlook.get("branches").get(0).get("left").get(0).get("part").textValue())
        .isEqualTo("G4");
    assertThat(outlook.get("branches").get(0).has("then")).isFalse();
    JsonNode then = lines.get(3).get("outlook").get("branches").get(0).get("then");
    assertThat(then.get("next").textValue()).isEqualTo("check");
    assertThat(then.get("check").textValue()).isEqualTo("volts F3.load>BATT.neg");
    assertThat(lines.get(3).get("seq").intValue()).isZero();
    assertThat(lines.get(4).get("type").textValue()).isEqualTo("problem");
    assertThat(lines.get(5).get("field").textValue()).isEqualTo("depth");
    assertThat(events()).as("a question changes nothing").hasSize(1);
  }

  @Test
  void aRepeatedIdGetsTheSameReplyAndChangesNothing() throws IOException {
    String first = "{\"type\":\"reading\",\"id\":\"a\",\"check\":\"c1\",\"value\":\"12.4 V\"}";
    List<JsonNode> lines =
        talk(
            first,
            "{\"type\":\"reading\",\"id\":\"b\",\"check\":\"c2\",\"seen\":\"off\"}",
            first,
            "{\"type\":\"withdraw\",\"id\":\"a\",\"reading\":1}");
    assertThat(lines.get(4)).isEqualTo(lines.get(2));
    assertThat(lines.get(5)).as("whatever else the line says").isEqualTo(lines.get(2));
    assertThat(events()).hasSize(3);
  }

  @Test
  void theIdOfALineThatWasNotAcceptedCanBeUsedAgain() throws IOException {
    List<JsonNode> lines =
        talk(
            "{\"type\":\"reading\",\"id\":\"a\",\"check\":\"c1\",\"value\":\"12.4 W\"}",
            "{\"type\":\"reading\",\"id\":\"a\",\"check\":\"c1\",\"value\":\"12.4 V\"}");
    assertThat(lines.get(2).get("type").textValue()).isEqualTo("problem");
    assertThat(lines.get(2).get("re").textValue()).isEqualTo("a");
    assertThat(lines.get(3).get("type").textValue()).isEqualTo("state");
  }

  @Test
  void anIdWhoseReplyIsGoneIsStillNotCountedTwice() throws IOException {
    List<String> asked = new ArrayList<>();
    for (int i = 0; i <= LineTalk.REPLIES; i++) {
      asked.add("{\"type\":\"why\",\"id\":" + i + ",\"about\":\"next\"}");
    }
    asked.add("{\"type\":\"withdraw\",\"id\":0,\"reading\":1}");
    asked.add("{\"type\":\"withdraw\",\"id\":" + LineTalk.REPLIES + ",\"reading\":1}");
    List<JsonNode> lines = talk(asked.toArray(String[]::new));
    JsonNode gone = lines.get(lines.size() - 2);
    assertThat(gone.get("type").textValue()).isEqualTo("problem");
    assertThat(gone.get("field").textValue()).isEqualTo("id");
    assertThat(lines.get(lines.size() - 1).get("type").textValue()).isEqualTo("state");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "   ",
        "hello",
        "{\"type\":\"reading\"",
        "[]",
        "{\"type\":\"dance\"}",
        "{\"type\":\"reading\",\"check\":\"c9\",\"value\":\"12 V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"12 W\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"12\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":12,\"unit\":\"A\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":12,\"unit\":\"ohm\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":NaN,\"unit\":\"V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":Infinity,\"unit\":\"V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"NaN V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":1e308,\"unit\":\"V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"5000 V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"1e400 V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"seen\":\"on\"}",
        "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F9.load\",\"black\":\"BATT.neg\",\"value\":\"1 V\"}",
        "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.load\",\"black\":\"BATT.neg\",\"value\":\"1 V\",\"setting\":{\"positions\":{\"S99\":\"on\"}}}",
        "{\"type\":\"reading\",\"check\":{\"id\":\"c1\"},\"value\":\"12 V\"}",
        "{\"type\":\"reading\",\"check\":\"c1\",\"value\":\"12 V\",\"extra\":1}",
        "{\"type\":\"withdraw\",\"reading\":5}",
        "{\"type\":\"correct\",\"reading\":5,\"value\":\"1 V\"}",
        "{\"type\":\"repaired\",\"part\":\"Q1\"}",
        "{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"lazy\"}",
        "{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":1}}}}}}}}}",
        "\u0000\u0001\u0002",
        "{\"type\":\"stop\"}{\"type\":\"stop\"}"
      })
  void aLineThatCannotBeAcceptedGetsOneProblemAndChangesNothing(String line) throws IOException {
    List<JsonNode> lines = talk(line, "{\"type\":\"why\",\"about\":\"next\"}");
    assertThat(lines).hasSize(4);
    JsonNode problem = lines.get(2);
    assertThat(problem.get("type").textValue()).isEqualTo("problem");
    assertThat(problem.get("field").textValue()).isNotEmpty();
    assertThat(problem.get("accepted").textValue()).isNotEmpty();
    assertThat(lines.get(3).get("state")).isEqualTo(lines.get(1).get("state"));
    assertThat(lines.get(3).get("check")).isEqualTo(lines.get(1).get("check"));
    assertThat(events()).hasSize(1);
  }

  @Test
  void hugeDeepAndBinaryLinesGetOneProblemEach() throws IOException {
    ByteArrayOutputStream input = new ByteArrayOutputStream();
    input.write("x".repeat(3_000_000).getBytes(StandardCharsets.UTF_8));
    input.write('\n');
    input.write("[".repeat(60_000).getBytes(StandardCharsets.UTF_8));
    input.write('\n');
    input.write("{\"a\":".repeat(12_000).getBytes(StandardCharsets.UTF_8));
    input.write('\n');
    input.write(new byte[] {(byte) 0xff, (byte) 0xd8, 0, 1, 2, '\n'});
    input.write(("{\"type\":\"why\",\"about\":\"next\"}\n").getBytes(StandardCharsets.UTF_8));
    List<JsonNode> lines = talk(input.toByteArray());
    assertThat(lines.stream().skip(2).map(l -> l.get("type").textValue()))
        .containsExactly("problem", "problem", "problem", "problem", "state");
    assertThat(lines.get(2).get("accepted").textValue()).contains("65536 bytes");
    assertThat(lines.get(3).get("accepted").textValue()).contains("8 deep");
    assertThat(lines.get(6).get("state")).isEqualTo(lines.get(1).get("state"));
  }

  /** Good lines with random damage: each gets one answer, and problems leave the state alone. */
  @Test
  void thousandsOfRandomLinesAreSurvived() throws IOException {
    Random random = new Random(1_952);
    String[] seeds = {
      reading("c1", "12.4 V"),
      "{\"type\":\"reading\",\"check\":\"c2\",\"seen\":\"off\",\"id\":\"q\"}",
      "{\"type\":\"reading\",\"kind\":\"volts\",\"red\":\"F3.load\",\"black\":\"BATT.neg\",\"value\":1.5,\"unit\":\"V\",\"setting\":{\"positions\":{\"S5\":\"on\"},\"apart\":[\"F3\"]}}",
      "{\"type\":\"withdraw\",\"reading\":1}",
      "{\"type\":\"correct\",\"reading\":1,\"value\":\"1 V\"}",
      "{\"type\":\"swapped\",\"part\":\"L1\",\"helped\":false}",
      "{\"type\":\"refuse\",\"check\":\"c1\",\"why\":\"will not\"}"
    };
    ByteArrayOutputStream input = new ByteArrayOutputStream();
    int sent = 4000;
    for (int i = 0; i < sent; i++) {
      byte[] line = seeds[random.nextInt(seeds.length)].getBytes(StandardCharsets.UTF_8);
      if (random.nextInt(10) == 0) {
        line = new byte[random.nextInt(200)];
        random.nextBytes(line);
      } else {
        for (int change = random.nextInt(3); change > 0; change--) {
          line[random.nextInt(line.length)] = (byte) random.nextInt(256);
        }
      }
      for (byte b : line) {
        input.write(b == '\n' ? ' ' : b);
      }
      input.write('\n');
    }
    List<JsonNode> lines = talk(input.toByteArray());
    assertThat(lines).as("one answer a line").hasSize(sent + 2);
    int problems = 0;
    int seq = 0;
    Map<JsonNode, JsonNode> byId = new HashMap<>();
    for (JsonNode line : lines.subList(2, lines.size())) {
      JsonNode re = line.get("re");
      if (line.get("type").textValue().equals("problem")) {
        problems++;
      } else if (byId.containsKey(re)) {
        assertThat(line).as("a repeated id gets the same reply").isEqualTo(byId.get(re));
      } else {
        seq++;
        assertThat(line.get("seq").intValue())
            .as("a state counts one more; problems between count nothing")
            .isEqualTo(seq);
        if (!re.isNull()) {
          byId.put(re, line);
        }
      }
    }
    assertThat(byId).as("ids were repeated").isNotEmpty();
    assertThat(problems).isBetween(sent / 4, sent - 100);
    assertThat(events()).as("what was accepted is kept, and nothing else").hasSize(seq + 1);
  }

  @Test
  void aFullDiskIsAProblemAndTheAnswerDoesNotCount() throws IOException {
    store.cases.put("beacon-1", new ArrayList<>());
    store.full = true;
    TestWorld world = new TestWorld(store, reading("c1", "12.4 V"));
    assertThat(world.run("find", "pumper", "--resume", "beacon-1", "--jsonl")).isZero();
    JsonNode problem = JSON.readTree(world.outLines().get(2));
    assertThat(problem.get("type").textValue()).isEqualTo("problem");
    assertThat(problem.get("accepted").textValue()).contains("disk is full");
  }

  @Test
  void aDefectOfTheProgramEndsItWithTheCaseKept() {
    TestWorld world = new TestWorld(store, reading("c1", "12.4 V"));
    world.desk.defect = new IllegalStateException("a defect");
    assertThat(world.run("find", "pumper", "--complaint", "beacon dead", "--jsonl")).isEqualTo(1);
    assertThat(world.errText()).contains("kept as far as answered").contains("--resume beacon-1");
    assertThat(world.outLines()).as("no answer is made up").hasSize(2);
  }
}
