package loopwright.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import loopwright.casework.Problem;
import loopwright.casework.practise.ClassSheet;
import loopwright.casework.practise.DrillCode;
import loopwright.casework.practise.Drilling;
import loopwright.casework.practise.FaultKind;
import loopwright.casework.practise.Level;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.practise.Progress;
import loopwright.model.Vehicle;
import loopwright.report.DrillSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Drills: a hidden fault, and the learner chooses every check. */
@Command(
    name = "practise",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    exitCodeList = {
      "0:${bundle:exit.played}",
      "1:${bundle:exit.result-lost}",
      "2:${bundle:exit.drill}",
      "3:${bundle:exit.vehicle}"
    })
final class PractiseCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(
      arity = "0..2",
      paramLabel = "${bundle:label.code-vehicle}",
      descriptionKey = "code-vehicle")
  private List<String> what = List.of();

  @Option(names = "--level", paramLabel = "${bundle:label.level}")
  private String level = Level.DEAD_LAMP.word();

  @Option(names = "--expect")
  private boolean expect;

  @Option(names = "--stairs")
  private boolean stairs;

  @Mixin private OutOptions out = new OutOptions();

  @Mixin private LineWidth width = new LineWidth();

  PractiseCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    if (out.out.isPresent() && !out.asks(".pdf")) {
      return out.unknownEnding(world, ".pdf");
    }
    Page page = width.out(world);
    try {
      PractiseDesk desk = world.practiseDesk();
      if (what.isEmpty()) {
        progress(desk.progress(), page);
        return ExitCode.DONE.number();
      }
      return play(desk, page);
    } catch (Problem e) {
      world.err().println(Speech.problem(e));
      return (e.field().equals("code") || e.field().equals("level")
              ? ExitCode.USAGE
              : ExitCode.FAILED)
          .number();
    }
  }

  private int play(PractiseDesk desk, Page page) throws Problem {
    Optional<DrillCode> given = code(what.get(0));
    String name = given.isPresent() ? vehicleOf(given.get()) : what.get(0);
    Optional<Vehicle> opened = VehicleCommand.open(world, name, width.err(world));
    if (opened.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    Vehicle vehicle = opened.get();
    DrillCode code =
        given.isPresent()
            ? given.get()
            : desk.anyCode(level(), world.demoVehicles().indexOf(name) + 1, vehicle, new Random());
    if (out.out.isPresent()) {
      ClassSheet sheet = ClassSheet.of(code, vehicle, desk, new ToldProgress(world.err()));
      return out.write(
          world, "sheet", DrillSheet.pdf(sheet, out.paper, OutOptions.today(world), out.phrases));
    }
    try (Drilling drilling = desk.open(code, vehicle, new ToldProgress(world.err()))) {
      new PractiseTalk(drilling, desk, page, new Asker(world.in(), page))
          .asking(expect)
          .showing(stairs)
          .run();
    }
    page.flush();
    return ExitCode.DONE.number();
  }

  /** The code, if that is what was said: the name of a demo vehicle is none. */
  private Optional<DrillCode> code(String text) throws Problem {
    if (what.size() < 2 && (world.demoVehicles().contains(text) || text.contains("."))) {
      return Optional.empty();
    }
    return Optional.of(DrillCode.parse(text));
  }

  private String vehicleOf(DrillCode code) throws Problem {
    if (code.vehicle() > world.demoVehicles().size()) {
      throw new Problem("code", code.toString(), Speech.of("practise.other-vehicle"));
    }
    if (code.vehicle() != DrillCode.OWN) {
      return world.demoVehicles().get(code.vehicle() - 1);
    }
    if (what.size() < 2) {
      throw new Problem("code", code.toString(), Speech.of("practise.file-too"));
    }
    return what.get(1);
  }

  private Level level() throws Problem {
    for (Level one : Level.values()) {
      if (one.word().equalsIgnoreCase(level)) {
        return one;
      }
    }
    throw new Problem(
        "level",
        level,
        Arrays.stream(Level.values()).map(Level::word).collect(Collectors.joining(", ")));
  }

  private static void progress(Progress progress, Page page) {
    if (progress.levels().isEmpty()) {
      page.say(Speech.of("practise.none"));
      return;
    }
    page.say(Speech.of("practise.mean", Progress.LATELY));
    for (Level level : progress.levels().keySet()) {
      line(page, level.word(), progress.levels().get(level));
    }
    page.gap();
    page.say(Speech.of("practise.kinds"));
    for (FaultKind kind : progress.kinds().keySet()) {
      line(page, Obeyed.usual(kind.word()), progress.kinds().get(kind));
    }
  }

  private static void line(Page page, String word, Progress.Line line) {
    page.block("  ", word + ": " + line.lately() + " (" + line.scores().size() + ")");
  }
}
