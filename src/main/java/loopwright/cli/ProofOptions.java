package loopwright.cli;

import java.util.Optional;
import loopwright.casework.MeterInHand;
import loopwright.casework.PointView;
import loopwright.casework.Problem;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What all commands that prove something of a vehicle have in common. */
final class ProofOptions {
  @Parameters(index = "0", paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
  private String vehicle = "";

  @Option(names = "--list")
  boolean list;

  @Option(names = "--meter", paramLabel = "${bundle:label.id}")
  String meter = MeterInHand.USUAL;

  @Mixin LineWidth width = new LineWidth();

  /** The vehicle; where it can't be used, its defects are shown. */
  Optional<CliWorld.Opening.Opened> open(CliWorld world) {
    return VehicleCommand.opened(world, vehicle, width.err(world));
  }

  /**
   * Says why it ended early.
   *
   * @param asked the field that the command line names what is proven by
   * @return the code to end with: the command line's fault or not
   */
  int failed(CliWorld world, Problem problem, String asked) {
    Page log = width.err(world);
    log.say(Speech.of("sentence", Speech.problem(problem)));
    log.flush();
    boolean usage = problem.field().equals(asked) || problem.field().equals("meter");
    return (usage ? ExitCode.USAGE : ExitCode.FAILED).number();
  }

  /** A point behind its label, and how it is reached under it. */
  static void point(Page page, String label, PointView point) {
    page.block(Speech.label(label), point.ref() + ": " + point.title());
    if (!point.how().isEmpty()) {
      page.block(Speech.NO_LABEL, point.how());
    }
  }
}
