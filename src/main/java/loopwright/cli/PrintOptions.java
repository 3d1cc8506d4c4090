package loopwright.cli;

import picocli.CommandLine.Parameters;

/** What all commands that print a vehicle have in common. */
final class PrintOptions extends OutOptions {
  @Parameters(paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
  String vehicle = "";
}
