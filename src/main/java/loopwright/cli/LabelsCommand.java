package loopwright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.list.ListTables;
import loopwright.model.Vehicle;
import loopwright.report.LabelSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Makes labels for both ends of every wire, and for the parts. */
@Command(
    name = "labels",
    mixinStandardHelpOptions = true,
    exitCodeList = {
      "0:${bundle:exit.printed-written}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.vehicle}"
    })
final class LabelsCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  LabelsCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Optional<Vehicle> vehicle = VehicleCommand.open(world, print.vehicle);
    if (vehicle.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    if (print.asks(".pdf")) {
      return print.write(
          world,
          "labels",
          LabelSheet.pdf(vehicle.get(), print.paper, PrintOptions.today(world), print.phrases));
    }
    return print.table(world, "labels", ListTables.labels(vehicle.get(), print.phrases));
  }
}
