package loopwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
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
        throw new Problem(
            "--rules",
            folder.toString(),
            "rules that were allowed in a terminal before; nobody can be asked here");
      }
      log.prompt("Run them in place of the program's own? yes or no> ");
      if (!line(world.in()).strip().toLowerCase(Locale.ROOT).matches("y|yes")) {
        throw new Problem("--rules", folder.toString(), "rules you allow; these are not run");
      }
    }
    rules.take();
  }

  private static void show(Page log, Path folder, RulesElsewhere rules) {
    log.say(
        "The rules in "
            + RulesElsewhere.plain(folder.toString())
            + " didn't come with Loopwright. Rules are programs: they can do on this machine"
            + " whatever you can. Allow them only if you trust whoever wrote them.");
    int same = 0;
    for (RulesElsewhere.Rule rule : rules.rules()) {
      if (rule.own() == RulesElsewhere.Own.SAME) {
        same++;
      } else {
        log.block("  " + rule.own().word() + "  ", rule.words());
      }
    }
    log.say(same + " are the same as the program's own.");
    log.say("Fingerprint " + rules.fingerprint());
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
