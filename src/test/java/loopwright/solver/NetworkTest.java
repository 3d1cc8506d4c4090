package loopwright.solver;

import static loopwright.solver.Rig.exactly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import loopwright.model.PartSpec;
import loopwright.model.Setting;
import loopwright.model.Spread;
import loopwright.model.TerminalRef;
import org.junit.jupiter.api.Test;

/** Nodes, elements and usual values of a network. */
class NetworkTest {

  @Test
  void aNetworkNamesItsNodesAndElements() {
    Rig rig = Rig.divider();
    Network network = rig.network();
    int mid = network.requireNode(rig.terminal("mid"));
    assertThat(network.terminals(mid))
        .containsExactly(new TerminalRef("RA", "out"), new TerminalRef("RB", "in"));
    assertThat(network.terminals(Network.REFERENCE)).contains(new TerminalRef("BAT", "neg"));
    assertThat(network.node(new TerminalRef("RA", "out"))).contains(mid);
    assertThat(network.node(new TerminalRef("RA", "nowhere"))).isEmpty();
    assertThatThrownBy(() -> network.requireNode(new TerminalRef("RX", "out")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("RX.out");
    assertThat(network.elementsOf("RA")).hasSize(1);
    assertThat(network.elementsOf("RX")).isEmpty();
    assertThat(network.element("RA", "coil")).isEmpty();
    assertThat(network.nodes()).isEqualTo(2 + Network.SPARES);
    assertThat(network.isSpare(network.spare(0))).isTrue();
    assertThat(network.isSpare(network.spare(1))).isTrue();
    assertThat(network.spare(0)).isNotEqualTo(network.spare(1));
    assertThat(network.isSpare(mid)).isFalse();
    assertThat(network.terminals(network.spare(1))).isEmpty();
    assertThatThrownBy(() -> network.spare(Network.SPARES))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theLayoutOfASettingIsLookedUpOnce() {
    Network network = Rig.divider().network();
    Setting apart = Setting.REST.without("RA");
    assertThat(network.layout(apart)).isSameAs(network.layout(apart));
    int ra = network.element("RA", "element").orElseThrow();
    assertThat(network.layout(apart).off(ra)).isTrue();
    assertThat(network.layout(Setting.REST).off(ra)).isFalse();
  }

  @Test
  void usualValuesStandInForWhatNobodyMeasured() {
    Rig rig =
        Rig.of(12)
            .part("BAT", new PartSpec.Battery(Optional.empty(), Optional.empty()), "top", "0")
            .part("F1", new PartSpec.Fuse(10, Optional.empty()), "top", "in")
            .part("M1", new PartSpec.Motor(exactly(5), Optional.empty()), "in", "0")
            .part("D1", new PartSpec.Led(Optional.empty(), exactly(0.02)), "in", "0");
    Network network = rig.network();
    Element.Cell cell = (Element.Cell) network.elements().get(0);
    // typical-values.csv: 12.2 to 12.75 V behind 4 to 20 mohm.
    assertThat(cell.volts()).isEqualTo(new Spread(12.2, 12.6, 12.75));
    assertThat(cell.ohms()).isEqualTo(new Spread(0.004, 0.007, 0.02));
    Element.Link link = (Element.Link) network.elements().get(1);
    // 1.1 to 1.35 times its 10 A.
    assertThat(link.blowsAt().low()).isEqualTo(11, within(1e-9));
    assertThat(link.blowsAt().typical()).isEqualTo(12.5, within(1e-9));
    assertThat(link.blowsAt().high()).isEqualTo(13.5, within(1e-9));
    Element.Motor motor = (Element.Motor) network.elements().get(2);
    // 12.6 V over 5 A; stalled 2.5 to 8 times the current; starts at 10 to 35 % of 12 V.
    assertThat(motor.runOhms().typical()).isEqualTo(2.52, within(1e-9));
    assertThat(motor.stallOhms().typical()).isEqualTo(0.63, within(1e-9));
    assertThat(motor.stallOhms().low()).isEqualTo(2.52 / 8, within(1e-9));
    assertThat(motor.stallOhms().high()).isEqualTo(2.52 / 2.5, within(1e-9));
    assertThat(motor.startVolts().low()).isEqualTo(1.2, within(1e-9));
    assertThat(motor.startVolts().high()).isEqualTo(4.2, within(1e-9));
    Element.Junction led = (Element.Junction) network.elements().get(3);
    // What 12.6 V leave beyond its forward 2 V, over 20 mA.
    assertThat(led.ohms().typical()).isEqualTo(530, within(1e-9));
  }

  @Test
  void theOhmsOfAWireAreThoseOfItsCopperAndItsEnds() {
    // 2 m of 1 mm2: 17.241 mohm a metre (IEC 60028), 5 % for stranding, two ends of 1 mohm.
    Rig rig =
        Rig.of(12)
            .battery(12, 0.1, "top")
            .resistor("RL", 4, "in", "0")
            .wire("W1", "1 mm2", 2, "top", "in");
    Network network = rig.network();
    Element.Resistor wire =
        (Element.Resistor) network.elements().get(network.element("W1", "conductor").orElseThrow());
    assertThat(wire.ohms().typical()).isEqualTo(2 * 0.017241 * 1.05 + 0.002, within(1e-9));
    // 15 % of length either way; -10 to 60 degrees; ends of 0.5 to 4 mohm.
    double low = 0.017241 * (1 - 0.00393 * 30) * 2 * 0.85 + 0.001;
    double high = 0.017241 * 1.08 * (1 + 0.00393 * 40) * 2 * 1.15 + 0.008;
    assertThat(wire.ohms().low()).isEqualTo(low, within(1e-9));
    assertThat(wire.ohms().high()).isEqualTo(high, within(1e-9));
  }
}
