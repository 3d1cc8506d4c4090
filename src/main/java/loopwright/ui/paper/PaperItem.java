package loopwright.ui.paper;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.casework.LoopView;
import loopwright.casework.PlanFinding;
import loopwright.casework.Sketch;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.LoadRef;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;
import loopwright.model.VehicleCheck;

/**
 * A card of the paper check.
 *
 * @param key by which the same finding is known again after an edit
 * @param title what it is about, as a person calls it
 * @param severity how bad it is; empty for what keeps the plan from being solved
 * @param says what was found
 * @param consequence what follows; may be empty
 * @param cure what to do; may be empty
 * @param source where the limit comes from; may be empty
 * @param setting how the controls stand
 * @param target the part or circuit to go to in order to mend it
 * @param others other parts that have to do with it
 * @param circuits the circuits that the part lies in
 */
public record PaperItem(
    String key,
    String title,
    Optional<Severity> severity,
    String says,
    String consequence,
    String cure,
    String source,
    List<String> setting,
    Optional<String> target,
    List<Named> others,
    List<Named> circuits) {

  /** A part or circuit with its name. */
  public record Named(String id, String name) {}

  /** Copies the lists. */
  public PaperItem {
    setting = List.copyOf(setting);
    others = List.copyOf(others);
    circuits = List.copyOf(circuits);
  }

  /** Whether it belongs to those told first, rather than what is worth knowing. */
  public boolean isDefect() {
    return !severity.equals(Optional.of(Severity.KNOW));
  }

  /** The same card under another key. */
  PaperItem called(String newKey) {
    return new PaperItem(
        newKey,
        title,
        severity,
        says,
        consequence,
        cure,
        source,
        setting,
        target,
        others,
        circuits);
  }

  /** Whether all the words stand in it, in any order and case. */
  boolean has(String words) {
    String all =
        Stream.concat(
                Stream.of(title, says, consequence, cure),
                Stream.concat(others.stream(), circuits.stream()).map(Named::name))
            .collect(Collectors.joining(" "))
            .toLowerCase(Locale.ROOT);
    return Stream.of(words.toLowerCase(Locale.ROOT).strip().split("\\s+")).allMatch(all::contains);
  }

  /** The first of its circuits, with its part as the one in question. May take a while. */
  Optional<LoopView> drawing(Vehicle vehicle) {
    return circuits.stream()
        .flatMap(c -> new Sketch(vehicle).of(c.id()).stream())
        .map(this::pointing)
        .findFirst();
  }

  private LoopView pointing(LoopView loop) {
    return new LoopView(
        loop.title(),
        loop.pieces().stream().map(this::pointing).toList(),
        loop.stairs(),
        loop.branches().stream().map(this::pointing).toList());
  }

  /** What all belief lies on is drawn strongest and never folded away. */
  private LoopView.PieceView pointing(LoopView.PieceView p) {
    return target.equals(Optional.of(p.part()))
        ? new LoopView.PieceView(
            p.part(),
            p.title(),
            p.label(),
            p.kind(),
            p.in(),
            p.out(),
            p.detail(),
            p.standing(),
            1,
            p.clearedBy())
        : p;
  }

  /** A finding of the check. */
  static PaperItem of(PlanFinding f, Vehicle vehicle, List<Named> circuits) {
    String part = LoadRef.parse(f.part()).part();
    return new PaperItem(
        String.join(" ", f.part(), f.rule(), String.join(",", f.with())),
        f.title(),
        Optional.of(f.severity()),
        f.finding(),
        f.consequence(),
        f.cure(),
        f.source(),
        f.setting(),
        Optional.of(part),
        f.with().stream()
            .map(id -> LoadRef.parse(id).part())
            .filter(id -> !id.equals(part))
            .distinct()
            .flatMap(id -> vehicle.part(id).stream())
            .map(p -> new Named(p.id(), p.title()))
            .toList(),
        circuits);
  }

  /** What keeps the vehicle from being solved. */
  static PaperItem of(VehicleCheck.Finding f, Vehicle vehicle) {
    return new PaperItem(
        f.object() + " " + f.what(),
        f.object(),
        Optional.empty(),
        f.object() + ": " + f.what(),
        "",
        "",
        "",
        List.of(),
        place(f.path(), vehicle),
        List.of(),
        List.of());
  }

  /** The part or circuit at a path such as {@code parts[6].metres}; of a join, its first part. */
  private static Optional<String> place(String path, Vehicle vehicle) {
    int open = path.indexOf('[');
    int close = path.indexOf(']');
    if (open < 0 || close < open) {
      return Optional.empty();
    }
    String list = path.substring(0, open);
    int at = Integer.parseInt(path.substring(open + 1, close));
    return switch (list) {
      case "parts" -> Optional.of(vehicle.parts().get(at).id());
      case "circuits" -> Optional.of(vehicle.circuits().get(at).id());
      case "joins" ->
          vehicle.joins().get(at).stream()
              .map(TerminalRef::part)
              .filter(Set.copyOf(vehicle.parts().stream().map(p -> p.id()).toList())::contains)
              .findFirst();
      default -> Optional.empty();
    };
  }
}
