package loopwright.cli;

import picocli.CommandLine.Parameters;

/** What all commands that print a vehicle have in common. */
final class PrintOptions extends OutOptions {
  @Parameters(paramLabel = "VEHICLE", description = "A vehicle file, or a demo vehicle's name.")
  String vehicle = "";
}
