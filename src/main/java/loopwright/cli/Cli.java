package loopwright.cli;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Language;
import loopwright.model.Said;
import loopwright.model.Units;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line. */
public final class Cli {
  private static final String LANGUAGE = "--language";

  private Cli() {}

  /**
   * Runs one command to its end.
   *
   * @param args the words behind the program's name
   * @param world what the commands need
   * @return an {@link ExitCode}'s number
   */
  public static int run(String[] args, CliWorld world) {
    PrintWriter out =
        new PrintWriter(new OutputStreamWriter(world.out(), StandardCharsets.UTF_8), true);
    PrintWriter err =
        new PrintWriter(new OutputStreamWriter(world.err(), StandardCharsets.UTF_8), true);
    chosen(args).ifPresent(Language::use);
    int code = line(world).setOut(out).setErr(err).execute(args);
    out.flush();
    err.flush();
    world.out().flush();
    return code;
  }

  /** All commands, with their help in the language in use. */
  static CommandLine line(CliWorld world) {
    Root root = new Root();
    return new CommandLine(root)
        .setResourceBundle(Speech.help())
        .addSubcommand(new FindCommand(world))
        .addSubcommand(new CasesCommand(world))
        .addSubcommand(new ReadyCommand(world))
        .addSubcommand(new PractiseCommand(world))
        .addSubcommand(new VehicleCommand(world))
        .addSubcommand(new NewCommand(world))
        .addSubcommand(new AddCommand(world))
        .addSubcommand(new WiresCommand(world))
        .addSubcommand(new SchemaCommand(world))
        .addSubcommand(new CheckCommand(world))
        .addSubcommand(new ProveCommand(world))
        .addSubcommand(new GroundCommand(world))
        .addSubcommand(new MakingCommand(world))
        .addSubcommand(new LabelsCommand(world))
        .addSubcommand(new DrawingsCommand(world))
        .addSubcommand(new CardCommand(world))
        .addSubcommand(new ExplainCommand(world))
        .addSubcommand(new GoodReadingsCommand(world))
        .registerConverter(Double.class, Cli::number)
        .registerConverter(double.class, Cli::number)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExecutionStrategy(parsed -> root.execute(parsed, world))
        .setUsageHelpWidth(Page.USUAL)
        .setParameterExceptionHandler(new Misunderstood())
        .setExecutionExceptionHandler(
            (e, commandLine, parsed) -> {
              commandLine.getErr().println(Speech.of("failed", e));
              e.printStackTrace(commandLine.getErr());
              return ExitCode.FAILED.number();
            });
  }

  /** A number with either decimal mark, as the terminal takes readings. */
  private static Double number(String text) {
    if (Said.twoWays(text)) {
      throw new CommandLine.TypeConversionException(text);
    }
    return Double.valueOf(text.replace(',', '.'));
  }

  /** The language asked for. Looked for first, since the commands speak it from the start. */
  private static Optional<Language> chosen(String[] args) {
    for (int i = 0; i < args.length; i++) {
      if (args[i].startsWith(LANGUAGE + "=")) {
        return Language.of(args[i].substring(LANGUAGE.length() + 1));
      }
      if (args[i].equals(LANGUAGE) && i + 1 < args.length) {
        return Language.of(args[i + 1]);
      }
    }
    return Optional.empty();
  }

  @Command(
      name = "loopwright",
      mixinStandardHelpOptions = true,
      exitCodeList = {
        "0:${bundle:exit.kept}",
        "1:${bundle:exit.failed-kept}",
        "2:${bundle:exit.line}",
        "3:${bundle:exit.vehicle}",
        "4:${bundle:exit.case}"
      })
  static final class Root implements Runnable {
    @Spec private CommandSpec spec;

    @Option(
        names = "--rules",
        paramLabel = "${bundle:label.folder}",
        scope = CommandLine.ScopeType.INHERIT)
    private Optional<Path> rules = Optional.empty();

    @Option(
        names = LANGUAGE,
        paramLabel = "${bundle:label.code}",
        scope = CommandLine.ScopeType.INHERIT)
    private void language(String code) {
      if (Language.of(code).isEmpty()) {
        throw new CommandLine.ParameterException(
            spec.commandLine(), Speech.of("language.how", code));
      }
    }

    @Option(
        names = "--units",
        paramLabel = "${bundle:label.names}",
        scope = CommandLine.ScopeType.INHERIT)
    private void units(String names) {
      Units.use(
          Units.inUse()
              .with(names)
              .orElseThrow(
                  () ->
                      new CommandLine.ParameterException(
                          spec.commandLine(), Speech.of("units.how", names))));
    }

    /** Settles whose rules are run, then runs the command. */
    private int execute(CommandLine.ParseResult parsed, CliWorld world) {
      Integer helped = CommandLine.executeHelpRequest(parsed);
      if (helped != null) {
        return helped;
      }
      if (rules.isPresent()) {
        try {
          RulesQuestion.settle(world, rules.get());
        } catch (Problem e) {
          world.err().println(Speech.problem(e));
          world.err().flush();
          return ExitCode.USAGE.number();
        }
      }
      return new CommandLine.RunLast().execute(parsed);
    }

    @Override
    public void run() {
      throw new CommandLine.ParameterException(spec.commandLine(), Speech.of("what-to-do"));
    }
  }
}
