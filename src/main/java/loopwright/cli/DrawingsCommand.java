package loopwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.CircuitDrawing;
import loopwright.casework.CircuitLoops;
import loopwright.casework.Problem;
import loopwright.model.Circuit;
import loopwright.model.Vehicle;
import loopwright.report.CircuitSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Draws a vehicle's circuits for paper. */
@Command(
    name = "drawings",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.written}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.vehicle}"
    })
final class DrawingsCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Option(names = "--circuit", paramLabel = "${bundle:label.circuit}")
  private List<String> wanted = List.of();

  DrawingsCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    if (!print.asks(".pdf")) {
      return print.onlyPdf(world);
    }
    Optional<Vehicle> vehicle = VehicleCommand.open(world, print.vehicle);
    if (vehicle.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    List<String> circuits =
        wanted.isEmpty() ? vehicle.get().circuits().stream().map(Circuit::id).toList() : wanted;
    if (circuits.isEmpty()) {
      return refuse(Speech.of("drawings.none"));
    }
    List<CircuitDrawing> drawings = new ArrayList<>();
    try {
      CircuitLoops loops = world.loops(vehicle.get());
      for (String circuit : circuits) {
        drawings.add(loops.drawing(circuit));
      }
    } catch (Problem e) {
      return refuse(Speech.problem(e));
    }
    return print.write(
        world,
        "drawings",
        CircuitSheet.pdf(
            vehicle.get(), drawings, print.paper, PrintOptions.today(world), print.phrases));
  }

  private int refuse(String why) {
    new Page(world.err(), Page.USUAL).say(why);
    return ExitCode.USAGE.number();
  }
}
