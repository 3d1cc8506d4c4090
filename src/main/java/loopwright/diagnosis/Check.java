package loopwright.diagnosis;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * A reading or observation that can be taken: of what, where and in which setting. Two equal checks
 * are the same check.
 *
 * @param kind kind of check
 * @param red where red goes; empty for a look
 * @param black where black goes; empty for a look
 * @param subject what is looked at, unplugged or swapped; empty for a meter check. A filament is
 *     written {@code L7:stop}
 * @param setting the setting it is taken in
 */
public record Check(
    CheckKind kind,
    Optional<TerminalRef> red,
    Optional<TerminalRef> black,
    Optional<String> subject,
    Setting setting) {

  /** Rejects missing components, and leads where there is nothing to measure. */
  public Check {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(setting, "setting");
    if (kind.metered() != (red.isPresent() && black.isPresent())) {
      throw new IllegalArgumentException(
          kind.word() + (kind.metered() ? " needs two points" : " takes no leads"));
    }
    if (!kind.metered() && subject.isEmpty()) {
      throw new IllegalArgumentException(kind.word() + " needs something to look at");
    }
  }

  /** A meter check. */
  public static Check measure(CheckKind kind, TerminalRef red, TerminalRef black, Setting setting) {
    return new Check(kind, Optional.of(red), Optional.of(black), Optional.empty(), setting);
  }

  /** A look at a load, fuse or relay. */
  public static Check look(String subject, Setting setting) {
    return seen(CheckKind.LOOK, subject, setting);
  }

  /**
   * Something unplugged, and a look at what that does.
   *
   * @param watched the load that is looked at; the battery's id for a lamp in its grounded lead
   * @param setting the setting, the unplugged part among those apart
   */
  public static Check unplugAndLook(String watched, Setting setting) {
    return seen(CheckKind.UNPLUG_AND_LOOK, watched, setting);
  }

  /**
   * The drop across a resistor of 1 ohm in the battery's grounded lead, red on the lead's end of
   * it, black on the post.
   *
   * @param post the battery's grounded post
   * @param setting the setting, a fuse that is pulled for it among those apart
   */
  public static Check drain(TerminalRef post, Setting setting) {
    return measure(CheckKind.DRAIN, post, post, setting);
  }

  /** A filament lamp in a fuse's place. */
  public static Check lampForFuse(String fuse, Setting setting) {
    return seen(CheckKind.LAMP_FOR_FUSE, fuse, setting);
  }

  /** A known-good twin in a part's place, and a look at the load complained of. */
  public static Check swap(String part, Setting setting) {
    return seen(CheckKind.SWAP, part, setting);
  }

  /** A part moved by hand while the load complained of is watched. */
  public static Check wiggle(String part, Setting setting) {
    return seen(CheckKind.WIGGLE, part, setting);
  }

  /** A part warmed gently while the load complained of is watched. */
  public static Check warm(String part, Setting setting) {
    return seen(CheckKind.WARM, part, setting);
  }

  /** A load left on for ten minutes and watched. */
  public static Check load(String load, Setting setting) {
    return seen(CheckKind.LOAD, load, setting);
  }

  private static Check seen(CheckKind kind, String subject, Setting setting) {
    return new Check(kind, Optional.empty(), Optional.empty(), Optional.of(subject), setting);
  }

  /**
   * Whether the meter drives its current through a part that is out of the vehicle, and no more.
   */
  public boolean inHand(Vehicle vehicle) {
    return kind.drives() && vehicle.inHand(red.orElseThrow(), black.orElseThrow(), setting);
  }

  /**
   * Whether it reads the volts between the points of another check, in the same setting: no volts
   * there prove it dead for the other.
   */
  public boolean readsWhere(Check other) {
    return kind.reads()
        && red.equals(other.red)
        && black.equals(other.black)
        && setting.equals(other.setting);
  }

  /** Whether what is watched is a lamp in the battery's grounded lead. */
  public boolean watchesLead(Vehicle vehicle) {
    return kind == CheckKind.UNPLUG_AND_LOOK
        && subject.filter(vehicle.battery().id()::equals).isPresent();
  }

  /** Id of the part that the leads lie across, if they do. */
  public Optional<String> acrossPart() {
    return red.filter(r -> !black.equals(red))
        .map(TerminalRef::part)
        .filter(part -> black.map(TerminalRef::part).filter(part::equals).isPresent());
  }

  /** Id of the part that the hand goes to where no leads are used on the vehicle itself. */
  public Optional<String> handled() {
    boolean unplugs = kind == CheckKind.UNPLUG_AND_LOOK || kind == CheckKind.DRAIN;
    if (unplugs && !setting.apart().isEmpty()) {
      return Optional.of(setting.apart().first());
    }
    return subject.map(s -> LoadRef.parse(s).part());
  }

  /** Id of the part that the check is at: taken in hand, or else under the red lead. */
  public String at() {
    return handled().or(() -> red.map(TerminalRef::part)).orElse("");
  }

  /** A name that is the same for the same check in every run. */
  public String id() {
    String what =
        red.map(r -> r + ">" + black.map(TerminalRef::toString).orElse(""))
            .orElseGet(() -> subject.orElse(""));
    String positions =
        setting.positions().entrySet().stream()
            .map(Check::written)
            .collect(Collectors.joining(","));
    String apart = setting.apart().stream().map(p -> "-" + p).collect(Collectors.joining(","));
    return kind.word()
        + " "
        + what
        + (positions.isEmpty() ? "" : " " + positions)
        + (apart.isEmpty() ? "" : " " + apart);
  }

  private static String written(Map.Entry<String, String> position) {
    return position.getKey() + "=" + position.getValue();
  }
}
