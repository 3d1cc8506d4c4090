package loopwright.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A network with changes. The elements of the base keep their numbers, added ones follow; a removed
 * one leaves a gap that carries no current.
 */
public final class Variant {
  private final Network base;
  private final Element[] elements;
  private final boolean[] removed;
  private final boolean[] touched;
  private final int baseCount;
  private final int[] different;

  private Variant(Network base, Element[] elements, boolean[] removed, boolean[] touched) {
    this.base = base;
    this.elements = elements;
    this.removed = removed;
    this.touched = touched;
    this.baseCount = base.elements().size();
    this.different =
        IntStream.range(0, elements.length)
            .filter(e -> e >= baseCount || removed[e] || touched[e])
            .toArray();
  }

  /** The network as it is. */
  public static Variant healthy(Network base) {
    return base.asItIs();
  }

  /** Without any change. {@link Network#asItIs} keeps it. */
  static Variant unchanged(Network base) {
    int n = base.elements().size();
    return new Variant(
        base, base.elements().toArray(Element[]::new), new boolean[n], new boolean[n]);
  }

  /** This variant with further changes; later ones build on earlier ones. */
  public Variant with(List<? extends Change> changes) {
    if (changes.isEmpty()) {
      return this;
    }
    List<Element> list = new ArrayList<>(Arrays.asList(elements));
    boolean[] gone = Arrays.copyOf(removed, elements.length + changes.size());
    boolean[] changed = Arrays.copyOf(touched, elements.length + changes.size());
    for (Change change : changes) {
      if (change instanceof Change.Remove r) {
        gone[r.element()] = true;
      } else if (change instanceof Change.Replace r) {
        list.set(r.element(), r.by());
        changed[r.element()] = true;
      } else if (change instanceof Change.Add a) {
        list.add(a.element());
      }
    }
    int n = list.size();
    return new Variant(
        base, list.toArray(Element[]::new), Arrays.copyOf(gone, n), Arrays.copyOf(changed, n));
  }

  /** The network it changes. */
  public Network base() {
    return base;
  }

  /** Number of elements, gaps included. */
  public int size() {
    return elements.length;
  }

  /** Numbers of all elements. */
  int[] all() {
    return IntStream.range(0, elements.length).toArray();
  }

  /** Number of elements of the base; those from here on were added. */
  int baseCount() {
    return baseCount;
  }

  /** Number of spare nodes that failures have taken so far. */
  int sparesTaken() {
    return (int)
        IntStream.range(baseCount, elements.length)
            .flatMap(e -> IntStream.of(elements[e].a(), elements[e].b()))
            .filter(base::isSpare)
            .distinct()
            .count();
  }

  /** The element with this number. */
  public Element element(int e) {
    return elements[e];
  }

  /** Whether the element is a gap. */
  boolean removed(int e) {
    return removed[e];
  }

  /** Numbers of the elements that are gaps, differ from the base's or were added; ascending. */
  int[] different() {
    return different;
  }

  /** Whether the element differs from the base's. */
  boolean touched(int e) {
    return touched[e];
  }
}
