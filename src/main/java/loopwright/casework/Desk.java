package loopwright.casework;

import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.knowledge.Knowledge;
import loopwright.meter.MeterSpec;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Vehicle;

/** Opens and takes up cases for all front ends. */
public final class Desk implements CaseDesk {
  private final Knowledge knowledge;
  private final Supplier<RuleBook> rules;
  private final CaseStore store;
  private final Clock clock;
  private final Phrases phrases;
  private final OwnRecord own;
  private volatile boolean ownCounts = true;

  /**
   * Sets up.
   *
   * @param knowledge failure tables, usual values and meters
   * @param rules gives the rules; may wait until they are compiled
   * @param store where cases are kept
   * @param clock tells the time of readings
   * @param phrases the words
   */
  public Desk(
      Knowledge knowledge,
      Supplier<RuleBook> rules,
      CaseStore store,
      Clock clock,
      Phrases phrases) {
    this(knowledge, rules, store, clock, phrases, OwnRecord.NONE);
  }

  /**
   * Sets up with what vehicles had before.
   *
   * @param own what a vehicle had before
   */
  public Desk(
      Knowledge knowledge,
      Supplier<RuleBook> rules,
      CaseStore store,
      Clock clock,
      Phrases phrases,
      OwnRecord own) {
    this.knowledge = Objects.requireNonNull(knowledge, "knowledge");
    this.rules = Objects.requireNonNull(rules, "rules");
    this.store = Objects.requireNonNull(store, "store");
    this.clock = Objects.requireNonNull(clock, "clock");
    this.phrases = Objects.requireNonNull(phrases, "phrases");
    this.own = Objects.requireNonNull(own, "own");
  }

  @Override
  public void countOwnRecord(boolean counts) {
    ownCounts = counts;
  }

  @Override
  public Complaint understand(Vehicle vehicle, String words) throws Problem {
    return ComplaintWords.understand(vehicle, words);
  }

  @Override
  public FindCase open(NewCase newCase, Progress progress) throws Problem {
    Vehicle vehicle = newCase.power().of(newCase.vehicle(), phrases);
    CaseEvent.Opened opened = opened(newCase, vehicle);
    MeterSpec meter = MeterInHand.of(knowledge, newCase.meter());
    List<OwnRate> rates = rates(newCase, vehicle);
    Session session =
        Session.open(
            knowledge, rules.get(), vehicle, meter, opened, rates, phrases, clock, progress);
    if (progress.cancelled()) {
      session.close();
      throw new CancellationException("opening was given up");
    }
    try {
      session.keepIn(begin(opened, rates));
    } catch (Problem p) {
      session.close();
      throw p;
    }
    return session;
  }

  @Override
  public String handOver(NewCase newCase, List<Before> readings) throws Problem {
    Vehicle vehicle = newCase.power().of(newCase.vehicle(), phrases);
    CaseEvent.Opened opened = opened(newCase, vehicle);
    MeterInHand.of(knowledge, newCase.meter());
    try (CaseStore.Journal journal = begin(opened, rates(newCase, vehicle))) {
      for (int i = 0; i < readings.size(); i++) {
        Before reading = readings.get(i);
        journal.append(new CaseEvent.Taken(opened.at(), i + 1, reading.check(), reading.answer()));
      }
    }
    return opened.caseId();
  }

  /**
   * What a new case is about.
   *
   * @param vehicle the vehicle as far as it is powered up
   */
  private CaseEvent.Opened opened(NewCase newCase, Vehicle vehicle) throws Problem {
    Circuit circuit = circuit(vehicle, newCase.circuit());
    LoadRef load = load(circuit, newCase.load());
    return new CaseEvent.Opened(
        clock.instant(),
        newId(vehicle, circuit),
        newCase.vehicleName(),
        vehicle.id(),
        circuit.id(),
        Optional.of(load.toString()),
        newCase.kind(),
        newCase.context(),
        newCase.meter(),
        newCase.practice(),
        newCase.power());
  }

  /** What the vehicle had before. A made-up fault says nothing of it, nor it of the fault. */
  private List<OwnRate> rates(NewCase newCase, Vehicle vehicle) {
    return ownCounts && !newCase.practice() ? own.rates(vehicle) : List.of();
  }

  /** The journal of a new case, with its beginning. */
  private CaseStore.Journal begin(CaseEvent.Opened opened, List<OwnRate> rates) throws Problem {
    CaseStore.Journal journal = store.create(opened.caseId());
    try {
      journal.append(opened);
      if (!rates.isEmpty()) {
        journal.append(new CaseEvent.Weighed(opened.at(), rates));
      }
    } catch (Problem p) {
      journal.close();
      throw p;
    }
    return journal;
  }

  @Override
  public FindCase resume(String caseId, Vehicle whole, Progress progress) throws Problem {
    CaseStore.Loaded loaded = store.load(caseId);
    Session session = null;
    try {
      if (loaded.events().isEmpty()
          || !(loaded.events().get(0) instanceof CaseEvent.Opened opened)) {
        throw new Problem("case", caseId, phrases.say("problem.headless"));
      }
      if (!opened.vehicleId().equals(whole.id())) {
        throw new Problem(
            "vehicle", whole.id(), phrases.say("problem.own-vehicle", opened.vehicleId()));
      }
      Vehicle vehicle = opened.power().of(whole, phrases);
      SortedSet<String> missing = NamedParts.missing(loaded.events(), vehicle);
      if (!missing.isEmpty()) {
        throw new Problem(
            "vehicle",
            vehicle.name(),
            phrases.say("problem.vehicle-changed", String.join(", ", missing)));
      }
      session =
          Session.open(
              knowledge,
              rules.get(),
              vehicle,
              MeterInHand.of(knowledge, opened.meter()),
              opened,
              ownCounts ? weighed(loaded.events()) : List.of(),
              phrases,
              clock,
              progress);
      session.replay(loaded.events().subList(1, loaded.events().size()), loaded.missing());
      session.keepIn(loaded.journal());
      return session;
    } catch (Problem p) {
      loaded.journal().close();
      if (session != null) {
        session.close();
      }
      throw p;
    }
  }

  /** What counted from the beginning of the case, so that it stands now as it stood then. */
  private static List<OwnRate> weighed(List<CaseEvent> events) {
    return events.stream()
        .filter(CaseEvent.Weighed.class::isInstance)
        .map(e -> ((CaseEvent.Weighed) e).rates())
        .findFirst()
        .orElse(List.of());
  }

  private String newId(Vehicle vehicle, Circuit circuit) {
    String stem =
        java.time.format.DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss")
                .withZone(clock.getZone())
                .format(clock.instant())
            + "-"
            + vehicle.id()
            + "-"
            + circuit.id();
    stem = stem.replaceAll("[^A-Za-z0-9_-]", "_");
    List<String> ids = store.ids();
    String id = stem;
    for (int n = 2; ids.contains(id); n++) {
      id = stem + "-" + n;
    }
    return id;
  }

  static Circuit circuit(Vehicle vehicle, String id) throws Problem {
    Optional<Circuit> circuit = vehicle.circuit(id);
    if (circuit.isEmpty()) {
      throw new Problem(
          "circuit",
          id,
          Phrases.inUse().oneOf(vehicle.circuits().stream().map(Circuit::id).toList()));
    }
    return circuit.get();
  }

  static LoadRef load(Circuit circuit, Optional<String> wanted) throws Problem {
    if (wanted.isEmpty()) {
      return circuit.loads().get(0);
    }
    for (LoadRef load : circuit.loads()) {
      if (load.toString().equals(wanted.get()) || load.part().equals(wanted.get())) {
        return load;
      }
    }
    throw new Problem(
        "load",
        wanted.get(),
        Phrases.inUse().oneOf(circuit.loads().stream().map(LoadRef::toString).toList()));
  }
}
