package loopwright.io;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What came of reading a file: what it holds, or everything that is wrong with it. Never half of
 * each.
 *
 * @param <T> what the file holds
 */
public sealed interface ReadResult<T> {

  /**
   * The file was good.
   *
   * @param value what it holds
   */
  record Good<T>(T value) implements ReadResult<T> {
    /** Rejects a missing value. */
    public Good {
      Objects.requireNonNull(value, "value");
    }
  }

  /**
   * The file was refused.
   *
   * @param defects everything wrong with it, in the order of the file; at least one
   */
  record Refused<T>(List<Defect> defects) implements ReadResult<T> {
    /** Copies the list; rejects an empty one. */
    public Refused {
      defects = List.copyOf(defects);
      if (defects.isEmpty()) {
        throw new IllegalArgumentException("a refused file has at least one defect");
      }
    }
  }

  /** What is wrong; empty for a good file. */
  default List<Defect> defects() {
    return this instanceof Refused<T> refused ? refused.defects() : List.of();
  }

  /** What the file holds; empty for a refused one. */
  default Optional<T> found() {
    return this instanceof Good<T> good ? Optional.of(good.value()) : Optional.empty();
  }

  /**
   * What the file holds.
   *
   * @throws DefectiveFileException listing everything that is wrong with it
   */
  default T orThrow() {
    if (this instanceof Good<T> good) {
      return good.value();
    }
    throw new DefectiveFileException(defects());
  }
}
