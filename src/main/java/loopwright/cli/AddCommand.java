package loopwright.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import loopwright.casework.PlanFinding;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Basis;
import loopwright.casework.pattern.Outcome;
import loopwright.casework.pattern.Pattern;
import loopwright.casework.pattern.PatternWords;
import loopwright.casework.pattern.Patterns;
import loopwright.io.KnowledgeFiles;
import loopwright.model.LoadRef;
import loopwright.model.PartKind;
import loopwright.model.Vehicle;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Adds a circuit of the trade to a vehicle. */
@Command(
    name = "add",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.saved}",
      "1:${bundle:exit.unsaved}",
      "2:${bundle:exit.answer}",
      "3:${bundle:exit.vehicle}"
    })
final class AddCommand implements Callable<Integer> {
  private static final Set<PartKind> CARRYING =
      Set.of(PartKind.FUSE, PartKind.SWITCH, PartKind.RELAY);

  private final CliWorld world;

  @Parameters(index = "0", paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
  private String name = "";

  @Parameters(
      index = "1",
      paramLabel = "${bundle:label.pattern}",
      arity = "0..1",
      descriptionKey = "pattern")
  private Optional<String> pattern = Optional.empty();

  @Option(names = "--set", paramLabel = "${bundle:label.question-answer}")
  private Map<String, String> set = Map.of();

  @Option(names = "--answers", paramLabel = "${bundle:label.file}")
  private Optional<Path> answers = Optional.empty();

  @Option(names = "--usual")
  private boolean usual;

  @Option(names = "--save", paramLabel = "${bundle:label.file}")
  private Optional<Path> save = Optional.empty();

  @Mixin private LineWidth width = new LineWidth();

  AddCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Optional<Vehicle> opened = VehicleCommand.open(world, name);
    if (opened.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    Page page = width.out(world);
    Page log = width.err(world);
    Basis basis = basis();
    Optional<Pattern> found = pattern.flatMap(Patterns::find);
    if (found.isEmpty()) {
      pattern.ifPresent(p -> log.say(Speech.of("add.no-pattern", p)));
      list(pattern.isPresent() ? log : page, basis);
      return pattern.isPresent() ? ExitCode.USAGE.number() : ExitCode.DONE.number();
    }
    return Asker.run(page, log, () -> add(page, log, basis, found.get(), opened.get())).number();
  }

  /** What patterns need to know, as it comes with the program. */
  static Basis basis() {
    return new Basis(KnowledgeFiles.readBundled().orThrow(), PatternWords.inUse());
  }

  /** The patterns, each with what it is for. */
  static void list(Page page, Basis basis) {
    int n = 1;
    for (Pattern p : Patterns.all()) {
      page.block(
          String.format(Locale.ROOT, "%2d  %-15s ", n++, p.id()),
          p.title(basis) + ". " + p.purpose(basis));
    }
    page.flush();
  }

  /** Says what the new circuit is too much for: fuses, contacts and wires it is fed through. */
  private void tellTooMuch(Page page, Vehicle before, Vehicle after) throws Problem {
    List<PlanFinding> was = world.paperDesk().check(before).findings();
    List<PlanFinding> brought =
        world.paperDesk().check(after).findings().stream()
            .filter(f -> f.isDefect() && before.part(LoadRef.parse(f.part()).part()).isPresent())
            .filter(f -> was.stream().noneMatch(w -> same(w, f, before)))
            .toList();
    if (!brought.isEmpty()) {
      page.say(Speech.of("add.too-much"));
      brought.forEach(f -> page.block("  - ", f.finding() + " " + f.cure()));
      page.gap();
    }
  }

  /** What fuses and contacts carry counts: one that was too small may have become more so. */
  private static boolean same(PlanFinding was, PlanFinding is, Vehicle before) {
    PartKind kind = before.requirePart(LoadRef.parse(is.part()).part()).kind();
    return was.part().equals(is.part())
        && was.rule().equals(is.rule())
        && (was.value().equals(is.value()) || !CARRYING.contains(kind));
  }

  private ExitCode add(Page page, Page log, Basis basis, Pattern what, Vehicle vehicle)
      throws Asker.Ended, Problem {
    Map<String, String> given = new LinkedHashMap<>();
    if (answers.isPresent()) {
      AnswerFile file = AnswerFile.read(answers.get());
      if (!file.rows().isEmpty()) {
        throw new Problem("answers", answers.get().toString(), Speech.of("add.one-circuit"));
      }
      given.putAll(file.answers());
    }
    given.putAll(set);
    page.say(what.title(basis));
    if (!usual && answers.isEmpty() && set.isEmpty()) {
      page.say(Speech.of("ask.how"));
      page.gap();
      given = new Asker(world.in(), page).ask(what.questionnaire(vehicle, basis), given);
    }
    Outcome outcome = what.plan(vehicle, basis, given);
    page.gap();
    AddedPage.show(page, outcome);
    page.gap();
    tellTooMuch(page, vehicle, outcome.vehicle());
    if (save.isEmpty()) {
      page.say(Speech.of("add.to-keep"));
      return ExitCode.DONE;
    }
    return Saving.save(page, log, save.get(), outcome.vehicle());
  }
}
