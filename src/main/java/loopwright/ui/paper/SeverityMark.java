package loopwright.ui.paper;

import java.util.Locale;
import java.util.Optional;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import loopwright.diagnosis.rulebook.Conclusion.Severity;

/**
 * The mark of a severity: a flame, an open contact, a staircase down, a ring; for what keeps the
 * plan from being solved, a wire that ends nowhere. The style sheet holds the shapes.
 */
final class SeverityMark {
  private SeverityMark() {}

  static StackPane of(Optional<Severity> severity) {
    Region mark = new Region();
    mark.getStyleClass()
        .addAll(
            "severity-mark",
            "severity-" + severity.map(s -> s.name().toLowerCase(Locale.ROOT)).orElse("unsolved"));
    StackPane holder = new StackPane(mark);
    holder.getStyleClass().add("severity-holder");
    return holder;
  }
}
