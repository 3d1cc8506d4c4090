package loopwright.io.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.casework.Account;
import loopwright.casework.CaseView;
import loopwright.casework.ClearedView;
import loopwright.casework.OwnRate;
import loopwright.casework.Problem;
import loopwright.io.wire.Fields;
import loopwright.io.wire.Shapes;
import loopwright.model.PartKind;

/** What a case said, and what a vehicle had before, as JSON objects and back, strictly. */
final class AccountCodec {
  private AccountCodec() {}

  static ObjectNode write(Account account) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("title", account.title());
    node.put("status", account.status().word());
    node.put("minutes", account.minutes());
    ArrayNode readings = node.putArray("readings");
    for (Account.Line line : account.readings()) {
      ObjectNode one = readings.addObject();
      one.put("reading", line.reading());
      one.put("where", line.where());
      texts(one, "setting", line.setting());
      one.put("value", line.value());
      one.put("healthy", line.healthy());
      one.put("did", line.did());
    }
    ArrayNode cleared = node.putArray("cleared");
    for (ClearedView part : account.cleared()) {
      ObjectNode one = cleared.addObject();
      one.put("part", part.part());
      one.put("title", part.title());
      ArrayNode by = one.putArray("readings");
      part.readings().forEach(by::add);
      one.put("why", part.why());
    }
    account.fault().ifPresent(fault -> node.set("fault", write(fault)));
    account.proven().ifPresent(part -> node.put("proven", part));
    return node;
  }

  private static ObjectNode write(Account.Fault fault) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("title", fault.title());
    texts(node, "modes", fault.modes());
    node.put("belief", fault.belief());
    ArrayNode causes = node.putArray("causes");
    for (Account.Cause cause : fault.causes()) {
      ObjectNode one = causes.addObject();
      one.put("part", cause.part());
      one.put("kind", cause.kind().word());
      one.put("mode", cause.mode());
      one.put("belief", cause.belief());
    }
    texts(node, "proof", fault.proof());
    texts(node, "why", fault.why());
    texts(node, "inspect", fault.inspect());
    texts(node, "repair", fault.repair());
    texts(node, "prove", fault.prove());
    texts(node, "cautions", fault.cautions());
    return node;
  }

  private static void texts(ObjectNode node, String name, List<String> texts) {
    ArrayNode array = node.putArray(name);
    texts.forEach(array::add);
  }

  static Account read(Fields fields) throws Problem {
    String title = fields.name("title", "the case in words");
    CaseView.Status status =
        Shapes.word(fields, "status", CaseView.Status.values(), CaseView.Status::word);
    double minutes = number(fields, "minutes", 0, 1e6);
    List<Account.Line> readings = new ArrayList<>();
    for (Fields one : objects(fields, "readings")) {
      readings.add(
          new Account.Line(
              one.whole("reading", 0, Integer.MAX_VALUE, "a reading's number"),
              one.name("where", "where it was taken"),
              texts(one, "setting"),
              one.name("value", "what was read"),
              one.name("healthy", "what is healthy"),
              one.name("did", "what it did")));
      one.done();
    }
    List<ClearedView> cleared = new ArrayList<>();
    for (Fields one : objects(fields, "cleared")) {
      List<Integer> by = new ArrayList<>();
      for (JsonNode number : array(one, "readings")) {
        if (!number.isInt()) {
          throw new Problem(one.path("readings"), Fields.shown(number), "numbers of readings");
        }
        by.add(number.intValue());
      }
      cleared.add(
          new ClearedView(
              one.name("part", "a part's id"),
              one.name("title", "the part in words"),
              by,
              one.name("why", "why")));
      one.done();
    }
    Optional<Account.Fault> fault =
        fields.has("fault")
            ? Optional.of(fault(fields.object("fault", "what was found")))
            : Optional.empty();
    Optional<String> proven = fields.mayName("proven", "a part's id");
    fields.done();
    return new Account(title, status, minutes, readings, cleared, fault, proven);
  }

  private static Account.Fault fault(Fields fields) throws Problem {
    String title = fields.name("title", "what was found in words");
    List<String> modes = texts(fields, "modes");
    double belief = number(fields, "belief", 0, 1);
    List<Account.Cause> causes = new ArrayList<>();
    for (Fields one : objects(fields, "causes")) {
      causes.add(
          new Account.Cause(
              one.name("part", "a part's id"),
              kind(one),
              one.name("mode", "a failure mode"),
              number(one, "belief", 0, 1)));
      one.done();
    }
    Account.Fault fault =
        new Account.Fault(
            title,
            modes,
            belief,
            causes,
            texts(fields, "proof"),
            texts(fields, "why"),
            texts(fields, "inspect"),
            texts(fields, "repair"),
            texts(fields, "prove"),
            texts(fields, "cautions"));
    fields.done();
    return fault;
  }

  static void write(ObjectNode node, List<OwnRate> rates) {
    ArrayNode array = node.putArray("rates");
    for (OwnRate rate : rates) {
      ObjectNode one = array.addObject();
      one.put("kind", rate.kind().word());
      one.put("mode", rate.mode());
      one.put("found", rate.found());
      one.put("expected", rate.expected());
      one.put("factor", rate.factor());
    }
  }

  static List<OwnRate> rates(Fields fields) throws Problem {
    List<OwnRate> rates = new ArrayList<>();
    for (Fields one : objects(fields, "rates")) {
      rates.add(
          new OwnRate(
              kind(one),
              one.name("mode", "a failure mode"),
              number(one, "found", 0, 1e6),
              number(one, "expected", 0, 1e6),
              number(one, "factor", 0, 100)));
      one.done();
    }
    return rates;
  }

  private static PartKind kind(Fields fields) throws Problem {
    return Shapes.word(fields, "kind", PartKind.values(), PartKind::word);
  }

  private static double number(Fields fields, String name, double low, double high) throws Problem {
    String accepted = "a number from " + low + " to " + high;
    JsonNode node = fields.need(name, accepted);
    if (node.isNumber() && node.doubleValue() >= low && node.doubleValue() <= high) {
      return node.doubleValue();
    }
    throw new Problem(fields.path(name), Fields.shown(node), accepted);
  }

  private static List<String> texts(Fields fields, String name) throws Problem {
    List<String> texts = new ArrayList<>();
    for (JsonNode node : array(fields, name)) {
      texts.add(Fields.string(node, fields.path(name), Integer.MAX_VALUE, "a list of texts"));
    }
    return texts;
  }

  private static List<Fields> objects(Fields fields, String name) throws Problem {
    List<Fields> objects = new ArrayList<>();
    for (JsonNode node : array(fields, name)) {
      objects.add(Fields.ofOwn(node, fields.path(name) + "."));
    }
    return objects;
  }

  private static JsonNode array(Fields fields, String name) throws Problem {
    JsonNode node = fields.need(name, "a list");
    if (!node.isArray()) {
      throw new Problem(fields.path(name), Fields.shown(node), "a list");
    }
    return node;
  }
}
