package loopwright.cli;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import loopwright.casework.CaseDesk;
import loopwright.casework.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists the kept cases. */
@Command(
    name = "cases",
    mixinStandardHelpOptions = true,
    description = "Lists the kept cases, newest first.")
final class CasesCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private LineWidth width = new LineWidth();

  CasesCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    List<CaseDesk.Kept> kept;
    try {
      kept = world.desk().kept();
    } catch (Problem e) {
      world.err().println(e.getMessage());
      return ExitCode.FAILED.number();
    }
    Page page = width.out(world);
    if (kept.isEmpty()) {
      page.say("No cases are kept.");
    }
    DateTimeFormatter dates =
        DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT)
            .withZone(world.clock().getZone());
    for (CaseDesk.Kept one : kept) {
      page.say(one.caseId() + ": " + one.title());
      page.block(
          "    ",
          // A case that can't be read has no time and no vehicle.
          (one.at().equals(Instant.EPOCH) ? "" : dates.format(one.at()) + ", ")
              + one.status()
              + ", "
              + one.readings()
              + (one.readings() == 1 ? " reading" : " readings")
              + (one.vehicleName().isEmpty() ? "" : ", " + one.vehicleName()));
    }
    page.flush();
    return ExitCode.DONE.number();
  }
}
