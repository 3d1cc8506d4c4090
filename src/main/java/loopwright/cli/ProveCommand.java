package loopwright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import loopwright.casework.Answer;
import loopwright.casework.FindCase;
import loopwright.casework.Problem;
import loopwright.casework.prove.ProveView;
import loopwright.casework.prove.Proving;
import loopwright.io.wire.LineReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** First power, one thing at a time, asked and answered in lines. */
@Command(
    name = "prove",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Powers a vehicle up behind a small main fuse and proves it circuit by circuit: what to check",
      "before power, at power and under load, and what a healthy one shows. What isn't as it should",
      "be goes into finding the fault with the readings taken. Every answer is kept; go on any day.",
      "Say help while it runs for the words it understands."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:ended, or to go on with later",
      "1:the program failed, or an answer can't be kept",
      "2:the command line was not understood, or there is no such circuit",
      "3:the vehicle can't be read or has defects"
    })
final class ProveCommand implements Callable<Integer> {
  private final CliWorld world;

  @Mixin private ProofOptions options = new ProofOptions();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "CIRCUIT",
      description = "What to prove first, by its id; in the order of first power if left out.")
  private Optional<String> first = Optional.empty();

  private Page page;
  private LineReader in;
  private CliWorld.Opening.Opened opened;
  private Proving proving;

  ProveCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws IOException {
    page = options.width.out(world);
    in = new LineReader(world.in());
    Optional<CliWorld.Opening.Opened> found = options.open(world);
    if (found.isEmpty()) {
      return ExitCode.VEHICLE.number();
    }
    opened = found.get();
    try {
      proving = world.proveDesk().open(opened.name(), opened.vehicle(), options.meter);
      if (first.isPresent()) {
        proving.choose(first.get());
      }
      ProveView view = proving.view();
      page.say(view.vehicle() + ". " + view.plan());
      if (!view.missing().isEmpty()) {
        page.say(view.missing());
      }
      if (options.list) {
        items(view);
      } else {
        talk();
      }
    } catch (Problem e) {
      return options.failed(world, e, "subject");
    }
    page.flush();
    return ExitCode.DONE.number();
  }

  private void talk() throws IOException, Problem {
    page.say("Say help for the words understood here.");
    show(proving.view());
    while (true) {
      page.prompt(prompt());
      LineReader.Next next = in.next();
      if (next instanceof LineReader.Next.End) {
        page.gap();
        page.say("All answers are kept.");
        return;
      }
      String line = next instanceof LineReader.Next.Line l ? l.text().strip() : "";
      if (line.equalsIgnoreCase("stop")) {
        page.say("All answers are kept.");
        return;
      }
      try {
        line(line);
      } catch (Problem e) {
        page.say("Not taken: " + e.getMessage() + ". Nothing has changed.");
      }
    }
  }

  private String prompt() {
    return proving
        .view()
        .now()
        .map(n -> n.meter().isEmpty() ? (n.kind().isEmpty() ? "done?> " : "seen> ") : "it reads> ")
        .orElse("> ");
  }

  private void line(String line) throws IOException, Problem {
    String[] words = line.split("\\s+", 2);
    switch (words[0].toLowerCase(Locale.ROOT)) {
      case "" -> show(proving.view());
      case "help" -> help();
      case "list" -> items(proving.view());
      case "why" -> proving.view().now().ifPresent(n -> page.say(n.because()));
      case "again" -> show(proving.again());
      case "go" -> show(proving.choose(words.length > 1 ? words[1] : ""));
      case "find" -> find();
      default -> answer(line);
    }
  }

  private void answer(String line) throws Problem {
    Optional<ProveView.Now> now = proving.view().now();
    if (now.isPresent() && now.get().kind().isEmpty()) {
      show(proving.confirm(yes(line)));
      return;
    }
    if (now.isEmpty()) {
      throw new Problem("entry", Page.plain(line), "go and an id, again, list or stop");
    }
    Answer answer =
        new Entry(now.get().kind().get(), now.get().choices(), now.get().choiceWords(), List.of())
            .read(line);
    show(proving.answer(answer));
  }

  private static boolean yes(String line) throws Problem {
    return switch (line.toLowerCase(Locale.ROOT)) {
      case "1", "yes", "y", "done" -> true;
      case "2", "no", "n" -> false;
      default -> throw new Problem("entry", Page.plain(line), "1 or yes, 2 or no");
    };
  }

  /** Finds the fault over what is wrong, and comes back. */
  private void find() throws IOException, Problem {
    Optional<String> open =
        proving.view().now().flatMap(ProveView.Now::trouble).flatMap(ProveView.Trouble::caseId);
    String caseId = open.isPresent() ? open.get() : proving.findFault();
    try (FindCase found =
            world.desk().resume(caseId, opened.vehicle(), new ToldProgress(world.err()));
        Meanwhile lines = new Meanwhile(found, in)) {
      new PlainTalk(
              found,
              opened.vehicle(),
              Optional.empty(),
              "",
              page,
              lines,
              new LiveMeter(Optional.empty()))
          .run();
    }
    page.gap();
    proving.refresh();
    show(proving.view());
  }

  private void help() {
    page.items(
        List.of(
            "a reading with its unit, 12.4 V, 35 mV, 0.3 ohm or OL; or the number of an answer",
            "find: finds the fault over what isn't as it should be, with the readings taken",
            "again: proves this one again from its first step",
            "go ID: proves another; list: all with what is proven",
            "why: why this step; Enter: all of it again; stop: ends, all is kept"));
  }

  private void items(ProveView view) {
    for (ProveView.Item item : view.items()) {
      String mark =
          switch (item.state()) {
            case PROVEN -> "[x] ";
            case FAILED -> "[!] ";
            case CHANGED -> "[~] ";
            case BEGUN -> "[.] ";
            case OPEN -> "[ ] ";
          };
      page.block(
          mark,
          item.id()
              + ": "
              + item.title()
              + (item.note().isEmpty() ? "" : " (" + item.note() + ")"));
    }
  }

  private void show(ProveView view) {
    if (!view.said().isEmpty()) {
      page.say(view.said());
    }
    page.gap();
    if (view.now().isEmpty()) {
      boolean all = view.items().stream().allMatch(i -> i.state() == ProveView.State.PROVEN);
      page.say(all ? "All is proven." : "This is proven. Say go and an id; list shows them.");
      return;
    }
    ProveView.Now now = view.now().get();
    page.say(now.title() + ", step " + now.number() + " of " + now.of());
    page.labelled("  CAREFUL  ", now.cautions());
    page.block("  DO       ", now.task());
    page.labelled("  SET      ", now.set());
    now.red().ifPresent(p -> ProofOptions.point(page, "  RED      ", p));
    now.black().ifPresent(p -> ProofOptions.point(page, "  BLACK    ", p));
    if (!now.meter().isEmpty()) {
      page.block("  METER    ", now.meter());
    }
    if (!now.healthy().isEmpty()) {
      page.block("  HEALTHY  ", now.healthy());
    }
    if (!now.otherwise().isEmpty()) {
      page.block("           ", now.otherwise());
    }
    for (int i = 0; i < now.choiceWords().size() && now.meter().isEmpty(); i++) {
      page.block("        " + (i + 1) + "  ", now.choiceWords().get(i));
    }
    now.trouble()
        .ifPresent(
            t -> {
              page.block("  WRONG    ", t.words());
              if (t.canFind() || t.caseId().isPresent()) {
                page.block("           ", "Say find, or answer again.");
              }
            });
  }
}
