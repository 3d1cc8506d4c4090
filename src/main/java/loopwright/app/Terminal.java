package loopwright.app;

import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
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
import loopwright.cli.CliWorld;
import loopwright.io.KnowledgeFiles;
import loopwright.io.ReadResult;
import loopwright.model.Vehicle;

/** What the commands need, from the running program. */
final class Terminal implements CliWorld {
  private final Vehicles vehicles = new Vehicles();
  private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
  private Engine engine;

  @Override
  public Opening openVehicle(String name) {
    return opening(name, vehicles.read(name));
  }

  @Override
  public Opening openDraft(String name) {
    return opening(name, vehicles.readDraft(name));
  }

  private static Opening opening(String name, ReadResult<Vehicle> result) {
    return result
        .found()
        .<Opening>map(v -> new Opening.Opened(v, Vehicles.lastingName(name), List.of()))
        .orElseGet(() -> new Opening.Defective(Vehicles.messages(result)));
  }

  @Override
  public List<String> demoVehicles() {
    return Vehicles.DEMO;
  }

  @Override
  public CaseDesk desk() {
    return engine().desk();
  }

  @Override
  public CaseArchive archive() {
    return new KeptCases(Engine.store(Places.data()), clock());
  }

  @Override
  public PaperDesk paperDesk() {
    return engine().paperDesk();
  }

  @Override
  public CardDesk cardDesk() {
    return engine().cardDesk();
  }

  @Override
  public GroundDesk groundDesk() {
    return engine().groundDesk();
  }

  @Override
  public ProveDesk proveDesk() {
    return engine().proveDesk();
  }

  @Override
  public PractiseDesk practiseDesk() {
    return engine().practiseDesk();
  }

  @Override
  public RulesElsewhere rulesFrom(Path folder) throws Problem {
    return new FolderRules(
        folder, Places.data(), rules -> engine = new Engine(Places.data(), rules));
  }

  @Override
  public boolean hasTerminal() {
    return System.console() != null;
  }

  private Engine engine() {
    if (engine == null) {
      engine = new Engine(Places.data());
      engine.compileRules();
    }
    return engine;
  }

  @Override
  public List<ReadyCase> readyCases() {
    return Practice.cases();
  }

  @Override
  public SimulatedMeter practiceMeter(ReadyCase ready, Vehicle vehicle) throws Problem {
    return Practice.meter(engine(), ready, vehicle);
  }

  @Override
  public KnownGood knownGood(Vehicle vehicle) throws Problem {
    return engine().knownGood(vehicle);
  }

  @Override
  public ExplainDesk explainDesk() {
    // No engine: the pages need no rules.
    return new ExplainDesk(KnowledgeFiles.readBundled().orThrow(), Phrases.inUse());
  }

  @Override
  public CircuitLoops loops(Vehicle vehicle) {
    return engine().loops(vehicle);
  }

  @Override
  public InputStream in() {
    return System.in;
  }

  @Override
  public PrintStream out() {
    return out;
  }

  @Override
  public PrintStream err() {
    return System.err;
  }

  @Override
  public Clock clock() {
    return Clock.systemDefaultZone();
  }
}
