package loopwright.cli;

import picocli.CommandLine.Option;

/** How wide the lines are that a command writes. */
final class LineWidth {
  @Option(names = "--width", paramLabel = "${bundle:label.columns}")
  private int columns = Page.USUAL;

  /** A page of what was asked for. */
  Page out(CliWorld world) {
    return new Page(world.out(), columns);
  }

  /** A page of what went wrong. */
  Page err(CliWorld world) {
    return new Page(world.err(), columns);
  }
}
