package loopwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.Phrases;
import loopwright.casework.list.ListTable;
import loopwright.io.OutFile;
import loopwright.io.sheet.ListSheet;
import loopwright.report.PageSize;
import loopwright.report.Paper;
import picocli.CommandLine.Option;

/** What all commands that write a file have in common. */
class OutOptions {
  /** Words on paper. */
  final Phrases phrases = Phrases.inUse();

  @Option(names = "--out", paramLabel = "${bundle:label.file}")
  Optional<Path> out = Optional.empty();

  @Option(names = "--paper", paramLabel = "${bundle:label.size}")
  PageSize paper = PageSize.A4;

  /** Whether the file asked for has this ending. */
  boolean asks(String ending) {
    return out.map(p -> p.toString().toLowerCase(Locale.ROOT).endsWith(ending)).orElse(false);
  }

  /** Today in words. */
  static String today(CliWorld world) {
    return Paper.day(LocalDate.now(world.clock()));
  }

  /**
   * Prints a table, or writes it to the file asked for.
   *
   * @param what the key of what it is
   */
  int table(CliWorld world, String what, ListTable table) {
    String text = ListSheet.text(table);
    if (asks(".csv")) {
      return write(world, what, text.getBytes(StandardCharsets.UTF_8));
    }
    if (out.isPresent()) {
      return unknownEnding(world, Speech.of("out.or", ".pdf", ".csv"));
    }
    world.out().print(text);
    world.out().flush();
    return ExitCode.DONE.number();
  }

  /**
   * Writes the file asked for and says so, or why it can't be.
   *
   * @param what the key of what it is
   */
  int write(CliWorld world, String what, byte[] bytes) {
    Path file = out.orElseThrow();
    try {
      OutFile.write(file, Speech.of("out." + what), bytes);
    } catch (IOException e) {
      new Page(world.err(), Page.USUAL).say(e.getMessage());
      return ExitCode.FAILED.number();
    }
    Page page = new Page(world.out(), Page.USUAL);
    page.say(Speech.of("written", file.toAbsolutePath().normalize()));
    page.flush();
    return ExitCode.DONE.number();
  }

  /** Says that a PDF is all that can be written, and how to ask for one. */
  int onlyPdf(CliWorld world) {
    if (out.isPresent()) {
      return unknownEnding(world, ".pdf");
    }
    new Page(world.err(), Page.USUAL).say(Speech.of("out.pdf"));
    return ExitCode.USAGE.number();
  }

  /** Says that the file's ending is none that can be written. */
  int unknownEnding(CliWorld world, String endings) {
    new Page(world.err(), Page.USUAL).say(Speech.of("out.ending", out.orElseThrow(), endings));
    return ExitCode.USAGE.number();
  }
}
