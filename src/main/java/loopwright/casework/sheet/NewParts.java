package loopwright.casework.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import loopwright.casework.edit.Ends;
import loopwright.casework.edit.Shown;
import loopwright.model.Estimate;
import loopwright.model.Nearest;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.ShortName;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * Parts that a list's wires end on and the vehicle doesn't have, their kind guessed by the letters
 * they begin with (common practice; reference letters of IEEE 315 and IEC 81346-2 among them) and
 * by the terminals named. Values are a guess too, and the part's name says so.
 */
final class NewParts {
  /** Letters or words that a part's id begins with, by kind; the first that fits is taken. */
  private static final Map<PartKind, Pattern> LETTERS = new LinkedHashMap<>();

  static {
    letters(PartKind.BATTERY, "b?bat(?:t|tery)?|bt");
    letters(PartKind.FUSE, "f|fu|fs|fl|link|\\p{L}*fuse");
    letters(PartKind.RELAY, "k|r|rl|rly|rel|\\p{L}*relay");
    letters(PartKind.SWITCH, "s|sw|key|ign|button|pb|\\p{L}*switch");
    letters(PartKind.SPLICE, "sp|spl|splice|bus|bar|busbar|joint|jn");
    letters(PartKind.CONNECTOR, "c|cn|con|conn|connector|x|j|p|plug|socket");
    letters(PartKind.GROUND, "g|gnd|gr|ground|earth|stud");
    letters(PartKind.BODY, "frame|body|chassis|engine|block|hull");
    letters(PartKind.LED, "led");
    letters(PartKind.LAMP, "l|la|lp|ds|hl|tl|bulb|beacon|flood|\\p{L}*(?:lamp|light)");
    letters(PartKind.MOTOR, "m|mot|starter|\\p{L}*(?:motor|fan|pump|wiper|blower)");
    letters(PartKind.HORN, "h|hn|\\p{L}*horn");
    letters(PartKind.DIODE, "d|dio|diode|cr");
    letters(PartKind.HEATER, "heater|heat|glow");
    letters(PartKind.SOLENOID, "sol|solenoid|valve|y");
    letters(PartKind.SENDER, "sender|sens|sensor");
    letters(PartKind.ELECTRONICS, "radio|module|unit|ecu|gauge|clock|meter");
  }

  private static final Map<Set<String>, PartKind> BY_TERMINALS =
      Map.of(
          Set.of("30", "85", "86", "87", "87a"), PartKind.RELAY,
          Set.of("feed", "load"), PartKind.FUSE,
          Set.of("pos", "neg"), PartKind.BATTERY,
          Set.of("anode", "cathode"), PartKind.DIODE,
          Set.of("lug"), PartKind.GROUND,
          Set.of("metal"), PartKind.BODY);

  private static final Pattern BATTERY_POST =
      Pattern.compile("(?:batt?(?:ery)?|bt)\\d* ?[+-]", Pattern.CASE_INSENSITIVE);

  private static void letters(PartKind kind, String regex) {
    LETTERS.put(kind, Pattern.compile(regex));
  }

  /** One end of a wire on a part: its terminal as written, empty if only the part is named. */
  private record Use(int line, String terminal, Sides.End end) {}

  private final Ends known;
  private final Vehicle vehicle;
  private final Map<String, List<Use>> uses = new LinkedHashMap<>();

  NewParts(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.known = new Ends(vehicle);
  }

  /** Notes an end; what is known or can't be a part's name is left alone. */
  void note(int line, String part, String terminal, Sides.End end) {
    if (!terminal.isEmpty()) {
      note(part, new Use(line, terminal, end));
      return;
    }
    boolean isKnown =
        known.of(part).terminal().filter(t -> known.exactly(t.part()).isPresent()).isPresent();
    boolean post = BATTERY_POST.matcher(part).matches();
    int cut = post ? part.length() - 1 : ShortName.fits(part) ? -1 : firstSign(part);
    if (!isKnown && cut < 0) {
      note(part, new Use(line, "", end));
    } else if (!isKnown) {
      note(
          part.substring(0, cut).strip(),
          new Use(line, part.substring(post ? cut : cut + 1).strip(), end));
    }
  }

  private static int firstSign(String part) {
    for (int i = 0; i < part.length(); i++) {
      if (". :".indexOf(part.charAt(i)) >= 0) {
        return i;
      }
    }
    return -1;
  }

  private void note(String id, Use use) {
    boolean said = use.terminal().isEmpty() || ShortName.fits(use.terminal());
    if (ShortName.fits(id) && known.part(id).isEmpty() && said) {
      uses.computeIfAbsent(id, x -> new ArrayList<>()).add(use);
    }
  }

  /** The parts whose kind can be guessed. */
  List<WirePreview.Added> guessed() {
    List<WirePreview.Added> added = new ArrayList<>();
    uses.forEach(
        (id, ends) ->
            spec(id, ends)
                .ifPresent(
                    spec -> {
                      Part part = Part.of(id, SheetWords.say("guessed", spec.kind().said()), spec);
                      added.add(new WirePreview.Added(part, ends.get(0).line(), told(id, spec)));
                    }));
    return added;
  }

  /** The vehicle's joins, and new ground points bolted to its body where it has only one. */
  List<List<TerminalRef>> joins(List<WirePreview.Added> added) {
    List<List<TerminalRef>> joins = new ArrayList<>(vehicle.joins());
    body()
        .ifPresent(
            body ->
                added.stream()
                    .map(WirePreview.Added::part)
                    .filter(p -> p.kind() == PartKind.GROUND)
                    .forEach(p -> joins.add(List.of(new TerminalRef(p.id(), "metal"), body))));
    return joins;
  }

  private Optional<TerminalRef> body() {
    List<Part> bodies = vehicle.parts().stream().filter(p -> p.kind() == PartKind.BODY).toList();
    return bodies.size() == 1
        ? Optional.of(new TerminalRef(bodies.get(0).id(), "metal"))
        : Optional.empty();
  }

  /** What is said of parts that the list names and that don't come with it. */
  List<String> remarks(boolean added) {
    List<String> guessable = new ArrayList<>();
    List<String> others = new ArrayList<>();
    uses.forEach((id, ends) -> (spec(id, ends).isPresent() ? guessable : others).add(id));
    List<String> remarks = new ArrayList<>();
    if (!added && !guessable.isEmpty()) {
      remarks.add(SheetWords.say("guessable", Shown.of(String.join(", ", guessable))));
    }
    if (!others.isEmpty()) {
      remarks.add(SheetWords.say("unguessable", Shown.of(String.join(", ", others))));
    }
    return remarks;
  }

  private String told(String id, PartSpec spec) {
    String meant =
        Nearest.to(id, vehicle.parts().stream().map(Part::id).toList())
            .filter(near -> isSlip(id, near))
            .map(near -> " " + SheetWords.say("meant-part", near))
            .orElse("");
    String on =
        spec.kind() == PartKind.GROUND
            ? body().map(b -> " " + SheetWords.say("added.on", b.part())).orElse("")
            : "";
    return SheetWords.say("added", id, spec.kind().said() + value(spec) + on) + meant;
  }

  /**
   * Whether one of two names close to each other is a slip: S1 and S2, F1 and K1 are both meant.
   */
  private static boolean isSlip(String id, String near) {
    boolean sameLetters = letters(id).equals(letters(near));
    return sameLetters
        ? id.length() != near.length()
        : Math.max(letters(id).length(), letters(near).length()) > 2;
  }

  private static String letters(String id) {
    return id.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}].*", "");
  }

  private static String value(PartSpec spec) {
    if (spec instanceof PartSpec.Fuse f) {
      return " " + SheetWords.say("added.of", (int) f.amps() + " A");
    }
    if (spec instanceof PartSpec.Lamp l) {
      return about(l.watts(), "W");
    }
    if (spec instanceof PartSpec.Motor m) {
      return about(m.amps(), "A");
    }
    return spec instanceof PartSpec.PlainLoad p ? about(p.amps(), "A") : "";
  }

  private static String about(Estimate value, String unit) {
    return " " + SheetWords.say("added.about", (int) value.about() + " " + unit);
  }

  private static Optional<PartSpec> spec(String id, List<Use> ends) {
    Optional<PartKind> byName =
        LETTERS.entrySet().stream()
            .filter(e -> e.getValue().matcher(letters(id)).matches())
            .map(Map.Entry::getKey)
            .findFirst();
    return byName
        .or(() -> byTerminals(ends))
        .map(kind -> spec(kind, ends))
        .filter(spec -> ends.stream().allMatch(use -> fits(spec, use)));
  }

  private static Optional<PartKind> byTerminals(List<Use> ends) {
    Set<String> named = new LinkedHashSet<>();
    ends.forEach(u -> named.add(u.terminal().toLowerCase(Locale.ROOT)));
    return BY_TERMINALS.entrySet().stream()
        .filter(e -> e.getKey().containsAll(named))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  private static boolean fits(PartSpec spec, Use use) {
    return use.terminal().isEmpty()
        ? Sides.of(spec, use.end()).isPresent()
        : spec.terminals().stream().anyMatch(t -> t.equalsIgnoreCase(use.terminal()))
            || Sides.named(spec, use.terminal(), use.end()).isPresent();
  }

  /** A part of a kind, with values that are common for it (own judgement) and wide limits. */
  private static PartSpec spec(PartKind kind, List<Use> ends) {
    Set<String> named = new LinkedHashSet<>();
    ends.stream().map(Use::terminal).filter(t -> !t.isEmpty()).forEach(named::add);
    Optional<Estimate> usual = Optional.empty();
    return switch (kind) {
      case BATTERY -> new PartSpec.Battery(usual, usual);
      case FUSE -> new PartSpec.Fuse(10, usual);
      case RELAY ->
          new PartSpec.Relay(
              named.stream().anyMatch(t -> t.equalsIgnoreCase("87a")),
              usual,
              usual,
              usual,
              usual,
              PartSpec.Suppression.NONE,
              Optional.empty());
      case SWITCH -> onOff(named);
      case SPLICE -> new PartSpec.Splice(List.copyOf(named), usual);
      case CONNECTOR -> new PartSpec.Connector(cavities(named), usual);
      case GROUND -> new PartSpec.Ground(usual);
      case BODY -> new PartSpec.Body();
      case LED -> new PartSpec.Led(usual, Estimate.between(0.02, 0.1, 2));
      case LAMP -> new PartSpec.Lamp(Optional.empty(), Estimate.between(2, 21, 60));
      case MOTOR -> new PartSpec.Motor(Estimate.between(1, 5, 20), usual);
      case DIODE -> new PartSpec.Diode(usual);
      case SENDER -> new PartSpec.Sender(new Spread(5, 60, 500));
      default -> new PartSpec.PlainLoad(kind, Estimate.between(0.5, 5, 15));
    };
  }

  private static PartSpec onOff(Set<String> named) {
    Set<String> all = new LinkedHashSet<>(named);
    for (String usual : List.of("in", "out")) {
      if (all.size() < 2) {
        all.add(usual);
      }
    }
    List<String> terminals = List.copyOf(all);
    List<PartSpec.SwitchContact> contacts = new ArrayList<>();
    for (String other : terminals.subList(1, terminals.size())) {
      contacts.add(new PartSpec.SwitchContact(terminals.get(0), other, Set.of("on")));
    }
    return new PartSpec.Switch(
        terminals,
        List.of("off", "on"),
        contacts,
        PartSpec.Control.MANUAL,
        false,
        Optional.empty(),
        Optional.empty());
  }

  /** Cavities by their number alone, or by the side named behind it. */
  private static List<String> cavities(Set<String> named) {
    Set<String> cavities = new LinkedHashSet<>();
    named.forEach(t -> cavities.add(t.matches("\\d+[ab]") ? t.substring(0, t.length() - 1) : t));
    return List.copyOf(cavities);
  }
}
