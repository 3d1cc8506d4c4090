package loopwright.io.wire;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Against;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.ClearedView;
import loopwright.casework.DeedView;
import loopwright.casework.Drops;
import loopwright.casework.FindCase;
import loopwright.casework.LoopView;
import loopwright.casework.Outlook;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import loopwright.casework.ReadingLog;
import loopwright.casework.ReadingView;
import loopwright.casework.RepairView;
import loopwright.casework.SettingView;
import loopwright.casework.SuspectView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Explainer;
import loopwright.diagnosis.SuspectId;
import loopwright.diagnosis.Warning;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Reads and writes the lines of the machine conversation, {@code schema/find-lines-1.schema.json}.
 * Lines come and go without their line end; what is written is ASCII.
 */
public final class WireCodec {

  /** Name and version of the conversation. */
  public static final String SCHEMA = "find-lines-1";

  private static final int LONGEST_ID = 100;
  private static final int MOST_READINGS = 1_000_000;
  private static final BigDecimal LARGEST_ID = BigDecimal.valueOf((1L << 53) - 1);
  private static final String TYPES =
      "reading, meter, refuse, withdraw, correct, swapped, repaired, undo, warning, isolated, gone,"
          + " why, outlook, stop";

  /** Checks in a row that an outlook tells of. */
  private static final int DEEPEST_OUTLOOK = 2;

  /**
   * What the first line tells.
   *
   * @param vehicle the vehicle
   * @param vehicleName how it is found again, for instance its file
   * @param view the case as it stands
   * @param points the probe points
   * @param settings set-ups that make sense, the circuit's own first
   * @param story what the owner tells, in a ready-made case; else empty
   */
  public record Opening(
      Vehicle vehicle,
      String vehicleName,
      CaseView view,
      List<PointView> points,
      List<SettingView> settings,
      String story) {
    /** Copies the lists. */
    public Opening {
      points = List.copyOf(points);
      settings = List.copyOf(settings);
    }
  }

  // Incoming.

  /** Reads what came from the stream; empty when it has ended. */
  public Optional<Told> read(LineReader.Next next) {
    if (next instanceof LineReader.Next.Line line) {
      return Optional.of(read(line.text()));
    }
    if (next instanceof LineReader.Next.TooLong) {
      return Optional.of(
          bad("line", "a longer line", "at most " + LineReader.LONGEST + " bytes a line"));
    }
    if (next instanceof LineReader.Next.NotText) {
      return Optional.of(bad("line", "bytes that are no text", "UTF-8 text"));
    }
    return Optional.empty();
  }

  /** Reads one line. */
  public Told read(String line) {
    JsonNode node;
    try {
      node = Shapes.JSON.readTree(line);
    } catch (StreamConstraintsException e) {
      return bad(
          "line",
          Fields.cut(line),
          "JSON nested at most " + Shapes.DEEPEST + " deep, with numbers of at most 60 digits");
    } catch (JsonProcessingException | NumberFormatException e) {
      return bad("line", Fields.cut(line), "one JSON object, each field once");
    }
    if (node == null || node.isMissingNode()) {
      return bad("line", "", "one JSON object");
    }
    Optional<ClientId> id = Optional.empty();
    try {
      Fields fields = Fields.of(node, "");
      id = id(fields);
      Request request = request(fields);
      fields.done();
      return new Told.Good(id, request);
    } catch (Problem problem) {
      return new Told.Bad(id, problem);
    }
  }

  private static Told bad(String field, String value, String accepted) {
    return new Told.Bad(Optional.empty(), new Problem(field, value, accepted));
  }

  private static Optional<ClientId> id(Fields fields) throws Problem {
    Optional<JsonNode> raw = fields.raw("id");
    if (raw.isEmpty()) {
      return Optional.empty();
    }
    JsonNode node = raw.get();
    if (node.isTextual() && node.textValue().matches("[ -~]{1," + LONGEST_ID + "}")) {
      return Optional.of(new ClientId(node.toString()));
    }
    if (node.isNumber()) {
      BigDecimal number = node.decimalValue();
      if (number.abs().compareTo(LARGEST_ID) <= 0
          && (number.signum() == 0
              || number.abs().compareTo(BigDecimal.ONE) >= 0
                  && number.stripTrailingZeros().scale() <= 0)) {
        return Optional.of(new ClientId(number.toBigInteger().toString()));
      }
    }
    throw new Problem(
        "id",
        Fields.shown(node),
        "1 to " + LONGEST_ID + " printable ASCII characters, or a whole number");
  }

  private static Request request(Fields fields) throws Problem {
    String type = fields.name("type", "one of " + TYPES);
    return switch (type) {
      case "reading" -> reading(fields);
      case "meter" -> new Request.Meter();
      case "refuse" ->
          new Request.Refuse(
              fields.name("check", "the id of the proposed check"),
              Shapes.word(fields, "why", FindCase.Refusal.values(), FindCase.Refusal::words));
      case "withdraw" -> new Request.Withdraw(readingId(fields));
      case "correct" -> new Request.Correct(readingId(fields), Shapes.answer(fields));
      case "swapped" ->
          new Request.Swapped(fields.name("part", "the id of the replaced part"), helped(fields));
      case "repaired" -> new Request.Repaired(fields.name("part", "the id of the mended part"));
      case "undo" ->
          new Request.Undo(
              fields.whole(
                  "deed", 1, MOST_READINGS, "the number of what was told besides readings"));
      case "warning" ->
          new Request.Warn(Shapes.word(fields, "of", Warning.values(), Warning::word));
      case "isolated" -> new Request.Isolated();
      case "gone" -> new Request.Gone();
      case "why" -> {
        String about = fields.name("about", "next, a part's id or a suspect's id");
        yield about.equals("next") ? new Request.WhyNext() : new Request.WhyStill(about);
      }
      case "outlook" ->
          new Request.Outlook(
              fields.mayName("check", "the id of a check that may be asked"),
              fields.has("depth") ? fields.whole("depth", 1, DEEPEST_OUTLOOK, "1 or 2") : 1);
      case "stop" -> new Request.Stop();
      default -> throw new Problem("type", Fields.cut(type), "one of " + TYPES);
    };
  }

  private static int readingId(Fields fields) throws Problem {
    return fields.whole("reading", 1, MOST_READINGS, "the number of a reading");
  }

  private static FindCase.Helped helped(Fields fields) throws Problem {
    String accepted = "true if the complaint went away, false if not";
    JsonNode node = fields.need("helped", accepted);
    if (!node.isBoolean()) {
      throw new Problem("helped", Fields.shown(node), accepted);
    }
    return node.booleanValue() ? FindCase.Helped.YES : FindCase.Helped.NO;
  }

  private static Request reading(Fields fields) throws Problem {
    if (fields.has("check") == fields.has("kind")) {
      throw new Problem(
          "check",
          fields.has("check") ? "both check and kind" : "",
          "either the id of the proposed check, or kind with red, black, look and setting");
    }
    if (fields.has("check")) {
      return new Request.Answered(
          fields.name("check", "the id of the proposed check"), Shapes.answer(fields));
    }
    CheckKind kind = Shapes.word(fields, "kind", CheckKind.values(), CheckKind::word);
    Optional<TerminalRef> red = Optional.empty();
    Optional<TerminalRef> black = Optional.empty();
    Optional<String> look = Optional.empty();
    if (kind.metered()) {
      red = needPoint(fields, "red");
      black = needPoint(fields, "black");
    } else {
      look = Optional.of(fields.name("look", "the id of the part looked at"));
    }
    Optional<Setting> setting = Optional.empty();
    if (fields.has("setting")) {
      setting = Optional.of(Shapes.setting(fields.object("setting", "the set-up as an object")));
    }
    Answer answer = Shapes.answer(fields);
    if (kind.metered() == (answer instanceof Answer.Saw)) {
      throw new Problem(
          kind.metered() ? "value" : "seen",
          "",
          kind.metered() ? "a value or a band for " + kind.word() : "seen for " + kind.word());
    }
    return new Request.OwnReading(kind, red, black, look, setting, answer);
  }

  private static Optional<TerminalRef> needPoint(Fields fields, String name) throws Problem {
    Optional<TerminalRef> point = Shapes.point(fields, name);
    if (point.isEmpty()) {
      throw new Problem(name, "", "a probe point as part.terminal, for instance F3.load");
    }
    return point;
  }

  // Outgoing.

  /** The first line: what the case works with. The first state follows it. */
  public String ready(Opening opening) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("type", "ready");
    node.put("schema", SCHEMA);
    node.putNull("re");
    node.put("case", opening.view().caseId());
    node.put("title", opening.view().title());
    if (!opening.story().isEmpty()) {
      node.put("story", opening.story());
    }
    Vehicle vehicle = opening.vehicle();
    ObjectNode v = node.putObject("vehicle");
    v.put("id", vehicle.id());
    v.put("name", vehicle.name());
    v.put("file", opening.vehicleName());
    v.put("systemVolts", vehicle.systemVolts());
    v.put("grounded", vehicle.grounded().word());
    ArrayNode circuits = node.putArray("circuits");
    for (Circuit circuit : vehicle.circuits()) {
      ObjectNode c = circuits.addObject();
      c.put("id", circuit.id());
      c.put("name", circuit.name());
      ArrayNode loads = c.putArray("loads");
      circuit.loads().stream().map(LoadRef::toString).forEach(loads::add);
    }
    node.put(
        "suspects", opening.view().suspects().stream().mapToInt(s -> s.suspects().size()).sum());
    ArrayNode points = node.putArray("points");
    opening.points().forEach(p -> points.add(point(p)));
    ArrayNode settings = node.putArray("settings");
    opening.settings().forEach(s -> settings.add(setting(s)));
    return write(node);
  }

  /**
   * The answer to an accepted line, and the state that nobody asked for at the start.
   *
   * @param re id of the line answered
   * @param view the case after it
   * @param asked what answers a question
   */
  public String state(Optional<ClientId> re, CaseView view, Asked asked) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("type", "state");
    node.set("re", re(re));
    node.put("seq", view.seq());
    node.set("state", state(view));
    node.put("next", view.move().word());
    if (view.move() == CaseView.Move.CHECK || view.move() == CaseView.Move.PROOF) {
      view.next().ifPresent(check -> node.set("check", check(check)));
    }
    view.repair().ifPresent(repair -> node.set("repair", repair(repair)));
    if (!asked.why().isEmpty()) {
      node.set("why", texts(asked.why()));
    }
    if (!asked.against().isEmpty()) {
      ArrayNode array = node.putArray("against");
      asked.against().forEach(a -> array.add(against(a)));
    }
    asked.outlook().ifPresent(o -> node.set("outlook", OutlookShapes.outlook(o, asked.then())));
    return write(node);
  }

  /**
   * What answers a question.
   *
   * @param why sentences for a question why; else empty
   * @param against readings beside what the suspect asked about could show; else empty
   * @param outlook what the results of the check asked about would leave; else empty
   * @param then what would follow on each of them; empty unless asked for
   */
  public record Asked(
      List<String> why, List<Against> against, Optional<Outlook> outlook, List<Outlook.Then> then) {
    /** Nothing was asked. */
    public static final Asked NOTHING =
        new Asked(List.of(), List.of(), Optional.empty(), List.of());

    /** Copies the lists. */
    public Asked {
      why = List.copyOf(why);
      against = List.copyOf(against);
      then = List.copyOf(then);
    }

    /** The answer to a question why. */
    public static Asked why(List<String> why, List<Against> against) {
      return new Asked(why, against, Optional.empty(), List.of());
    }

    /** The answer to a question for the outlook. */
    public static Asked outlook(Outlook outlook, List<Outlook.Then> then) {
      return new Asked(List.of(), List.of(), Optional.of(outlook), then);
    }
  }

  private static ObjectNode against(Against a) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("reading", a.reading());
    node.put("where", a.where());
    node.put("value", a.value());
    node.set("suspect", Shapes.band(a.suspect()));
    node.set("healthy", Shapes.band(a.healthy()));
    a.needed().ifPresent(n -> node.set("needed", Shapes.band(n)));
    ArrayNode modes = node.putArray("modes");
    for (Explainer.Mode m : a.modes()) {
      ObjectNode mode = modes.addObject();
      mode.put("suspect", m.suspect().toString());
      mode.put("title", m.title());
      mode.put("can", m.can().name().toLowerCase(Locale.ROOT));
    }
    return node;
  }

  /** The answer to a line that was not accepted: nothing has changed. */
  public String problem(Optional<ClientId> re, Problem problem) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("type", "problem");
    node.set("re", re(re));
    node.put("field", problem.field());
    node.put("value", problem.value());
    node.put("accepted", problem.accepted());
    return write(node);
  }

  private static JsonNode re(Optional<ClientId> id) {
    if (id.isEmpty()) {
      return Shapes.JSON.nullNode();
    }
    try {
      return Shapes.JSON.readTree(id.get().json());
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("id is not JSON: " + id.get().json(), e);
    }
  }

  private static String write(ObjectNode node) {
    try {
      return Shapes.JSON.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a line could not be written", e);
    }
  }

  private static ObjectNode state(CaseView view) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("status", view.status().word());
    node.put("title", view.title());
    number(node, "minutes", view.minutes());
    ArrayNode suspects = node.putArray("suspects");
    view.suspects().forEach(s -> suspects.add(suspect(s)));
    ArrayNode cleared = node.putArray("cleared");
    for (ClearedView c : view.cleared()) {
      ObjectNode item = cleared.addObject();
      item.put("part", c.part());
      item.put("title", c.title());
      item.set("readings", numbers(c.readings()));
      item.put("why", c.why());
    }
    ArrayNode readings = node.putArray("readings");
    view.readings().forEach(r -> readings.add(reading(r)));
    ArrayNode deeds = node.putArray("deeds");
    view.deeds().forEach(d -> deeds.add(deed(d)));
    ArrayNode logs = node.putArray("logs");
    for (ReadingLog log : ReadingLog.of(view.readings())) {
      ObjectNode item = logs.addObject();
      item.set("readings", numbers(log.readings().stream().map(ReadingView::id).toList()));
      item.set("outside", numbers(log.outside().stream().map(ReadingView::id).toList()));
    }
    node.set("loop", loop(view.loop()));
    Drops.of(view.loop()).ifPresent(d -> node.set("drops", drops(d)));
    node.put("said", view.said());
    node.set("cautions", texts(view.cautions()));
    node.set("warnings", texts(view.warnings().stream().map(Warning::word).toList()));
    node.set("makeSafe", texts(view.makeSafe()));
    node.set("putBack", texts(view.putBack()));
    ObjectNode odds = node.putObject("odds");
    odds.set("readings", numbers(view.odds()));
    odds.put("words", view.oddsWords());
    return node;
  }

  private static ObjectNode suspect(SuspectView suspect) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.set("parts", texts(suspect.parts()));
    node.put("title", suspect.title());
    node.set("modes", texts(suspect.modes()));
    number(node, "belief", suspect.belief());
    node.set("suspects", texts(suspect.suspects().stream().map(SuspectId::toString).toList()));
    node.put("splitBy", suspect.splitBy());
    return node;
  }

  private static ObjectNode reading(ReadingView reading) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("reading", reading.id());
    node.put("kind", reading.kind().word());
    reading.red().ifPresent(p -> node.put("red", p.toString()));
    reading.black().ifPresent(p -> node.put("black", p.toString()));
    reading.lookAt().ifPresent(p -> node.put("look", p));
    node.set("setting", texts(reading.setting()));
    node.put("where", reading.where());
    node.put("value", reading.value());
    reading.volts().ifPresent(v -> number(node, "volts", v));
    node.put("healthyWords", reading.healthyWords());
    node.put("fits", reading.fits());
    node.put("did", reading.did());
    node.set("doubts", texts(reading.doubts()));
    node.put("at", reading.at().toString());
    return node;
  }

  private static ObjectNode deed(DeedView done) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("deed", done.number());
    node.put("after", done.after());
    if (done.deed() instanceof CaseEvent.Repaired r) {
      node.put("what", "repaired");
      node.put("part", r.part());
    } else if (done.deed() instanceof CaseEvent.Swapped s) {
      node.put("what", "swapped");
      node.put("part", s.part());
    } else {
      node.put("what", done.deed() instanceof CaseEvent.Refused ? "refuse" : "photo");
    }
    node.put("words", done.words());
    node.put("at", done.deed().at().toString());
    return node;
  }

  private static ObjectNode loop(LoopView loop) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("title", loop.title());
    ArrayNode pieces = node.putArray("pieces");
    for (LoopView.PieceView piece : loop.pieces()) {
      ObjectNode p = pieces.addObject();
      p.put("part", piece.part());
      p.put("title", piece.title());
      p.put("label", piece.label());
      p.put("kind", piece.kind().word());
      piece.in().ifPresent(t -> p.put("in", t.toString()));
      piece.out().ifPresent(t -> p.put("out", t.toString()));
      p.put("detail", piece.detail());
      p.put(
          "standing",
          switch (piece.standing()) {
            case HELD -> "held";
            case CLEARED -> "cleared";
            case CONDEMNED -> "condemned";
          });
      number(p, "belief", piece.belief());
      p.set("clearedBy", numbers(piece.clearedBy()));
    }
    ArrayNode stairs = node.putArray("stairs");
    for (LoopView.Stair stair : loop.stairs()) {
      ObjectNode s = stairs.addObject();
      s.put("point", stair.point().toString());
      s.set("others", texts(stair.others().stream().map(TerminalRef::toString).toList()));
      s.set("healthy", Shapes.band(stair.healthy()));
      ArrayNode measured = s.putArray("measured");
      for (LoopView.Measured m : stair.measured()) {
        ObjectNode item = measured.addObject();
        item.put("reading", m.reading());
        number(item, "volts", m.volts());
      }
      s.put("reachable", stair.reachable());
    }
    ArrayNode branches = node.putArray("branches");
    loop.branches().forEach(b -> branches.add(loop(b)));
    return node;
  }

  private static ArrayNode drops(Drops drops) {
    ArrayNode shares = Shapes.JSON.createArrayNode();
    for (Drops.Share share : drops.shares()) {
      ObjectNode s = shares.addObject();
      s.put("from", share.from().toString());
      s.put("to", share.to().toString());
      s.set("parts", texts(share.parts()));
      s.put(
          "side",
          switch (share.side()) {
            case FEED -> "feed";
            case LOAD -> "load";
            case RETURN -> "return";
          });
      number(s, "healthy", share.healthy());
      number(s, "measured", share.measured());
      number(s, "unsure", share.unsure());
      s.put("worst", drops.worst().filter(share::equals).isPresent());
    }
    return shares;
  }

  private static ObjectNode check(CheckView check) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("check", check.id());
    node.put("number", check.number());
    node.put("kind", check.kind().word());
    node.set("set", setting(check.set()));
    check.red().ifPresent(p -> node.set("red", point(p)));
    check.black().ifPresent(p -> node.set("black", point(p)));
    node.put("meter", check.meter());
    check.lookAt().ifPresent(p -> node.put("look", p));
    node.put("question", check.question());
    node.set("choices", texts(check.choices().stream().map(s -> s.word()).toList()));
    check.healthy().ifPresent(b -> node.set("healthy", Shapes.band(b)));
    node.put("healthyWords", check.healthyWords());
    ArrayNode outcomes = node.putArray("outcomes");
    check.outcomes().forEach(o -> outcomes.add(outcome(o)));
    number(node, "minutes", check.minutes());
    node.put("because", check.because());
    node.set("cautions", texts(check.cautions()));
    return node;
  }

  static ObjectNode outcome(CheckView.OutcomeView outcome) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("words", outcome.words());
    outcome.band().ifPresent(b -> node.set("band", Shapes.band(b)));
    outcome.seen().ifPresent(s -> node.put("seen", s.word()));
    number(node, "chance", outcome.chance());
    node.set("leaves", texts(outcome.leaves()));
    return node;
  }

  private static ObjectNode repair(RepairView repair) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.set("suspect", suspect(repair.suspect()));
    node.set("proof", texts(repair.proof()));
    node.set("why", texts(repair.why()));
    node.set("inspect", texts(repair.inspect()));
    node.set("repair", texts(repair.repair()));
    node.set("prove", texts(repair.prove()));
    node.set("cautions", texts(repair.cautions()));
    return node;
  }

  private static ObjectNode point(PointView point) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("point", point.ref().toString());
    node.put("title", point.title());
    node.put("label", point.label());
    node.put("how", point.how());
    number(node, "minutes", point.minutes());
    node.put("reachable", point.reachable());
    return node;
  }

  private static ObjectNode setting(SettingView setting) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    // Nested, so that a client can hand the inner object back as it is.
    node.set("setting", Shapes.setting(setting.setting()));
    node.set("change", texts(setting.change()));
    node.set("whole", texts(setting.whole()));
    return node;
  }

  static void number(ObjectNode node, String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException(name + " is " + value + ", which no line can carry");
    }
    node.put(name, value);
  }

  static ArrayNode texts(List<String> texts) {
    ArrayNode array = Shapes.JSON.createArrayNode();
    texts.forEach(array::add);
    return array;
  }

  private static ArrayNode numbers(List<Integer> numbers) {
    ArrayNode array = Shapes.JSON.createArrayNode();
    numbers.forEach(array::add);
    return array;
  }
}
