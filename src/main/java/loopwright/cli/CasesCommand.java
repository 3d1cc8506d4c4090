package loopwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.Problem;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.CaseQuery;
import loopwright.casework.record.CaseRecord;
import loopwright.casework.record.PartHistory;
import loopwright.casework.record.RecordTables;
import loopwright.casework.record.RecordText;
import loopwright.io.journal.CaseExport;
import loopwright.io.sheet.ListSheet;
import loopwright.report.RecordSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists, shows, prints and exports the kept cases. */
@Command(
    name = "cases",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Lists the kept cases, newest first; with words or options those that fit.",
      "With --part it says what each case says of that part.",
      "With --out FILE.json or FILE.csv it writes them, all readings included."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:listed, shown or written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "4:the case can't be read"
    })
final class CasesCommand implements Callable<Integer> {
  private static final String NAME = "cases";

  private final CliWorld world;

  @Parameters(
      arity = "0..*",
      paramLabel = "WORDS",
      description =
          "Words that must all be in a case: part, circuit, vehicle, complaint, what was found,"
              + " day.")
  private List<String> words = List.of();

  @Option(names = "--part", paramLabel = "ID", description = "Cases that a part plays a role in.")
  private Optional<String> part = Optional.empty();

  @Option(names = "--circuit", paramLabel = "ID", description = "Cases of a circuit.")
  private Optional<String> circuit = Optional.empty();

  @Option(names = "--vehicle", paramLabel = "ID", description = "Cases of a vehicle.")
  private Optional<String> vehicle = Optional.empty();

  @Option(names = "--since", paramLabel = "DAY", description = "First day, as 2024-05-17.")
  private Optional<LocalDate> since = Optional.empty();

  @Option(names = "--until", paramLabel = "DAY", description = "Last day, as 2024-05-17.")
  private Optional<LocalDate> until = Optional.empty();

  @Option(names = "--show", paramLabel = "CASE", description = "Shows the record of one case.")
  private Optional<String> show = Optional.empty();

  @Option(
      names = "--print",
      paramLabel = "CASE",
      description = "Writes the record of one case to --out FILE.pdf.")
  private Optional<String> print = Optional.empty();

  @Option(
      names = "--photo",
      paramLabel = "FILE",
      description = "A photo to put to the case told by --to.")
  private Optional<Path> photo = Optional.empty();

  @Option(names = "--to", paramLabel = "CASE", description = "The case that a photo is put to.")
  private Optional<String> to = Optional.empty();

  @Option(names = "--caption", paramLabel = "WORDS", description = "What the photo shows.")
  private String caption = "";

  @Mixin private OutOptions out = new OutOptions();

  @Mixin private LineWidth width = new LineWidth();

  CasesCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    try {
      if (photo.isPresent() || to.isPresent()) {
        return attach();
      }
      if (print.isPresent()) {
        return print(text(print.get()));
      }
      if (show.isPresent()) {
        show(text(show.get()));
        return ExitCode.DONE.number();
      }
    } catch (Problem e) {
      width.err(world).say(e.getMessage());
      return ExitCode.CASE.number();
    }
    CaseArchive.Shelf shelf = world.archive().shelf();
    CaseQuery query = new CaseQuery(String.join(" ", words), part, circuit, vehicle, since, until);
    List<CaseRecord> fit =
        shelf.records().stream().filter(r -> query.fits(r, world.clock().getZone())).toList();
    if (out.out.isPresent()) {
      return export(fit);
    }
    list(shelf, fit);
    return ExitCode.DONE.number();
  }

  private int attach() throws Problem {
    if (photo.isEmpty() || to.isEmpty()) {
      width.err(world).say("A photo goes to a case: --photo FILE --to CASE.");
      return ExitCode.USAGE.number();
    }
    world.archive().attach(to.get(), photo.get(), caption);
    Page page = width.out(world);
    page.say("The photo is kept with " + to.get() + ".");
    page.flush();
    return ExitCode.DONE.number();
  }

  private RecordText text(String caseId) throws Problem {
    return new RecordText(world.archive().record(caseId), out.phrases, world.clock().getZone());
  }

  private int print(RecordText text) {
    if (!out.asks(".pdf")) {
      if (out.out.isEmpty()) {
        width.err(world).say("Say where to: --out FILE.pdf.");
        return ExitCode.USAGE.number();
      }
      return out.unknownEnding(world, ".pdf");
    }
    byte[] pdf =
        RecordSheet.pdf(
            text, world.archive()::picture, out.paper, OutOptions.today(world), out.phrases);
    return out.write(world, NAME, pdf);
  }

  private int export(List<CaseRecord> records) {
    if (out.asks(".json")) {
      return out.write(world, NAME, CaseExport.json(records, world.clock().instant()));
    }
    if (out.asks(".csv")) {
      String table = ListSheet.text(RecordTables.readings(records, out.phrases));
      return out.write(world, NAME, table.getBytes(StandardCharsets.UTF_8));
    }
    return out.unknownEnding(world, ".json or .csv");
  }

  private void list(CaseArchive.Shelf shelf, List<CaseRecord> fit) {
    Page page = width.out(world);
    if (shelf.records().isEmpty() && shelf.unread().isEmpty()) {
      page.say("No cases are kept.");
    } else if (fit.isEmpty()) {
      page.say("None of " + shelf.records().size() + " cases fits.");
    }
    DateTimeFormatter dates =
        DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)
            .withZone(world.clock().getZone());
    for (CaseRecord record : fit) {
      int readings =
          (int) record.readings().stream().filter(reading -> !reading.withdrawn()).count();
      page.say(record.opened().caseId() + ": " + record.title());
      page.block(
          "    ",
          dates.format(record.last())
              + ", "
              + record.state().word()
              + ", "
              + readings
              + (readings == 1 ? " reading" : " readings")
              + ", "
              + record.opened().vehicleName()
              + (record.opened().practice() ? ", practice" : ""));
      part.ifPresent(p -> history(page, record, p));
    }
    for (CaseArchive.Unread one : shelf.unread()) {
      page.say(one.caseId());
      page.block("    ", one.why());
    }
    page.flush();
  }

  private void history(Page page, CaseRecord record, String id) {
    for (PartHistory.Entry entry : PartHistory.of(record, id)) {
      page.block("    - ", out.phrases.say("record.part." + entry.what(), entry.words()));
    }
  }

  private void show(RecordText text) {
    Page page = width.out(world);
    page.say(text.record().title());
    facts(page, text.facts());
    for (int stage = 0; stage < text.record().stages().size(); stage++) {
      page.gap();
      text.readings(stage).rows().forEach(row -> page.block(row.get(0) + "  ", text.reading(row)));
      text.cleared(stage).forEach(c -> page.block("cleared: ", c.text() + ": " + c.label()));
      facts(page, text.found(stage, true));
      text.mend(stage).ifPresent(m -> page.block(m.label() + ": ", m.text()));
    }
    facts(page, text.besides());
    page.flush();
  }

  private static void facts(Page page, List<RecordText.Fact> facts) {
    facts.forEach(f -> page.block(f.label() + ": ", f.text()));
  }
}
