package loopwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import loopwright.casework.CaseDesk;
import loopwright.casework.FindCase;
import loopwright.casework.MeterInHand;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.feed.MeterPort;
import loopwright.diagnosis.ComplaintKind;
import loopwright.io.instrument.Instruments;
import loopwright.io.wire.LineReader;
import loopwright.io.wire.WireCodec;
import loopwright.knowledge.Context;
import loopwright.model.Vehicle;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds a fault, asked and answered in lines. */
@Command(
    name = "find",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    exitCodeList = {
      "0:${bundle:exit.kept}",
      "1:${bundle:exit.failed-kept}",
      "2:${bundle:exit.complaint}",
      "3:${bundle:exit.vehicle}",
      "4:${bundle:exit.case}"
    })
final class FindCommand implements Callable<Integer> {
  /** Fields by which the keeping of cases names its problems. */
  private static final Set<String> KEEPING = Set.of("case", "case file", "cases folder");

  private final CliWorld world;

  @Parameters(arity = "0..1", paramLabel = "${bundle:label.vehicle}", descriptionKey = "vehicle")
  private Optional<String> vehicle = Optional.empty();

  @Option(names = "--complaint", paramLabel = "${bundle:label.words}")
  private Optional<String> complaint = Optional.empty();

  @Option(names = "--circuit", paramLabel = "${bundle:label.id}")
  private Optional<String> circuit = Optional.empty();

  @Option(names = "--kind", paramLabel = "${bundle:label.kind}")
  private Optional<String> kind = Optional.empty();

  @Option(names = "--load", paramLabel = "${bundle:label.id}")
  private Optional<String> load = Optional.empty();

  @Option(names = "--context", paramLabel = "${bundle:label.context}")
  private String context = Context.IN_SERVICE.word();

  @Option(names = "--meter", paramLabel = "${bundle:label.id}")
  private String meter = MeterInHand.USUAL;

  @Option(names = "--meter-port", paramLabel = "${bundle:label.port}")
  private Optional<String> meterPort = Optional.empty();

  @Option(names = "--jsonl")
  private boolean jsonl;

  @Option(names = "--ready", paramLabel = "${bundle:label.id}")
  private Optional<String> ready = Optional.empty();

  @Option(names = "--resume", paramLabel = "${bundle:label.case}")
  private Optional<String> resume = Optional.empty();

  @Mixin private LineWidth width = new LineWidth();

  @Option(names = "--tables-only")
  private boolean tablesOnly;

  FindCommand(CliWorld world) {
    this.world = world;
  }

  @Override
  public Integer call() throws IOException {
    LineReader in = new LineReader(world.in());
    CaseDesk desk;
    try {
      desk = world.desk();
    } catch (Problem e) {
      return failed(ExitCode.FAILED, e);
    }
    desk.countOwnRecord(!tablesOnly);
    String caseId = "";
    try {
      Optional<MeterPort> port = port();
      Optional<ReadyCase> practice = practice();
      String name = practice.isPresent() ? practice.get().vehicle() : vehicleName();
      CliWorld.Opening opening = world.openVehicle(name);
      if (opening instanceof CliWorld.Opening.Defective defective) {
        return defective(name, defective.defects());
      }
      CliWorld.Opening.Opened opened = (CliWorld.Opening.Opened) opening;
      opened.remarks().forEach(world.err()::println);
      Optional<SimulatedMeter> practiceMeter = Optional.empty();
      if (practice.isPresent()) {
        practiceMeter = Optional.of(world.practiceMeter(practice.get(), opened.vehicle()));
      }
      Optional<FindCase> found =
          practice.isPresent()
              ? Optional.of(open(desk, practice.get(), practiceMeter.get(), opened))
              : open(desk, opened, in);
      if (found.isEmpty()) {
        return ExitCode.DONE.number();
      }
      try (FindCase findCase = found.get();
          Meanwhile lines = new Meanwhile(findCase, in);
          LiveMeter live = new LiveMeter(port.map(new Instruments()::open))) {
        caseId = findCase.view().caseId();
        String story = practice.map(ReadyCase::story).orElse("");
        return (jsonl
                ? new LineTalk(
                        findCase,
                        opened.vehicle(),
                        opened.name(),
                        practiceMeter,
                        story,
                        lines,
                        world.out())
                    .run()
                : new PlainTalk(
                        findCase,
                        opened.vehicle(),
                        practiceMeter,
                        story,
                        width.out(world),
                        lines,
                        live)
                    .run())
            .number();
      }
    } catch (Problem e) {
      return failed(KEEPING.contains(e.field()) ? ExitCode.CASE : ExitCode.USAGE, e);
    } catch (RuntimeException e) {
      if (!caseId.isEmpty()) {
        world.err().println(Speech.of("find.kept", caseId));
      }
      throw e;
    }
  }

  /** The meter's port, if one is named. */
  private Optional<MeterPort> port() throws Problem {
    if (meterPort.isPresent() && (jsonl || ready.isPresent())) {
      throw new Problem("--meter-port", meterPort.get(), Speech.of("find.port-alone"));
    }
    return meterPort.isPresent() ? Optional.of(MeterPort.parse(meterPort.get())) : Optional.empty();
  }

  private String vehicleName() throws Problem {
    if (vehicle.isPresent()) {
      return vehicle.get();
    }
    if (resume.isEmpty()) {
      throw new Problem(
          "VEHICLE", "", Speech.of("find.which", String.join(", ", world.demoVehicles())));
    }
    return world.archive().record(resume.get()).opened().vehicleName();
  }

  /** The ready-made case asked for, if one is. */
  private Optional<ReadyCase> practice() throws Problem {
    if (ready.isEmpty()) {
      return Optional.empty();
    }
    if (vehicle.isPresent()
        || complaint.isPresent()
        || circuit.isPresent()
        || kind.isPresent()
        || load.isPresent()
        || resume.isPresent()) {
      throw new Problem("--ready", ready.get(), Speech.of("find.ready-alone"));
    }
    List<ReadyCase> all = world.readyCases();
    Optional<ReadyCase> found = all.stream().filter(c -> c.id().equals(ready.get())).findFirst();
    if (found.isEmpty()) {
      throw new Problem(
          "--ready",
          ready.get(),
          Speech.of("one-of", all.stream().map(ReadyCase::id).collect(Collectors.joining(", "))));
    }
    return found;
  }

  private FindCase open(
      CaseDesk desk, ReadyCase practice, SimulatedMeter simulated, CliWorld.Opening.Opened opened)
      throws Problem {
    return simulated.following(
        desk.open(
            CaseDesk.NewCase.practice(practice, opened.vehicle()), new ToldProgress(world.err())));
  }

  /** Opens the case; empty if the person left before saying what is wrong. */
  private Optional<FindCase> open(CaseDesk desk, CliWorld.Opening.Opened opened, LineReader in)
      throws Problem, IOException {
    CaseDesk.Progress progress = new ToldProgress(world.err());
    if (resume.isPresent()) {
      return Optional.of(desk.resume(resume.get(), opened.vehicle(), progress));
    }
    Context before;
    try {
      before = Context.ofWord(context);
    } catch (IllegalArgumentException e) {
      throw new Problem("--context", context, Speech.of("find.contexts"));
    }
    Optional<CaseDesk.Complaint> understood = complaint(desk, opened.vehicle(), in);
    if (understood.isEmpty()) {
      return Optional.empty();
    }
    CaseDesk.Complaint c = understood.get();
    return Optional.of(
        desk.open(
            new CaseDesk.NewCase(
                opened.vehicle(), opened.name(), c.circuit(), c.load(), c.kind(), before, meter),
            progress));
  }

  private Optional<CaseDesk.Complaint> complaint(CaseDesk desk, Vehicle opened, LineReader in)
      throws Problem, IOException {
    Optional<ComplaintKind> givenKind =
        kind.isPresent() ? Optional.of(kind(kind.get())) : Optional.empty();
    if (circuit.isPresent() && givenKind.isPresent()) {
      return Optional.of(new CaseDesk.Complaint(circuit.get(), load, givenKind.get()));
    }
    Optional<CaseDesk.Complaint> words;
    if (complaint.isPresent()) {
      words = Optional.of(desk.understand(opened, complaint.get()));
    } else if (jsonl) {
      throw new Problem("--complaint", "", Speech.of("find.what"));
    } else {
      words = asked(desk, opened, in);
    }
    return words.map(
        w ->
            new CaseDesk.Complaint(
                circuit.orElse(w.circuit()),
                load.isPresent() || circuit.isPresent() ? load : w.load(),
                givenKind.orElse(w.kind())));
  }

  private Optional<CaseDesk.Complaint> asked(CaseDesk desk, Vehicle opened, LineReader in)
      throws IOException {
    Page page = width.out(world);
    page.say(Speech.of("complaint", opened.name()));
    while (true) {
      page.prompt(Speech.of("prompt.wrong") + "> ");
      LineReader.Next next = in.next();
      if (next instanceof LineReader.Next.End) {
        page.gap();
        return Optional.empty();
      }
      if (next instanceof LineReader.Next.Line line && !line.text().isBlank()) {
        if (Obeyed.says("stop", line.text().strip())) {
          return Optional.empty();
        }
        try {
          return Optional.of(desk.understand(opened, line.text().strip()));
        } catch (Problem e) {
          page.say(Speech.problem(e));
        }
      }
    }
  }

  private static ComplaintKind kind(String text) throws Problem {
    String words = text.strip().toLowerCase(Locale.ROOT).replace('-', ' ');
    List<ComplaintKind> fit =
        Arrays.stream(ComplaintKind.values()).filter(k -> k.words().startsWith(words)).toList();
    if (fit.size() == 1) {
      return fit.get(0);
    }
    throw new Problem(
        "--kind",
        text,
        Arrays.stream(ComplaintKind.values())
            .map(ComplaintKind::words)
            .collect(Collectors.joining(", ")));
  }

  private int defective(String name, List<String> defects) {
    if (jsonl) {
      Problem problem = new Problem("VEHICLE", name, String.join("; ", defects));
      return failed(ExitCode.VEHICLE, problem);
    }
    VehicleCommand.defects(width.err(world), world, name, defects);
    return ExitCode.VEHICLE.number();
  }

  /** Says why nothing could be begun: to a program as a line, to everybody on the log. */
  private int failed(ExitCode code, Problem problem) {
    if (jsonl) {
      byte[] line =
          (new WireCodec().problem(Optional.empty(), problem) + "\n")
              .getBytes(StandardCharsets.UTF_8);
      world.out().write(line, 0, line.length);
      world.out().flush();
    }
    world.err().println(Speech.problem(problem));
    world.err().flush();
    return code.number();
  }
}
