package loopwright.cli;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.NewVehicle;
import loopwright.casework.pattern.NewVehicleForm;
import loopwright.casework.pattern.Outcome;
import loopwright.casework.pattern.Pattern;
import loopwright.casework.pattern.Patterns;
import loopwright.model.Vehicle;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Begins a vehicle of one's own from a few questions. */
@Command(
    name = "new",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.written}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.answer}"
    })
final class NewCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(paramLabel = "${bundle:label.file}", descriptionKey = "file")
  private Path file = Path.of("");

  @Option(names = "--set", paramLabel = "${bundle:label.question-answer}")
  private Map<String, String> set = Map.of();

  @Option(names = "--answers", paramLabel = "${bundle:label.file}")
  private Optional<Path> answers = Optional.empty();

  @Option(names = "--usual")
  private boolean usual;

  @Mixin private LineWidth width = new LineWidth();

  NewCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Page page = width.out(world);
    Page log = width.err(world);
    return Asker.run(page, log, () -> make(page, log)).number();
  }

  private ExitCode make(Page page, Page log) throws Asker.Ended, Problem {
    // Told before the questions, not after them.
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new Problem("file", file.toString(), Speech.of("new.there"));
    }
    Basis basis = AddCommand.basis();
    Map<String, String> given = new LinkedHashMap<>();
    List<NewVehicle.Row> rows = new ArrayList<>();
    if (answers.isPresent()) {
      AnswerFile read = AnswerFile.read(answers.get());
      given.putAll(read.answers());
      rows.addAll(read.rows());
    }
    given.putAll(set);
    if (usual) {
      rows.addAll(NewVehicleForm.suggested(basis, given));
    } else if (answers.isEmpty()) {
      Asker asker = new Asker(world.in(), page);
      page.say(Speech.of("ask.how"));
      page.gap();
      given = asker.ask(NewVehicleForm.questionnaire(basis), given);
      rows.addAll(circuits(asker, page, basis, given));
    }
    Outcome outcome = NewVehicleForm.vehicle(basis, given, rows).make(basis);
    page.gap();
    AddedPage.show(page, outcome);
    page.gap();
    return Saving.save(page, log, file, outcome.vehicle());
  }

  /** Asks which circuits to add, beginning with what is usual. */
  private List<NewVehicle.Row> circuits(
      Asker asker, Page page, Basis basis, Map<String, String> given) throws Asker.Ended, Problem {
    List<NewVehicle.Row> rows = new ArrayList<>();
    List<NewVehicle.Row> suggested = NewVehicleForm.suggested(basis, given);
    if (!suggested.isEmpty()) {
      page.gap();
      page.say(
          Speech.of(
              "new.usual",
              suggested.stream()
                  .map(r -> NewVehicleForm.name(r, basis))
                  .collect(Collectors.joining(", "))));
      String line = asker.line(Speech.of("word.yes") + "> ");
      if (line.isEmpty() || Speech.yes(line)) {
        rows.addAll(suggested);
      }
    }
    AddCommand.list(page, basis);
    while (true) {
      page.gap();
      page.say(Speech.of("new.circuit", rows.size()));
      String line = asker.line(Obeyed.usual("done") + "> ");
      if (line.isEmpty() || Obeyed.says("done", line)) {
        return rows;
      }
      Optional<Pattern> pattern = pattern(line);
      if (pattern.isEmpty()) {
        page.say(Speech.of("new.none", line));
        continue;
      }
      Vehicle before = NewVehicleForm.vehicle(basis, given, rows).make(basis).vehicle();
      Map<String, String> answered =
          asker.ask(pattern.get().questionnaire(before, basis), Map.of());
      NewVehicle.Row row = new NewVehicle.Row(pattern.get().id(), answered);
      try {
        Outcome outcome = pattern.get().plan(before, basis, answered);
        page.say(Speech.of("new.makes", outcome.added().size()));
        page.items(outcome.told());
        rows.add(row);
      } catch (Problem e) {
        page.say(Speech.of("new.not-added", Speech.problem(e)));
      }
    }
  }

  private static Optional<Pattern> pattern(String line) {
    try {
      int number = Integer.parseInt(line);
      return number >= 1 && number <= Patterns.all().size()
          ? Optional.of(Patterns.all().get(number - 1))
          : Optional.empty();
    } catch (NumberFormatException e) {
      return Patterns.find(line);
    }
  }
}
