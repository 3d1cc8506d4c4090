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
    exitCodeList = {"0:${bundle:exit.listed}", "2:${bundle:exit.line}", "3:${bundle:exit.defects}"})
final class VehicleCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
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
    page.say(Speech.of("vehicle.unused", name));
    page.items(defects);
    if (!world.demoVehicles().isEmpty()) {
      page.say(Speech.of("vehicle.demos", String.join(", ", world.demoVehicles())));
    }
    page.flush();
  }

  private static void show(Page page, CliWorld.Opening.Opened opened) {
    Vehicle vehicle = opened.vehicle();
    page.say(
        Speech.of(
            "vehicle.head",
            vehicle.name(),
            vehicle.systemVolts(),
            Speech.of("vehicle." + vehicle.grounded())));
    if (!vehicle.note().isEmpty()) {
      page.say(vehicle.note());
    }
    page.gap();
    page.say(Speech.of("vehicle.circuits"));
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
              + (on.isEmpty() ? "" : "; " + Speech.of("vehicle.works", on)));
    }
    page.gap();
    page.say(Speech.of("vehicle.parts"));
    for (Part part : vehicle.parts()) {
      page.block(
          "  ",
          part.id()
              + ", "
              + part.kind().said()
              + (part.name().isEmpty() ? "" : ", " + part.name())
              + (part.label().isEmpty() ? "" : ", " + Speech.of("labelled", part.label()))
              + (part.where().isEmpty() ? "" : ", " + part.where()));
    }
    page.gap();
    page.say(Speech.of(opened.remarks().isEmpty() ? "vehicle.sound" : "vehicle.noticed"));
    page.items(opened.remarks());
    page.flush();
  }
}
