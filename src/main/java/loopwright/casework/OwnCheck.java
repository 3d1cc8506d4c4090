package loopwright.casework;

import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/**
 * A check of the person's own choice.
 *
 * @param kind kind of check
 * @param red where red goes; empty for a look
 * @param black where black goes; empty for a look
 * @param lookAt the part looked at; empty for a meter check
 * @param setting the set-up it is taken in
 */
public record OwnCheck(
    CheckKind kind,
    Optional<TerminalRef> red,
    Optional<TerminalRef> black,
    Optional<String> lookAt,
    Setting setting) {
  /** Rejects missing parts. */
  public OwnCheck {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(setting, "setting");
  }

  /** A proposed check, as one of the person's own choice. */
  public static OwnCheck of(CheckView proposed) {
    return new OwnCheck(
        proposed.kind(),
        proposed.red().map(PointView::ref),
        proposed.black().map(PointView::ref),
        proposed.lookAt(),
        proposed.set().setting());
  }

  /** A check of the diagnosis, as a case or a journal keeps it. */
  public static OwnCheck of(Check check) {
    return new OwnCheck(check.kind(), check.red(), check.black(), check.subject(), check.setting());
  }

  /** The same as the diagnosis knows it. */
  public Check check() {
    return new Check(kind, red, black, lookAt, setting);
  }

  /** Ids of the parts that the leads are on, or that is looked at or taken in hand. */
  public Set<String> subjects() {
    Set<String> parts = new TreeSet<>();
    red.ifPresent(p -> parts.add(p.part()));
    black.ifPresent(p -> parts.add(p.part()));
    lookAt.map(LoadRef::parse).ifPresent(l -> parts.add(l.part()));
    return parts;
  }

  /** Whether a part is one that a check of this kind looks at or takes in hand. */
  boolean takes(Part part) {
    boolean visible =
        part.kind().isLoad() || part.kind() == PartKind.FUSE || part.kind() == PartKind.RELAY;
    return switch (kind) {
      case LAMP_FOR_FUSE -> part.kind() == PartKind.FUSE;
      case SWAP, WIGGLE, WARM -> true;
      case LOAD -> part.kind().isLoad();
      case UNPLUG_AND_LOOK ->
          part.kind() == PartKind.BATTERY || (visible && !setting.apart().isEmpty());
      default -> visible;
    };
  }
}
