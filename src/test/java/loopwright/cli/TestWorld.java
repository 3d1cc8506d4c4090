package loopwright.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseStore;
import loopwright.casework.CircuitLoops;
import loopwright.casework.PaperDesk;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.RulesElsewhere;
import loopwright.casework.SimulatedMeter;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.record.CaseArchive;
import loopwright.casework.record.KeptCases;
import loopwright.casework.record.KnownGood;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;

/** A world of one vehicle, whose input is given and whose output is kept. */
final class TestWorld implements CliWorld {
  final ScriptedDesk desk;
  private final InputStream in;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final PrintStream outStream;
  private final PrintStream errStream;
  Vehicle vehicle = Shed.pumper();
  int desksMade;
  RulesElsewhere rules;
  boolean terminal;
  final Bench.DrillsInMemory drills = new Bench.DrillsInMemory();
  final Bench.ProofsInMemory proofs = new Bench.ProofsInMemory();

  TestWorld(CaseStore store, byte[] input) {
    this.desk = new ScriptedDesk(store);
    this.in = new ByteArrayInputStream(input);
    this.outStream = new PrintStream(out, true, StandardCharsets.UTF_8);
    this.errStream = new PrintStream(err, true, StandardCharsets.UTF_8);
  }

  /** The same in a program of its own: nothing is kept of what it says. */
  TestWorld(CaseStore store, InputStream in, PrintStream out, PrintStream err) {
    this.desk = new ScriptedDesk(store);
    this.in = in;
    this.outStream = out;
    this.errStream = err;
  }

  TestWorld(CaseStore store, String... lines) {
    this(
        store,
        (String.join("\n", lines) + (lines.length > 0 ? "\n" : ""))
            .getBytes(StandardCharsets.UTF_8));
  }

  int run(String... args) {
    return Cli.run(args, this);
  }

  String outText() {
    return out.toString(StandardCharsets.UTF_8);
  }

  List<String> outLines() {
    return outText().lines().toList();
  }

  String errText() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Override
  public Opening openVehicle(String name) {
    return name.equals("pumper")
        ? new Opening.Opened(vehicle, "pumper", List.of())
        : new Opening.Defective(List.of(name + ": no such file and no demo vehicle"));
  }

  @Override
  public List<String> demoVehicles() {
    return List.of("pumper");
  }

  @Override
  public CaseDesk desk() {
    desksMade++;
    return desk;
  }

  @Override
  public CaseArchive archive() {
    return new KeptCases(desk.store, clock());
  }

  @Override
  public KnownGood knownGood(Vehicle of) throws Problem {
    return KnownGood.of(of, loops(of), archive().shelf().records(), Map.of(), List.of());
  }

  @Override
  public PaperDesk paperDesk() {
    return Bench.paperDesk();
  }

  @Override
  public CardDesk cardDesk() {
    return Bench.cardDesk();
  }

  @Override
  public GroundDesk groundDesk() {
    return Bench.groundDesk(proofs);
  }

  @Override
  public ProveDesk proveDesk() {
    return Bench.proveDesk(desk, proofs);
  }

  @Override
  public List<ReadyCase> readyCases() {
    return List.of();
  }

  @Override
  public SimulatedMeter practiceMeter(ReadyCase ready, Vehicle vehicle) {
    throw new AssertionError("no ready-made case is opened here");
  }

  @Override
  public PractiseDesk practiseDesk() {
    return Bench.practiseDesk(drills);
  }

  @Override
  public ExplainDesk explainDesk() {
    return new ExplainDesk(Bench.KNOWLEDGE, Phrases.inUse());
  }

  @Override
  public CircuitLoops loops(Vehicle vehicle) {
    return new CircuitLoops(
        vehicle, Bench.KNOWLEDGE, Bench.KNOWLEDGE.meters().get(0), Phrases.inUse());
  }

  @Override
  public RulesElsewhere rulesFrom(Path folder) throws Problem {
    return rules != null ? rules : CliWorld.super.rulesFrom(folder);
  }

  @Override
  public boolean hasTerminal() {
    return terminal;
  }

  @Override
  public InputStream in() {
    return in;
  }

  @Override
  public PrintStream out() {
    return outStream;
  }

  @Override
  public PrintStream err() {
    return errStream;
  }

  @Override
  public Clock clock() {
    return Clock.fixed(Instant.parse("2024-05-17T20:00:00Z"), ZoneOffset.UTC);
  }
}
