package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import org.junit.jupiter.api.Test;

/** Which way things stand, and which coil moves which contact, on one rig with all of them. */
class StandTest {

  /** BAT -- F1 -- top; top -- K1 coil and contact -- lamp; top -- M1; top -- D1 -- R1. */
  private final Network network =
      Rig.of(12)
          .battery(12.6, 0.01, "live")
          .fuse("F1", 30, 0.001, "live", "top")
          .part(
              "K1",
              new PartSpec.Relay(
                  true,
                  Optional.of(exactly(85)),
                  Optional.of(exactly(6.5)),
                  Optional.of(exactly(3.5)),
                  Optional.of(exactly(0.005)),
                  PartSpec.Suppression.NONE,
                  Optional.empty()),
              "top",
              "0",
              "top",
              "no",
              "nc")
          .resistor("RA", 20, "no", "0")
          .resistor("RB", 20, "nc", "0")
          .part("M1", new PartSpec.Motor(exactly(4), Optional.of(exactly(16))), "top", "0")
          .part("D1", new PartSpec.Diode(Optional.of(exactly(0.6))), "top", "x")
          .resistor("R1", 20, "x", "0")
          .network();

  private int element(String part, String role) {
    return network.element(part, role).orElseThrow();
  }

  private static BitSet only(int e) {
    BitSet set = new BitSet();
    set.set(e);
    return set;
  }

  @Test
  void aPointsStandNamesWhatIsInRunsAndConducts() {
    OperatingPoint point = Solver.full(network).solve(Variant.healthy(network), Setting.REST);
    Stand stand = Stand.of(point);
    assertThat(stand.pulled()).isEqualTo(only(element("K1", "coil")));
    assertThat(stand.running()).isEqualTo(only(element("M1", "winding")));
    assertThat(stand.conducting()).isEqualTo(only(element("D1", "junction")));
    assertThat(stand.blown().isEmpty()).isTrue();
    Stand dead =
        Stand.of(Solver.full(network).solve(Variant.healthy(network), Setting.REST.without("F1")));
    assertThat(dead.pulled().isEmpty()).isTrue();
    assertThat(dead.running().isEmpty()).isTrue();
    assertThat(dead.conducting().isEmpty()).isTrue();
    BitSet link = only(element("F1", "link"));
    assertThat(stand.blown(new History(link)).blown()).isEqualTo(link);
    assertThat(stand.blown(new History(link)).pulled()).isEqualTo(stand.pulled());
  }

  @Test
  void flippingOneThingLeavesTheOthersAndTheOldStandAsTheyAre() {
    BitSet none = new BitSet();
    Stand rest = new Stand(none, none, none, none);
    int[] moved = {
      element("K1", "coil"),
      element("M1", "winding"),
      element("D1", "junction"),
      element("F1", "link")
    };
    for (int e : moved) {
      Stand other = rest.flipped(network.elements().get(e), e);
      List<BitSet> sets =
          List.of(other.pulled(), other.running(), other.conducting(), other.blown());
      for (int k = 0; k < 4; k++) {
        assertThat(sets.get(k)).isEqualTo(moved[k] == e ? only(e) : none);
      }
      assertThat(none.isEmpty()).isTrue();
      assertThat(other.flipped(network.elements().get(e), e)).isEqualTo(rest);
    }
  }

  @Test
  void aContactFollowsItsRelaysCoilWhereverThatIsPut() {
    int coil = element("K1", "coil");
    int open = element("K1", "contact:87");
    int closed = element("K1", "contact:87a");
    Variant healthy = Variant.healthy(network);
    Layout layout = Layout.of(healthy, Setting.REST);
    assertThat(layout.coilOf(open)).isEqualTo(coil);
    assertThat(layout.coilOf(closed)).isEqualTo(coil);
    assertThat(layout.coilOf(coil)).isNegative();
    assertThat(layout.coilOf(element("RA", "element"))).isNegative();
    Element.Contact no = (Element.Contact) network.elements().get(open);
    Element.Contact nc = (Element.Contact) network.elements().get(closed);
    assertThat(layout.closed(open, no, new BitSet())).isFalse();
    assertThat(layout.closed(closed, nc, new BitSet())).isTrue();
    assertThat(layout.closed(open, no, only(coil))).isTrue();
    assertThat(layout.closed(closed, nc, only(coil))).isFalse();
    // A plain resistance in the coil's place and the coil itself added: the contacts follow it.
    Element old = network.elements().get(coil);
    Variant moved =
        healthy.with(
            List.of(
                new Change.Replace(
                    coil, new Element.Resistor("K1", "coil", old.a(), old.b(), old.values()[0])),
                new Change.Add(old)));
    Layout after = Layout.of(moved, Setting.REST);
    assertThat(after.coilOf(open)).isEqualTo(healthy.size());
    assertThat(after.coilOf(closed)).isEqualTo(healthy.size());
    // A contact that sticks follows none.
    Variant stuck =
        healthy.with(
            List.of(
                new Change.Replace(
                    open,
                    new Element.Contact(
                        "K1",
                        no.role(),
                        no.a(),
                        no.b(),
                        no.ohms(),
                        new Gate.Fixed(Gate.Rest.CLOSED)))));
    Layout fixed = Layout.of(stuck, Setting.REST);
    assertThat(fixed.coilOf(open)).isNegative();
    assertThat(fixed.coilOf(closed)).isEqualTo(coil);
    assertThat(fixed.closed(open, (Element.Contact) stuck.element(open), new BitSet())).isTrue();
    // An added contact of the same relay follows its coil too.
    Variant added = healthy.with(List.of(new Change.Add(no)));
    assertThat(Layout.of(added, Setting.REST).coilOf(healthy.size())).isEqualTo(coil);
    assertThat(Layout.of(added, Setting.REST.without("K1")).off(healthy.size())).isTrue();
  }
}
