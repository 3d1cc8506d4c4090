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
    description = {
      "Draws a vehicle's circuits for paper, one page a circuit: parts, terminals, labels, wire"
          + " sizes, fuses, and the volts a healthy vehicle shows."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "3:the vehicle can't be read or has defects"
    })
final class DrawingsCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Option(
      names = "--circuit",
      paramLabel = "CIRCUIT",
      description = "Only this circuit; give it as often as needed. All if left out.")
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
      return refuse("The vehicle has no circuits to draw.");
    }
    List<CircuitDrawing> drawings = new ArrayList<>();
    try {
      CircuitLoops loops = world.loops(vehicle.get());
      for (String circuit : circuits) {
        drawings.add(loops.drawing(circuit));
      }
    } catch (Problem e) {
      return refuse(e.getMessage());
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
