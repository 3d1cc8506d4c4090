package loopwright.rules;

import java.util.List;
import java.util.stream.Collectors;

/** The rules can't be used. Carries every defect found, not only the first. */
public final class RuleBookException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<RuleDefect> defects;

  /** A book with these defects, at least one. */
  public RuleBookException(List<RuleDefect> defects) {
    super(
        defects.stream()
            .map(RuleDefect::toString)
            .collect(Collectors.joining("\n", RuleDefect.say("all", defects.size()) + "\n", "")));
    this.defects = List.copyOf(defects);
  }

  /** All defects, by file and line. */
  public List<RuleDefect> defects() {
    return defects;
  }
}
