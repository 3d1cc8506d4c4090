package loopwright.solver;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import loopwright.model.Setting;

/** What a setting does to the elements of a variant, before anything moves by itself. */
final class Layout {
  private final boolean[] off;
  private final boolean[] closed;
  private final int[] coilOf;

  private Layout(boolean[] off, boolean[] closed, int[] coilOf) {
    this.off = off;
    this.closed = closed;
    this.coilOf = coilOf;
  }

  /** Of the network with everything at rest. {@link Network#layout} keeps it. */
  static Layout atRest(Network network) {
    List<Element> elements = network.elements();
    int n = elements.size();
    Layout layout = new Layout(new boolean[n], new boolean[n], new int[n]);
    for (int e = 0; e < n; e++) {
      layout.closed[e] = closed(elements.get(e), network, Setting.REST);
      layout.coilOf[e] = -1;
      if (movedByCoil(elements.get(e))) {
        for (int other : network.elementsOf(elements.get(e).part())) {
          if (layout.coilOf[e] < 0 && elements.get(other) instanceof Element.Coil) {
            layout.coilOf[e] = other;
          }
        }
      }
    }
    return layout;
  }

  /** Of the network as it is: only what a setting moves or takes apart is looked at anew. */
  static Layout of(Network network, Setting setting) {
    Layout rest = network.layout(Setting.REST);
    Layout layout = new Layout(rest.off.clone(), rest.closed.clone(), rest.coilOf);
    for (String part : setting.apart()) {
      network.elementsOf(part).forEach(e -> layout.off[e] = true);
    }
    for (String control : setting.positions().keySet()) {
      for (int e : network.elementsOf(control)) {
        layout.closed[e] = closed(network.elements().get(e), network, setting);
      }
    }
    return layout;
  }

  /** Of a variant: only what differs from the network is looked at anew. */
  static Layout of(Variant variant, Setting setting) {
    Network network = variant.base();
    Layout base = network.layout(setting);
    int n = variant.size();
    if (variant.different().length == 0) {
      return base;
    }
    Layout layout =
        new Layout(
            Arrays.copyOf(base.off, n),
            Arrays.copyOf(base.closed, n),
            Arrays.copyOf(base.coilOf, n));
    for (int e : variant.different()) {
      Element element = variant.element(e);
      layout.off[e] = variant.removed(e) || setting.apart().contains(element.part());
      layout.closed[e] = closed(element, network, setting);
      layout.findCoils(variant, element.part());
    }
    return layout;
  }

  /** Looks up which coil moves each contact of a part that has changed. */
  private void findCoils(Variant variant, String part) {
    int coil = -1;
    for (int e : variant.base().elementsOf(part)) {
      if (coil < 0 && variant.element(e) instanceof Element.Coil) {
        coil = e;
      }
    }
    int base = variant.baseCount();
    for (int e = base; e < variant.size() && coil < 0; e++) {
      if (variant.element(e) instanceof Element.Coil c && c.part().equals(part)) {
        coil = e;
      }
    }
    for (int e : variant.base().elementsOf(part)) {
      coilOf[e] = movedByCoil(variant.element(e)) ? coil : -1;
    }
    for (int e = base; e < variant.size(); e++) {
      if (variant.element(e).part().equals(part)) {
        coilOf[e] = movedByCoil(variant.element(e)) ? coil : -1;
      }
    }
  }

  private static boolean movedByCoil(Element element) {
    return element instanceof Element.Contact c && c.gate() instanceof Gate.ByCoil;
  }

  /** Whether the position of a control holds this contact closed. */
  private static boolean closed(Element element, Network network, Setting setting) {
    return element instanceof Element.Contact c
        && c.gate() instanceof Gate.Position p
        && p.closedIn().contains(network.vehicle().position(p.control(), setting));
  }

  /** Whether an element is a contact that no coil moves and that the setting leaves open. */
  static boolean surelyOpen(Element element, Network network, Setting setting) {
    return element instanceof Element.Contact c
        && !(c.gate() instanceof Gate.ByCoil)
        && !(c.gate() instanceof Gate.Fixed f && f.rest() == Gate.Rest.CLOSED)
        && !closed(element, network, setting);
  }

  /** Whether an element is a gap or its part is apart. */
  boolean off(int e) {
    return off[e];
  }

  /**
   * Whether another setting of the same network takes an element out, or moves it, the other way.
   */
  boolean differs(Layout other, int e) {
    return off[e] != other.off[e] || closed[e] != other.closed[e];
  }

  /** Number of the coil that moves a contact; negative if none does. */
  int coilOf(int e) {
    return coilOf[e];
  }

  /** Whether a contact is closed while these coils are pulled in. */
  boolean closed(int e, Element.Contact contact, BitSet pulled) {
    Gate gate = contact.gate();
    if (gate instanceof Gate.Fixed f) {
      return f.rest() == Gate.Rest.CLOSED;
    }
    if (gate instanceof Gate.ByCoil c) {
      boolean in = coilOf[e] >= 0 && pulled.get(coilOf[e]);
      return in != (c.rest() == Gate.Rest.CLOSED);
    }
    return closed[e];
  }
}
