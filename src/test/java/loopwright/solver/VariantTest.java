package loopwright.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.BitSet;
import java.util.List;
import java.util.Random;
import loopwright.model.PartSpec;
import loopwright.model.Spread;
import org.junit.jupiter.api.Test;

/** Choices of values, changed networks and what outlasts a setting. */
class VariantTest {

  @Test
  void aCopyOfValuesIsChangedByItself() {
    Network network = Rig.divider().network();
    int ra = network.element("RA", "element").orElseThrow();
    Values typical = Values.typical(Variant.healthy(network));
    assertThat(typical.size()).isEqualTo(network.elements().size());
    assertThat(typical.count(ra)).isEqualTo(1);
    assertThat(typical.count(network.element("BAT", "cell").orElseThrow())).isEqualTo(2);
    Values copy = typical.copy();
    copy.set(ra, 0, 3);
    Values again = copy.copy();
    again.set(ra, 0, 1);
    copy.set(ra, 0, 2.5);
    assertThat(typical.get(ra, 0)).isEqualTo(2);
    assertThat(copy.get(ra, 0)).isEqualTo(2.5);
    assertThat(again.get(ra, 0)).isEqualTo(1);
    // The network's own rows are shared by all who ask and must not have moved.
    assertThat(Values.typical(Variant.healthy(network)).get(ra, 0)).isEqualTo(2);
  }

  @Test
  void valuesOfALargerVariantKeepWhatWasChosen() {
    Network network = Rig.divider().network();
    Variant healthy = Variant.healthy(network);
    int ra = network.element("RA", "element").orElseThrow();
    Values chosen = Values.typical(healthy);
    chosen.set(ra, 0, 1);
    Variant larger =
        healthy.with(
            List.of(
                new Change.Add(new Element.Resistor("X", "bridge", 0, -1, new Spread(5, 7, 9)))));
    Values extended = chosen.extended(larger);
    assertThat(extended.size()).isEqualTo(healthy.size() + 1);
    assertThat(extended.get(ra, 0)).isEqualTo(1);
    assertThat(extended.get(healthy.size(), 0)).isEqualTo(7);
    extended.set(ra, 0, 3);
    assertThat(chosen.get(ra, 0)).isEqualTo(1);
    chosen.set(ra, 0, 2);
    assertThat(extended.get(ra, 0)).isEqualTo(3);
    assertThat(Values.typical(larger).get(healthy.size(), 0)).isEqualTo(7);
  }

  @Test
  void drawsLieOnEitherSideOfTheTypicalValueEquallyOften() {
    Network network =
        Rig.of(12)
            .battery(12, 0.1, "top")
            .part("RA", new PartSpec.Sender(new Spread(1, 2, 10)), "top", "0")
            .network();
    int ra = network.element("RA", "element").orElseThrow();
    Random random = new Random(8);
    int below = 0;
    double sumBelow = 0;
    double sumAbove = 0;
    int draws = 4_000;
    for (int k = 0; k < draws; k++) {
      double v = Values.drawn(Variant.healthy(network), random).get(ra, 0);
      assertThat(v).isBetween(1.0, 10.0);
      if (v < 2) {
        below++;
        sumBelow += v;
      } else {
        sumAbove += v;
      }
    }
    // Four standard deviations of a fair coin, and of even values on each side.
    assertThat((double) below / draws).isEqualTo(0.5, within(0.032));
    assertThat(sumBelow / below).isEqualTo(1.5, within(0.03));
    assertThat(sumAbove / (draws - below)).isEqualTo(6, within(0.21));
  }

  @Test
  void aVariantKnowsWhatIsGoneChangedAndAdded() {
    Network network = Rig.divider().network();
    Variant healthy = Variant.healthy(network);
    assertThat(healthy.different()).isEmpty();
    assertThat(healthy.with(List.of())).isSameAs(healthy);
    Element old = network.elements().get(1);
    Variant changed =
        healthy.with(
            List.of(
                new Change.Remove(0),
                new Change.Replace(1, old.between(old.b(), old.a())),
                new Change.Add(old)));
    int n = healthy.size();
    assertThat(changed.size()).isEqualTo(n + 1);
    assertThat(changed.baseCount()).isEqualTo(n);
    assertThat(changed.removed(0)).isTrue();
    assertThat(changed.removed(1)).isFalse();
    assertThat(changed.removed(n)).isFalse();
    assertThat(changed.touched(1)).isTrue();
    assertThat(changed.touched(0)).isFalse();
    assertThat(changed.different()).containsExactly(0, 1, n);
    assertThat(changed.element(1).a()).isEqualTo(old.b());
    assertThat(changed.base()).isSameAs(network);
    Variant more = changed.with(List.of(new Change.Remove(n)));
    assertThat(more.removed(0)).isTrue();
    assertThat(more.touched(1)).isTrue();
    assertThat(more.removed(n)).isTrue();
  }

  @Test
  void aHistoryKeepsItsOwnSet() {
    BitSet set = new BitSet();
    set.set(3);
    History history = new History(set);
    set.set(4);
    history.blown().set(5);
    assertThat(history.hasBlown(3)).isTrue();
    assertThat(history.hasBlown(4)).isFalse();
    assertThat(history.hasBlown(5)).isFalse();
    assertThat(History.NONE.hasBlown(3)).isFalse();
  }

  @Test
  void everyElementKeepsItsLawBetweenOtherNodes() {
    Spread one = new Spread(1, 2, 3);
    Spread two = new Spread(4, 5, 6);
    Spread three = new Spread(7, 8, 9);
    List<Element> all =
        List.of(
            new Element.Resistor("p", "r", 0, 1, one),
            new Element.Cell("p", "r", 0, 1, one, two),
            new Element.Filament("p", "r", 0, 1, 12, one, two),
            new Element.Junction("p", "r", 0, 1, one, two),
            new Element.Contact("p", "r", 0, 1, one, new Gate.Fixed(Gate.Rest.OPEN)),
            new Element.Coil("p", "r", 0, 1, one, two, three),
            new Element.Motor("p", "r", 0, 1, one, two, three),
            new Element.Link("p", "r", 0, 1, one, two));
    for (Element e : all) {
      Element moved = e.between(5, 6);
      assertThat(moved).hasSameClassAs(e);
      assertThat(moved.a()).isEqualTo(5);
      assertThat(moved.b()).isEqualTo(6);
      assertThat(moved.part()).isEqualTo("p");
      assertThat(moved.role()).isEqualTo("r");
      assertThat(moved.values()).isEqualTo(e.values());
      assertThat(e.values()).startsWith(one);
      assertThat(moved.between(0, 1)).isEqualTo(e);
    }
  }
}
