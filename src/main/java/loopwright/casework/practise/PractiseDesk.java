package loopwright.casework.practise;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import loopwright.casework.CaseDesk;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseStore;
import loopwright.casework.CaseView;
import loopwright.casework.Desk;
import loopwright.casework.FindCase;
import loopwright.casework.OwnCheck;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.ReadyCase;
import loopwright.casework.SimulatedMeter;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Knowledge;
import loopwright.model.Vehicle;

/** Makes drills from codes and keeps what came of them. */
public final class PractiseDesk {

  /** Drills of one code that are tried until the best plan gets through one without loss. */
  private static final int MOST_ATTEMPTS = 12;

  /** Steps after which the best plan counts as lost. */
  private static final int MOST_STEPS = 40;

  private final Knowledge knowledge;
  private final CaseDesk desk;
  private final Phrases phrases;
  private final PractiseLog log;
  private final Clock clock;

  /**
   * Sets up.
   *
   * @param rules gives the rules; may wait until they are compiled
   * @param log where drills are kept that were played
   */
  public PractiseDesk(
      Knowledge knowledge,
      Supplier<RuleBook> rules,
      Clock clock,
      Phrases phrases,
      PractiseLog log) {
    this.knowledge = knowledge;
    this.desk = new Desk(knowledge, rules, new Unkept(), clock, phrases);
    this.phrases = phrases;
    this.log = log;
    this.clock = clock;
  }

  /** Levels that a vehicle has something for. */
  public List<Level> levels(Vehicle vehicle) {
    DrillDraw draw = draw(vehicle);
    return List.of(Level.values()).stream().filter(draw::offers).toList();
  }

  private DrillDraw draw(Vehicle vehicle) {
    return new DrillDraw(vehicle, knowledge, knowledge.meters().get(0));
  }

  /**
   * A code by chance.
   *
   * @param number of the demo vehicle from 1; {@link DrillCode#OWN} for any other
   */
  public DrillCode anyCode(Level level, int number, Vehicle vehicle, Random random) {
    return DrillCode.of(level, number, random.nextInt(DrillCode.SEEDS), vehicle);
  }

  /**
   * Makes the drill of a code. Takes some seconds; call off the window's thread.
   *
   * <p>What is drawn is played by the best plan first, and counts only if that gets through without
   * loss: a drill whose readings mislead even the best plan would teach the wrong thing.
   *
   * @throws Problem if the vehicle isn't the code's, or has nothing of the code's level
   * @throws CancellationException if progress said so
   */
  public Drilling open(DrillCode code, Vehicle vehicle, CaseDesk.Progress progress) throws Problem {
    if (code.vehicle() == DrillCode.OWN && !DrillCode.print(vehicle).equals(code.print())) {
      throw new Problem(
          "code",
          code.toString(),
          phrases.say("practise.other-file", vehicle.name(), DrillCode.print(vehicle)));
    }
    DrillDraw draw = draw(vehicle);
    for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
      Optional<Drill> drill = draw.draw(code, attempt);
      if (drill.isEmpty()) {
        break;
      }
      Optional<Way> best = best(drill.get(), progress);
      if (best.isPresent()) {
        return begin(drill.get(), best.get(), progress);
      }
    }
    throw new Problem("code", code.toString(), phrases.say("practise.nothing", vehicle.name()));
  }

  /**
   * The same drill from its beginning.
   *
   * @throws Problem if it can't be opened
   */
  public Drilling again(Drilling played, CaseDesk.Progress progress) throws Problem {
    return begin(played.drill(), played.best(), progress);
  }

  /** The best plan's way; empty if it loses anything. */
  private Optional<Way> best(Drill drill, CaseDesk.Progress progress) throws Problem {
    try (Drilling drilling = begin(drill, new Way(List.of(), List.of()), progress)) {
      Way way = followPlan(drilling);
      return way.losses().isEmpty() ? Optional.of(way) : Optional.empty();
    }
  }

  /** Plays a drill by the plan to its end. */
  static Way followPlan(Drilling drilling) throws Problem {
    for (int n = 0; n < MOST_STEPS && !drilling.proven(); n++) {
      CaseView view = drilling.weighed();
      if (view.move() == CaseView.Move.REPAIR) {
        drilling.accuse(Drilling.answer(view));
      } else if (view.next().isPresent()) {
        drilling.take(OwnCheck.of(view.next().get()), Optional.empty());
      } else {
        break;
      }
    }
    return drilling.way();
  }

  private Drilling begin(Drill drill, Way best, CaseDesk.Progress progress) throws Problem {
    ReadyCase hidden = drill.hidden();
    SimulatedMeter meter = new SimulatedMeter(drill.vehicle(), knowledge, hidden, drill.seed());
    FindCase find =
        desk.open(
            new CaseDesk.NewCase(
                drill.vehicle(),
                hidden.vehicle(),
                hidden.circuit(),
                Optional.empty(),
                hidden.kind(),
                hidden.context(),
                hidden.meter(),
                true),
            progress);
    return new Drilling(drill, find, meter, best, knowledge, phrases);
  }

  /**
   * Ends a drill and keeps what came of it.
   *
   * @throws Problem if it can't be kept
   */
  public Debrief finish(Drilling drilling) throws Problem {
    Debrief debrief = drilling.debrief();
    log.append(
        new Practised(
            clock.instant(),
            debrief.code().toString(),
            debrief.code().level(),
            drilling.drill().kinds(),
            debrief.score(),
            debrief.own().minutes(),
            debrief.best().minutes()));
    return debrief;
  }

  /**
   * Progress over all that was played on this machine.
   *
   * @throws Problem if it can't be read
   */
  public Progress progress() throws Problem {
    return Progress.of(log.read());
  }

  /** A drill's case is weighed and forgotten. */
  private static final class Unkept implements CaseStore {
    @Override
    public Journal create(String caseId) {
      return new Journal() {
        @Override
        public void append(CaseEvent event) {}

        @Override
        public String photo(Path photo) throws Problem {
          throw new Problem("photo", photo.toString(), Phrases.inUse().say("problem.not-kept"));
        }

        @Override
        public void close() {}
      };
    }

    @Override
    public Loaded load(String caseId) throws Problem {
      throw none(caseId);
    }

    @Override
    public Read read(String caseId) throws Problem {
      throw none(caseId);
    }

    private static Problem none(String caseId) {
      return new Problem("case", caseId, Phrases.inUse().say("problem.not-kept"));
    }

    @Override
    public List<String> ids() {
      return List.of();
    }
  }
}
