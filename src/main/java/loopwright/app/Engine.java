package loopwright.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseStore;
import loopwright.casework.CircuitLoops;
import loopwright.casework.Desk;
import loopwright.casework.PaperDesk;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.prove.ProofStore;
import loopwright.casework.prove.ProveDesk;
import loopwright.casework.record.KeptCases;
import loopwright.casework.record.KnownGood;
import loopwright.casework.record.OwnHistory;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.io.KnowledgeFiles;
import loopwright.io.journal.FileCaseStore;
import loopwright.io.journal.FilePractiseLog;
import loopwright.io.journal.FileProofStore;
import loopwright.knowledge.Knowledge;
import loopwright.model.Language;
import loopwright.model.Vehicle;
import loopwright.rules.DroolsRuleBook;
import loopwright.rules.RuleFiles;

/** Knowledge, rules and desk, put together. The rules are compiled when they are asked for. */
final class Engine {
  private final Path data;
  private final Knowledge knowledge;
  private final CompletableFuture<RuleBook> rules;
  private final AtomicBoolean compiling;
  private final CaseDesk desk;
  private final ProofStore proofs;
  private final KeptCases archive;
  private final Phrases phrases = Phrases.inUse();

  /** An engine with the program's own rules. */
  Engine(Path data) {
    this(data, new CompletableFuture<>());
  }

  /** An engine with rules that are compiled already. */
  Engine(Path data, RuleBook rules) {
    this(data, CompletableFuture.completedFuture(rules));
  }

  private Engine(Path data, CompletableFuture<RuleBook> rules) {
    this.data = data;
    this.rules = rules;
    compiling = new AtomicBoolean(rules.isDone());
    knowledge = KnowledgeFiles.readBundled().orThrow();
    proofs = new FileProofStore(data.resolve("proofs"));
    archive = new KeptCases(store(data), Clock.systemDefaultZone());
    desk =
        new Desk(
            knowledge,
            this::rules,
            store(data),
            Clock.systemDefaultZone(),
            phrases,
            new OwnHistory(() -> archive.shelf().records(), knowledge));
  }

  /** Where the cases are kept. */
  static CaseStore store(Path data) {
    return new FileCaseStore(data.resolve("cases"));
  }

  /**
   * Begins to compile the rules beside everything else, if nobody has. That takes a processor for a
   * second or two, so not before the window can be typed into.
   */
  void compileRules() {
    if (compiling.compareAndSet(false, true)) {
      Thread compiler = new Thread(this::compile, "rules");
      compiler.setDaemon(true);
      compiler.start();
    }
  }

  private RuleBook rules() {
    compileRules();
    return rules.join();
  }

  private void compile() {
    try {
      rules.complete(new DroolsRuleBook(RuleFiles.bundled(), Language.inUse().locale()));
    } catch (RuntimeException e) {
      // Whoever opens a case is told; the rest of the program works without the rules.
      rules.completeExceptionally(e);
    }
  }

  Knowledge knowledge() {
    return knowledge;
  }

  CaseDesk desk() {
    return desk;
  }

  /** Whether the rules are compiled, or will never be. */
  boolean rulesReady() {
    return rules.isDone();
  }

  PaperDesk paperDesk() {
    return new PaperDesk(knowledge, this::rules, phrases);
  }

  CardDesk cardDesk() {
    return new CardDesk(knowledge, this::rules, phrases);
  }

  ProveDesk proveDesk() {
    return new ProveDesk(knowledge, desk, proofs, Clock.systemDefaultZone(), phrases);
  }

  PractiseDesk practiseDesk() {
    return new PractiseDesk(
        knowledge,
        this::rules,
        Clock.systemDefaultZone(),
        phrases,
        new FilePractiseLog(data.resolve("practice")));
  }

  GroundDesk groundDesk() {
    return new GroundDesk(knowledge, this::rules, proofs, Clock.systemDefaultZone(), phrases);
  }

  /** The loops of a vehicle's circuits, as the meter that comes first would show them. */
  CircuitLoops loops(Vehicle vehicle) {
    return new CircuitLoops(vehicle, knowledge, knowledge.meters().get(0), phrases);
  }

  /** What a vehicle reads when it is well. */
  KnownGood knownGood(Vehicle vehicle) throws Problem {
    String meter = knowledge.meters().get(0).id();
    return KnownGood.of(
        vehicle,
        loops(vehicle),
        archive.shelf().records(),
        proveDesk().open(vehicle.id(), vehicle, meter).goodReadings(),
        groundDesk().open(vehicle, meter).rows());
  }

  Phrases phrases() {
    return phrases;
  }
}
