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
    description = {
      "Makes labels for both ends of every wire and for the parts.",
      "With --out FILE.pdf as sheets to cut, with --out FILE.csv or without --out as a table."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:printed or written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "3:the vehicle can't be read or has defects"
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
