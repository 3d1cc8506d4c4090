package loopwright.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loopwright.casework.CardDesk;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.Desk;
import loopwright.casework.PaperDesk;
import loopwright.casework.Phrases;
import loopwright.casework.ground.GroundDesk;
import loopwright.casework.practise.PractiseDesk;
import loopwright.casework.practise.PractiseLog;
import loopwright.casework.practise.Practised;
import loopwright.casework.prove.ProofEvent;
import loopwright.casework.prove.ProofStore;
import loopwright.casework.prove.ProveDesk;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.io.KnowledgeFiles;
import loopwright.io.VehicleFile;
import loopwright.knowledge.Knowledge;
import loopwright.model.Language;
import loopwright.model.Vehicle;
import loopwright.rules.DroolsRuleBook;
import loopwright.rules.RuleFiles;
import loopwright.solver.Network;

/** What the evidence tests share: knowledge, rules, vehicles, a desk that keeps cases in memory. */
public final class Bench {
  /** In English, whatever language the test speaks that comes first. */
  public static final Knowledge KNOWLEDGE = inEnglish();

  private static RuleBook rules;

  private Bench() {}

  private static Knowledge inEnglish() {
    Language spoken = Language.inUse();
    Language.use(Language.ENGLISH);
    try {
      return KnowledgeFiles.readBundled().orThrow();
    } finally {
      Language.use(spoken);
    }
  }

  public static synchronized RuleBook rules() {
    if (rules == null) {
      rules = new DroolsRuleBook(RuleFiles.bundled(), Locale.ENGLISH);
    }
    return rules;
  }

  /** Demo vehicles that slow tests go through; fewer with {@code -Dloopwright.vehicles=}. */
  public static List<String> vehicles() {
    return List.of(
        System.getProperty("loopwright.vehicles", "pumper,tractor,truck,motorcycle").split(","));
  }

  public static Vehicle vehicle(String name) {
    String path = "/demo-data/vehicles/" + name + ".json";
    try (InputStream in = Bench.class.getResourceAsStream(path)) {
      return VehicleFile.read(in, name + ".json").orThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static Network network(Vehicle vehicle) {
    return Network.of(vehicle, KNOWLEDGE.typicals());
  }

  public static Desk desk() {
    return desk(new InMemory());
  }

  /** A desk that keeps its cases where told. */
  public static Desk desk(CaseStore store) {
    return new Desk(KNOWLEDGE, Bench::rules, store, Clock.systemUTC(), Phrases.inUse());
  }

  public static PaperDesk paperDesk() {
    return new PaperDesk(KNOWLEDGE, Bench::rules, Phrases.inUse());
  }

  public static CardDesk cardDesk() {
    return new CardDesk(KNOWLEDGE, Bench::rules, Phrases.inUse());
  }

  /** A desk that proves, with the desk that opens cases over what isn't as it should be. */
  public static ProveDesk proveDesk(CaseDesk desk, ProofStore proofs) {
    return new ProveDesk(KNOWLEDGE, desk, proofs, Clock.systemUTC(), Phrases.inUse());
  }

  public static GroundDesk groundDesk(ProofStore proofs) {
    return new GroundDesk(KNOWLEDGE, Bench::rules, proofs, Clock.systemUTC(), Phrases.inUse());
  }

  /** Proofs that last as long as the test. */
  public static final class ProofsInMemory implements ProofStore {
    private final Map<String, List<ProofEvent>> kept = new LinkedHashMap<>();

    @Override
    public Kept read(String vehicleId) {
      return new Kept(kept.getOrDefault(vehicleId, List.of()), "");
    }

    @Override
    public void append(String vehicleId, ProofEvent event) {
      kept.computeIfAbsent(vehicleId, v -> new ArrayList<>()).add(event);
    }
  }

  public static PractiseDesk practiseDesk(PractiseLog log) {
    return new PractiseDesk(KNOWLEDGE, Bench::rules, Clock.systemUTC(), Phrases.inUse(), log);
  }

  /** Drills played that are known as long as the test lasts. */
  public static final class DrillsInMemory implements PractiseLog {
    private final List<Practised> kept = new ArrayList<>();

    @Override
    public void append(Practised practised) {
      kept.add(practised);
    }

    @Override
    public List<Practised> read() {
      return List.copyOf(kept);
    }
  }

  /** Journals that last as long as the test. */
  public static final class InMemory implements CaseStore {
    private final Map<String, List<CaseEvent>> kept = new LinkedHashMap<>();

    @Override
    public Journal create(String caseId) {
      kept.put(caseId, new ArrayList<>());
      return open(caseId);
    }

    private Journal open(String caseId) {
      return new Journal() {
        @Override
        public void append(CaseEvent event) {
          kept.get(caseId).add(event);
        }

        @Override
        public String photo(Path photo) {
          return "photos/" + photo.getFileName();
        }

        @Override
        public void close() {}
      };
    }

    @Override
    public Read read(String caseId) {
      return new Read(kept.get(caseId), "");
    }

    @Override
    public Loaded load(String caseId) {
      return new Loaded(List.copyOf(kept.get(caseId)), "", open(caseId));
    }

    @Override
    public List<String> ids() {
      return List.copyOf(kept.keySet());
    }
  }
}
