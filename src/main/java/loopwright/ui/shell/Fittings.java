package loopwright.ui.shell;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Executor;
import loopwright.casework.CaseDesk;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.feed.MeterFeed;
import loopwright.meter.MeterSpec;
import loopwright.ui.LoopSource;
import loopwright.ui.Preferences;
import loopwright.ui.ReadyCases;
import loopwright.ui.VehicleLibrary;
import loopwright.ui.cases.CaseShelf;
import loopwright.ui.paper.PlanCheck;
import loopwright.ui.practise.PractiseSource;
import loopwright.ui.prove.ProvePage;
import loopwright.ui.wiring.Keeping;
import loopwright.ui.wiring.WiringPage;

/** What a window is made of: what every one needs, and what may be fitted to it besides. */
public final class Fittings {
  final CaseDesk desk;
  final VehicleLibrary library;
  final LoopSource loops;
  final List<MeterSpec> meters;
  final Preferences preferences;
  final Executor background;
  ReadyCases ready = ReadyCases.NONE;
  Keeping keeping = Keeping.NOWHERE;
  List<WiringPage> pages = List.of();
  PlanCheck check = PlanCheck.NONE;
  List<ProvePage> proofs = List.of();
  CaseShelf shelf = CaseShelf.EMPTY;
  Optional<MeterFeed.Opener> ownMeters = Optional.empty();
  Optional<PractiseSource> practise = Optional.empty();
  Optional<ExplainDesk> explain = Optional.empty();
  boolean startScreen;

  /**
   * What every window needs.
   *
   * @param desk opens and keeps cases
   * @param library where vehicles come from
   * @param loops lays out a circuit's loop when no case is open
   * @param meters the meters to choose from; at least one
   * @param preferences what was chosen before
   * @param background where work runs that may take a while
   */
  public Fittings(
      CaseDesk desk,
      VehicleLibrary library,
      LoopSource loops,
      List<MeterSpec> meters,
      Preferences preferences,
      Executor background) {
    this.desk = Objects.requireNonNull(desk, "desk");
    this.library = Objects.requireNonNull(library, "library");
    this.loops = Objects.requireNonNull(loops, "loops");
    this.meters = List.copyOf(meters);
    this.preferences = Objects.requireNonNull(preferences, "preferences");
    this.background = Objects.requireNonNull(background, "background");
  }

  /** Cases to practise on; none if left out. */
  public Fittings ready(ReadyCases cases) {
    ready = Objects.requireNonNull(cases, "cases");
    return this;
  }

  /** Where vehicles are kept that are worked on; nowhere if left out. */
  public Fittings keeping(Keeping where) {
    keeping = Objects.requireNonNull(where, "where");
    return this;
  }

  /** What else can be done in the place Wiring; nothing if left out. */
  public Fittings pages(List<WiringPage> all) {
    pages = List.copyOf(all);
    return this;
  }

  /** What checks plans; nothing if left out. */
  public Fittings check(PlanCheck plans) {
    check = Objects.requireNonNull(plans, "plans");
    return this;
  }

  /** Pages of the place Prove; none if left out. */
  public Fittings proofs(List<ProvePage> all) {
    proofs = List.copyOf(all);
    return this;
  }

  /** The kept cases; none if left out. */
  public Fittings shelf(CaseShelf cases) {
    shelf = Objects.requireNonNull(cases, "cases");
    return this;
  }

  /** What connects the person's own meter; none can be if left out. */
  public Fittings ownMeters(MeterFeed.Opener opener) {
    ownMeters = Optional.of(opener);
    return this;
  }

  /** Where drills come from; the place Practise is there only with it. */
  public Fittings practise(PractiseSource source) {
    practise = Optional.of(source);
    return this;
  }

  /** The window opens with the start screen, a vehicle at hand; left out, with the vehicles. */
  public Fittings startScreen() {
    startScreen = true;
    return this;
  }

  /** The explaining pages; F1 goes to the keys at once if left out. */
  public Fittings explain(ExplainDesk pages) {
    explain = Optional.of(pages);
    return this;
  }
}
