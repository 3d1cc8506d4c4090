package loopwright.io;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.model.Access;
import loopwright.model.Circuit;
import loopwright.model.Estimate;
import loopwright.model.GroundedPole;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Photo;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;
import loopwright.model.WireSize;

/**
 * Turns the values of a vehicle file into a vehicle, noting everything that is wrong on the way.
 */
final class VehicleReader {
  private static final int MANY = 1_000;

  /** Stricter than {@link WireSize#parse}, so that a size is spelt one way in all files. */
  private static final Pattern SIZE =
      Pattern.compile("(\\d{1,2}|[1-4]/0) ?AWG|\\d{1,3}(\\.\\d{1,6})? ?mm2");

  private static final Pattern TOP = Pattern.compile("^(parts|joins|circuits)\\[(\\d+)]");

  private final DefectList defects;
  private final List<Part> parts = new ArrayList<>();
  private final Map<String, List<Integer>> fileIndex = new HashMap<>();
  private final Set<String> unreadable = new HashSet<>();
  private boolean whole = true;

  private VehicleReader(DefectList defects) {
    this.defects = defects;
    for (String list : List.of("parts", "joins", "circuits")) {
      fileIndex.put(list, new ArrayList<>());
    }
  }

  /** The vehicle, as far as it could be read; it is good only if no defect was noted. */
  static Optional<Vehicle> read(JsonValue root, DefectList defects) {
    Optional<ObjectReader> in = ObjectReader.of(root, "", FileWords.say("vehicle"), defects);
    if (in.isEmpty()) {
      return Optional.empty();
    }
    VehicleReader reader = new VehicleReader(defects);
    Vehicle vehicle = reader.vehicle(in.get());
    reader.check(vehicle);
    return Optional.of(vehicle);
  }

  /** The same without the checks of the whole: whether it holds together is not looked at. */
  static Optional<Vehicle> readDraft(JsonValue root, DefectList defects) {
    return ObjectReader.of(root, "", FileWords.say("vehicle"), defects)
        .map(in -> new VehicleReader(defects).vehicle(in));
  }

  private Vehicle vehicle(ObjectReader in) {
    in.text("format")
        .filter(f -> !f.equals(VehicleFile.FORMAT))
        .ifPresent(
            f -> wrong(in, "format", JsonValue.quoted(f), JsonValue.quoted(VehicleFile.FORMAT)));
    in.number("version")
        .filter(v -> v != VehicleFile.VERSION)
        .ifPresent(
            v ->
                wrong(in, "version", ObjectReader.plain(v), Integer.toString(VehicleFile.VERSION)));
    String id = in.name("id").orElse("?");
    String name = in.text("name", "");
    String note = in.text("note", "");
    int volts = systemVolts(in);
    GroundedPole grounded =
        in.word("grounded", GroundedPole.values(), GroundedPole::word, Optional.empty())
            .orElse(GroundedPole.NEGATIVE);
    List<JsonValue> partValues = in.list("parts", 0, Vehicle.MOST_PARTS);
    whole &= !defects.covers("parts");
    for (int i = 0; i < partValues.size(); i++) {
      part(partValues.get(i), i);
    }
    List<List<TerminalRef>> joins = joins(in);
    List<Circuit> circuits = circuits(in);
    in.nothingElse();
    return new Vehicle(id, name, volts, grounded, parts, joins, circuits, note);
  }

  private int systemVolts(ObjectReader in) {
    Optional<Double> volts = in.number("system_volts");
    boolean known = volts.stream().anyMatch(v -> v == 6 || v == 12 || v == 24);
    if (volts.isPresent() && !known) {
      wrong(in, "system_volts", ObjectReader.plain(volts.get()), FileWords.say("volts"));
      return 12;
    }
    return volts.map(Double::intValue).orElse(12);
  }

  private void wrong(ObjectReader in, String field, String value, String limit) {
    defects.add(in.path(field), in.object(), value, limit, ObjectReader.bad(field, value, limit));
  }

  /** Runs the checks of the whole and puts their findings in the file's terms. */
  private void check(Vehicle vehicle) {
    VehicleCheck.Scope scope = whole ? VehicleCheck.Scope.WHOLE : VehicleCheck.Scope.PIECES;
    boolean voltsKnown = !defects.covers("system_volts");
    for (VehicleCheck.Finding finding : VehicleCheck.check(vehicle, scope, unreadable)) {
      String path = inFile(finding.path());
      boolean known =
          defects.covers(path)
              || (!voltsKnown && path.endsWith(".volts"))
              || (path.equals("circuits") && defects.touches(path));
      if (known) {
        continue;
      }
      defects.add(path, finding.object(), finding.value(), finding.limit(), finding.what());
    }
  }

  /** Entries that could not be read are missing in the vehicle, so its counting differs. */
  private String inFile(String path) {
    Matcher m = TOP.matcher(path);
    if (!m.find()) {
      return path;
    }
    int index = fileIndex.get(m.group(1)).get(Integer.parseInt(m.group(2)));
    return m.group(1) + "[" + index + "]" + path.substring(m.end());
  }

  private void part(JsonValue value, int index) {
    String path = "parts[" + index + "]";
    Optional<ObjectReader> reader = ObjectReader.of(value, path, path, defects);
    if (reader.isEmpty()) {
      whole = false;
      return;
    }
    ObjectReader raw = reader.get();
    Optional<String> id = raw.name("id");
    Optional<PartKind> kind =
        raw.called(id.map(i -> FileWords.say("part", i)).orElse(path))
            .word("kind", PartKind.values(), PartKind::word, Optional.empty());
    raw.optional("kind");
    if (id.isEmpty() || kind.isEmpty()) {
      // What else it holds depends on the kind, and nobody can refer to it without an id.
      whole = false;
      id.ifPresent(unreadable::add);
      return;
    }
    ObjectReader in = raw.called(kind.get().said() + " " + id.get());
    String name = in.text("name", "");
    String label = in.text("label", "");
    Optional<PartSpec> spec = spec(in, kind.get());
    String where = in.text("where", "");
    Map<String, Access> access = access(in);
    Optional<Double> apart = in.optionalNumber("apart_minutes");
    Optional<Double> swap = in.optionalNumber("swap_minutes");
    Set<String> spare = new LinkedHashSet<>();
    List<JsonValue> spares = in.optionalList("spare", MANY);
    for (int i = 0; i < spares.size(); i++) {
      String field = "spare[" + i + "]";
      in.textOf(spares.get(i), DefectList.child(in.path("spare"), i), field).ifPresent(spare::add);
    }
    String note = in.text("note", "");
    List<Photo> photos = photos(in);
    in.nothingElse();
    if (spec.isEmpty()) {
      whole = false;
      unreadable.add(id.get());
      return;
    }
    fileIndex.get("parts").add(index);
    parts.add(
        new Part(
            id.get(), name, label, spec.get(), access, apart, swap, spare, where, note, photos));
  }

  private List<Photo> photos(ObjectReader in) {
    List<Photo> photos = new ArrayList<>();
    List<JsonValue> values = in.optionalList("photos", MANY);
    for (int i = 0; i < values.size(); i++) {
      String path = DefectList.child(in.path("photos"), i);
      ObjectReader.of(values.get(i), path, in.object(), defects)
          .ifPresent(
              photo -> {
                String file = photo.text("file").orElse("");
                String at = photo.text("at", "");
                photo.nothingElse();
                if (Photo.fits(file)) {
                  photos.add(new Photo(file, Optional.of(at).filter(t -> !t.isEmpty())));
                } else if (!defects.covers(photo.path("file"))) {
                  wrong(photo, "file", JsonValue.quoted(file), Photo.limit());
                }
              });
    }
    return photos;
  }

  private Map<String, Access> access(ObjectReader in) {
    Map<String, Access> all = new LinkedHashMap<>();
    in.map("access")
        .forEach(
            (terminal, value) -> {
              String path = DefectList.child(in.path("access"), terminal);
              ObjectReader.of(value, path, in.object(), defects)
                  .ifPresent(
                      a -> {
                        double minutes = a.optionalNumber("minutes").orElse(0.0);
                        String how = a.text("how", "");
                        boolean reachable = a.flag("reachable", true);
                        a.nothingElse();
                        if (!(minutes >= 0)) {
                          defects.add(
                              a.path("minutes"),
                              in.object(),
                              ObjectReader.plain(minutes),
                              FileWords.say("minutes"),
                              FileWords.say(
                                  "minutes.bad",
                                  JsonValue.shorten(terminal),
                                  ObjectReader.plain(minutes)));
                          minutes = 0;
                        }
                        all.put(terminal, new Access(minutes, how, reachable));
                      });
            });
    return all;
  }

  /**
   * The kind's own values; empty if its terminals are not known, so that nothing can refer to it.
   */
  private Optional<PartSpec> spec(ObjectReader in, PartKind kind) {
    return switch (kind) {
      case BATTERY ->
          Optional.of(
              new PartSpec.Battery(
                  in.optionalEstimate("volts"),
                  in.optionalEstimate("ohms"),
                  in.optionalNumber("amp_hours"),
                  in.optionalNumber("charge_idle_amps"),
                  in.optionalNumber("charge_amps")));
      case WIRE, STRAP -> wire(in, kind);
      case FUSE ->
          Optional.of(
              new PartSpec.Fuse(in.number("amps").orElse(1.0), in.optionalEstimate("ohms")));
      case SWITCH -> switchSpec(in);
      case RELAY ->
          Optional.of(
              new PartSpec.Relay(
                  in.flag("changeover", false),
                  in.optionalEstimate("coil_ohms"),
                  in.optionalEstimate("pull_in_volts"),
                  in.optionalEstimate("drop_out_volts"),
                  in.optionalEstimate("contact_ohms"),
                  in.word(
                          "suppression",
                          PartSpec.Suppression.values(),
                          PartSpec.Suppression::word,
                          Optional.of(PartSpec.Suppression.NONE))
                      .orElse(PartSpec.Suppression.NONE),
                  in.optionalNumber("amps")));
      case LAMP ->
          Optional.of(
              new PartSpec.Lamp(
                  in.optionalNumber("rated_volts"), in.estimate("watts").orElse(Estimate.of(1))));
      case DUAL_LAMP -> dualLamp(in);
      case LED ->
          Optional.of(
              new PartSpec.Led(
                  in.optionalEstimate("forward_volts"),
                  in.estimate("amps").orElse(Estimate.of(1))));
      case DIODE -> Optional.of(new PartSpec.Diode(in.optionalEstimate("forward_volts")));
      case MOTOR ->
          Optional.of(
              new PartSpec.Motor(
                  in.estimate("amps").orElse(Estimate.of(0.001)),
                  in.optionalEstimate("stall_amps")));
      case HEATER, SOLENOID, HORN, ELECTRONICS ->
          Optional.of(new PartSpec.PlainLoad(kind, in.estimate("amps").orElse(Estimate.of(1))));
      case SENDER ->
          Optional.of(
              new PartSpec.Sender(
                  in.required("ohms", ObjectReader.estimate())
                      .flatMap(v -> in.spreadOf(v, in.path("ohms"), "ohms"))
                      .orElse(Spread.exactly(1))));
      case DRIVER ->
          Optional.of(new PartSpec.Driver(in.optionalEstimate("ohms"), in.text("command", "")));
      case CONNECTOR -> {
        List<String> cavities = in.names("cavities", 1, MANY);
        Optional<Estimate> ohms = in.optionalEstimate("ohms");
        yield defects.covers(in.path("cavities"))
            ? Optional.empty()
            : Optional.of(new PartSpec.Connector(cavities, ohms));
      }
      case SPLICE -> {
        List<String> legs = in.names("legs", 2, MANY);
        Optional<Estimate> ohms = in.optionalEstimate("ohms");
        yield holds(in, "legs") ? Optional.of(new PartSpec.Splice(legs, ohms)) : Optional.empty();
      }
      case GROUND -> Optional.of(new PartSpec.Ground(in.optionalEstimate("ohms")));
      case BODY -> Optional.of(new PartSpec.Body());
    };
  }

  /** Whether a field and everything in it is free of defects. */
  private boolean holds(ObjectReader in, String field) {
    return !defects.touches(in.path(field));
  }

  private Optional<PartSpec> wire(ObjectReader in, PartKind kind) {
    Optional<TerminalRef> from = terminal(in, "from");
    Optional<TerminalRef> to = terminal(in, "to");
    WireSize size =
        in.text("size").flatMap(t -> size(in, t)).orElse(new WireSize(WireSize.Unit.MM2, 1));
    Estimate metres = in.estimate("metres").orElse(Estimate.of(1));
    Optional<Estimate> endOhms = in.optionalEstimate("end_ohms");
    String colour = in.text("colour", "");
    String loom = in.text("loom", "");
    if (from.isEmpty() || to.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new PartSpec.Wire(kind, from.get(), to.get(), size, metres, endOhms, colour, loom));
  }

  private Optional<WireSize> size(ObjectReader in, String text) {
    try {
      if (SIZE.matcher(text).matches()) {
        return Optional.of(WireSize.parse(text));
      }
    } catch (IllegalArgumentException e) {
      // Spelt well, but no such size.
    }
    defects.add(
        in.path("size"),
        in.object(),
        JsonValue.quoted(text),
        FileWords.say("size"),
        FileWords.say("size.bad", JsonValue.shorten(text)));
    return Optional.empty();
  }

  private Optional<TerminalRef> terminal(ObjectReader in, String field) {
    return in.required(field, FileWords.say("terminal"))
        .flatMap(v -> terminalOf(in, v, in.path(field), field));
  }

  private Optional<TerminalRef> terminalOf(
      ObjectReader in, JsonValue value, String path, String field) {
    Optional<String> text = in.textOf(value, path, field);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(TerminalRef.parse(text.get()));
    } catch (IllegalArgumentException e) {
      defects.add(
          path,
          in.object(),
          value.shown(),
          FileWords.say("terminal.form"),
          ObjectReader.bad(field, value.shown(), FileWords.say("terminal.form")));
      return Optional.empty();
    }
  }

  private Optional<PartSpec> switchSpec(ObjectReader in) {
    PartSpec.Control control =
        in.word(
                "control",
                PartSpec.Control.values(),
                PartSpec.Control::word,
                Optional.of(PartSpec.Control.MANUAL))
            .orElse(PartSpec.Control.MANUAL);
    List<String> positions = in.names("positions", 2, MANY);
    List<String> terminals = in.names("terminals", 2, MANY);
    List<JsonValue> values = in.list("contacts", 1, MANY);
    List<PartSpec.SwitchContact> contacts = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String path = DefectList.child(in.path("contacts"), i);
      ObjectReader.of(values.get(i), path, in.object(), defects)
          .ifPresent(
              c -> {
                List<String> between = c.names("between", 2, 2);
                List<String> closedIn = c.names("closed_in", 1, MANY);
                c.nothingElse();
                if (between.size() == 2) {
                  contacts.add(
                      new PartSpec.SwitchContact(
                          between.get(0), between.get(1), new LinkedHashSet<>(closedIn)));
                }
              });
    }
    boolean momentary = in.flag("momentary", false);
    Optional<Estimate> ohms = in.optionalEstimate("ohms");
    Optional<Double> amps = in.optionalNumber("amps");
    if (!holds(in, "positions") || !holds(in, "terminals") || !holds(in, "contacts")) {
      return Optional.empty();
    }
    return Optional.of(
        new PartSpec.Switch(terminals, positions, contacts, control, momentary, ohms, amps));
  }

  private Optional<PartSpec> dualLamp(ObjectReader in) {
    List<JsonValue> values = in.list("filaments", 2, 2);
    List<String> names = new ArrayList<>();
    List<Estimate> watts = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String path = DefectList.child(in.path("filaments"), i);
      ObjectReader.of(values.get(i), path, in.object(), defects)
          .ifPresent(
              f -> {
                f.name("name").ifPresent(names::add);
                watts.add(f.estimate("watts").orElse(Estimate.of(1)));
                f.nothingElse();
              });
    }
    Optional<Double> rated = in.optionalNumber("rated_volts");
    if (names.size() != 2 || watts.size() != 2) {
      return Optional.empty();
    }
    return Optional.of(
        new PartSpec.DualLamp(names.get(0), watts.get(0), names.get(1), watts.get(1), rated));
  }

  private List<List<TerminalRef>> joins(ObjectReader in) {
    List<List<TerminalRef>> joins = new ArrayList<>();
    List<JsonValue> values = in.optionalList("joins", Vehicle.MOST_PARTS * 2);
    whole &= !defects.covers("joins");
    for (int i = 0; i < values.size(); i++) {
      String path = "joins[" + i + "]";
      if (!(values.get(i) instanceof JsonValue.Items items) || items.values().size() < 2) {
        if (!defects.covers(path)) {
          String shown = ObjectReader.kindOf(values.get(i));
          defects.add(
              path,
              path,
              shown,
              FileWords.say("join"),
              FileWords.say("is", shown, FileWords.say("join")));
        }
        whole = false;
        continue;
      }
      List<TerminalRef> join = new ArrayList<>();
      for (int j = 0; j < items.values().size(); j++) {
        String at = DefectList.child(path, j);
        terminalOf(
                in.onBehalfOf(path),
                items.values().get(j),
                at,
                FileWords.say("entry", Integer.toString(j)))
            .ifPresent(join::add);
      }
      if (join.size() == items.values().size()) {
        joins.add(join);
        fileIndex.get("joins").add(i);
      } else {
        whole = false;
      }
    }
    return joins;
  }

  private List<Circuit> circuits(ObjectReader in) {
    List<Circuit> circuits = new ArrayList<>();
    List<JsonValue> values = in.list("circuits", 0, Vehicle.MOST_PARTS);
    for (int i = 0; i < values.size(); i++) {
      String path = "circuits[" + i + "]";
      int index = i;
      ObjectReader.of(values.get(i), path, path, defects)
          .ifPresent(
              c ->
                  circuit(c, path)
                      .ifPresent(
                          circuit -> {
                            circuits.add(circuit);
                            fileIndex.get("circuits").add(index);
                          }));
    }
    return circuits;
  }

  private Optional<Circuit> circuit(ObjectReader raw, String path) {
    Optional<String> id = raw.name("id");
    ObjectReader in = raw.called(id.map(i -> FileWords.say("circuit", i)).orElse(path));
    String name = in.text("name", "");
    String note = in.text("note", "");
    List<JsonValue> values = in.list("loads", 1, MANY);
    List<LoadRef> loads = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      String at = DefectList.child(in.path("loads"), i);
      in.textOf(values.get(i), at, "loads[" + i + "]").map(LoadRef::parse).ifPresent(loads::add);
    }
    Map<String, String> on = new LinkedHashMap<>();
    in.map("on")
        .forEach(
            (control, value) ->
                in.textOf(value, DefectList.child(in.path("on"), control), "on." + control)
                    .ifPresent(position -> on.put(control, position)));
    in.nothingElse();
    if (id.isEmpty() || loads.size() != values.size() || defects.touches(in.path("on"))) {
      return Optional.empty();
    }
    return Optional.of(new Circuit(id.get(), name, loads, on, note));
  }
}
