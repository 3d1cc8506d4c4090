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
    description = {
      "Adds a ready-made circuit to a vehicle: asks for what it needs and lists each part",
      "with its value and where that comes from. Without a pattern it lists the patterns.",
      "Nothing is written without --save."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:shown or saved",
      "1:the vehicle can't be saved",
      "2:the command line or an answer was not understood, or you stopped",
      "3:the vehicle can't be read or has defects"
    })
final class AddCommand implements Callable<Integer> {
  private static final Set<PartKind> CARRYING =
      Set.of(PartKind.FUSE, PartKind.SWITCH, PartKind.RELAY);

  private final CliWorld world;

  @Parameters(
      index = "0",
      paramLabel = "VEHICLE",
      description = "A vehicle file, or a demo vehicle's name.")
  private String name = "";

  @Parameters(
      index = "1",
      paramLabel = "PATTERN",
      arity = "0..1",
      description = "What to add, for instance lamp-relay; left out, they are listed.")
  private Optional<String> pattern = Optional.empty();

  @Option(
      names = "--set",
      paramLabel = "QUESTION=ANSWER",
      description = "Answers a question. Give it as often as needed.")
  private Map<String, String> set = Map.of();

  @Option(
      names = "--answers",
      paramLabel = "FILE",
      description = "A file of answers, QUESTION = ANSWER a line.")
  private Optional<Path> answers = Optional.empty();

  @Option(
      names = "--usual",
      description = "Asks nothing: what isn't answered otherwise gets the usual answer.")
  private boolean usual;

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description = "Writes the vehicle with the circuit in it; the file it came from will do.")
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
      pattern.ifPresent(p -> log.say("There is no pattern '" + p + "'."));
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
      page.say("What was there before is not enough now:");
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
        throw new Problem(
            "answers", answers.get().toString(), "a file without 'add': it is for one circuit");
      }
      given.putAll(file.answers());
    }
    given.putAll(set);
    page.say(what.title(basis));
    if (!usual && answers.isEmpty() && set.isEmpty()) {
      page.say("Enter takes what stands before >. 'back' goes back, 'stop' ends.");
      page.gap();
      given = new Asker(world.in(), page).ask(what.questionnaire(vehicle, basis), given);
    }
    Outcome outcome = what.plan(vehicle, basis, given);
    page.gap();
    AddedPage.show(page, outcome);
    page.gap();
    tellTooMuch(page, vehicle, outcome.vehicle());
    if (save.isEmpty()) {
      page.say("To keep it, add --save FILE; nothing is written yet.");
      return ExitCode.DONE;
    }
    return Saving.save(page, log, save.get(), outcome.vehicle());
  }
}
