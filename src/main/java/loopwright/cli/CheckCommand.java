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
import loopwright.model.Language;
import loopwright.model.Vehicle;
import loopwright.report.PlanSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks a vehicle's plan on paper. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.plan}",
      "1:${bundle:exit.failed}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.plan-wrong}"
    })
final class CheckCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Option(names = "--surroundings", paramLabel = "${bundle:label.celsius}")
  private Optional<Double> surroundings = Optional.empty();

  @Option(names = "--sources")
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
      width
          .err(world)
          .say(Speech.of("check.surroundings", Language.marked(surroundings.get().toString())));
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
              "paper-check",
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
