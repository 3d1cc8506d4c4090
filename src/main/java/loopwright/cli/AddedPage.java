package loopwright.cli;

import loopwright.casework.pattern.Added;
import loopwright.casework.pattern.Outcome;

/** Prints what patterns add. */
final class AddedPage {
  private AddedPage() {}

  static void show(Page page, Outcome outcome) {
    page.say(Speech.of("added.parts", outcome.added().size()));
    for (Added added : outcome.added()) {
      page.block("  " + added.title() + ": ", added.value());
      page.block("      " + Speech.of("added.because") + " ", added.source());
    }
    if (!outcome.circuits().isEmpty()) {
      page.gap();
      page.say(Speech.of("added.circuits", String.join(", ", outcome.circuits().values())));
    }
    if (!outcome.told().isEmpty()) {
      page.gap();
      page.items(outcome.told());
    }
  }
}
