package loopwright.cli;

import java.util.List;
import java.util.stream.Collectors;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView.OutcomeView;
import loopwright.casework.FindCase;
import loopwright.casework.Outlook;
import loopwright.casework.Problem;

/** What the results of a check would leave, as an indented tree. */
final class TreePage {
  /** Parts named for one result. */
  private static final int NAMED = 3;

  private final Page page;

  TreePage(Page page) {
    this.page = page;
  }

  /** Shows a tree two checks deep. What follows is worked out branch by branch as it is shown. */
  void show(Outlook outlook, FindCase findCase) throws Problem {
    page.say(outlook.words() + ", " + PlainTalk.minutes(outlook.minutes()));
    if (!outlook.note().isEmpty()) {
      page.block("  ", outlook.note());
    }
    for (int i = 0; i < outlook.branches().size(); i++) {
      Outlook.Branch branch = outlook.branches().get(i);
      page.block(
          "+- ", branch.outcome().words() + ", " + Staircase.percent(branch.outcome().chance()));
      page.block("|    " + Speech.of("tree.leaves") + " ", left(branch.left()));
      page.flush();
      then(findCase.then(outlook.check(), i));
    }
    for (int i = 0; i < outlook.instead().size(); i++) {
      Outlook.Choice choice = outlook.instead().get(i);
      page.block(
          i == 0 ? Speech.of("tree.or") : "         ",
          "tree " + (i + 2) + ": " + choice.words() + ", " + PlainTalk.minutes(choice.minutes()));
    }
  }

  private void then(Outlook.Then then) {
    if (then.move() != CaseView.Move.CHECK || then.outcomes().isEmpty()) {
      page.block("|    " + Speech.of("tree.then") + "   ", then.words());
      return;
    }
    String set =
        then.set().isEmpty() ? "" : "; " + Speech.of("tree.first", String.join(", ", then.set()));
    page.block(
        "|    " + Speech.of("tree.then") + "   ",
        then.words() + ", " + PlainTalk.minutes(then.minutes()) + set);
    for (OutcomeView outcome : then.outcomes()) {
      page.block(
          "|      +- ",
          outcome.words()
              + ", "
              + Staircase.percent(outcome.chance())
              + ": "
              + Speech.of("tree.leaving")
              + " "
              + named(outcome.leaves()));
    }
  }

  private static String left(List<Outlook.Left> left) {
    String listed =
        left.stream()
            .limit(NAMED)
            .map(l -> l.title() + " " + Staircase.percent(l.belief()))
            .collect(Collectors.joining(", "));
    return left.isEmpty() ? Speech.of("tree.nothing") : listed + more(left.size());
  }

  private static String named(List<String> titles) {
    return titles.isEmpty()
        ? Speech.of("tree.nothing")
        : titles.stream().limit(NAMED).collect(Collectors.joining(", ")) + more(titles.size());
  }

  private static String more(int size) {
    return size > NAMED ? " " + Speech.of("more", size - NAMED) : "";
  }
}
