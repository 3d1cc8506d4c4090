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
    description = "Lists the ready-made cases to practise on: find --ready ID opens one.")
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
      world.err().println(e.getMessage());
      return ExitCode.FAILED.number();
    }
    Page page = width.out(world);
    for (ReadyCase one : ready) {
      page.block(one.id() + ": ", one.title() + ", " + one.vehicle());
    }
    page.say(
        "To open one: loopwright find --ready " + (ready.isEmpty() ? "ID" : ready.get(0).id()));
    page.flush();
    return ExitCode.DONE.number();
  }
}
