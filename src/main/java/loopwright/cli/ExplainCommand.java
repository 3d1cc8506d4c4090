package loopwright.cli;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import loopwright.casework.LoopView;
import loopwright.casework.Problem;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.explain.Explained;
import loopwright.casework.explain.Explained.Moved;
import loopwright.casework.explain.Explained.Stop;
import loopwright.casework.explain.Figure;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints an explaining page, its figures worked out as its controls are set. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    exitCodeList = {"0:${bundle:exit.printed}", "2:${bundle:exit.page}"})
final class ExplainCommand implements Callable<Integer> {
  private final CliWorld world;

  @Parameters(arity = "0..*", paramLabel = "${bundle:label.topic}", descriptionKey = "topic")
  private List<String> topic = List.of();

  @Option(names = "--set", paramLabel = "${bundle:label.control-stop}")
  private Map<String, String> set = Map.of();

  @Mixin private LineWidth width = new LineWidth();

  ExplainCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    try {
      ExplainDesk desk = world.explainDesk();
      String words = String.join(" ", topic);
      List<ExplainDesk.Entry> found = desk.find(words);
      List<ExplainDesk.Entry> named = found.stream().filter(e -> e.id().equals(words)).toList();
      List<ExplainDesk.Entry> pages = named.isEmpty() ? found : named;
      if (pages.isEmpty()) {
        throw new Problem("page", words, Speech.of("explain.none"));
      }
      Page page = width.out(world);
      if (pages.size() == 1) {
        show(page, desk.open(pages.get(0).id(), set));
      } else {
        pages.forEach(e -> page.block(e.id() + ": ", e.title()));
        page.say(Speech.of("explain.how", pages.get(0).id()));
      }
      page.flush();
      return ExitCode.DONE.number();
    } catch (Problem e) {
      width.err(world).say(Speech.problem(e));
      return ExitCode.USAGE.number();
    }
  }

  /** The loop from post to post: volts at each node, and in brackets those of a sound one. */
  private static void volts(Page page, LoopView loop) {
    page.say(Speech.of("explain.volts", loop.title()));
    for (int i = 0; i < loop.stairs().size(); i++) {
      LoopView.Stair stair = loop.stairs().get(i);
      double now = stair.measured().get(0).volts();
      page.block(
          String.format("%-10s ", stair.point()),
          Staircase.volts(now) + " V (" + Staircase.volts(stair.healthy().low()) + " V)");
      if (i < loop.pieces().size()) {
        page.block("  | ", loop.pieces().get(i).title());
      }
    }
    loop.branches().forEach(branch -> volts(page, branch));
  }

  private static void show(Page page, Explained shown) {
    page.say(shown.title());
    page.gap();
    page.say(shown.words());
    page.gap();
    shown.loop().ifPresent(loop -> volts(page, loop));
    page.gap();
    for (Figure figure : shown.figures()) {
      page.block(figure.name() + ": ", figure.text());
    }
    page.gap();
    page.block(Speech.of("explain.try") + ": ", shown.tryThis());
    for (Moved control : shown.controls()) {
      Stop now = control.stops().get(control.stop());
      page.block(
          "--set " + control.id() + "=" + now.id() + "  ",
          control.name()
              + ": "
              + now.text()
              + " ("
              + Speech.of(
                  "explain.of", String.join(", ", control.stops().stream().map(Stop::id).toList()))
              + ")");
    }
  }
}
