package loopwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import loopwright.casework.Problem;
import loopwright.casework.RulesElsewhere;

/**
 * Asks whether rules from elsewhere may run. Rules are programs; a person has to have seen what is
 * there. All of it goes to the log, so that lines for programs stay what they are.
 */
final class RulesQuestion {
  private static final int LONGEST_ANSWER = 100;

  private RulesQuestion() {}

  /**
   * Has the rules of a folder taken, if they were allowed before or are now.
   *
   * @throws Problem if they can't be taken or may not
   */
  static void settle(CliWorld world, Path folder) throws Problem {
    RulesElsewhere rules = world.rulesFrom(folder);
    if (!rules.allowedBefore()) {
      Page log = new Page(world.err(), Page.USUAL);
      show(log, folder, rules);
      if (!world.hasTerminal()) {
        throw new Problem("--rules", folder.toString(), Speech.of("rules.nobody"));
      }
      log.prompt(Speech.of("rules.question") + "> ");
      if (!Speech.yes(line(world.in()).strip())) {
        throw new Problem("--rules", folder.toString(), Speech.of("rules.refused"));
      }
    }
    rules.take();
  }

  private static void show(Page log, Path folder, RulesElsewhere rules) {
    log.say(Speech.of("rules.warning", RulesElsewhere.plain(folder.toString())));
    int same = 0;
    for (RulesElsewhere.Rule rule : rules.rules()) {
      if (rule.own() == RulesElsewhere.Own.SAME) {
        same++;
      } else {
        log.block("  " + Speech.of("rules." + rule.own()) + "  ", rule.words());
      }
    }
    log.say(Speech.of("rules.same", same));
    log.say(Speech.of("rules.fingerprint", rules.fingerprint()));
    log.flush();
  }

  /** One line and no byte more: what follows belongs to the command. */
  private static String line(InputStream in) {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    try {
      for (int b = in.read(); b >= 0 && b != '\n'; b = in.read()) {
        if (line.size() < LONGEST_ANSWER) {
          line.write(b);
        }
      }
    } catch (IOException e) {
      return "";
    }
    return line.toString(StandardCharsets.UTF_8);
  }
}
