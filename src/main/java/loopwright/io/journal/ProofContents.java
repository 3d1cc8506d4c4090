package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import loopwright.casework.Answer;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProofEvent;
import loopwright.io.FileWords;
import loopwright.io.wire.Fields;
import loopwright.io.wire.Shapes;

/** Journals of proofs, {@code schema/proof-1.schema.json}. */
final class ProofContents implements Contents<ProofEvent> {

  @Override
  public String about() {
    return "proof";
  }

  @Override
  public String ending() {
    return ".proof.jsonl";
  }

  @Override
  public String idWords() {
    return FileWords.say("proof.id");
  }

  @Override
  public ObjectNode write(ProofEvent event) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    if (event instanceof ProofEvent.Begun e) {
      EventCodec.power(subject(start(node, "begun", e), e.subject()), e.power());
      prints(node, e.prints());
    } else if (event instanceof ProofEvent.Checked e) {
      subject(start(node, "checked", e), e.subject()).put("step", e.step());
      node.set("check", Shapes.check(e.check()));
      Shapes.answer(node, e.answer());
    } else if (event instanceof ProofEvent.Confirmed e) {
      subject(start(node, "confirmed", e), e.subject()).put("step", e.step());
      node.put("right", e.right());
    } else if (event instanceof ProofEvent.Passed e) {
      subject(start(node, "passed", e), e.subject());
    } else if (event instanceof ProofEvent.Failed e) {
      subject(start(node, "failed", e), e.subject()).put("step", e.step());
      node.put("case", e.caseId());
    } else if (event instanceof ProofEvent.GroundProved e) {
      start(node, "ground-proved", e).put("ground", e.ground());
      node.set("check", Shapes.check(e.check()));
      Shapes.answer(node, e.answer());
      node.put("verdict", e.verdict().word());
      Shapes.limit(node, "lowOhms", e.lowOhms());
      Shapes.limit(node, "highOhms", e.highOhms());
      prints(node, e.prints());
    } else {
      throw new IllegalArgumentException("no way to keep " + event);
    }
    return node;
  }

  private static ObjectNode start(ObjectNode node, String type, ProofEvent event) {
    return node.put("type", type).put("at", event.at().toString());
  }

  private static ObjectNode subject(ObjectNode node, String subject) {
    return node.put("subject", subject);
  }

  private static void prints(ObjectNode node, Map<String, String> prints) {
    ObjectNode object = node.putObject("prints");
    prints.forEach(object::put);
  }

  @Override
  public ProofEvent read(JsonNode node) throws Problem {
    Fields fields = Fields.ofOwn(node, "event.");
    String type = fields.name("type", "the kind of event");
    Instant at = EventCodec.at(fields);
    ProofEvent event =
        switch (type) {
          case "begun" ->
              new ProofEvent.Begun(at, subject(fields), EventCodec.power(fields), prints(fields));
          case "checked" -> {
            String subject = subject(fields);
            String step = step(fields);
            OwnCheck check = check(fields);
            yield new ProofEvent.Checked(at, subject, step, check, Shapes.answer(fields));
          }
          case "confirmed" ->
              new ProofEvent.Confirmed(
                  at, subject(fields), step(fields), fields.flag("right", "true or false"));
          case "passed" -> new ProofEvent.Passed(at, subject(fields));
          case "failed" ->
              new ProofEvent.Failed(
                  at, subject(fields), step(fields), fields.name("case", "a case's id"));
          case "ground-proved" -> {
            String ground = fields.name("ground", "a ground's id");
            OwnCheck check = check(fields);
            Answer answer = Shapes.answer(fields);
            yield new ProofEvent.GroundProved(
                at,
                ground,
                check,
                answer,
                Shapes.word(
                    fields, "verdict", ProofEvent.Verdict.values(), ProofEvent.Verdict::word),
                Shapes.limit(fields, "lowOhms"),
                Shapes.limit(fields, "highOhms"),
                prints(fields));
          }
          default ->
              throw new Problem(
                  "event.type",
                  Fields.cut(type),
                  "begun, checked, confirmed, passed, failed or ground-proved");
        };
    fields.done();
    return event;
  }

  private static String subject(Fields fields) throws Problem {
    return fields.name("subject", "what is proven");
  }

  private static String step(Fields fields) throws Problem {
    return fields.name("step", "a step's id");
  }

  private static OwnCheck check(Fields fields) throws Problem {
    return Shapes.check(fields.object("check", "the check"));
  }

  private static SortedMap<String, String> prints(Fields fields) throws Problem {
    String accepted = "an object of print by part";
    JsonNode node = fields.need("prints", accepted);
    if (!node.isObject()) {
      throw new Problem("event.prints", Fields.shown(node), accepted);
    }
    SortedMap<String, String> prints = new TreeMap<>();
    for (Map.Entry<String, JsonNode> e : node.properties()) {
      if (!e.getValue().isTextual()) {
        throw new Problem("event.prints", Fields.shown(e.getValue()), accepted);
      }
      prints.put(e.getKey(), e.getValue().textValue());
    }
    return prints;
  }
}
