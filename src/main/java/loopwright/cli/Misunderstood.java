package loopwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what of a command line was not understood, in the language in use, and how it is meant. */
final class Misunderstood implements CommandLine.IParameterExceptionHandler {
  @Override
  public int handleParseException(ParameterException wrong, String[] args) {
    PrintWriter err = wrong.getCommandLine().getErr();
    err.println(words(wrong));
    List<String> meant =
        wrong instanceof UnmatchedArgumentException unmatched
            ? unmatched.getSuggestions()
            : List.of();
    if (meant.isEmpty()) {
      wrong.getCommandLine().usage(err);
    } else {
      err.println(Speech.of("line.meant", String.join(", ", meant)));
    }
    return ExitCode.USAGE.number();
  }

  private static String words(ParameterException wrong) {
    if (wrong instanceof MissingParameterException missing) {
      return Speech.of(
          "line.missing",
          missing.getMissing().stream().map(Misunderstood::name).collect(Collectors.joining(", ")));
    }
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      return Speech.of(
          unmatched.isUnknownOption() ? "line.unknown" : "line.unmatched",
          String.join(" ", unmatched.getUnmatched()));
    }
    if (wrong instanceof OverwrittenOptionException twice) {
      return Speech.of("line.twice", name(twice.getOverwritten()));
    }
    if (wrong.getArgSpec() != null && wrong.getValue() != null) {
      return Speech.of(
          "line.value",
          name(wrong.getArgSpec()),
          wrong.getValue(),
          String.join(" ", wrong.getArgSpec().description()));
    }
    return wrong.getMessage();
  }

  /** An option by its longest name, with what it takes; else what is meant to stand there. */
  private static String name(ArgSpec arg) {
    return arg instanceof OptionSpec option
        ? option.longestName() + " " + option.paramLabel()
        : arg.paramLabel();
  }
}
