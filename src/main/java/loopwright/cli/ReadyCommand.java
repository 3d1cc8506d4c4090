package loopwright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists the ready-made cases. */
@Command(
    name = "ready",
    mixinStandardHelpOptions = true,
    exitCodeList = {"0:${bundle:exit.listed}", "1:${bundle:exit.failed}", "2:${bundle:exit.line}"})
final class ReadyCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private LineWidth width = new LineWidth();

  ReadyCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    List<ReadyCase> ready;
    try {
      ready = world.readyCases();
    } catch (Problem e) {
      world.err().println(Speech.problem(e));
      return ExitCode.FAILED.number();
    }
    Page page = width.out(world);
    for (ReadyCase one : ready) {
      page.block(one.id() + ": ", one.title() + ", " + one.vehicle());
    }
    page.say(
        Speech.of(
            "ready.how",
            ready.isEmpty() ? Speech.help().getString("label.id") : ready.get(0).id()));
    page.flush();
    return ExitCode.DONE.number();
  }
}
