package loopwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints the schema of a kind of file, for other tools. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    exitCodeList = {"0:${bundle:exit.printed}", "1:${bundle:exit.unread}", "2:${bundle:exit.line}"})
final class SchemaCommand implements Callable<Integer> {
  private static final List<String> KINDS =
      List.of(
          "vehicle", "case", "case-export", "proof", "ready-case", "meter", "faults", "find-lines");

  private final CliWorld world;

  @Parameters(paramLabel = "${bundle:label.kind}", descriptionKey = "kind")
  private String kind = "";

  SchemaCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws IOException {
    if (!KINDS.contains(kind)) {
      Page log = new Page(world.err(), Page.USUAL);
      log.say(Speech.of("schema.how", kind, String.join(", ", KINDS)));
      log.flush();
      return ExitCode.USAGE.number();
    }
    try (InputStream in =
        SchemaCommand.class.getResourceAsStream("/schema/" + kind + "-1.schema.json")) {
      world.out().print(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      world.out().flush();
    }
    return ExitCode.DONE.number();
  }
}
