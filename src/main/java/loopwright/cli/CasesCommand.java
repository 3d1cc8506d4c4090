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
    exitCodeList = {
      "0:${bundle:exit.listed-shown}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "4:${bundle:exit.case-unread}"
    })
final class CasesCommand implements Callable<Integer> {
  private static final String NAME = "cases";

  private final CliWorld world;

  @Parameters(arity = "0..*", paramLabel = "${bundle:label.words}", descriptionKey = "words")
  private List<String> words = List.of();

  @Option(names = "--part", paramLabel = "${bundle:label.id}")
  private Optional<String> part = Optional.empty();

  @Option(names = "--circuit", paramLabel = "${bundle:label.id}")
  private Optional<String> circuit = Optional.empty();

  @Option(names = "--vehicle", paramLabel = "${bundle:label.id}")
  private Optional<String> vehicle = Optional.empty();

  @Option(names = "--since", paramLabel = "${bundle:label.day}")
  private Optional<LocalDate> since = Optional.empty();

  @Option(names = "--until", paramLabel = "${bundle:label.day}")
  private Optional<LocalDate> until = Optional.empty();

  @Option(names = "--show", paramLabel = "${bundle:label.case}")
  private Optional<String> show = Optional.empty();

  @Option(names = "--print", paramLabel = "${bundle:label.case}")
  private Optional<String> print = Optional.empty();

  @Option(names = "--photo", paramLabel = "${bundle:label.file}")
  private Optional<Path> photo = Optional.empty();

  @Option(names = "--to", paramLabel = "${bundle:label.case}")
  private Optional<String> to = Optional.empty();

  @Option(names = "--caption", paramLabel = "${bundle:label.words}")
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
      width.err(world).say(Speech.problem(e));
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
      width.err(world).say(Speech.of("cases.photo-how"));
      return ExitCode.USAGE.number();
    }
    world.archive().attach(to.get(), photo.get(), caption);
    Page page = width.out(world);
    page.say(Speech.of("cases.photo", to.get()));
    page.flush();
    return ExitCode.DONE.number();
  }

  private RecordText text(String caseId) throws Problem {
    return new RecordText(world.archive().record(caseId), out.phrases, world.clock().getZone());
  }

  private int print(RecordText text) {
    if (!out.asks(".pdf")) {
      if (out.out.isEmpty()) {
        width.err(world).say(Speech.of("out.pdf"));
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
    return out.unknownEnding(world, Speech.of("out.or", ".json", ".csv"));
  }

  private void list(CaseArchive.Shelf shelf, List<CaseRecord> fit) {
    Page page = width.out(world);
    if (shelf.records().isEmpty() && shelf.unread().isEmpty()) {
      page.say(Speech.of("cases.none"));
    } else if (fit.isEmpty()) {
      page.say(Speech.of("cases.no-fit", shelf.records().size()));
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
              + out.phrases.say("record.state." + record.state())
              + ", "
              + Speech.of("cases.readings", readings)
              + ", "
              + record.opened().vehicleName()
              + (record.opened().practice() ? ", " + Speech.of("cases.practice") : ""));
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
      text.cleared(stage)
          .forEach(c -> page.block(Speech.of("brief.cleared") + ": ", c.text() + ": " + c.label()));
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
