package loopwright.cli;

import java.util.List;
import java.util.Locale;
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
    description = {
      "Proves grounds: studs, straps, the engine, the frame, each load's way to the battery.",
      "Says what to switch on, where the leads go, what is good and what is bad; takes the",
      "reading and says good, bad, or that this reading can't tell. Without GROUND it walks",
      "through all that aren't proven yet, those with the same loads on together, cranking last.",
      "Say help while it runs for the words it understands. Every reading is kept."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:ended, or to go on with later",
      "1:the program failed, or a reading can't be kept",
      "2:the command line was not understood, or there is no such ground",
      "3:the vehicle can't be read or has defects"
    })
final class GroundCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private ProofOptions options = new ProofOptions();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "GROUND",
      description = "One ground: a stud, a strap, a piece of metal or a load, by its id.")
  private Optional<String> one = Optional.empty();

  @Option(names = "--sources", description = "Says where each limit comes from.")
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
      page.say("What was read is kept.");
    } catch (Problem e) {
      return options.failed(world, e, "ground");
    }
    if (!check.putBack().isEmpty()) {
      page.labelled("  BACK     ", check.putBack());
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
    page.say("All that a load proves is proven.");
  }

  private void summary() {
    List<GroundRow> rows = check.rows();
    long good = rows.stream().filter(GroundRow::good).count();
    long open = rows.stream().filter(r -> r.provable() && !r.good()).count();
    page.say(
        check.vehicle().name()
            + ": "
            + rows.size()
            + " grounds, "
            + good
            + " proven good, "
            + open
            + " to prove.");
    page.say("Enter passes over one; help shows all words.");
  }

  private void rows() {
    for (GroundRow row : check.rows()) {
      String state =
          !row.since().isEmpty()
              ? row.since()
              : row.result()
                  .map(GroundResult::words)
                  .orElse(row.provable() ? "to prove" : "no load proves it");
      page.block("- ", row.title() + ", " + row.kind() + ": " + state);
    }
  }

  // ---- one of them ---------------------------------------------------------------------------

  /** Asks for one ground until it is good or passed over. */
  private void talk(String id) throws Problem, Asker.Ended {
    GroundView view = check.view(id);
    show(view);
    while (true) {
      String line = asker.line(view.proof().isPresent() ? "reads> " : "> ");
      String word = line.toLowerCase(Locale.ROOT);
      switch (word) {
        case "", "skip" -> {
          return;
        }
        case "help" -> help();
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
    return "'" + Page.plain(e.value()) + "' isn't taken: " + e.accepted() + ".";
  }

  private void say(GroundResult result) {
    page.say(result.words());
    if (!result.next().isEmpty()) {
      page.block("  ", result.next());
    }
  }

  private void ohms(String id) throws Problem, Asker.Ended {
    page.say("Ohms only on a dead vehicle: grounded lead off the battery, 0.00 V there first.");
    String zero = asker.line("leads held together read, in ohms> ");
    String shown = asker.line("across the ground, in ohms> ");
    try {
      say(check.ohms(id, zero, shown));
    } catch (Problem e) {
      page.say(sentence(e));
    }
  }

  private void help() {
    page.items(
        List.of(
            "a reading with its unit, 6.9 mV or 0.007 V: is judged and kept",
            "more: a proof with a greater load on",
            "ohms: judges an ohms reading by the leads' own",
            "show: all of it again; list: all grounds with what was proven",
            "Enter or skip: passes over it; stop: ends, all is kept"));
  }

  private void show(GroundView view) {
    page.say(view.title());
    page.block("  SHOULD   ", view.own());
    if (!view.since().isEmpty()) {
      page.block("           ", view.since());
    }
    view.result().ifPresent(r -> page.block("  LAST     ", r.words()));
    if (view.proof().isEmpty()) {
      page.block("  PROOF    ", view.unproven());
      page.block("  OHMS     ", view.ohms());
      return;
    }
    GroundView.Proof proof = view.proof().get();
    page.labelled("  CAREFUL  ", proof.cautions());
    page.labelled(
        "  SET      ",
        proof.set().change().isEmpty() ? List.of("as it stands") : proof.set().change());
    page.block("  RUNS     ", proof.works());
    ProofOptions.point(page, "  RED      ", proof.red());
    ProofOptions.point(page, "  BLACK    ", proof.black());
    page.block("  METER    ", proof.meter());
    page.block("  HEALTHY  ", proof.healthy());
    page.block("  JUDGED   ", "good " + proof.good() + ", bad " + proof.bad());
    page.block("  LIMIT    ", proof.limit());
    if (sources) {
      page.block("           ", proof.source());
    }
    proof.notes().forEach(n -> page.block("  NOTE     ", n));
    page.block("  OHMS     ", view.ohms());
  }
}
