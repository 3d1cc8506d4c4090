package loopwright.io;

import java.util.List;
import java.util.stream.Collectors;

/** A file that could not be used, with everything that is wrong with it. */
public final class DefectiveFileException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Defect> defects;

  /** The message holds one defect a line. */
  public DefectiveFileException(List<Defect> defects) {
    super(defects.stream().map(Defect::message).collect(Collectors.joining("\n")));
    this.defects = List.copyOf(defects);
  }

  /** What is wrong. */
  public List<Defect> defects() {
    return defects;
  }
}
