package loopwright.casework;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loopwright.diagnosis.Check;
import loopwright.diagnosis.CheckKind;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import loopwright.solver.TestLamp;

/** The words of checks in which hands do something: lamps put in, twins fitted, joints moved. */
final class HandWords {
  private final Vehicle vehicle;
  private final Phrases phrases;
  private final LoadRef watched;
  private final Function<String, Optional<String>> twin;

  HandWords(
      Vehicle vehicle, Phrases phrases, LoadRef watched, Function<String, Optional<String>> twin) {
    this.vehicle = vehicle;
    this.phrases = phrases;
    this.watched = watched;
    this.twin = twin;
  }

  /** Whether a check is of the kinds that these words are for. */
  boolean speaksOf(Check check) {
    return !check.kind().metered() && check.kind() != CheckKind.LOOK;
  }

  /** Whether a lamp that is put in for the check is what is watched. */
  boolean watchesLamp(Check check) {
    return check.kind() == CheckKind.LAMP_FOR_FUSE || watchesLead(check);
  }

  private boolean watchesLead(Check check) {
    return check.watchesLead(vehicle);
  }

  /** Whether both leads lie on one part that is out. */
  boolean inHand(Check check) {
    return check.kind().metered()
        && vehicle.inHand(check.red().orElseThrow(), check.black().orElseThrow(), check.setting());
  }

  String where(Check check) {
    String part = part(check.handled().orElseThrow());
    return switch (check.kind()) {
      case LAMP_FOR_FUSE -> phrases.say("where.lamp-for-fuse", part);
      case SWAP -> phrases.say("where.swap", load(watched), part);
      case WIGGLE -> phrases.say("where.wiggle", load(watched), part);
      case WARM -> phrases.say("where.warm", load(watched), part);
      case LOAD -> phrases.say("where.load", load(subject(check)));
      default ->
          watchesLead(check)
              ? phrases.say("where.lead")
              : phrases.say("where.unplug", load(subject(check)), unplugged(check));
    };
  }

  String question(Check check) {
    String part = part(check.handled().orElseThrow());
    return switch (check.kind()) {
      case LAMP_FOR_FUSE -> phrases.say("question.lamp-for-fuse", part);
      case SWAP ->
          twin.apply(check.handled().orElseThrow())
              .map(t -> phrases.say("question.swap", part, part(t), load(watched)))
              .orElseGet(() -> phrases.say("question.swap-spare", part, load(watched)));
      case WIGGLE -> phrases.say("question.wiggle", part, load(watched));
      case WARM -> phrases.say("question.warm", part, load(watched));
      case LOAD -> phrases.say("question.left-on", load(subject(check)));
      default ->
          watchesLead(check)
              ? phrases.say("question.lead")
              : phrases.say("question.unplug", unplugged(check), load(subject(check)));
    };
  }

  /** What the check before had in, to be taken out or changed back before this one. */
  List<String> out(Optional<Check> before, Check check) {
    return before.filter(b -> !sameInPlace(b, check)).map(this::putBack).orElse(List.of());
  }

  /** What is to be put in for a check, unless the one before had it in. */
  List<String> in(Optional<Check> before, Check check) {
    if (before.filter(b -> sameInPlace(b, check)).isPresent()) {
      return List.of();
    }
    if (check.kind() == CheckKind.LAMP_FOR_FUSE) {
      return List.of(
          phrases.say("hand.lamp-in", part(check.handled().orElseThrow()), watts(check)));
    }
    String battery = part(vehicle.battery().id());
    if (check.kind() == CheckKind.DRAIN) {
      return List.of(phrases.say("hand.resistor-in", battery));
    }
    return watchesLead(check)
        ? List.of(phrases.say("hand.lead-in", battery, watts(check)))
        : List.of();
  }

  private String watts(Check check) {
    return Integer.toString(
        check.kind() == CheckKind.LAMP_FOR_FUSE
            ? TestLamp.fuseWatts(vehicle.systemVolts())
            : TestLamp.DRAIN_WATTS);
  }

  /** What a check leaves in a wrong place, to be put back after it. */
  List<String> putBack(Check check) {
    String part = part(check.handled().orElse(""));
    return switch (check.kind()) {
      case LAMP_FOR_FUSE -> List.of(phrases.say("hand.lamp-out", part));
      case SWAP ->
          List.of(
              twin.apply(check.handled().orElseThrow())
                  .map(t -> phrases.say("hand.swap-back", part, part(t)))
                  .orElseGet(() -> phrases.say("hand.spare-out", part)));
      case UNPLUG_AND_LOOK ->
          watchesLead(check)
              ? List.of(phrases.say("hand.lead-out", part(vehicle.battery().id())))
              : List.of();
      case DRAIN -> List.of(phrases.say("hand.resistor-out", part(vehicle.battery().id())));
      default -> List.of();
    };
  }

  /** Whether what one check has put in stays in for the other. */
  private boolean sameInPlace(Check before, Check check) {
    return before.kind() == check.kind()
        && before.subject().equals(check.subject())
        && (watchesLamp(check) || check.kind() == CheckKind.DRAIN);
  }

  private String unplugged(Check check) {
    return check.setting().apart().stream()
        .map(this::part)
        .collect(java.util.stream.Collectors.joining(", "));
  }

  private static LoadRef subject(Check check) {
    return LoadRef.parse(check.subject().orElseThrow());
  }

  private String load(LoadRef ref) {
    return part(ref.part()) + ref.filament().map(f -> " (" + f + ")").orElse("");
  }

  private String part(String id) {
    return vehicle.part(id).map(Part::title).orElse(id);
  }
}
