package loopwright.solver;

import java.util.List;
import java.util.function.IntFunction;
import loopwright.model.Spread;

/**
 * Something put between the battery's grounded post and its lead, so that all that the battery
 * gives passes it. The reference stays with the lead and the body; the post has a spare node.
 */
public final class GroundedLead {

  /** Name of the resistor as a part of a solved network. */
  public static final String PART = "drain-resistor";

  /**
   * The resistor that shows a drain: a millivolt across it is a milliampere. 1 ohm, wire-wound of 1
   * %, 5 W: it stands 2 A. Common practice.
   */
  public static final Spread OHMS = new Spread(0.99, 1, 1.01);

  private GroundedLead() {}

  /** The node of the post while something lies in its lead. */
  public static int post(Variant variant) {
    return variant.base().spare(Network.SPARES - 1);
  }

  /** The network with the resistor in the lead. It has the last number. */
  public static Variant resistor(Variant variant) {
    return with(
        variant, post -> new Element.Resistor(PART, "resistor", post, Network.REFERENCE, OHMS));
  }

  /**
   * The network with something in the lead, which has the last number.
   *
   * @param between makes it, given the node of the post; its other end is the reference
   */
  static Variant with(Variant variant, IntFunction<Element> between) {
    int cell =
        variant.base().element(variant.base().vehicle().battery().id(), "cell").orElseThrow();
    Element old = variant.element(cell);
    int post = post(variant);
    boolean aGrounded = old.a() == Network.REFERENCE;
    Element moved = aGrounded ? old.between(post, old.b()) : old.between(old.a(), post);
    return variant.with(
        List.of(new Change.Replace(cell, moved), new Change.Add(between.apply(post))));
  }
}
