package loopwright.cli;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.model.Language;
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
    Root root = new Root();
    CommandLine line =
        new CommandLine(root)
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
            .setOut(out)
            .setErr(err)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setExecutionStrategy(parsed -> root.execute(parsed, world))
            .setUsageHelpWidth(Page.USUAL)
            .setExecutionExceptionHandler(
                (e, commandLine, parsed) -> {
                  err.println("The program failed: " + e);
                  e.printStackTrace(err);
                  return ExitCode.FAILED.number();
                });
    int code = line.execute(args);
    out.flush();
    err.flush();
    world.out().flush();
    return code;
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
      description = "Finds the failed part of a vehicle's circuit with a meter, check by check.",
      exitCodeListHeading = "%nExit codes:%n",
      exitCodeList = {
        "0:ended, or kept to go on with later",
        "1:the program failed; the case is kept as far as answered",
        "2:the command line was not understood",
        "3:the vehicle can't be read or has defects",
        "4:the case can't be opened or read"
      })
  static final class Root implements Runnable {
    @Spec private CommandSpec spec;

    @Option(
        names = "--rules",
        paramLabel = "FOLDER",
        scope = CommandLine.ScopeType.INHERIT,
        description =
            "Runs the rules in a folder in place of the program's own, once you have allowed it.")
    private Optional<Path> rules = Optional.empty();

    @Option(
        names = LANGUAGE,
        paramLabel = "CODE",
        scope = CommandLine.ScopeType.INHERIT,
        description =
            "Speaks English (en) or German (de). Without it: as set in the window (F1 F1), else the"
                + " system's language. Lines for programs and files are the same in both.")
    private void language(String code) {
      if (Language.of(code).isEmpty()) {
        throw new CommandLine.ParameterException(
            spec.commandLine(), LANGUAGE + " is '" + code + "', must be en or de");
      }
    }

    @Option(
        names = "--units",
        paramLabel = "NAMES",
        scope = CommandLine.ScopeType.INHERIT,
        description =
            "Shows lengths in m or ft, sizes beside their own in awg or mm2, temperatures in c or f,"
                + " with commas between: ft,awg,f. Without it: as set in the window (F1 F1), else as is"
                + " usual where the system stands.")
    private void units(String names) {
      Units.use(
          Units.inUse()
              .with(names)
              .orElseThrow(
                  () ->
                      new CommandLine.ParameterException(
                          spec.commandLine(),
                          "--units is '" + names + "', must be of m, ft, awg, mm2, c, f")));
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
          world.err().println(e.getMessage());
          world.err().flush();
          return ExitCode.USAGE.number();
        }
      }
      return new CommandLine.RunLast().execute(parsed);
    }

    @Override
    public void run() {
      throw new CommandLine.ParameterException(
          spec.commandLine(),
          "Say what to do: find, cases, ready, practise, vehicle, new, add, check, prove, ground,"
              + " wires, making, labels, drawings, card, good-readings or explain.");
    }
  }
}
