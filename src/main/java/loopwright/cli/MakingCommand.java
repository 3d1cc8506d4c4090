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
    exitCodeList = {
      "0:${bundle:exit.printed-written}",
      "1:${bundle:exit.unwritten}",
      "2:${bundle:exit.line}",
      "3:${bundle:exit.vehicle}"
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

  @Option(names = "--table", paramLabel = "${bundle:label.table}")
  private Table table = Table.BUYING;

  @Option(names = "--more", paramLabel = "${bundle:label.percent}")
  private double percent = Allowance.USUAL.share() * 100;

  @Option(names = "--ends", paramLabel = "${bundle:label.metres}")
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
          "making-list",
          MakingSheet.pdf(making, print.paper, PrintOptions.today(world), print.phrases));
    }
    ListTables tables = new ListTables(making, print.phrases);
    ListTable wanted =
        switch (table) {
          case BUYING -> tables.buying();
          case CUTTING -> tables.cutting();
          case LOOMS -> tables.looms();
        };
    return print.table(world, "making-list", wanted);
  }

  private Optional<Allowance> allowance() {
    try {
      return Optional.of(new Allowance(percent / 100, ends));
    } catch (IllegalArgumentException e) {
      new Page(world.err(), Page.USUAL).say(Speech.of("making.allowance", percent / 100, ends));
      return Optional.empty();
    }
  }
}
