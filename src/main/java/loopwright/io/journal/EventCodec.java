package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import java.util.TreeSet;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.FindCase;
import loopwright.casework.FirstPower;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.Proposer;
import loopwright.diagnosis.ComplaintKind;
import loopwright.diagnosis.Warning;
import loopwright.io.wire.Fields;
import loopwright.io.wire.Shapes;
import loopwright.knowledge.Context;

/** Case events as JSON objects and back, strictly. */
final class EventCodec {
  private EventCodec() {}

  static ObjectNode write(CaseEvent event) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    if (event instanceof CaseEvent.Opened e) {
      start(node, "opened", e);
      node.put("case", e.caseId());
      node.put("vehicle", e.vehicleName());
      node.put("vehicleId", e.vehicleId());
      node.put("circuit", e.circuit());
      e.load().ifPresent(load -> node.put("load", load));
      node.put("complaint", e.kind().words());
      node.put("context", e.context().word());
      node.put("meter", e.meter());
      if (e.practice()) {
        node.put("practice", true);
      }
      power(node, e.power());
    } else if (event instanceof CaseEvent.Taken e) {
      start(node, "taken", e);
      node.put("reading", e.reading());
      node.set("check", Shapes.check(e.check()));
      Shapes.answer(node, e.answer());
    } else if (event instanceof CaseEvent.Withdrawn e) {
      start(node, "withdrawn", e);
      node.put("reading", e.reading());
    } else if (event instanceof CaseEvent.Corrected e) {
      start(node, "corrected", e);
      node.put("reading", e.reading());
      Shapes.answer(node, e.answer());
    } else if (event instanceof CaseEvent.Refused e) {
      start(node, "refused", e);
      node.set("check", Shapes.check(e.check()));
      node.put("why", e.refusal().words());
    } else if (event instanceof CaseEvent.Swapped e) {
      start(node, "swapped", e);
      node.put("part", e.part());
      node.put("helped", e.helped() == FindCase.Helped.YES);
    } else if (event instanceof CaseEvent.Repaired e) {
      start(node, "repaired", e);
      node.put("part", e.part());
    } else if (event instanceof CaseEvent.Undone e) {
      start(node, "undone", e);
      node.set("what", write(e.what()));
    } else if (event instanceof CaseEvent.Warned e) {
      start(node, "warned", e);
      node.put("of", e.warning().word());
    } else if (event instanceof CaseEvent.Isolated e) {
      start(node, "isolated", e);
    } else if (event instanceof CaseEvent.Gone e) {
      start(node, "gone", e);
    } else if (event instanceof CaseEvent.Told e) {
      start(node, "told", e);
      node.set("account", AccountCodec.write(e.account()));
    } else if (event instanceof CaseEvent.Photographed e) {
      start(node, "photographed", e);
      node.put("file", e.file());
      node.put("caption", e.caption());
    } else if (event instanceof CaseEvent.Weighed e) {
      start(node, "weighed", e);
      AccountCodec.write(node, e.rates());
    } else if (event instanceof CaseEvent.Proposing e) {
      start(node, "proposing", e);
      node.put("first", e.first().word());
    } else if (event instanceof CaseEvent.Settled e) {
      start(node, "settled", e);
      node.set("learners", Shapes.check(e.learners()));
      node.set("programs", Shapes.check(e.programs()));
      node.put("taken", e.taken().word());
    } else if (event instanceof CaseEvent.Stopped e) {
      start(node, "stopped", e);
    } else {
      throw new IllegalArgumentException("no way to keep " + event);
    }
    return node;
  }

  private static void start(ObjectNode node, String type, CaseEvent event) {
    node.put("type", type);
    node.put("at", event.at().toString());
  }

  /**
   * Reads an event.
   *
   * @throws Problem naming the field that is wrong
   */
  static CaseEvent read(JsonNode node) throws Problem {
    Fields fields = Fields.ofOwn(node, "event.");
    String type = fields.name("type", "the kind of event");
    Instant at = at(fields);
    CaseEvent event =
        switch (type) {
          case "opened" -> {
            String caseId = fields.name("case", "the case's id");
            String vehicle = fields.name("vehicle", "the vehicle's name");
            String vehicleId = fields.name("vehicleId", "the vehicle's id");
            String circuit = fields.name("circuit", "a circuit's id");
            Optional<String> load = fields.mayName("load", "a load's id");
            ComplaintKind kind =
                Shapes.word(fields, "complaint", ComplaintKind.values(), ComplaintKind::words);
            Context context = Shapes.word(fields, "context", Context.values(), Context::word);
            String meter = fields.name("meter", "a meter's id");
            boolean practice = fields.has("practice") && fields.flag("practice", "true or false");
            yield new CaseEvent.Opened(
                at,
                caseId,
                vehicle,
                vehicleId,
                circuit,
                load,
                kind,
                context,
                meter,
                practice,
                power(fields));
          }
          case "taken" -> {
            int reading = reading(fields);
            OwnCheck check = Shapes.check(fields.object("check", "the check taken"));
            Answer answer = Shapes.answer(fields);
            yield new CaseEvent.Taken(at, reading, check, answer);
          }
          case "withdrawn" -> new CaseEvent.Withdrawn(at, reading(fields));
          case "corrected" -> new CaseEvent.Corrected(at, reading(fields), Shapes.answer(fields));
          case "refused" -> {
            OwnCheck check = Shapes.check(fields.object("check", "the check refused"));
            yield new CaseEvent.Refused(
                at,
                check,
                Shapes.word(fields, "why", FindCase.Refusal.values(), FindCase.Refusal::words));
          }
          case "swapped" -> {
            String part = fields.name("part", "a part's id");
            boolean helped = fields.flag("helped", "true or false");
            yield new CaseEvent.Swapped(
                at, part, helped ? FindCase.Helped.YES : FindCase.Helped.NO);
          }
          case "repaired" -> new CaseEvent.Repaired(at, fields.name("part", "a part's id"));
          case "undone" -> {
            CaseEvent what = read(fields.need("what", "what was told"));
            if (!(what instanceof CaseEvent.Deed deed)) {
              throw new Problem(
                  "event.what", "", "what was told: refused, swapped, repaired or photographed");
            }
            yield new CaseEvent.Undone(at, deed);
          }
          case "warned" ->
              new CaseEvent.Warned(at, Shapes.word(fields, "of", Warning.values(), Warning::word));
          case "isolated" -> new CaseEvent.Isolated(at);
          case "gone" -> new CaseEvent.Gone(at);
          case "told" ->
              new CaseEvent.Told(
                  at, AccountCodec.read(fields.object("account", "what the case said")));
          case "photographed" ->
              new CaseEvent.Photographed(
                  at,
                  fields.name("file", "a photo's path"),
                  fields.name("caption", "what it shows"));
          case "weighed" -> new CaseEvent.Weighed(at, AccountCodec.rates(fields));
          case "proposing" ->
              new CaseEvent.Proposing(
                  at, Shapes.word(fields, "first", Proposer.values(), Proposer::word));
          case "settled" ->
              new CaseEvent.Settled(
                  at,
                  Shapes.check(fields.object("learners", "the check the learner proposed")),
                  Shapes.check(fields.object("programs", "the check the program proposed")),
                  Shapes.word(fields, "taken", Proposer.values(), Proposer::word));
          case "stopped" -> new CaseEvent.Stopped(at);
          default ->
              throw new Problem(
                  "event.type",
                  Fields.cut(type),
                  "opened, taken, withdrawn, corrected, refused, swapped, repaired, undone, warned,"
                      + " isolated, gone, told, photographed, weighed, proposing, settled or"
                      + " stopped");
        };
    fields.done();
    return event;
  }

  /** Fields {@code fuse} and {@code out}; neither where the vehicle is as it is meant to be. */
  static void power(ObjectNode node, FirstPower power) {
    power.fuse().ifPresent(amps -> node.put("fuse", amps));
    if (!power.out().isEmpty()) {
      power.out().forEach(node.putArray("out")::add);
    }
  }

  /**
   * Reads what {@link #power(ObjectNode, FirstPower)} writes.
   *
   * @throws Problem if it has another shape
   */
  static FirstPower power(Fields fields) throws Problem {
    Optional<Double> fuse =
        fields.has("fuse") ? Optional.of(Shapes.limit(fields, "fuse")) : Optional.empty();
    return new FirstPower(
        fuse,
        fields.has("out") ? Shapes.names(fields, "out", "a list of part ids") : new TreeSet<>());
  }

  private static int reading(Fields fields) throws Problem {
    return fields.whole("reading", 0, Integer.MAX_VALUE, "a reading's number");
  }

  static Instant at(Fields fields) throws Problem {
    String text = fields.name("at", "a time such as 2024-05-01T10:00:00Z");
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw new Problem("event.at", Fields.cut(text), "a time such as 2024-05-01T10:00:00Z");
    }
  }
}
