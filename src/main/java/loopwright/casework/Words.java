package loopwright.casework;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Findings;
import loopwright.diagnosis.Hazards;
import loopwright.diagnosis.Reading;
import loopwright.diagnosis.Seen;
import loopwright.model.Access;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/** Parts, points, settings and values of one vehicle in words. */
public final class Words {
  private final Vehicle vehicle;
  private final Phrases phrases;
  private final HandWords hands;

  /** Words for a vehicle of which nothing is complained. */
  public Words(Vehicle vehicle, Phrases phrases) {
    this(
        vehicle,
        phrases,
        new LoadRef(vehicle.battery().id(), Optional.empty()),
        p -> Optional.empty());
  }

  /**
   * Words for a vehicle.
   *
   * @param watched the load that is complained of
   * @param twin id of the part that is fitted in another's place for a swap; empty: a spare
   */
  Words(
      Vehicle vehicle, Phrases phrases, LoadRef watched, Function<String, Optional<String>> twin) {
    this.vehicle = vehicle;
    this.phrases = phrases;
    this.hands = new HandWords(vehicle, phrases, watched, twin);
  }

  /** Name with id of a part; the id itself where the vehicle has none. */
  public String part(String id) {
    return vehicle.part(id).map(Part::title).orElse(id);
  }

  /** Names of parts, so many at most. */
  public String parts(List<String> ids, int most) {
    return listed(ids.stream().map(this::part).toList(), most);
  }

  /** A list of names, so many at most. */
  public String listed(List<String> titles, int most) {
    if (titles.size() <= most) {
      return String.join(", ", titles);
    }
    return phrases.say(
        "list.more",
        String.join(", ", titles.subList(0, most)),
        Integer.toString(titles.size() - most));
  }

  /** Where the red lead goes; empty for a look. */
  Optional<PointView> red(Check check) {
    return check.red().map(at -> check.kind() == CheckKind.DRAIN ? endOfLead(at) : point(at));
  }

  /** The end of what lies in the grounded lead that isn't on the post. */
  private PointView endOfLead(TerminalRef post) {
    Part battery = vehicle.battery();
    return new PointView(
        post,
        phrases.say("point.end-of-lead"),
        "",
        how(battery, battery.access(post.terminal())),
        battery.access(post.terminal()).minutes(),
        true);
  }

  /** A probe point. */
  public PointView point(TerminalRef at) {
    Part part = vehicle.requirePart(at.part());
    Access access = part.access(at.terminal());
    return new PointView(
        at,
        pointTitle(part, at.terminal()),
        part.label(),
        how(part, access),
        access.minutes(),
        access.reachable());
  }

  private String how(Part part, Access access) {
    return access.how().isEmpty() ? part.where() : access.how();
  }

  private String pointTitle(Part part, String terminal) {
    String key = "point." + part.kind().word() + "." + terminal;
    String side;
    if (phrases.has(key)) {
      side = phrases.say(key);
    } else if (part.kind() == PartKind.CONNECTOR) {
      String cavity = terminal.substring(0, terminal.length() - 1);
      side =
          phrases.say(terminal.endsWith("a") ? "point.connector.a" : "point.connector.b", cavity);
    } else {
      side = phrases.say("point.terminal", terminal);
    }
    return phrases.say("point", part.title(), side);
  }

  String where(Check check) {
    if (hands.speaksOf(check)) {
      return hands.where(check);
    }
    if (!check.kind().metered()) {
      return part(LoadRef.parse(check.subject().orElseThrow()).part());
    }
    if (check.kind() == CheckKind.DRAIN) {
      return phrases.say("where.drain");
    }
    TerminalRef red = check.red().orElseThrow();
    TerminalRef black = check.black().orElseThrow();
    if (hands.inHand(check)) {
      return phrases.say("where.in-hand", part(red.part()), red.terminal(), black.terminal());
    }
    if (black.equals(vehicle.groundedPost())) {
      return phrases.say("where.to-post", point(red).title());
    }
    if (red.part().equals(black.part())) {
      return phrases.say("where.across", part(red.part()));
    }
    return phrases.say("where.between", point(red).title(), point(black).title());
  }

  /** Where a check is taken, to go behind its value: "at ...", "across ..." or "between ...". */
  String place(Check check) {
    boolean across = check.kind().metered() && !toPost(check);
    return across ? where(check) : phrases.say("where.at", where(check));
  }

  private boolean toPost(Check check) {
    return check.kind() != CheckKind.DRAIN
        && check.black().equals(Optional.of(vehicle.groundedPost()));
  }

  /** What is asked in a check, in a few words: "volts DC at ..." or the question of a look. */
  String asked(Check check) {
    return check.kind().metered()
        ? phrases.say("asked", meter(check), place(check))
        : question(check);
  }

  /** The same of a check that is proposed. */
  public String asked(CheckView proposed) {
    return proposed.kind().metered() ? asked(OwnCheck.of(proposed).check()) : proposed.question();
  }

  /** What was told besides readings. */
  String deed(CaseEvent.Deed deed) {
    if (deed instanceof CaseEvent.Repaired r) {
      return phrases.say("deed.mended", part(r.part()));
    }
    if (deed instanceof CaseEvent.Swapped s) {
      boolean helped = s.helped() == FindCase.Helped.YES;
      return phrases.say(helped ? "deed.swap-helped" : "deed.swap-no-help", part(s.part()));
    }
    return deed instanceof CaseEvent.Refused r
        ? phrases.say("deed.refused", where(r.check().check()))
        : phrases.say("deed.photo", ((CaseEvent.Photographed) deed).file());
  }

  /** What the meter is set to. */
  public String meter(Check check) {
    return switch (check.kind()) {
      case VOLTS -> phrases.say("meter.volts");
      case MILLIVOLTS -> phrases.say("meter.millivolts");
      case OHMS -> phrases.say("meter.ohms");
      case DIODE -> phrases.say("meter.diode");
      case DRAIN -> phrases.say("meter.drain");
      default -> phrases.say("meter.none");
    };
  }

  /** A value of a check. */
  public String value(Check check, Reading.Value value) {
    Band.Unit unit = check.kind() == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT;
    if (value instanceof Reading.Value.Number n) {
      return Figures.value(n.value(), unit);
    }
    if (value instanceof Reading.Value.Between b) {
      return outcome(check, b.low(), b.high());
    }
    if (value instanceof Reading.Value.OverRange) {
      return "OL";
    }
    return seen(check, ((Reading.Value.Sight) value).seen());
  }

  /** A range of values of a check. */
  public String outcome(Check check, double low, double high) {
    Band.Unit unit = check.kind() == CheckKind.OHMS ? Band.Unit.OHM : Band.Unit.VOLT;
    boolean driven = unit == Band.Unit.OHM || check.kind() == CheckKind.DIODE;
    boolean open = Double.isInfinite(low) || (unit == Band.Unit.OHM && low <= 0);
    if (open && Double.isInfinite(high)) {
      return phrases.say("outcome.any");
    }
    if (open) {
      return phrases.say("outcome.below", Figures.value(high, unit));
    }
    if (Double.isInfinite(high)) {
      return driven
          ? phrases.say("outcome.above-ol", Figures.value(low, unit))
          : phrases.say("outcome.above", Figures.value(low, unit));
    }
    return Figures.range(low, high, unit);
  }

  /** What is seen in a check, in words. */
  public String seen(Check check, Seen seen) {
    return hands.watchesLamp(check)
        ? phrases.say("seen.lamp." + seen.word())
        : phrases.say("seen." + seen.word());
  }

  /** What is to be done by hand from one check to another, besides the setting. */
  HandWords hands() {
    return hands;
  }

  /** The question of a look. */
  public String question(Check check) {
    if (hands.speaksOf(check)) {
      return hands.question(check);
    }
    LoadRef ref = LoadRef.parse(check.subject().orElseThrow());
    Part part = vehicle.requirePart(ref.part());
    String title = part.title() + ref.filament().map(f -> " (" + f + ")").orElse("");
    return switch (part.kind()) {
      case RELAY -> phrases.say("question.relay", title);
      case FUSE -> phrases.say("question.fuse", title);
      case LAMP, DUAL_LAMP, LED -> phrases.say("question.lamp", title);
      default -> phrases.say("question.load", title);
    };
  }

  /** The answers of a look. */
  public List<Seen> choices(Check check) {
    if (hands.speaksOf(check)) {
      return check.kind().answers();
    }
    Part part = vehicle.requirePart(LoadRef.parse(check.subject().orElseThrow()).part());
    return switch (part.kind()) {
      case RELAY -> List.of(Seen.CLICKS, Seen.SILENT);
      case FUSE -> List.of(Seen.WHOLE, Seen.BROKEN);
      default -> List.of(Seen.ON, Seen.DIM, Seen.OFF);
    };
  }

  /** A part as subject of checks by eye and hand, once for each function that can be looked at. */
  Stream<PartView> subjects(Part part) {
    Optional<String> apart = part.apartMinutes().map(m -> part.id());
    Set<String> functions = part.spec().functions();
    // A load with one function has one without a name.
    return functions.stream().allMatch(String::isEmpty)
        ? Stream.of(new PartView(part.id(), part.title(), checks(part, part.id()), apart))
        : functions.stream()
            .map(
                f -> {
                  String subject = new LoadRef(part.id(), Optional.of(f)).toString();
                  String title = phrases.say("mode.at", part.title(), f);
                  return new PartView(subject, title, checks(part, subject), apart);
                });
  }

  private Map<CheckKind, List<Seen>> checks(Part part, String subject) {
    Map<CheckKind, List<Seen>> checks = new EnumMap<>(CheckKind.class);
    for (CheckKind kind : CheckKind.values()) {
      OwnCheck own =
          new OwnCheck(
              kind,
              Optional.empty(),
              Optional.empty(),
              Optional.of(subject),
              kind == CheckKind.UNPLUG_AND_LOOK ? Setting.REST.without(part.id()) : Setting.REST);
      // The battery's own unplugging is a lamp in the grounded lead: proposed, never improvised.
      if (!kind.metered() && own.takes(part) && part.kind() != PartKind.BATTERY) {
        checks.put(kind, choices(own.check()));
      }
    }
    return checks;
  }

  String mode(Findings.ModeBelief mode) {
    String element = mode.suspect().mode();
    int colon = element.indexOf(':');
    String where = colon < 0 ? "" : element.substring(colon + 1);
    if (where.contains(":")) {
      where = where.substring(where.indexOf(':') + 1);
    }
    String title = where.isEmpty() ? mode.title() : phrases.say("mode.at", mode.title(), where);
    return mode.ohms().map(o -> phrases.say("mode.ohms", title, Figures.range(o))).orElse(title);
  }

  /** A whole set-up. */
  public List<String> setting(Setting setting) {
    List<String> lines = new ArrayList<>();
    setting.positions().forEach((c, p) -> lines.add(phrases.say("set.position", part(c), p)));
    setting.apart().forEach(p -> lines.add(apart(p)));
    if (lines.isEmpty()) {
      lines.add(phrases.say("set.rest"));
    }
    return lines;
  }

  /** What changes from one set-up to another, in the order of hands. */
  public List<String> change(Setting from, Setting to) {
    List<String> lines = new ArrayList<>();
    Set<String> controls = new TreeSet<>(from.positions().keySet());
    controls.addAll(to.positions().keySet());
    Set<String> parts = new TreeSet<>(from.apart());
    parts.addAll(to.apart());
    // First off, then unplug; plug in before switching on again.
    for (String p : parts) {
      if (from.apart().contains(p) && !to.apart().contains(p)) {
        lines.add(putBack(p));
      }
    }
    for (String c : controls) {
      String position = vehicle.position(c, to);
      if (!vehicle.position(c, from).equals(position)) {
        lines.add(phrases.say("set.position", part(c), position));
      }
    }
    for (String p : parts) {
      if (!from.apart().contains(p) && to.apart().contains(p)) {
        lines.add(apart(p));
      }
    }
    return lines;
  }

  private String apart(String id) {
    return phrases.say("apart." + apartKind(id), part(id));
  }

  String putBack(String id) {
    return phrases.say("back." + apartKind(id), part(id));
  }

  private String apartKind(String id) {
    Part part = vehicle.requirePart(id);
    return switch (part.kind()) {
      case BATTERY -> "battery";
      case FUSE -> "fuse";
      case RELAY -> "relay";
      case LAMP, DUAL_LAMP -> "lamp";
      case CONNECTOR -> "connector";
      default -> Hazards.alternator(part) ? "charging" : "other";
    };
  }

  String joined(List<String> lines) {
    return lines.stream().collect(Collectors.joining(", "));
  }
}
