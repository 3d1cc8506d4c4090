package loopwright.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.PaperDesk;
import loopwright.casework.PaperReport;
import loopwright.casework.Phrases;
import loopwright.casework.PlanFinding;
import loopwright.casework.Problem;
import loopwright.diagnosis.rulebook.Conclusion.Severity;
import loopwright.model.Vehicle;
import loopwright.report.PlanSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks a vehicle's plan on paper. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Checks a vehicle's plan on paper, before wire is bought or the key is turned:",
      "feeds, returns, fuses, wires, contacts, coils, volts lost, what wakes what.",
      "The worst comes first, each with its limit, what follows and what to do.",
      "With --out FILE.pdf for paper."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:nothing is wrong with the plan",
      "1:the program failed",
      "2:the command line was not understood",
      "3:the vehicle can't be read or solved, or its plan has something wrong"
    })
final class CheckCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Option(
      names = "--surroundings",
      paramLabel = "CELSIUS",
      description =
          "Air around the wires at its hottest, -40 to 79 C; 57 if left out, for which the chart"
              + " of wires and fuses holds.")
  private Optional<Double> surroundings = Optional.empty();

  @Option(names = "--sources", description = "Says where each limit comes from.")
  private boolean sources;

  @Mixin private LineWidth width = new LineWidth();

  CheckCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws Problem {
    if (print.out.isPresent() && !print.asks(".pdf")) {
      return print.unknownEnding(world, ".pdf");
    }
    if (surroundings.isPresent()
        && !(surroundings.get() >= PaperDesk.COLDEST_SURROUNDINGS
            && surroundings.get() <= PaperDesk.HOTTEST_SURROUNDINGS)) {
      width.err(world).say("Surroundings: " + surroundings.get() + " C must be -40 to 79 C.");
      return ExitCode.USAGE.number();
    }
    CliWorld.Opening opening = world.openDraft(print.vehicle);
    if (opening instanceof CliWorld.Opening.Defective defective) {
      VehicleCommand.defects(width.err(world), world, print.vehicle, defective.defects());
      return ExitCode.VEHICLE.number();
    }
    Vehicle vehicle = ((CliWorld.Opening.Opened) opening).vehicle();
    PaperReport report =
        surroundings.isPresent()
            ? world.paperDesk().check(vehicle, surroundings.get())
            : world.paperDesk().check(vehicle);
    if (print.out.isPresent()) {
      int written =
          print.write(
              world,
              "paper check",
              PlanSheet.pdf(report, print.paper, PrintOptions.today(world), print.phrases));
      return written == ExitCode.DONE.number() ? judged(report) : written;
    }
    Page page = width.out(world);
    show(page, report, print.phrases);
    page.flush();
    return judged(report);
  }

  private static int judged(PaperReport report) {
    return report.unsolved().isEmpty() && report.defects().isEmpty()
        ? ExitCode.DONE.number()
        : ExitCode.VEHICLE.number();
  }

  private void show(Page page, PaperReport report, Phrases phrases) {
    page.say(report.vehicle());
    if (!report.unsolved().isEmpty()) {
      page.say(phrases.say("paper.unsolved"));
      page.items(report.unsolved().stream().map(f -> f.object() + ": " + f.what()).toList());
      return;
    }
    page.say(report.found(phrases));
    page.say(report.air(phrases));
    for (Severity severity : Severity.values()) {
      List<PlanFinding> findings = report.of(severity);
      if (!findings.isEmpty()) {
        page.gap();
        page.say(phrases.say("paper.severity." + severity) + " (" + findings.size() + ")");
        findings.forEach(f -> show(page, f, phrases));
      }
    }
    page.gap();
    page.say(phrases.say("paper.advice"));
  }

  private void show(Page page, PlanFinding finding, Phrases phrases) {
    page.block("- ", finding.finding());
    page.block("  ", finding.consequence());
    page.block("  " + phrases.say("paper.cure") + ": ", finding.cure());
    if (!finding.setting().isEmpty()) {
      page.block("  " + phrases.say("paper.with") + ": ", String.join(", ", finding.setting()));
    }
    if (sources) {
      page.block("  " + phrases.say("paper.source") + ": ", finding.source());
    }
  }
}
