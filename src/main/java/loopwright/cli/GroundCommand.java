package loopwright.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.Problem;
import loopwright.casework.ground.GroundCheck;
import loopwright.casework.ground.GroundResult;
import loopwright.casework.ground.GroundRow;
import loopwright.casework.ground.GroundView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Proves grounds by the volts they lose under load, asked and answered in lines. */
@Command(
    name = "ground",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    exitCodeList = {
      "0:${bundle:exit.ended}",
      "1:${bundle:exit.reading-lost}",
      "2:${bundle:exit.ground}",
      "3:${bundle:exit.vehicle}"
    })
final class GroundCommand implements Callable<Integer> {
  /** What the help tells of, in order. */
  private static final List<String> HELP =
      List.of("value", "more", "ohms", "show", "list", "skip", "stop");

  private final CliWorld world;

  @Mixin private ProofOptions options = new ProofOptions();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "${bundle:label.ground}",
      descriptionKey = "ground")
  private Optional<String> one = Optional.empty();

  @Option(names = "--sources")
  private boolean sources;

  private Page page;
  private GroundCheck check;
  private Asker asker;

  GroundCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() {
    page = options.width.out(world);
    asker = new Asker(world.in(), page);
    Optional<CliWorld.Opening.Opened> opened = options.open(world);
    if (opened.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    try {
      check = world.groundDesk().open(opened.get().vehicle(), options.meter);
      if (!check.missing().isEmpty()) {
        page.say(check.missing());
      }
      if (options.list) {
        rows();
      } else if (one.isPresent()) {
        talk(one.get());
      } else {
        walk();
      }
    } catch (Asker.Ended e) {
      page.gap();
      page.say(Speech.of("ground.kept"));
    } catch (Problem e) {
      return options.failed(world, e, "ground");
    }
    if (!check.putBack().isEmpty()) {
      page.labelled(Speech.label("back"), check.putBack());
    }
    page.flush();
    return ExitCode.DONE.number();
  }

  // ---- all of them ---------------------------------------------------------------------------

  private void walk() throws Problem, Asker.Ended {
    summary();
    Optional<String> at = check.next("");
    while (at.isPresent()) {
      page.gap();
      talk(at.get());
      at = check.next(at.get());
    }
    page.gap();
    rows();
    page.say(Speech.of("ground.all"));
  }

  private void summary() {
    List<GroundRow> rows = check.rows();
    long good = rows.stream().filter(GroundRow::good).count();
    long open = rows.stream().filter(r -> r.provable() && !r.good()).count();
    page.say(Speech.of("ground.summary", check.vehicle().name(), rows.size(), good, open));
    page.say(Speech.of("ground.how"));
  }

  private void rows() {
    for (GroundRow row : check.rows()) {
      String state =
          !row.since().isEmpty()
              ? row.since()
              : row.result()
                  .map(GroundResult::words)
                  .orElse(Speech.of(row.provable() ? "ground.open" : "ground.unprovable"));
      page.block("- ", row.title() + ", " + row.kind() + ": " + state);
    }
  }

  // ---- one of them ---------------------------------------------------------------------------

  /** Asks for one ground until it is good or passed over. */
  private void talk(String id) throws Problem, Asker.Ended {
    GroundView view = check.view(id);
    show(view);
    while (true) {
      String line = asker.line((view.proof().isPresent() ? Speech.of("ground.reads") : "") + "> ");
      switch (Obeyed.GROUND.line(line)) {
        case "", "skip" -> {
          return;
        }
        case "stop" -> throw new Asker.Ended();
        case "help" -> HelpPage.show(page, "ground.", HELP);
        case "list" -> rows();
        case "show" -> show(check.view(id));
        case "more" -> {
          try {
            view = check.greater(id);
            show(view);
          } catch (Problem e) {
            page.say(sentence(e));
          }
        }
        case "ohms" -> ohms(id);
        default -> {
          if (taken(id, line)) {
            return;
          }
        }
      }
    }
  }

  private boolean taken(String id, String line) throws Problem {
    try {
      GroundResult result = check.take(id, line);
      say(result);
      return result.verdict() == GroundResult.Verdict.GOOD;
    } catch (Problem e) {
      if (!e.field().equals("value") && !e.field().equals("unit")) {
        throw e;
      }
      page.say(sentence(e));
      return false;
    }
  }

  private static String sentence(Problem e) {
    return Speech.of("refused", Page.plain(e.value()), e.accepted());
  }

  private void say(GroundResult result) {
    page.say(result.words());
    if (!result.next().isEmpty()) {
      page.block("  ", result.next());
    }
  }

  private void ohms(String id) throws Problem, Asker.Ended {
    page.say(Speech.of("ground.ohms"));
    String zero = asker.line(Speech.of("ground.leads") + "> ");
    String shown = asker.line(Speech.of("ground.across") + "> ");
    try {
      say(check.ohms(id, zero, shown));
    } catch (Problem e) {
      page.say(sentence(e));
    }
  }

  private void show(GroundView view) {
    page.say(view.title());
    page.block(Speech.label("should"), view.own());
    if (!view.since().isEmpty()) {
      page.block(Speech.NO_LABEL, view.since());
    }
    view.result().ifPresent(r -> page.block(Speech.label("last"), r.words()));
    if (view.proof().isEmpty()) {
      page.block(Speech.label("proof"), view.unproven());
      page.block(Speech.label("ohms"), view.ohms());
      return;
    }
    GroundView.Proof proof = view.proof().get();
    page.labelled(Speech.label("careful"), proof.cautions());
    page.labelled(
        Speech.label("set"),
        proof.set().change().isEmpty()
            ? List.of(Speech.of("ground.as-it-stands"))
            : proof.set().change());
    page.block(Speech.label("runs"), proof.works());
    ProofOptions.point(page, "red", proof.red());
    ProofOptions.point(page, "black", proof.black());
    page.block(Speech.label("meter"), proof.meter());
    page.block(Speech.label("healthy"), proof.healthy());
    page.block(Speech.label("judged"), Speech.of("ground.judged", proof.good(), proof.bad()));
    page.block(Speech.label("limit"), proof.limit());
    if (sources) {
      page.block(Speech.NO_LABEL, proof.source());
    }
    proof.notes().forEach(n -> page.block(Speech.label("note"), n));
    page.block(Speech.label("ohms"), view.ohms());
  }
}
