package loopwright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.Problem;
import loopwright.casework.record.KnownGood;
import loopwright.model.Vehicle;
import loopwright.report.KnownGoodCard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Prints what a vehicle reads when it is well. */
@Command(
    name = "good-readings",
    mixinStandardHelpOptions = true,
    description = {
      "Prints what a vehicle reads when it is well, circuit by circuit, for the glove box:",
      "what is expected beside what was read good, when mends, circuits and grounds were proven.",
      "With --out FILE.pdf."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "3:the vehicle can't be read or has defects"
    })
final class GoodReadingsCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  GoodReadingsCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws Problem {
    if (!print.asks(".pdf")) {
      return print.onlyPdf(world);
    }
    Optional<Vehicle> vehicle = VehicleCommand.open(world, print.vehicle);
    if (vehicle.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    KnownGood known = world.knownGood(vehicle.get());
    return print.write(
        world,
        "readings",
        KnownGoodCard.pdf(
            known, print.paper, world.clock().getZone(), OutOptions.today(world), print.phrases));
  }
}
