package loopwright.ui.practise;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import loopwright.casework.practise.PractiseDesk;
import loopwright.model.Vehicle;

/**
 * Where drills come from.
 *
 * @param desk makes drills
 * @param demo names of the demo vehicles, in the order in which codes number them
 * @param vehicles gives a demo vehicle by its name
 * @param sheets prints class sheets; empty where none can be printed
 */
public record PractiseSource(
    PractiseDesk desk,
    List<String> demo,
    Function<String, Optional<Vehicle>> vehicles,
    Optional<ClassSheets> sheets) {
  /** Copies the list. */
  public PractiseSource {
    Objects.requireNonNull(desk, "desk");
    demo = List.copyOf(demo);
  }

  /** Where drills come from, without class sheets. */
  public PractiseSource(
      PractiseDesk desk, List<String> demo, Function<String, Optional<Vehicle>> vehicles) {
    this(desk, demo, vehicles, Optional.empty());
  }
}
