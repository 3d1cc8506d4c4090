package loopwright.cli;

import java.io.IOException;
import java.util.List;
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
    exitCodeList = {
      "0:${bundle:exit.ended}",
      "1:${bundle:exit.answer-lost}",
      "2:${bundle:exit.circuit}",
      "3:${bundle:exit.vehicle}"
    })
final class ProveCommand implements Callable<Integer> {
  /** What the help tells of, in order. */
  private static final List<String> HELP =
      List.of("value", "choice", "done", "show", "find", "again", "why", "go", "list", "stop");

  private final CliWorld world;

  @Mixin private ProofOptions options = new ProofOptions();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "${bundle:label.circuit}",
      descriptionKey = "circuit")
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
    page.say(Speech.of("prove.how"));
    show(proving.view());
    while (true) {
      page.prompt(prompt());
      LineReader.Next next = in.next();
      if (next instanceof LineReader.Next.End) {
        page.gap();
        page.say(Speech.of("prove.kept"));
        return;
      }
      try {
        if (ends(next instanceof LineReader.Next.Line l ? l.text().strip() : "")) {
          page.say(Speech.of("prove.kept"));
          return;
        }
      } catch (Problem e) {
        page.say(Speech.of("not-taken", Speech.problem(e)));
      }
    }
  }

  private String prompt() {
    return proving
            .view()
            .now()
            .map(
                n ->
                    n.meter().isEmpty()
                        ? (n.kind().isEmpty() ? "prompt.done" : "prompt.seen")
                        : "prompt.reads")
            .map(Speech::of)
            .orElse("")
        + "> ";
  }

  /** Does what a line says; true if that is to end. */
  private boolean ends(String line) throws IOException, Problem {
    String[] words = Obeyed.PROVE.line(line).split("\\s+", 2);
    switch (words[0]) {
      case "stop" -> {
        return true;
      }
      case "" -> show(proving.view());
      case "help" -> HelpPage.show(page, "prove.", HELP);
      case "list" -> items(proving.view());
      case "why" -> proving.view().now().ifPresent(n -> page.say(n.because()));
      case "again" -> show(proving.again());
      case "go" -> show(proving.choose(words.length > 1 ? words[1] : ""));
      case "find" -> find();
      default -> answer(line);
    }
    return false;
  }

  private void answer(String line) throws Problem {
    Optional<ProveView.Now> now = proving.view().now();
    if (now.isPresent() && now.get().kind().isEmpty()) {
      show(proving.confirm(yes(line)));
      return;
    }
    if (now.isEmpty()) {
      throw new Problem("entry", Page.plain(line), Speech.of("prove.go"));
    }
    Answer answer =
        new Entry(now.get().kind().get(), now.get().choices(), now.get().choiceWords(), List.of())
            .read(line);
    show(proving.answer(answer));
  }

  private static boolean yes(String line) throws Problem {
    if (line.equals("1") || Obeyed.PROVE.line(line).equals("done") || Speech.yes(line)) {
      return true;
    }
    if (line.equals("2") || Speech.no(line)) {
      return false;
    }
    throw new Problem("entry", Page.plain(line), Speech.of("prove.yes-no"));
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
      page.say(Speech.of(all ? "prove.all" : "prove.this"));
      return;
    }
    ProveView.Now now = view.now().get();
    page.say(Speech.of("prove.step", now.title(), now.number(), now.of()));
    page.labelled(Speech.label("careful"), now.cautions());
    page.block(Speech.label("do"), now.task());
    page.labelled(Speech.label("set"), now.set());
    now.red().ifPresent(p -> ProofOptions.point(page, "red", p));
    now.black().ifPresent(p -> ProofOptions.point(page, "black", p));
    if (!now.meter().isEmpty()) {
      page.block(Speech.label("meter"), now.meter());
    }
    if (!now.healthy().isEmpty()) {
      page.block(Speech.label("healthy"), now.healthy());
    }
    if (!now.otherwise().isEmpty()) {
      page.block(Speech.NO_LABEL, now.otherwise());
    }
    for (int i = 0; i < now.choiceWords().size() && now.meter().isEmpty(); i++) {
      page.block("        " + (i + 1) + "  ", now.choiceWords().get(i));
    }
    now.trouble()
        .ifPresent(
            t -> {
              page.block(Speech.label("wrong"), t.words());
              if (t.canFind() || t.caseId().isPresent()) {
                page.block(Speech.NO_LABEL, Speech.of("prove.find"));
              }
            });
  }
}
