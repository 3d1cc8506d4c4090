package loopwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loopwright.model.Part;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;

/** Terminals with nothing on them. */
final class TerminalFigures {
  private final Plan plan;

  TerminalFigures(Plan plan) {
    this.plan = plan;
  }

  void add() {
    Set<TerminalRef> used = plan.vehicle().usedTerminals();
    for (Part part : plan.vehicle().parts()) {
      List<String> bare = new ArrayList<>();
      for (String terminal : part.spec().terminals()) {
        if (!used.contains(new TerminalRef(part.id(), terminal))
            && !part.spare().contains(terminal)) {
          bare.add(terminal);
        }
      }
      if (!bare.isEmpty()) {
        plan.add(
            new Figure(
                part.id(),
                Figure.Kind.BARE_TERMINALS,
                bare.size(),
                0,
                Setting.REST,
                List.of(),
                List.of(String.join(", ", bare))));
      }
    }
  }
}
