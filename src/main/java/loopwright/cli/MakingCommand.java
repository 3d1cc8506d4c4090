package loopwright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.list.Allowance;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTables;
import loopwright.casework.list.MakingList;
import loopwright.model.Vehicle;
import loopwright.report.MakingSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists what has to be bought and cut for a vehicle's wiring. */
@Command(
    name = "making",
    mixinStandardHelpOptions = true,
    description = {
      "Lists what to buy and cut for a vehicle's wiring: wire with allowance, fuses, relays,"
          + " terminals, looms.",
      "With --out FILE.pdf all of it for paper, with --out FILE.csv or without --out one table."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:printed or written",
      "1:the file can't be written",
      "2:the command line was not understood",
      "3:the vehicle can't be read or has defects"
    })
final class MakingCommand implements Callable<Integer> {

  /** The tables of the list. */
  enum Table {
    BUYING,
    CUTTING,
    LOOMS
  }

  private final CliWorld world;

  @Mixin private PrintOptions print = new PrintOptions();

  @Option(
      names = "--table",
      paramLabel = "TABLE",
      description = "Which table: buying, cutting or looms; ${DEFAULT-VALUE} if left out.")
  private Table table = Table.BUYING;

  @Option(
      names = "--more",
      paramLabel = "PERCENT",
      description =
          "How much longer than in the vehicle wires are cut, 0 to 100; ${DEFAULT-VALUE} if left"
              + " out.")
  private double percent = Allowance.USUAL.share() * 100;

  @Option(
      names = "--ends",
      paramLabel = "METRES",
      description = "What is added at each end, 0 to 2 m; ${DEFAULT-VALUE} if left out.")
  private double ends = Allowance.USUAL.metresAnEnd();

  MakingCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Optional<Allowance> allowance = allowance();
    if (allowance.isEmpty()) {
      return ExitCode.USAGE.number();
    }
    Optional<Vehicle> vehicle = VehicleCommand.open(world, print.vehicle);
    if (vehicle.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    MakingList making = MakingList.of(vehicle.get(), allowance.get(), print.phrases);
    if (print.asks(".pdf")) {
      return print.write(
          world,
          "making list",
          MakingSheet.pdf(making, print.paper, PrintOptions.today(world), print.phrases));
    }
    ListTables tables = new ListTables(making, print.phrases);
    ListTable wanted =
        switch (table) {
          case BUYING -> tables.buying();
          case CUTTING -> tables.cutting();
          case LOOMS -> tables.looms();
        };
    return print.table(world, "making list", wanted);
  }

  private Optional<Allowance> allowance() {
    try {
      return Optional.of(new Allowance(percent / 100, ends));
    } catch (IllegalArgumentException e) {
      new Page(world.err(), Page.USUAL).say(e.getMessage());
      return Optional.empty();
    }
  }
}
