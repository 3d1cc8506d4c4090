package loopwright.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.Vehicle;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows what a vehicle holds, or what is wrong with it. */
@Command(
    name = "vehicle",
    mixinStandardHelpOptions = true,
    description = "Lists a vehicle's circuits and parts, or its defects.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:listed", "2:the command line was not understood", "3:it has defects"})
final class VehicleCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(paramLabel = "VEHICLE", description = "A vehicle file, or a demo vehicle's name.")
  private String name = "";

  @Mixin private LineWidth width = new LineWidth();

  VehicleCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    Page page = width.out(world);
    CliWorld.Opening opening = world.openVehicle(name);
    if (opening instanceof CliWorld.Opening.Opened opened) {
      show(page, opened);
      return ExitCode.DONE.number();
    }
    defects(page, world, name, ((CliWorld.Opening.Defective) opening).defects());
    return ExitCode.VEHICLE.number();
  }

  /** The vehicle of a name; where it can't be used, its defects are shown. */
  static Optional<Vehicle> open(CliWorld world, String name) {
    return open(world, name, new Page(world.err(), Page.USUAL));
  }

  /** The vehicle of a name; where it can't be used, its defects are shown on a page. */
  static Optional<Vehicle> open(CliWorld world, String name, Page page) {
    return opened(world, name, page).map(CliWorld.Opening.Opened::vehicle);
  }

  /** The same with how it is found again. */
  static Optional<CliWorld.Opening.Opened> opened(CliWorld world, String name, Page page) {
    CliWorld.Opening opening = world.openVehicle(name);
    if (opening instanceof CliWorld.Opening.Defective defective) {
      defects(page, world, name, defective.defects());
      return Optional.empty();
    }
    return Optional.of((CliWorld.Opening.Opened) opening);
  }

  static void defects(Page page, CliWorld world, String name, List<String> defects) {
    page.say("The vehicle '" + name + "' can't be used:");
    page.items(defects);
    if (!world.demoVehicles().isEmpty()) {
      page.say("Demo vehicles: " + String.join(", ", world.demoVehicles()) + ".");
    }
    page.flush();
  }

  private static void show(Page page, CliWorld.Opening.Opened opened) {
    Vehicle vehicle = opened.vehicle();
    page.say(
        vehicle.name()
            + ", "
            + vehicle.systemVolts()
            + " V, "
            + vehicle.grounded().word()
            + " post grounded");
    if (!vehicle.note().isEmpty()) {
      page.say(vehicle.note());
    }
    page.gap();
    page.say("Circuits");
    for (Circuit circuit : vehicle.circuits()) {
      String on =
          circuit.on().entrySet().stream()
              .sorted(Map.Entry.comparingByKey())
              .map(e -> e.getKey() + " " + e.getValue())
              .collect(Collectors.joining(", "));
      page.block(
          "  ",
          circuit.id()
              + ", "
              + circuit.name()
              + ": "
              + circuit.loads().stream().map(LoadRef::toString).collect(Collectors.joining(", "))
              + (on.isEmpty() ? "" : "; works with " + on));
    }
    page.gap();
    page.say("Parts");
    for (Part part : vehicle.parts()) {
      page.block(
          "  ",
          part.id()
              + ", "
              + part.kind().word()
              + (part.name().isEmpty() ? "" : ", " + part.name())
              + (part.label().isEmpty() ? "" : ", label \"" + part.label() + "\"")
              + (part.where().isEmpty() ? "" : ", " + part.where()));
    }
    page.gap();
    page.say(opened.remarks().isEmpty() ? "No defects found." : "Noticed");
    page.items(opened.remarks());
    page.flush();
  }
}
