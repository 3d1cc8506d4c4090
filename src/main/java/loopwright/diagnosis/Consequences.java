package loopwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import loopwright.model.Circuit;
import loopwright.model.LoadRef;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.solver.Element;
import loopwright.solver.History;
import loopwright.solver.OperatingPoint;
import loopwright.solver.Values;

/**
 * What a failure brings about elsewhere: the links between it and what is seen. Read from its
 * solved state beside that of a sound vehicle.
 */
public final class Consequences {

  /** Share of the healthy volts at the posts below which the supply counts as dragged down. */
  private static final double SAGS = 0.85;

  /** Power over the healthy one from which a load that should be off counts as woken. */
  private static final double WOKEN = 0.01;

  /** Power over the healthy one up to which a load counts as off. */
  private static final double OFF = 0.001;

  /** Current through a coil in amperes that a driver has to swallow when it switches off. */
  private static final double COIL_AMPS = 0.01;

  /** Volts between two points up to which a sound wire joins them. Common practice. */
  private static final double JOINED = 0.2;

  private final Workbench bench;
  private final Complaint complaint;

  Consequences(Workbench bench, Complaint complaint) {
    this.bench = bench;
    this.complaint = complaint;
  }

  /** One link of the chain. */
  public sealed interface Link {
    /** The part in which it shows. */
    String part();

    /**
     * A fuse blows and reads as a blown fuse from then on.
     *
     * @param amps current that drove it, in amperes
     * @param blowsAt current at which it blows, in amperes
     * @param whileOn name of the circuit that has to be on for that; empty if it is the one
     *     complained of
     */
    record Blows(String part, double amps, Spread blowsAt, Optional<String> whileOn)
        implements Link {}

    /**
     * A relay that should pull in doesn't, or lets go.
     *
     * @param volts volts across its coil
     * @param needs volts at which it pulls in
     */
    record DropsOut(String part, double volts, Spread needs) implements Link {}

    /**
     * A relay that should rest is pulled in.
     *
     * @param volts volts across its coil
     * @param holds volts below which it lets go
     */
    record PullsIn(String part, double volts, Spread holds) implements Link {}

    /** A relay chatters: it pulls in and by that takes its own volts away. */
    record Buzzes(String part) implements Link {}

    /**
     * A load that should be off gets current.
     *
     * @param load the load
     * @param volts volts across it
     * @param share its power over what it has when it is on, 0 and up
     */
    record Wakes(LoadRef load, double volts, double share) implements Link {
      @Override
      public String part() {
        return load.part();
      }
    }

    /**
     * The battery's posts are dragged down.
     *
     * @param volts volts between the posts
     * @param healthy volts there in a sound vehicle
     */
    record Sags(String part, double volts, double healthy) implements Link {}

    /**
     * A driver switches a coil whose current has to go somewhere when it is switched off: what lies
     * across the coil takes it, or the driver dies of it.
     *
     * @param coil id of the relay or solenoid
     * @param amps current through the coil before it is switched off, in amperes
     * @param across what lies across the coil
     */
    record Kicks(String part, String coil, double amps, PartSpec.Suppression across)
        implements Link {}
  }

  /** The links of one hypothesis, nearest to the supply first. */
  List<Link> of(Hypothesis h) {
    if (h.failures().isEmpty()) {
      return List.of();
    }
    Setting setting = bench.shows(complaint);
    OperatingPoint sick = bench.point(h, setting);
    OperatingPoint sound = bench.point(bench.healthy(), setting);
    List<Link> links = new ArrayList<>();
    fuses(h, links);
    supply(sick, sound, links);
    relays(sick, sound, links);
    loads(sick, sound, links);
    kick(h, links);
    links.removeIf(l -> h.parts().contains(l.part()) && !(l instanceof Link.Kicks));
    return links;
  }

  private void fuses(Hypothesis h, List<Link> into) {
    h.history().blown().stream()
        .forEach(
            e -> {
              Element.Link link = (Element.Link) bench.network().elements().get(e);
              into.add(new Link.Blows(link.part(), drove(h, e), link.blowsAt(), whileOn(h)));
            });
  }

  /** Current through a fuse if it held for ever, in amperes. */
  private double drove(Hypothesis h, int fuse) {
    Values values = Values.typical(h.variant());
    values.set(fuse, 1, HOLDS);
    Setting spentIn = bench.spentIn(h);
    OperatingPoint point = bench.solver(spentIn).solve(h.variant(), spentIn, values, History.NONE);
    return Math.abs(point.amps(fuse));
  }

  private Optional<String> whileOn(Hypothesis h) {
    return h.spentIn().flatMap(bench::circuitOn).map(Circuit::name);
  }

  /** Amperes at which no fuse of a vehicle would hold: one that is not to blow. */
  private static final double HOLDS = 1e6;

  private void supply(OperatingPoint sick, OperatingPoint sound, List<Link> into) {
    int feed = bench.network().requireNode(bench.vehicle().feedPost());
    int post = bench.network().requireNode(bench.vehicle().groundedPost());
    double volts = sick.volts(feed, post);
    double healthy = sound.volts(feed, post);
    if (Math.abs(volts) < SAGS * Math.abs(healthy)) {
      into.add(new Link.Sags(bench.vehicle().battery().id(), volts, healthy));
    }
  }

  private void relays(OperatingPoint sick, OperatingPoint sound, List<Link> into) {
    sick.buzzing().forEach(r -> into.add(new Link.Buzzes(r)));
    for (int e = 0; e < bench.network().elements().size(); e++) {
      if (bench.network().elements().get(e) instanceof Element.Coil coil
          && !sick.buzzing().contains(coil.part())
          && sick.pulledIn(e) != sound.pulledIn(e)) {
        double volts = Math.abs(sick.across(e));
        into.add(
            sound.pulledIn(e)
                ? new Link.DropsOut(coil.part(), volts, coil.pullInVolts())
                : new Link.PullsIn(coil.part(), volts, coil.dropOutVolts()));
      }
    }
  }

  private void loads(OperatingPoint sick, OperatingPoint sound, List<Link> into) {
    for (Circuit circuit : bench.vehicle().circuits()) {
      for (LoadRef load : circuit.loads()) {
        Setting on = bench.onSetting(load);
        double share = bench.level(sick, load, on);
        if (share > WOKEN
            && bench.level(sound, load, on) < OFF
            && into.stream().noneMatch(l -> l.part().equals(load.part()))) {
          into.add(new Link.Wakes(load, Math.abs(sick.across(bench.loadElement(load))), share));
        }
      }
    }
  }

  /** A driver that has died switches some coil, whose kick may have killed it. */
  private void kick(Hypothesis h, List<Link> into) {
    Part driver = bench.vehicle().requirePart(h.part());
    if (!(driver.spec() instanceof PartSpec.Driver)) {
      return;
    }
    OperatingPoint sound = bench.point(bench.healthy(), complaint.on());
    int output = bench.network().element(driver.id(), "output").orElseThrow();
    for (int e = 0; e < bench.network().elements().size(); e++) {
      if (bench.network().elements().get(e) instanceof Element.Coil coil
          && bench.vehicle().requirePart(coil.part()).spec() instanceof PartSpec.Relay relay
          && Math.abs(sound.amps(e)) > COIL_AMPS
          && carriedBy(sound, e, output)) {
        into.add(
            new Link.Kicks(driver.id(), coil.part(), Math.abs(sound.amps(e)), relay.suppression()));
      }
    }
  }

  /** Whether the driver's output carries this coil's current, alone or with others. */
  private static boolean carriedBy(OperatingPoint point, int coil, int output) {
    Element.Coil c = (Element.Coil) point.variant().element(coil);
    Element o = point.variant().element(output);
    double apart =
        Math.min(Math.abs(point.volts(c.a(), o.a())), Math.abs(point.volts(c.b(), o.a())));
    return apart < JOINED && Math.abs(point.amps(output)) >= 0.9 * Math.abs(point.amps(coil));
  }
}
