package loopwright.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import loopwright.knowledge.Context;
import loopwright.knowledge.Effect;
import loopwright.knowledge.FaultMode;
import loopwright.model.Part;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import loopwright.model.Vehicle;

/**
 * One part in one failure mode, ready to be put into the network.
 *
 * @param part the part
 * @param name name of the mode, with the element where a part has several: {@code open:leg:a}
 * @param mode the row of the failure table
 * @param effects its effects with roles and targets filled in
 * @param count how many metres or contacts its rate counts
 */
public record Failure(Part part, String name, FaultMode mode, List<Effect> effects, double count) {

  /** Copies the list. */
  public Failure {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(name, "name");
    effects = List.copyOf(effects);
  }

  /** Chance of this failure in a context. */
  public double rate(Context context) {
    return Math.min(1, mode.rates().get(context) * count);
  }

  /** The limits of its added resistance in ohms, where it is a continuum. */
  public Optional<Spread> continuum() {
    for (Effect effect : effects) {
      if (effect instanceof Effect.Series s) {
        return Optional.of(
            new Spread(s.lowOhms(), Math.sqrt(s.lowOhms() * s.highOhms()), s.highOhms()));
      }
      if (effect instanceof Effect.Bridge b
          && b.target() != Effect.Target.NEIGHBOUR
          && b.ohms().high() > WIDE * b.ohms().low()) {
        return Optional.of(b.ohms());
      }
    }
    return Optional.empty();
  }

  /** Ratio above which the ohms of an unwanted connection are a range of their own. */
  private static final double WIDE = 10;

  /** Whether its range is that of an unwanted connection, not of a joint in the way. */
  public boolean bridges() {
    return effects.stream().anyMatch(Effect.Bridge.class::isInstance);
  }

  /** All failures of a part that the tables list and its element roles allow. */
  public static List<Failure> of(Network network, Part part, List<FaultMode> modes) {
    List<Failure> failures = new ArrayList<>();
    for (FaultMode mode : modes) {
      if (mode.kind() == part.kind() && applies(network, part, mode)) {
        expand(network, part, mode, failures);
      }
    }
    return failures;
  }

  private static boolean applies(Network network, Part part, FaultMode mode) {
    PartSpec spec = part.spec();
    return switch (mode.condition()) {
      case ALWAYS -> true;
      case CHANGEOVER -> spec instanceof PartSpec.Relay r && r.changeover();
      case COIL_DIODE ->
          spec instanceof PartSpec.Relay r
              && (r.suppression() == PartSpec.Suppression.DIODE_CATHODE_85
                  || r.suppression() == PartSpec.Suppression.DIODE_CATHODE_86);
      case COIL_SUPPRESSED ->
          spec instanceof PartSpec.Relay r && r.suppression() != PartSpec.Suppression.NONE;
      case LOOM -> spec instanceof PartSpec.Wire w && !w.loom().isEmpty();
    };
  }

  private static void expand(Network network, Part part, FaultMode mode, List<Failure> into) {
    double count =
        switch (mode.per()) {
          case PART -> 1;
          case METRE -> part.spec() instanceof PartSpec.Wire w ? w.metres().about() : 1;
          case CONTACT -> part.spec() instanceof PartSpec.Wire ? 2 : 1;
        };
    // One suspect for each element that a starred role matches, and for each neighbour of a wire.
    List<String> matches = new ArrayList<>();
    matches.add("");
    for (Effect effect : mode.effects()) {
      String role = role(effect);
      if (role.endsWith("*")) {
        matches.clear();
        String stem = role.substring(0, role.length() - 1);
        for (int e : network.elementsOf(part.id())) {
          String candidate = network.elements().get(e).role();
          if (candidate.startsWith(stem)) {
            matches.add(candidate);
          }
        }
        break;
      }
      if (effect instanceof Effect.Bridge b && b.target() == Effect.Target.NEIGHBOUR) {
        matches.clear();
        matches.addAll(neighbours(network.vehicle(), part));
        break;
      }
    }
    for (String match : matches) {
      List<Effect> effects = new ArrayList<>();
      boolean possible = true;
      for (Effect effect : mode.effects()) {
        Effect filled = fill(effect, match);
        effects.add(filled);
        String role = role(filled);
        possible &= role.isEmpty() || network.element(part.id(), role).isPresent();
      }
      if (possible) {
        String name = match.isEmpty() ? mode.mode() : mode.mode() + ":" + match;
        into.add(new Failure(part, name, mode, effects, count));
      }
    }
  }

  private static List<String> neighbours(Vehicle vehicle, Part part) {
    List<String> ids = new ArrayList<>();
    if (part.spec() instanceof PartSpec.Wire mine) {
      for (Part other : vehicle.parts()) {
        if (other.spec() instanceof PartSpec.Wire w
            && w.loom().equals(mine.loom())
            && other.id().compareTo(part.id()) > 0) {
          ids.add(other.id());
        }
      }
    }
    return ids;
  }

  private static String role(Effect effect) {
    if (effect instanceof Effect.Open e) {
      return e.role();
    }
    if (effect instanceof Effect.Series e) {
      return e.role();
    }
    if (effect instanceof Effect.Ohms e) {
      return e.role();
    }
    if (effect instanceof Effect.Scale e) {
      return e.role();
    }
    if (effect instanceof Effect.Stuck e) {
      return e.role();
    }
    if (effect instanceof Effect.Reversed e) {
      return e.role();
    }
    return "";
  }

  private static Effect fill(Effect effect, String match) {
    if (effect instanceof Effect.Bridge b && b.target() == Effect.Target.NEIGHBOUR) {
      return new Effect.Bridge(b.terminal(), b.target(), match, b.ohms());
    }
    if (!role(effect).endsWith("*")) {
      return effect;
    }
    if (effect instanceof Effect.Open) {
      return new Effect.Open(match);
    }
    if (effect instanceof Effect.Series s) {
      return new Effect.Series(match, s.lowOhms(), s.highOhms());
    }
    if (effect instanceof Effect.Ohms o) {
      return new Effect.Ohms(match, o.ohms());
    }
    if (effect instanceof Effect.Scale s) {
      return new Effect.Scale(match, s.factor());
    }
    if (effect instanceof Effect.Stuck s) {
      return new Effect.Stuck(match, s.closed());
    }
    return new Effect.Reversed(match);
  }

  /**
   * The changes it makes to the network.
   *
   * @param network the healthy network
   * @param added added resistance for a continuum, in ohms; ignored otherwise
   */
  public List<Change> changes(Network network, Spread added) {
    return changes(Variant.healthy(network), added);
  }

  /**
   * The changes it makes to a network that other failures may have changed before.
   *
   * @param variant the network so far
   * @param added added resistance for a continuum, in ohms; ignored otherwise
   */
  public List<Change> changes(Variant variant, Spread added) {
    List<Change> changes = new ArrayList<>();
    int spare = variant.sparesTaken();
    for (Effect effect : effects) {
      if (effect instanceof Effect.Open o) {
        changes.add(new Change.Remove(element(variant, o.role())));
      } else if (effect instanceof Effect.Series s) {
        int e = element(variant, s.role());
        Element old = variant.element(e);
        Optional<Element> grown = grown(old, added);
        if (grown.isPresent()) {
          changes.add(new Change.Replace(e, grown.get()));
        } else {
          int middle = variant.base().spare(spare++);
          changes.add(new Change.Replace(e, old.between(middle, old.b())));
          changes.add(
              new Change.Add(
                  new Element.Resistor(part.id(), "joint of " + s.role(), old.a(), middle, added)));
        }
      } else if (effect instanceof Effect.Ohms o) {
        int e = element(variant, o.role());
        changes.add(new Change.Replace(e, withOhms(variant.element(e), o.ohms())));
      } else if (effect instanceof Effect.Scale s) {
        int e = element(variant, s.role());
        changes.add(new Change.Replace(e, scaled(variant.element(e), s.factor())));
      } else if (effect instanceof Effect.Bridge b) {
        changes.add(new Change.Add(bridge(variant, b, continuum().isPresent() ? added : b.ohms())));
      } else if (effect instanceof Effect.Stuck s) {
        int e = element(variant, s.role());
        changes.add(new Change.Replace(e, stuck(variant.element(e), s.closed())));
      } else if (effect instanceof Effect.Reversed r) {
        int e = element(variant, r.role());
        Element old = variant.element(e);
        changes.add(new Change.Replace(e, old.between(old.b(), old.a())));
      } else if (effect instanceof Effect.Swapped s) {
        swap(variant, s, changes);
      }
    }
    return changes;
  }

  private int element(Variant variant, String role) {
    return variant
        .base()
        .element(part.id(), role)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "part " + part.id() + " has no element '" + role + "' for mode " + name));
  }

  /** The element with resistance in series, where its own law has a resistance to add to. */
  private static Optional<Element> grown(Element old, Spread added) {
    if (old instanceof Element.Resistor r) {
      return Optional.of(
          new Element.Resistor(r.part(), r.role(), r.a(), r.b(), r.ohms().plus(added)));
    }
    if (old instanceof Element.Contact c) {
      return Optional.of(
          new Element.Contact(c.part(), c.role(), c.a(), c.b(), c.ohms().plus(added), c.gate()));
    }
    if (old instanceof Element.Link l) {
      return Optional.of(
          new Element.Link(l.part(), l.role(), l.a(), l.b(), l.ohms().plus(added), l.blowsAt()));
    }
    if (old instanceof Element.Cell c) {
      return Optional.of(
          new Element.Cell(c.part(), c.role(), c.a(), c.b(), c.volts(), c.ohms().plus(added)));
    }
    return Optional.empty();
  }

  private static Element withOhms(Element old, Spread ohms) {
    if (old instanceof Element.Contact c) {
      return new Element.Contact(c.part(), c.role(), c.a(), c.b(), ohms, c.gate());
    }
    if (old instanceof Element.Coil c) {
      return new Element.Coil(
          c.part(), c.role(), c.a(), c.b(), ohms, c.pullInVolts(), c.dropOutVolts());
    }
    if (old instanceof Element.Cell c) {
      return new Element.Cell(c.part(), c.role(), c.a(), c.b(), c.volts(), ohms);
    }
    return new Element.Resistor(old.part(), old.role(), old.a(), old.b(), ohms);
  }

  private static Element scaled(Element old, Spread factor) {
    if (old instanceof Element.Cell c) {
      return new Element.Cell(
          c.part(), c.role(), c.a(), c.b(), product(c.volts(), factor), c.ohms());
    }
    if (old instanceof Element.Filament f) {
      Spread inverse = new Spread(1 / factor.high(), 1 / factor.typical(), 1 / factor.low());
      return new Element.Filament(
          f.part(),
          f.role(),
          f.a(),
          f.b(),
          f.ratedVolts(),
          product(f.amps(), factor),
          product(f.coldOhms(), inverse));
    }
    if (old instanceof Element.Link l) {
      return new Element.Link(
          l.part(), l.role(), l.a(), l.b(), l.ohms(), product(l.blowsAt(), factor));
    }
    if (old instanceof Element.Motor m) {
      return new Element.Motor(
          m.part(),
          m.role(),
          m.a(),
          m.b(),
          product(m.runOhms(), factor),
          product(m.stallOhms(), factor),
          m.startVolts());
    }
    return withOhms(old, product(old.values()[0], factor));
  }

  private static Spread product(Spread value, Spread factor) {
    return new Spread(
        value.low() * factor.low(),
        value.typical() * factor.typical(),
        value.high() * factor.high());
  }

  private static Element stuck(Element old, boolean closed) {
    if (old instanceof Element.Contact c) {
      return new Element.Contact(
          c.part(),
          c.role(),
          c.a(),
          c.b(),
          c.ohms(),
          new Gate.Fixed(closed ? Gate.Rest.CLOSED : Gate.Rest.OPEN));
    }
    if (old instanceof Element.Motor m) {
      // Seized: no volts of this vehicle start it.
      return new Element.Motor(
          m.part(), m.role(), m.a(), m.b(), m.runOhms(), m.stallOhms(), Spread.exactly(1e6));
    }
    throw new IllegalArgumentException("part " + old.part() + ": " + old.role() + " cannot stick");
  }

  private Element bridge(Variant variant, Effect.Bridge b, Spread ohms) {
    Network network = variant.base();
    int from = network.requireNode(terminal(part, b.terminal()));
    int to =
        switch (b.target()) {
          case GROUND ->
              network.vehicle().parts().stream()
                  .filter(p -> p.kind() == PartKind.BODY)
                  .findFirst()
                  .map(p -> network.requireNode(new TerminalRef(p.id(), "metal")))
                  .orElse(Network.REFERENCE);
          case FEED -> network.requireNode(network.vehicle().feedPost());
          case TERMINAL -> network.requireNode(terminal(part, b.otherTerminal()));
          case NEIGHBOUR ->
              network.requireNode(
                  terminal(network.vehicle().requirePart(b.otherTerminal()), b.terminal()));
        };
    return new Element.Resistor(part.id(), "bridge", from, to, ohms);
  }

  private static TerminalRef terminal(Part part, String name) {
    if (part.spec() instanceof PartSpec.Wire w) {
      return name.equals("to") ? w.to() : w.from();
    }
    return new TerminalRef(part.id(), name);
  }

  private void swap(Variant variant, Effect.Swapped s, List<Change> changes) {
    Network network = variant.base();
    int one = network.requireNode(terminal(part, s.terminal()));
    int two = network.requireNode(terminal(part, s.otherTerminal()));
    for (int e : network.elementsOf(part.id())) {
      Element old = variant.element(e);
      int a = old.a() == one ? two : old.a() == two ? one : old.a();
      int b = old.b() == one ? two : old.b() == two ? one : old.b();
      if (a != old.a() || b != old.b()) {
        changes.add(new Change.Replace(e, old.between(a, b)));
      }
    }
  }
}
