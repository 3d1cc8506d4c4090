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
    exitCodeList = {
      "0:${bundle:exit.written}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.vehicle}"
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
